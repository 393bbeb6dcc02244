/** Timber in two goes: what is broken out of the boards, and, when it has rested, what it is brought to. */
import type { CuttingPlan } from '../results/cutting.ts';
import type { Operation } from '../results/operations.ts';
import type { Piece } from '../results/piece.ts';

/** Like blanks from one piece of stock. */
export interface RoughRow {
  use: string;
  label: string;
  mark: string;
  name: string;
  number: number;
  /** Rough sizes as sawn; the thickness is the stock's, as bought or measured. */
  length: number;
  width: number;
  thickness: number;
}

export interface FinalRow {
  mark: string;
  name: string;
  material: string;
  number: number;
  /** Sizes to mill to; null while the part waits for a measurement. */
  size: { length: number; width: number; thickness: number } | null;
  /** The measurement a part waits for. */
  waits?: string;
}

export interface MillLists {
  rough: RoughRow[];
  final: FinalRow[];
  /** Rest in stick between the two, by material: minutes and their text. */
  rest: { material: string; minutes: number }[];
}

/** Both lists for every timber of the plan, in its order. Sizes mm. */
export function millLists(plan: CuttingPlan, piece: Piece, operations: readonly Operation[]): MillLists {
  const nameOf = new Map(piece.groups.flatMap(group => group.instances.map(id => [id, group.name] as const)));
  const rows = new Map<string, RoughRow>();
  for (const material of plan.materials.filter(one => one.kind === 'timber'))
    for (const use of material.uses)
      for (const placed of use.placed) {
        const key = [use.id, placed.mark, placed.length, placed.width].join('|');
        const row = rows.get(key);
        if (row) row.number += 1;
        else
          rows.set(key, {
            use: use.id,
            label: use.label,
            mark: placed.mark,
            name: nameOf.get(placed.instance) ?? 'test piece',
            number: 1,
            length: placed.length,
            width: placed.width,
            thickness: use.thickness,
          });
      }
  const final = piece.groups
    .filter(group => group.kind === 'timber')
    .map((group): FinalRow => {
      const held = piece.instances.find(one => one.id === group.instances[0])?.measureFirst;
      const { length, width, thickness } = group.size;
      const base = {
        mark: group.mark,
        name: group.name,
        material: group.material,
        number: group.instances.length,
      };
      return held
        ? { ...base, size: null, waits: held.when }
        : { ...base, size: { length, width, thickness } };
    });
  const rest = operations
    .filter(operation => operation.id.startsWith('rest:') && operation.wait)
    .map(operation => ({ material: operation.id.slice(5), minutes: operation.wait!.minutes }));
  return { rough: [...rows.values()], final, rest };
}
