/** What is carried in one piece: the last glue-ups, and parts that belong to none. */
import { type Box, boundsOf, boxSize, corners } from '../geometry/box.ts';
import type { Assembly, Instance } from '../results/piece.ts';
import type { CheckInput } from './check.ts';
import type { View } from './view.ts';

export interface Rigid {
  name: string;
  parts: Instance[];
  bounds: Box;
  /** kg; undefined when some part's mass is not known. */
  mass: number | undefined;
}

/** All instances of an assembly and of those within it. A ring of assemblies is cut at the second visit. */
export function members(assembly: Assembly, all: readonly Assembly[], seen = new Set<string>()): string[] {
  if (seen.has(assembly.id)) return [];
  seen.add(assembly.id);
  return [
    ...assembly.instances,
    ...all.filter(a => assembly.assemblies.includes(a.id)).flatMap(a => members(a, all, seen)),
  ];
}

function rigid(name: string, parts: Instance[], view: View): Rigid {
  const placed = parts.some(p => !p.loose) ? parts.filter(p => !p.loose) : parts;
  const masses = parts.map(p => view.group(p.id)?.mass ?? undefined);
  return {
    name,
    parts,
    bounds: boundsOf(placed.flatMap(p => corners(view.bounds(p)))),
    mass: masses.reduce<number | undefined>(
      (sum, m) => (sum === undefined || m === undefined ? undefined : sum + m),
      0,
    ),
  };
}

/** Hinges and handles that nobody weighed do not hide what the rest weighs. */
const isUnweighedHardware = (part: Instance, view: View): boolean =>
  part.kind === 'bought-in' && part.loose && (view.group(part.id)?.mass ?? null) === null;

/** Without any glue-up named, the piece is carried whole. */
export function rigids({ piece }: CheckInput, view: View): Rigid[] {
  const parts = piece.instances.filter(i => !isUnweighedHardware(i, view));
  if (parts.length === 0) return [];
  if (piece.assemblies.length === 0) return [rigid('The piece', parts, view)];
  const within = new Set(piece.assemblies.flatMap(a => a.assemblies));
  const tops = piece.assemblies
    .filter(a => !within.has(a.id))
    .map(a => ({ name: a.name, ids: new Set(members(a, piece.assemblies)) }));
  const taken = new Set(tops.flatMap(t => [...t.ids]));
  const glued = tops.flatMap(({ name, ids }) => {
    const own = parts.filter(i => ids.has(i.id));
    return own.length > 0 ? [rigid(name, own, view)] : [];
  });
  return [...glued, ...parts.filter(i => !taken.has(i.id)).map(i => rigid(i.name, [i], view))];
}

/** Sides of a box from the longest to the shortest, mm. */
export function sidesOf(bounds: Box): [number, number, number] {
  const { x, y, z } = boxSize(bounds);
  return [x, y, z].sort((a, b) => b - a) as [number, number, number];
}
