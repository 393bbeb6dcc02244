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
    if (!instance) return demand;
    if (demand.kind === 'sheet') return { ...demand, ...runOf(instance, piece, wishes) };
    if (demand.kind !== 'timber') return demand;
    const grade = Object.entries(wishes.grades ?? {}).find(([name]) => isNamed(instance, name))?.[1];
    const board = Object.entries(wishes.one_board ?? {}).find(([, names]) =>
      names.some(name => isNamed(instance, name)),
    )?.[0];
    return { ...demand, ...(grade ? { grade } : {}), ...(board ? { oneBoard: board } : {}) };
  });
}

/** The run a sheet part belongs to and its place in it: by the order said, then by the order of its copies. */
function runOf(instance: Instance, piece: Piece, wishes: CuttingDocument): Pick<Demand, 'run'> {
  for (const [word, { parts, lie }] of Object.entries(wishes.runs ?? {})) {
    const order = parts.flatMap(name => piece.instances.filter(one => isNamed(one, name)));
    const at = order.findIndex(one => one.id === instance.id);
    if (at >= 0) return { run: { word, at, lie } };
  }
  return {};
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
  for (const [id, { parts }] of Object.entries(wishes?.runs ?? {}))
    said.push(...parts.map(name => ({ place: `cutting.runs.${id}`, name })));
  return said.filter(({ name }) => !piece.instances.some(instance => isNamed(instance, name)));
}
