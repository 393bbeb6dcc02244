import type { PocketCut } from '../../results/cuts.ts';
import { count, mm } from '../../results/quantity.ts';
import { CAUTIONS } from '../cautions.ts';
import { lengthSetting, otherSetting, say1 } from '../figures.ts';
import { type Method, made, refuse, type Task } from '../method.ts';
import { slotMoves, viewPocket } from '../pocket.ts';

import { SET_RULES } from '../rules.ts';
import { section } from '../section.ts';
import { beyond, machineOf, noStraightCutter, straightCutter } from '../shop.ts';
import { FACE_WORDS, opposite, trueSize } from '../sizes.ts';
import { depthSteps, routerTurns } from '../speeds.ts';
import { mortiseDepth } from './mortise-depth.ts';

/** Face side down on the table, cutter at the height of the mortise's middle, stops left and right. */
export const slotMortiser: Method = {
  name: 'slot mortiser',
  makes: ['mortise'],
  attempt(task) {
    const cut = task.cut as PocketCut;
    const pocket: Task<PocketCut> = { ...task, cut };
    const machine = machineOf(task.workshop, 'slot mortiser');
    if (!machine) return refuse('the workshop has no slot mortiser');
    const view = viewPocket(task.instance, cut);
    const depth = mortiseDepth(pocket, view);
    const cutter = straightCutter(task.workshop, view.width, depth.value);
    if (!cutter) return refuse(noStraightCutter(task.workshop, view.width, depth.value));
    const limit = beyond(machine, { depth: depth.value, piece: trueSize(task.instance, 'x') });
    if (limit) return refuse(limit);
    const speed = routerTurns(cutter);
    if ('reason' in speed) return refuse(speed.reason);
    const d = cutter.diameter;
    const moves = slotMoves(view.width, d);
    const first = view.near + d / 2;
    const steps = depthSteps(cutter, depth.value, task.instance);
    const square = cut.corner === 'square';
    const entries = depth.both ? [view.entry, opposite(view.entry)] : [view.entry];
    return made({
      what: 'Mortises',
      method: 'slot mortiser, face side down',
      machine,
      tool: cutter.name,
      state: { tool: cutter.id, jig: '', fence: view.start, height: first, tilt: 0 },
      settings: [
        lengthSetting(
          'height',
          first,
          `${FACE_WORDS[view.reference]} to near wall ${say1(view.near)} + half of ${say1(d)}`,
          'reference',
          'centre',
        ),
        lengthSetting('depth', depth.value, depth.how, depth.both ? 'bothSides' : 'reference'),
        lengthSetting(
          'start',
          view.start,
          `cutter edge from ${FACE_WORDS[view.runFrom]}`,
          'reference',
          'near edge',
        ),
        lengthSetting(
          'finish',
          view.finish,
          `${say1(view.start)} + ${say1(view.length)}`,
          'reference',
          'far edge',
        ),
        lengthSetting('bit', d, cutter.name, 'reference'),
        {
          name: 'passes',
          value: count(steps),
          how: `${say1(depth.value)} in steps of ${say1(depth.value / steps)}`,
          rule: SET_RULES.depthPass.number,
        },
        otherSetting('speed', 'number', speed.turns, `turns a minute at most; ${speed.how}`, 'speed'),
        ...(moves.length > 1
          ? [
              lengthSetting(
                'last pass',
                first + moves.at(-1)!,
                `${say1(first)} + ${say1(moves.at(-1)!)}`,
                'wideSlot',
                'centre',
              ),
            ]
          : []),
      ],
      lays: entries.map((entry, i) => ({
        label: i === 0 ? FACE_WORDS[entry] : 'other side',
        down: view.reference,
        against: view.reference,
        entry,
        end: view.runFrom,
      })),
      removal: { shape: 'slot', width: d, moves, along: { from: view.start, to: view.finish } },
      drawing: () =>
        section({
          view: 'drill',
          zero: 'face',
          seen: 'from the end of the work, cutter coming from the left',
          tool: { from: view.near, to: view.near + d, height: depth.value, above: true },
          work: {
            width: trueSize(task.instance, view.acrossAxis),
            height: trueSize(task.instance, view.depthAxis),
          },
          reads: 'centre',
          toolWord: 'cutter',
          grain: 'end-on',
        }),
      kerfSide: 'inside the mortise',
      wanted: { label: 'Mortise wanted', value: mm(view.width), how: `as drawn ${say1(view.width)}` },
      correction: {
        share: 'whole',
        tooBig: 'Too wide: bring the last height closer by the whole difference, or a smaller cutter.',
        tooSmall: 'Too narrow: move the last height on by the whole difference.',
      },
      trial: true,
      before: ['Mortises before their tenons: the cutter fixes this size, the tenon is fitted to it'],
      after: square
        ? ['Square the ends with a chisel, or round the tenon']
        : ['Ends stay round: the tenon is rounded to them'],
      cautions: [
        CAUTIONS.router,
        'Clamp down before the cutter enters.',
        ...(d < 6 ? [CAUTIONS.narrowCutter] : []),
      ],
      passes: entries.length * moves.length * steps,
    });
  },
};
