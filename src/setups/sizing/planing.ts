import { MACHINE_FILES } from '../../workshop/machines/index.ts';
import type { Machine } from '../../workshop/workshop.ts';
import { lengthSetting, otherSetting, say1 } from '../figures.ts';
import { type Draft, made, refuse } from '../method.ts';
import { handBench } from '../methods/hand-bench.ts';
import { section } from '../section.ts';
import { beyond, machineOf } from '../shop.ts';
import type { Sized, SizingMethod } from './sized.ts';
import { lay, sizingDraft } from './sizing-draft.ts';

/** Deepest cut where the maker gave none, and the light one at the end, mm (common practice). */
const USUAL_CUT = 2;
const LIGHT = 0.5;

/** Equal passes no deeper than the machine may, the last a light one (SET-26). */
export function planingPasses(
  spare: number,
  deepest: number,
): { passes: number; each: number; last: number } {
  if (spare <= LIGHT + 0.01) return { passes: 1, each: spare, last: spare };
  const heavy = spare - LIGHT;
  const passes = Math.ceil(heavy / deepest - 1e-9);
  return { passes: passes + 1, each: heavy / passes, last: LIGHT };
}

const passWords = (spare: number, deepest: number): string => {
  const { passes, each, last } = planingPasses(spare, deepest);
  return passes === 1
    ? `one pass of ${say1(last)}`
    : `${passes - 1} of ${say1(each)} and one of ${say1(last)}`;
};

/** Half of what the blank has over goes with the first face, the rest at the thicknesser. */
const spareOf = ({ to, blank, instance: { size } }: Sized): number =>
  to === 'edge'
    ? Math.max(0.5, (blank.width - size.width) / 2)
    : Math.max(0.5, (blank.thickness - size.thickness) / 2);

const datumDraft = (
  sized: Sized,
  kit: { machine: Machine; tool: string; toolId: string; method: string; deepest: number; hand: boolean },
): Draft => {
  const { to, blank } = sized;
  const edge = to === 'edge';
  const spare = spareOf(sized);
  const file = MACHINE_FILES[kit.hand ? 'hand tools' : 'planer'];
  const across = edge ? blank.thickness : blank.width;
  const depth = Math.min(kit.deepest, 1);
  return {
    what: edge ? 'Face edges square' : 'Face sides flat',
    method: kit.method,
    machine: kit.machine,
    tool: kit.tool,
    state: { tool: kit.toolId, height: depth, ...(edge ? { fence: 0 } : {}), tilt: 0 },
    settings: [
      lengthSetting(
        'depth',
        depth,
        `a pass; at most ${say1(spare)} may go: half of what the blank has over`,
        'planing',
      ),
      ...(edge
        ? [otherSetting('angle', 'angle', 90, 'fence square to the table, tried with a square', 'sizing')]
        : []),
    ],
    lays: [
      edge
        ? lay('face edge', 'faceEdge', 'face', 'faceEdge', 'end1')
        : lay('face side, hollow down', 'face', 'faceEdge', 'face', 'end1'),
    ],
    removal: { shape: 'datum', width: spare, moves: [0] },
    drawing: () => ({
      ...section({
        view: kit.hand ? 'hand' : 'flat rip',
        zero: edge ? 'fence' : 'face',
        seen: 'along the feed, fence on the right',
        tool: { from: 0, to: across, height: depth },
        work: { width: across, height: edge ? Math.min(160, blank.width) : blank.thickness },
        reads: 'far',
        toolWord: kit.hand ? 'plane' : 'knives',
        grain: 'end-on',
        mark: edge ? 'face side' : 'face edge',
      }),
      // Nothing is measured here but the depth of a pass: the rod carries the work alone.
      stations: [
        { at: 0, label: edge ? 'fence' : 'face edge', strong: false },
        { at: across, label: 'work', strong: false },
      ],
    }),
    kerfSide: 'off the face that becomes the reference',
    trial: false,
    before: edge
      ? ['The face side is flat and marked']
      : ['The better face is chosen as face side, grain falling with the feed'],
    after: edge
      ? ['Face edge marked; a square shows no light']
      : ['A straightedge and winding sticks show no light'],
    cautions: [...file.cautions],
    passes: planingPasses(spare, depth).passes,
  };
};

