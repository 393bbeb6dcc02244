/** What the maker has said about cutting, put upon the blanks it is about. */
import type { Demand } from '../results/cutting.ts';
import type { Instance, Piece } from '../results/piece.ts';
import type { CuttingDocument } from '../setting-out/cutting-schema.ts';

/** A part is named by its id, for all its copies, or by the id of one copy. */
export const isNamed = (instance: Instance, name: string): boolean =>
  instance.id === name || instance.part === name;

/** Blanks with their grade and the board they share. */
export function wished(
  demands: readonly Demand[],
  piece: Piece,
  wishes: CuttingDocument | undefined,
): Demand[] {
  if (!wishes) return [...demands];
  const byId = new Map(piece.instances.map(instance => [instance.id, instance]));
  return demands.map(demand => {
    const instance = byId.get(demand.instance);
    if (demand.kind !== 'timber' || !instance) return demand;
    const grade = Object.entries(wishes.grades ?? {}).find(([name]) => isNamed(instance, name))?.[1];
    const board = Object.entries(wishes.one_board ?? {}).find(([, names]) =>
      names.some(name => isNamed(instance, name)),
    )?.[0];
    return { ...demand, ...(grade ? { grade } : {}), ...(board ? { oneBoard: board } : {}) };
  });
}

/** Names in the wishes that no part carries. */
export function unknownNames(
  piece: Piece,
  wishes: CuttingDocument | undefined,
): { place: string; name: string }[] {
  const said = [
    ...Object.keys(wishes?.grades ?? {}).map(name => ({ place: `cutting.grades.${name}`, name })),
    ...Object.entries(wishes?.one_board ?? {}).flatMap(([id, names]) =>
      names.map(name => ({ place: `cutting.one_board.${id}`, name })),
    ),
  ];
  return said.filter(({ name }) => !piece.instances.some(instance => isNamed(instance, name)));
}
