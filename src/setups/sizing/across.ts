import { MACHINE_FILES } from '../../workshop/machines/index.ts';
import { say1 } from '../figures.ts';
import { made, refuse } from '../method.ts';
import { handBench } from '../methods/hand-bench.ts';
import { AT_SLED } from '../section.ts';
import { beyond, bladeOf, jigOf, machineOf, noBlade } from '../shop.ts';
import { type Sized, type SizingMethod, target } from './sized.ts';
import { lay, sizingDraft } from './sizing-draft.ts';

/** Longest work that is steady on a cross-cut sled (common practice), mm. */
const ON_SLED = 1600;
/** Widest way across a sled (common practice), mm. */
const SLED_WAY = 620;

const words = (sized: Sized): { what: string; how: string; before: string[]; after: string[] } => {
  const rough = sized.to === 'rough length';
  const spare = sized.blank.length - sized.instance.size.length;
  return {
    what: rough ? 'Rough lengths' : 'Lengths',
    how:
      rough && spare > 0.01
        ? `${say1(sized.instance.size.length)} finished + ${say1(spare)} allowance`
        : `${say1(sized.instance.size.length)} finished`,
    before: rough ? [] : ['Width is finished; one end is cut square first'],
    after: rough ? ['Mark on each blank: its letter, face side up'] : [],
  };
};

/** End 1 is squared, then end 2 cut with end 1 to the stop; a rough blank needs one cut. */
const laysOf = (sized: Sized) =>
  sized.to === 'rough length'
    ? [lay('to the stop', 'back', 'end1', 'end2', 'backEdge')]
    : [lay('to the stop, after end 1 is square', 'back', 'end1', 'end2', 'backEdge')];

/** The thickness in the cut: the blank's before it is planed. */
const thick = (sized: Sized): number =>
  sized.to === 'rough length' ? sized.blank.thickness : sized.instance.size.thickness;
const wide = (sized: Sized): number =>
  sized.to === 'rough length' ? sized.blank.width : sized.instance.size.width;

export const acrossMitreSaw: SizingMethod = {
  name: 'mitre saw',
  brings: ['rough length', 'length'],
  attempt(sized) {
    const { instance, workshop } = sized;
    if (instance.kind !== 'timber') return refuse('the mitre saw is set up for timber');
    const machine = machineOf(workshop, 'mitre saw');
    if (!machine) return refuse('the workshop has no mitre saw');
    const blade = bladeOf(workshop, machine, ['cross', 'combination', 'rip']);
    if (!blade) return refuse(noBlade(workshop, machine));
    const size = target(sized, 'length');
    const widest = machine.widest ?? MACHINE_FILES['mitre saw'].limits.widest!.usual[0];
    if (wide(sized) > widest + 0.01)
      return refuse(`${say1(wide(sized))} wide, the ${machine.name} crosses ${say1(widest)}`);
    const limit = beyond(machine, { depth: thick(sized), fence: size, piece: size });
    if (limit) return refuse(limit);
    return made(
      sizingDraft({
        ...words(sized),
        method: 'at the mitre saw, to a stop',
        machine,
        tool: `${blade.name}, kerf ${say1(blade.kerf)}`,
        toolId: blade.id,
        kerf: blade.kerf,
        reads: 'stop',
        size,
        rule: 'kerf',
        lays: laysOf(sized),
        view: 'cross-cut',
        seen: 'facing the fence, stop on the right',
        work: { width: size + 30, height: thick(sized) },
        kerfSide: 'beyond the stop length, in the waste',
        cautions: [...MACHINE_FILES['mitre saw'].cautions],
        passes: sized.to === 'length' ? 2 : 1,
      }),
    );
  },
};

