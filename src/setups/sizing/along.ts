import { MACHINE_FILES } from '../../workshop/machines/index.ts';
import { say1 } from '../figures.ts';
import { made, refuse } from '../method.ts';
import { handBench } from '../methods/hand-bench.ts';
import { ALONG_FEED } from '../section.ts';
import { beyond, bladeOf, machineOf, noBlade } from '../shop.ts';
import { type Sized, type SizingMethod, target } from './sized.ts';
import { lay, sizingDraft } from './sizing-draft.ts';

const words = (sized: Sized): { what: string; how: string; after: string[] } => {
  const rough = sized.to === 'rough width';
  const spare = sized.blank.width - sized.instance.size.width;
  return {
    what: rough ? 'Rough widths' : 'Widths',
    how:
      rough && spare > 0.01
        ? `${say1(sized.instance.size.width)} finished + ${say1(spare)} allowance`
        : `${say1(sized.instance.size.width)} finished`,
    after: rough ? [] : ['A try square on every sawn edge; the saw marks off with one stroke'],
  };
};

const thick = (sized: Sized): number =>
  sized.to === 'rough width' ? sized.blank.thickness : sized.instance.size.thickness;
/** The face edge, made true, meets the fence; the back edge is sawn. */
const ALONG = [lay('face edge to the fence', 'back', 'faceEdge', 'backEdge', 'end1')];
const timberOrSheet = (sized: Sized): boolean =>
  sized.instance.kind === 'timber' || sized.instance.kind === 'sheet';

export const alongTableSaw: SizingMethod = {
  name: 'table saw, fence',
  brings: ['width', 'rough width'],
  attempt(sized) {
    if (!timberOrSheet(sized)) return refuse('the table saw is set up for timber and sheet');
    const machine = machineOf(sized.workshop, 'table saw');
    if (!machine) return refuse('the workshop has no table saw');
    const blade = bladeOf(sized.workshop, machine, ['rip', 'combination', 'cross']);
    if (!blade) return refuse(noBlade(sized.workshop, machine));
    const size = target(sized, 'width');
    const limit = beyond(machine, { depth: thick(sized), fence: size, piece: sized.blank.length });
    if (limit) return refuse(limit);
    const height = Math.min(thick(sized) + 5, machine.maxDepth ?? thick(sized) + 5);
    return made(
      sizingDraft({
        ...words(sized),
        method: 'along the fence',
        machine,
        tool: `${blade.name}, kerf ${say1(blade.kerf)}`,
        toolId: blade.id,
        kerf: blade.kerf,
        reads: 'fence',
        size,
        rule: 'kerf',
        lays: ALONG,
        view: 'flat rip',
        seen: ALONG_FEED,
        work: { width: Math.max(sized.blank.width, size + blade.kerf + 4), height: thick(sized) },
        height,
        kerfSide: 'outside the part, away from the fence',
        cautions: [...MACHINE_FILES['table saw'].cautions],
        passes: 1,
      }),
    );
  },
};

export const alongBandSaw: SizingMethod = {
  name: 'band saw, fence',
  brings: ['rough width'],
  attempt(sized) {
    if (sized.instance.kind !== 'timber') return refuse('the band saw leaves sheet edges torn');
    const machine = machineOf(sized.workshop, 'band saw');
    if (!machine) return refuse('the workshop has no band saw');
    const blade = bladeOf(sized.workshop, machine, ['rip', 'combination', 'curve']);
    const size = target(sized, 'width');
    const limit = beyond(machine, { depth: thick(sized), fence: size, piece: sized.blank.length });
    if (limit) return refuse(limit);
    const kerf = blade?.kerf ?? 1.2;
    return made(
      sizingDraft({
        ...words(sized),
        method: 'at the band saw, along the fence',
        machine,
        tool: blade ? `${blade.name}, kerf ${say1(kerf)}` : 'band',
        toolId: blade?.id ?? 'band',
        kerf,
        reads: 'fence',
        size,
        rule: 'kerf',
        lays: ALONG,
        view: 'flat rip',
        seen: ALONG_FEED,
        work: { width: size + kerf + 10, height: thick(sized) },
        kerfSide: 'outside the part, away from the fence',
        cautions: [...MACHINE_FILES['band saw'].cautions],
        passes: 1,
      }),
    );
  },
};

export const alongByHand: SizingMethod = {
  name: 'rip saw and plane',
  brings: ['rough width', 'width'],
  attempt(sized) {
    const machine = handBench(sized.workshop);
    if (!machine) return refuse('no hand tools are in the workshop file');
    const tool = sized.to === 'width' ? 'panel gauge, rip saw, try plane' : 'rip saw';
    const size = target(sized, 'width');
    return made(
      sizingDraft({
        ...words(sized),
        method: sized.to === 'width' ? 'planed to a gauge line' : 'sawn to a gauge line',
        machine,
        tool,
        toolId: tool,
        kerf: 1,
        reads: 'gauge',
        size,
        rule: 'kerf',
        lays: ALONG,
        view: 'hand',
        seen: 'from the end, face edge on the right',
        work: { width: size + 6, height: thick(sized) },
        kerfSide: 'outside the line',
        cautions: [...MACHINE_FILES['hand tools'].cautions],
        passes: 2,
      }),
    );
  },
};
