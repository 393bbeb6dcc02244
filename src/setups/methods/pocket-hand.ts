import type { PocketCut } from '../../results/cuts.ts';
import { CAUTIONS } from '../cautions.ts';
import { lengthSetting, say1 } from '../figures.ts';
import { openDepth, pocketDepth, pocketWanted } from '../fit.ts';
import { type Method, made, refuse, type Task } from '../method.ts';
import { viewPocket } from '../pocket.ts';
import { section } from '../section.ts';
import { cutName, cutNames, FACE_WORDS, opposite, trueSize } from '../sizes.ts';
import { isMetal } from '../speeds.ts';
import { handBench } from './hand-bench.ts';

const TOOLS: Record<PocketCut['kind'], string> = {
  mortise: 'mortise gauge, brace and bit, mortise chisel',
  'open-mortise': 'mortise gauge, tenon saw, coping saw, chisel',
  housing: 'knife and square, back saw, router plane',
  groove: 'plough plane',
  rebate: 'rebate plane',
  recess: 'knife, chisel, router plane',
  halving: 'marking gauge, back saw, chisel',
  notch: 'marking gauge, back saw, chisel',
};

/** Gauge lines from the reference surface, and the tools that work to them. Metal is sawn and filed. */
export const pocketHand: Method = {
  name: 'by hand',
  makes: ['mortise', 'open-mortise', 'housing', 'groove', 'rebate', 'recess', 'halving', 'notch'],
  attempt(task) {
    const cut = task.cut as PocketCut;
    const pocket: Task<PocketCut> = { ...task, cut };
    const machine = handBench(task.workshop);
    if (!machine) return refuse('no hand tools are in the workshop file');
    const view = viewPocket(task.instance, cut);
    const wanted = pocketWanted(pocket, view);
    const depth = cut.kind === 'open-mortise' ? openDepth(pocket, view) : pocketDepth(pocket, view);
    const name = cutName(cut);
    const metal = isMetal(task.instance);
    const tool = metal ? 'scriber, hacksaw, files' : TOOLS[cut.kind];
    const far = view.near + wanted.value;
    return made({
      what: `${cutNames(cut, true)} by hand`,
      method: metal ? 'sawn and filed' : 'by hand to gauge lines',
      machine,
      tool,
      state: { tool, fence: view.near, height: depth.value, tilt: 0 },
      settings: [
        lengthSetting(
          'gauge',
          view.near,
          `near wall from the ${FACE_WORDS[view.reference]}`,
          'reference',
          'near edge',
        ),
        lengthSetting('gauge 2', far, `${say1(view.near)} + ${wanted.how}`, 'reference', 'far edge'),
        lengthSetting('depth', depth.value, depth.how, 'reference'),
      ],
      lays: [
        {
          label: FACE_WORDS[view.entry],
          down: opposite(view.entry),
          against: view.reference,
          entry: view.entry,
          end: view.runFrom,
        },
      ],
      removal: { shape: 'slot', width: wanted.value, moves: [0] },
      ...(view.runsOut ? {} : { along: { from: view.start, to: view.finish } }),
      drawing: () =>
        section({
          view: 'hand',
          zero: 'face',
          seen: 'from the end, entry face up',
          tool: { from: view.near, to: far, height: depth.value, above: true },
          work: {
            width: trueSize(task.instance, view.acrossAxis),
            height: trueSize(task.instance, view.depthAxis),
          },
          reads: 'near',
          toolWord: 'chisel',
          grain: 'end-on',
        }),
      kerfSide: `inside the lines of the ${name}`,
      trial: false,
      before: [],
      after: [],
      cautions: [metal ? CAUTIONS.metal : CAUTIONS.hand],
      passes: 3,
    });
  },
};