export const acrossSled: SizingMethod = {
  name: 'table saw, cross-cut sled',
  brings: ['rough length', 'length'],
  attempt(sized) {
    const { instance, workshop } = sized;
    if (instance.kind !== 'timber' && instance.kind !== 'sheet')
      return refuse('the table saw is set up for timber and sheet');
    const machine = machineOf(workshop, 'table saw');
    if (!machine) return refuse('the workshop has no table saw');
    const jig = jigOf(workshop, machine, 'cross-cut sled');
    if (!jig) return refuse('the table saw has no cross-cut sled');
    const blade = bladeOf(workshop, machine, ['cross', 'combination', 'rip']);
    if (!blade) return refuse(noBlade(workshop, machine));
    const size = target(sized, 'length');
    if (wide(sized) > SLED_WAY)
      return refuse(`${say1(wide(sized))} across, more than the ${SLED_WAY} a sled carries`);
    if (size > ON_SLED)
      return refuse(`${say1(size)} long, more than the ${ON_SLED} that is steady on a sled`);
    const height = Math.min(thick(sized) + 5, machine.maxDepth ?? thick(sized) + 5);
    const limit = beyond(machine, { depth: thick(sized) });
    if (limit) return refuse(limit);
    // On the sled the hands hold the jig: half the least length is still held safely by its toggles.
    if (machine.shortest !== undefined && size < machine.shortest / 2)
      return refuse(`the piece is ${say1(size)} long, too short to be held on the sled`);
    return made(
      sizingDraft({
        ...words(sized),
        method: 'on the cross-cut sled, to a stop',
        machine,
        tool: `${blade.name}, kerf ${say1(blade.kerf)}, ${jig.name}`,
        toolId: blade.id,
        kerf: blade.kerf,
        jig,
        reads: 'stop',
        size,
        rule: 'kerf',
        lays: laysOf(sized),
        view: 'cross-cut',
        seen: AT_SLED,
        work: { width: size + 30, height: thick(sized) },
        height,
        kerfSide: 'beyond the stop length, in the waste',
        cautions: [
          'Hold the work to the sled, fingers clear of the blade path on both sides. Let the blade stop before clearing waste.',
        ],
        passes: sized.to === 'length' ? 2 : 1,
      }),
    );
  },
};

export const acrossMetalSaw: SizingMethod = {
  name: 'metal saw',
  brings: ['length'],
  attempt(sized) {
    const { instance, workshop } = sized;
    if (instance.kind !== 'bar' && instance.kind !== 'tube')
      return refuse('the metal saw is for bar and tube');
    const machine = machineOf(workshop, 'metal saw');
    if (!machine) return refuse('the workshop has no metal saw');
    const blade =
      bladeOf(workshop, machine, ['metal']) ?? workshop.blades.find(b => b.machine === machine.id);
    const limit = beyond(machine, { depth: instance.size.thickness });
    if (limit) return refuse(limit);
    return made(
      sizingDraft({
        what: 'Bars to length',
        how: `${say1(instance.size.length)} finished; ends filed to the scribed line`,
        method: 'sawn to a stop, ends filed',
        machine,
        tool: blade ? `${blade.name}, kerf ${say1(blade.kerf)}` : 'metal blade',
        toolId: blade?.id ?? 'metal',
        kerf: blade?.kerf ?? 1.5,
        reads: 'stop',
        size: instance.size.length,
        rule: 'kerf',
        lays: [lay('to the stop, after end 1 is square', 'back', 'end1', 'end2', 'backEdge')],
        view: 'cross-cut',
        seen: 'facing the vice, stop on the right',
        work: { width: instance.size.length + 30, height: instance.size.thickness },
        kerfSide: 'beyond the stop length, in the waste',
        after: ['Burrs off, ends chamfered 0.5 with a file so that it enters its hole'],
        cautions: [...MACHINE_FILES['metal saw'].cautions],
        passes: 2,
      }),
    );
  },
};

export const acrossByHand: SizingMethod = {
  name: 'saw and shooting board',
  brings: ['rough length', 'length'],
  attempt(sized) {
    const machine = handBench(sized.workshop);
    if (!machine) return refuse('no hand tools are in the workshop file');
    const metal = sized.instance.kind === 'bar' || sized.instance.kind === 'tube';
    const tool = metal ? 'hacksaw and file' : sized.to === 'length' ? 'back saw, shooting board' : 'hand saw';
    const size = target(sized, 'length');
    return made(
      sizingDraft({
        ...words(sized),
        method: metal ? 'sawn and filed to the line' : 'sawn to a squared line',
        machine,
        tool,
        toolId: tool,
        kerf: 1,
        reads: 'gauge',
        size,
        rule: 'kerf',
        lays: [lay('to the line, after end 1 is square', 'back', 'end1', 'end2', 'backEdge')],
        view: 'hand',
        seen: 'from the side, the waste on the left',
        work: { width: size + 20, height: thick(sized) },
        kerfSide: 'outside the line',
        cautions: [...MACHINE_FILES['hand tools'].cautions],
        passes: 2,
      }),
    );
  },
};
