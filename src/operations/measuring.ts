import type { OrderOfWork } from './order-of-work.ts';
import { spellOf } from './times.ts';
import type { AssemblyView, PartView, View } from './view.ts';

/** When a measure-first part can be measured. */
export interface Moment {
  assembly: AssemblyView | undefined;
  /** At its dry fit, or when it is glued. */
  at: 'dry' | 'glue';
}

/** Where each measure-first part is measured: the assembly its note names, else the one it meets. */
export function measuredParts(view: View): Map<PartView, Moment> {
  const moments = new Map<PartView, Moment>();
  for (const part of view.parts) {
    if (!part.measureFirst) continue;
    const when = part.measureFirst.when.toLowerCase();
    const named = view.assemblies.filter(
      ({ assembly }) =>
        when.includes(assembly.id.toLowerCase()) || when.includes(assembly.name.toLowerCase()),
    );
    const met = part.copies
      .flatMap(copy => view.jointsOf.get(copy.id) ?? [])
      .flatMap(joint => joint.instances)
      .flatMap(id => (view.partOf.get(id) === part ? [] : (view.homeOf.get(id) ?? [])));
    // Of two names that fit, the longer says more: "door frame" over "door".
    const best = named.sort((a, b) => b.assembly.name.length - a.assembly.name.length)[0];
    moments.set(part, {
      assembly: best ?? met[0] ?? view.homeOf.get(part.first.id),
      at: /glue/.test(when) ? 'glue' : 'dry',
    });
  }
  return moments;
}

export function addMeasurement(
  view: View,
  work: OrderOfWork,
  part: PartView,
  moment: Moment,
  sizing: string[],
): void {
  const rule = measureRule(view, part);
  const id = work.add({
    id: `measure:${part.id}`,
    kind: 'measure',
    title: `Measure for ${part.name}`,
    instances: part.copies.map(copy => copy.id),
    ...(moment.assembly ? { assembly: moment.assembly.assembly.id } : {}),
    handsOn: spellOf(view.workshop, [{ key: 'measure-part', times: part.copies.length }]),
  });
  const at = moment.assembly?.assembly.id;
  if (at !== undefined) work.link(moment.at === 'glue' ? `unclamp:${at}` : `dry:${at}`, id, rule);
  work.link(id, sizing, rule);
}

/** A solid panel by its frame, a sheet by its carcase, all else by the general rule. */
function measureRule(view: View, part: PartView): number {
  const joints = part.copies.flatMap(copy => view.jointsOf.get(copy.id) ?? []);
  if (joints.some(j => j.room?.what === 'panel in groove' && view.partOf.get(j.room.instance) === part))
    return 22;
  if (part.kind === 'sheet') return 21;
  return /drawer/i.test(`${part.name} ${part.measureFirst?.when}`) ? 20 : 71;
}
