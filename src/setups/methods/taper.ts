import type { TaperCut } from '../../results/cuts.ts';
import type { Machine } from '../../workshop/workshop.ts';
import { CAUTIONS, smallPart } from '../cautions.ts';
import { lengthSetting, otherSetting, say1 } from '../figures.ts';
import { type Draft, type Method, made, refuse, type Task } from '../method.ts';
import { ALONG_FEED, section } from '../section.ts';
import { beyond, bladeOf, jigOf, machineOf, noBlade } from '../shop.ts';
import { FACE_WORDS, FACES, faceAxis, opposite, trueSize } from '../sizes.ts';
import { handBench } from './hand-bench.ts';

export const taperAngle = (cut: TaperCut): number =>
  (Math.atan2(cut.amount, Math.abs(cut.to - cut.from)) * 180) / Math.PI;

/** End towards which the part grows thinner, and how far from it the taper begins. */
const thinEnd = (cut: TaperCut): 'end1' | 'end2' => (cut.to > cut.from ? 'end2' : 'end1');

function taperDraft(
  task: Task<TaperCut>,
  kit: {
    machine: Machine;
    tool: string;
    toolId: string;
    kerf: number;
    jig?: Draft['jig'];
    method: string;
    height: number;
    heightHow: string;
    hand: boolean;
  },
): Draft {
  const { cut, instance } = task;
  const axis = faceAxis(cut.face);
  const across = axis === 'z' ? 'y' : 'z';
  const size = trueSize(instance, axis);
  const left = size - cut.amount;
  const end = thinEnd(cut);
  const from = end === 'end2' ? trueSize(instance, 'x') - cut.from : cut.from;
  const angle = taperAngle(cut);
  return {
    what: 'Tapers',
    method: kit.method,
    machine: kit.machine,
    tool: kit.tool,
    ...(kit.jig ? { jig: kit.jig } : {}),
    state: { tool: kit.toolId, jig: kit.jig?.id ?? '', fence: cut.amount, height: kit.height, tilt: 0 },
    settings: [
      lengthSetting('offset', cut.amount, `${say1(size)} less ${say1(left)} left at the thin end`, 'taper'),
      lengthSetting('from', from, `taper begins ${say1(from)} from ${FACE_WORDS[end]}`, 'taper'),
      otherSetting(
        'angle',
        'angle',
        angle,
        `${say1(cut.amount)} over ${say1(Math.abs(cut.to - cut.from))}`,
        'taper',
      ),
      ...(kit.hand ? [] : [lengthSetting('blade height', kit.height, kit.heightHow, 'bladeOver')]),
    ],
    lays: [
      {
        label: FACE_WORDS[cut.face],
        down: FACES[across].high === 'faceEdge' ? 'faceEdge' : FACES[across].high,
        against: opposite(cut.face),
        entry: cut.face,
        end,
      },
    ],
    removal: { shape: 'wedge', width: kit.kerf, moves: [0], along: { from: 0, to: from } },
    drawing: () =>
      section({
        view: kit.hand ? 'hand' : 'flat rip',
        zero: 'fence',
        seen: ALONG_FEED,
        tool: { from: left, to: left + kit.kerf, height: kit.height },
        work: { width: size, height: trueSize(instance, across) },
        waste: { from: left + kit.kerf, to: size },
        keep: { from: 0, to: left, label: 'thin end' },
        reads: 'near',
        grain: 'end-on',
      }),
    end,
    kerfSide: 'outside the taper line',
    trial: false,
    before: ['Joints are cut and dry fitted: a taper takes the datum faces away'],
    after: ['Plane the saw marks off to the line'],
    cautions: [
      kit.hand ? CAUTIONS.hand : CAUTIONS.taper,
      ...(trueSize(instance, 'x') < 300 ? [smallPart(trueSize(instance, 'x'))] : []),
    ],
    passes: kit.hand ? 6 : 1,
  };
}

export const taperSled: Method = {
  name: 'table saw, taper sled',
  makes: ['taper'],
  attempt(task) {
    const cut = task.cut as TaperCut;
    const machine = machineOf(task.workshop, 'table saw');
    if (!machine) return refuse('the workshop has no table saw');
    const jig = jigOf(task.workshop, machine, 'taper sled');
    if (!jig) return refuse('the table saw has no taper sled');
    const blade = bladeOf(task.workshop, machine, ['rip', 'combination', 'cross']);
    if (!blade) return refuse(noBlade(task.workshop, machine));
    const tall = trueSize(task.instance, faceAxis(cut.face) === 'z' ? 'y' : 'z');
    const over = 5;
    const limit = beyond(machine, { depth: tall + over, piece: trueSize(task.instance, 'x') });
    if (limit) return refuse(limit);
    return made(
      taperDraft(
        { ...task, cut },
        {
          machine,
          tool: `${blade.name}, kerf ${say1(blade.kerf)}, ${jig.name}`,
          toolId: blade.id,
          kerf: blade.kerf,
          jig,
          method: 'on the taper sled',
          height: tall + over,
          heightHow: `${say1(tall)} + ${over}.0 over the work`,
          hand: false,
        },
      ),
    );
  },
};

export const taperBandSaw: Method = {
  name: 'band saw and plane',
  makes: ['taper'],
  attempt(task) {
    const machine = machineOf(task.workshop, 'band saw');
    if (!machine) return refuse('the workshop has no band saw');
    const blade = task.workshop.blades.find(b => b.machine === machine.id);
    const cut = task.cut as TaperCut;
    const tall = trueSize(task.instance, faceAxis(cut.face) === 'z' ? 'y' : 'z');
    const limit = beyond(machine, { depth: tall });
    if (limit) return refuse(limit);
    return made(
      taperDraft(
        { ...task, cut },
        {
          machine,
          tool: blade ? `${blade.name}, kerf ${say1(blade.kerf)}` : 'band',
          toolId: blade?.id ?? 'band',
          kerf: blade?.kerf ?? 0.7,
          method: 'sawn to the line and planed',
          height: tall,
          heightHow: `guides just over ${say1(tall)}`,
          hand: false,
        },
      ),
    );
  },
};

export const taperPlane: Method = {
  name: 'plane to the line',
  makes: ['taper'],
  attempt(task) {
    const machine = handBench(task.workshop);
    if (!machine) return refuse('no hand tools are in the workshop file');
    return made(
      taperDraft(
        { ...task, cut: task.cut as TaperCut },
        {
          machine,
          tool: 'jack plane',
          toolId: 'jack plane',
          kerf: 0.5,
          method: 'planed to the line',
          height: 0,
          heightHow: '',
          hand: true,
        },
      ),
    );
  },
};
