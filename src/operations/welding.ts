import type { OrderOfWork } from './order-of-work.ts';
import { diagonals } from './squareness.ts';
import { spellOf } from './times.ts';
import type { AssemblyView, View } from './view.ts';

const DAY = 24 * 60;

/** A wait for work given out. */
export const awayFor = ({ by, days }: { by: string; days: number }) => ({
  wait: { what: 'outwork' as const, minutes: days * DAY, text: `${by}: ${days} d`, basis: 'maker' as const },
});

/** The frame tacked and welded, by the maker or away. The id is that of any closing of an assembly. */
export function welding(view: View, work: OrderOfWork, of: AssemblyView): string {
  const { assembly } = of;
  const { outwork } = assembly;
  const burns = [...of.all].some(id => ['timber', 'sheet'].includes(view.instances.get(id)?.kind ?? ''));
  const apart = burns
    ? ['Timber and sheet stay out until it is welded and cold: give the frame an assembly of its own']
    : [];
  const base = {
    id: `glue:${assembly.id}`,
    kind: 'assemble' as const,
    instances: [...of.all],
    assembly: assembly.id,
  };
  if (outwork)
    return work.add({
      ...base,
      title: `${assembly.name} to ${outwork.by} for welding`,
      handsOn: spellOf(view.workshop, [{ key: 'take-outwork', times: 1 }]),
      ...awayFor(outwork),
      cautions: [
        'Its drawing goes with it: sizes outside, welds and gaps; agree them with the welder',
        'No paint, zinc or oil where it is welded',
        ...apart,
        ...diagonals(view, of),
        ...(outwork.note === undefined ? [] : [outwork.note]),
      ],
    });
  return work.add({
    ...base,
    title: `Tack and weld ${assembly.name}`,
    handsOn: spellOf(view.workshop, [
      { key: 'weld-joint', times: of.joints.filter(joint => joint.weld).length },
    ]),
    resources: ['hands', 'bench'],
    cautions: [
      'Welding is for those trained to it: mask, gloves, fume extraction, nothing near that burns',
      'No paint, zinc or oil where it is welded: zinc fume makes ill',
      ...apart,
      'Tacked at all corners and measured over its diagonals, then welded turn about (WE-3)',
      ...diagonals(view, of),
    ],
  });
}

/** Welds dressed once it is cold, or back; then what is cut on the frame. */
export function afterWelding(
  view: View,
  work: OrderOfWork,
  of: AssemblyView,
  weld: string,
  staged: readonly string[],
): string[] {
  const dress = work.add({
    id: `dress:${of.assembly.id}`,
    kind: 'clean up',
    title: `Dress the welds of ${of.assembly.name}`,
    instances: [...of.all],
    assembly: of.assembly.id,
    handsOn: spellOf(view.workshop, [
      { key: 'dress-weld', times: of.joints.reduce((m, joint) => m + (joint.weld?.length ?? 0) / 1000, 0) },
    ]),
    cautions: ['Grinder: guard on, glasses and ear muffs, sparks away from timber and finish'],
  });
  work.link(weld, dress, 77);
  work.link(dress, [...staged], 72);
  return [dress, ...staged];
}