export const planerDatum: SizingMethod = {
  name: 'planer',
  brings: ['face', 'edge'],
  attempt(sized) {
    if (sized.instance.kind !== 'timber') return refuse('the planer is for timber');
    const machine = machineOf(sized.workshop, 'planer');
    if (!machine) return refuse('the workshop has no planer');
    const { blank } = sized;
    if (machine.widest !== undefined && sized.to === 'face' && blank.width > machine.widest + 0.01)
      return refuse(`${say1(blank.width)} wide, the ${machine.name} planes ${say1(machine.widest)}`);
    const limit = beyond(machine, { piece: blank.length });
    if (limit) return refuse(`${limit}; prepare it in one length with its like and cut apart after`);
    return made(
      datumDraft(sized, {
        machine,
        tool: 'knives',
        toolId: 'knives',
        method: sized.to === 'edge' ? 'over the planer, fence square' : 'over the planer',
        deepest: machine.maxDepth ?? USUAL_CUT,
        hand: false,
      }),
    );
  },
};

export const planeDatum: SizingMethod = {
  name: 'try plane',
  brings: ['face', 'edge'],
  attempt(sized) {
    const machine = handBench(sized.workshop);
    if (!machine) return refuse('no hand tools are in the workshop file');
    return made(
      datumDraft(sized, {
        machine,
        tool: 'jack plane, try plane',
        toolId: 'try plane',
        method: 'planed by hand to straightedge and square',
        deepest: 0.3,
        hand: true,
      }),
    );
  },
};

/** Measured boards of the rack that this blank may come from, thickest first: how many passes to expect. */
function boardWords({ workshop, instance, blank }: Sized): string[] {
  const boards = workshop.rack
    .filter(
      i =>
        i.material === instance.material &&
        i.measuredThickness !== undefined &&
        i.measuredThickness >= instance.size.thickness &&
        i.thickness <= blank.thickness + 12,
    )
    .sort((a, b) => b.measuredThickness! - a.measuredThickness!);
  const board = boards[0];
  if (!board) return [];
  const spare = board.measuredThickness! - instance.size.thickness;
  return [`From ${board.label}, ${say1(board.measuredThickness!)} measured, ${say1(spare)} comes off in all`];
}

export const thicknesserPasses: SizingMethod = {
  name: 'thicknesser',
  brings: ['thickness'],
  attempt(sized) {
    const { instance, blank, workshop } = sized;
    if (instance.kind !== 'timber') return refuse('the thicknesser is for timber');
    const machine = machineOf(workshop, 'thicknesser');
    if (!machine) return refuse('the workshop has no thicknesser');
    if (machine.widest !== undefined && blank.width > machine.widest + 0.01)
      return refuse(`${say1(blank.width)} wide, the ${machine.name} takes ${say1(machine.widest)}`);
    const limit = beyond(machine, { piece: blank.length });
    if (limit) return refuse(`${limit}; prepare it in one length with its like and cut apart after`);
    const deepest = machine.maxDepth ?? USUAL_CUT;
    const spare = spareOf(sized);
    const { passes } = planingPasses(spare, deepest);
    return made(
      sizingDraft({
        what: 'Thicknesses',
        method: 'through the thicknesser, one setting for all',
        machine,
        tool: 'knives',
        toolId: 'knives',
        kerf: spare,
        reads: 'height',
        size: instance.size.thickness,
        how: `${say1(instance.size.thickness)} finished`,
        rule: 'sizing',
        lays: [lay('face side down', 'face', 'face', 'back', 'end1')],
        view: 'router',
        seen: 'along the feed, turned on edge: the table on the right',
        work: { width: instance.size.thickness + spare, height: Math.min(160, instance.size.width) },
        kerfSide: 'off the back face',
        before: [
          'Face side is flat, it lies down on the table',
          `Blank ${say1(blank.thickness)}, about ${say1(spare)} left over: ${passWords(spare, deepest)}, deepest ${say1(deepest)}`,
          ...boardWords(sized),
        ],
        after: ['Calipers on every part at both ends: the measured thickness goes into the job'],
        cautions: [...MACHINE_FILES.thicknesser.cautions],
        passes,
      }),
    );
  },
};

export const thicknessByHand: SizingMethod = {
  name: 'plane to a gauge line',
  brings: ['thickness'],
  attempt(sized) {
    const machine = handBench(sized.workshop);
    if (!machine) return refuse('no hand tools are in the workshop file');
    const { size } = sized.instance;
    return made(
      sizingDraft({
        what: 'Thicknesses',
        method: 'planed by hand to a gauge line all round',
        machine,
        tool: 'marking gauge, jack plane, try plane',
        toolId: 'try plane',
        kerf: spareOf(sized),
        reads: 'gauge',
        size: size.thickness,
        how: `${say1(size.thickness)} finished`,
        rule: 'sizing',
        lays: [lay('gauged from the face side', 'face', 'face', 'back', 'end1')],
        view: 'hand',
        seen: 'from the end',
        work: { width: size.thickness + spareOf(sized), height: Math.min(160, size.width) },
        kerfSide: 'off the back face',
        before: ['Face side is flat'],
        cautions: [...MACHINE_FILES['hand tools'].cautions],
        passes: 4,
      }),
    );
  },
};
