import { AXES, type Axis } from '../geometry/vector.ts';
import type { PartDocument } from './schema.ts';

/** A copy of a part: the k-th of a repeat, mirrored in some planes. */
export interface Copy {
  id: string;
  part: string;
  /** 1 for the first. */
  k: number;
  mirrored: Axis[];
}

const suffix = (k: number, mirrored: readonly Axis[]): string =>
  `${k > 1 ? `_${k}` : ''}${mirrored.length > 0 ? `_${mirrored.join('')}` : ''}`;

export const copyId = (part: string, k: number, mirrored: readonly Axis[]): string =>
  part + suffix(k, mirrored);

/** Stable ids: `slat`, `slat_2`, `slat_2_x`; a changed count adds or drops the last ones only. */
export function copiesOf(part: string, document: PartDocument, count: number): Copy[] {
  const planes = AXES.filter(a => document.mirror?.[a] !== undefined);
  const subsets: Axis[][] = [[]];
  for (const a of planes) subsets.push(...subsets.map(s => [...s, a]));
  return Array.from({ length: count }, (_, i) => i + 1).flatMap(k =>
    subsets.map(mirrored => ({ id: copyId(part, k, mirrored), part, k, mirrored })),
  );
}

/** Reads a copy's id back; undefined when no part of the job can have made it. */
export function copyFromId(id: string, parts: Record<string, PartDocument>): Copy | undefined {
  if (Object.hasOwn(parts, id)) return { id, part: id, k: 1, mirrored: [] };
  for (const part of Object.keys(parts)) {
    const ending = id.startsWith(`${part}_`) && /^(?:_(\d+))?(?:_([xyz]{1,3}))?$/.exec(id.slice(part.length));
    if (!ending) continue;
    const [, k, axes] = ending;
    const mirrored = [...(axes ?? '')] as Axis[];
    const document = parts[part]!;
    if (mirrored.some(a => document.mirror?.[a] === undefined)) continue;
    if (k !== undefined && document.repeat === undefined && document.count === undefined) continue;
    const copy = { id, part, k: Number(k ?? 1), mirrored };
    if (copyId(copy.part, copy.k, copy.mirrored) === id) return copy;
  }
  return undefined;
}

/** Id of the mirrored fellow of a copy, for assemblies that are mirrored as a whole. */
export function mirroredId(id: string, axis: Axis, parts: Record<string, PartDocument>): string | undefined {
  const copy = copyFromId(id, parts);
  if (!copy || parts[copy.part]?.mirror?.[axis] === undefined) return undefined;
  const has = copy.mirrored.includes(axis);
  const mirrored = AXES.filter(a => (a === axis ? !has : copy.mirrored.includes(a)));
  return copyId(copy.part, copy.k, mirrored);
}
