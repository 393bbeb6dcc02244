import type { PocketCut } from '../../results/cuts.ts';
import { count, mm } from '../../results/quantity.ts';
import { CAUTIONS } from '../cautions.ts';
import { lengthSetting, say1 } from '../figures.ts';
import { type Method, made, refuse, type Task } from '../method.ts';
import { slotMoves, viewPocket } from '../pocket.ts';
import { SET_RULES } from '../rules.ts';
import { AT_PRESS, section } from '../section.ts';
import { beyond, drillsOf, machineOf } from '../shop.ts';
import { FACE_WORDS, opposite, trueSize } from '../sizes.ts';
import { mortiseDepth } from './mortise-depth.ts';

/** Square chisel, face side to the fence; a chisel narrower than the mortise makes two rows. */
export const chiselMortiser: Method = {
  name: 'chisel mortiser',
  makes: ['mortise'],
  attempt(task) {
    const cut = task.cut as PocketCut;
    const machine = machineOf(task.workshop, 'chisel mortiser');
    if (!machine) return refuse('the workshop has no chisel mortiser');
    if (cut.corner === 'round') return refuse('the mortise has round ends');
    const view = viewPocket(task.instance, cut);
    const depth = mortiseDepth({ ...task, cut } as Task<PocketCut>, view);
    const chisels = drillsOf(task.workshop, ['mortise chisel']);
    if (chisels.length === 0) return refuse('the workshop has no mortise chisel');
    const fitting = chisels
      .filter(c => c.diameter <= view.width + 0.05)
      .sort((a, b) => b.diameter - a.diameter);
    if (fitting.length === 0)
      return refuse(
        `the smallest chisel, ${say1(Math.min(...chisels.map(c => c.diameter)))}, is larger than the ${say1(view.width)} mortise`,
      );
    const chisel = fitting.find(c => c.depth >= depth.value - 0.01);
    if (!chisel) return refuse(`no chisel under ${say1(view.width)} reaches ${say1(depth.value)} deep`);
    const limit = beyond(machine, { depth: depth.value, piece: trueSize(task.instance, 'x') });
    if (limit) return refuse(limit);
    const side = chisel.diameter;
    const atEnd = view.acrossAxis === 'x';
    if (view.width > side * 2 + 0.05)
      return refuse(`${say1(view.width)} wide is more than two rows of the ${say1(side)} chisel`);
    const rows = slotMoves(view.width, side);
    const plunges = slotMoves(view.length, side).length;
    const entries = depth.both ? [view.entry, opposite(view.entry)] : [view.entry];
    return made({
      what: 'Mortises',
      method: atEnd ? 'hollow chisel, end to the stop' : 'hollow chisel, face side to the fence',
      machine,
      tool: chisel.name,
      state: { tool: chisel.id, jig: '', fence: view.near, height: depth.value, tilt: 0 },
      settings: [
        lengthSetting(
          atEnd ? 'stop' : 'fence',
          view.near,
          `near wall from the ${FACE_WORDS[view.reference]}`,
          'reference',
          'near edge',
        ),
        lengthSetting('depth', depth.value, depth.how, depth.both ? 'bothSides' : 'reference'),
        lengthSetting(
          'bit',
          side,
          `${chisel.name}${Math.abs(side - view.width) < 0.05 ? ', as wide as the mortise' : `, two rows for ${say1(view.width)}`}`,
          'reference',
        ),
        {
          name: 'passes',
          value: count(plunges),
          how: `plunges of ${say1(side)} over ${say1(view.length)}: both ends first, then between`,
          rule: SET_RULES.wideSlot.number,
        },
        ...(rows.length > 1
          ? [
              lengthSetting(
                'last pass',
                view.near + rows.at(-1)!,
                `${say1(view.near)} + ${say1(rows.at(-1)!)}`,
                'wideSlot',
                'near edge',
              ),
            ]
          : []),
      ],
      lays: entries.map((entry, i) => ({
        label: i === 0 ? FACE_WORDS[entry] : 'other side',
        down: opposite(entry),
        against: view.reference,
        entry,
        end: view.runFrom,
      })),
      along: { from: view.start, to: view.finish },
      removal: { shape: 'slot', width: side, moves: rows },
      drawing: () =>
        section({
          view: 'drill',
          zero: atEnd ? 'stop' : 'fence',
          seen: AT_PRESS,
          tool: { from: view.near, to: view.near + side, height: depth.value, above: true },
          work: {
            width: trueSize(task.instance, view.acrossAxis),
            height: trueSize(task.instance, view.depthAxis),
          },
          reads: 'near',
          toolWord: 'chisel',
          grain: atEnd ? 'across' : 'end-on',
          ...(view.reference === 'face' ? { mark: 'face side' as const } : {}),
        }),
      kerfSide: 'inside the mortise',
      wanted: { label: 'Mortise wanted', value: mm(view.width), how: `as drawn ${say1(view.width)}` },
      correction: {
        share: 'whole',
        tooBig: 'Too wide: bring the second row closer by the whole difference.',
        tooSmall: 'Too narrow: move the second row on by the whole difference.',
      },
      trial: rows.length > 1,
      before: ['Mortises before their tenons: the chisel fixes this size, the tenon is fitted to it'],
      after: [],
      cautions: [CAUTIONS.chiselMortiser],
      passes: entries.length * rows.length * plunges,
    });
  },
};
