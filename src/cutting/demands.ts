/** What has to be found in stock: the blank of every instance, and the test pieces of the operations. */
import type { Demand } from '../results/cutting.ts';
import type { Operation } from '../results/operations.ts';
import type { Instance, PartGroup, Piece } from '../results/piece.ts';

/** Blanks of all parts that are cut (bought-in things are bought by item) and all test pieces. */
export function collectDemands(piece: Piece, operations: readonly Operation[]): Demand[] {
  const byId = new Map(piece.instances.map(instance => [instance.id, instance]));
  const groupOf = new Map<string, PartGroup>();
  const demands: Demand[] = [];
  for (const group of piece.groups)
    for (const id of group.instances) {
      groupOf.set(id, group);
      const instance = byId.get(id);
      if (instance && instance.kind !== 'bought-in') demands.push(partDemand(group, instance));
    }
  for (const operation of operations)
    if (operation.testPiece) demands.push(testDemand(operation, operation.testPiece, byId, groupOf));
  return demands;
}

function partDemand(group: PartGroup, instance: Instance): Demand {
  const blank = group.blank;
  // Bars, tubes and sheets are used at the section they come in (CUT-5); only their length has an allowance,
  // and a sheet's width.
  const own = instance.kind !== 'timber';
  // A bent bar is bought straight: only its blank says how thick it is.
  const bent = instance.cuts.some(c => c.kind === 'bent');
  const thickness = own && !bent ? instance.size.thickness : blank.thickness;
  const width = instance.kind === 'bar' || instance.kind === 'tube' ? instance.size.width : blank.width;
  return {
    mark: group.mark,
    instance: instance.id,
    name: group.name,
    length: blank.length,
    width,
    thickness,
    material: instance.material,
    kind: instance.kind,
    round: instance.round,
    ...(instance.wall === undefined ? {} : { wall: instance.wall }),
    ...(instance.section === undefined ? {} : { section: instance.section }),
    turn: instance.kind === 'sheet' && instance.grain === 'free',
    across: instance.kind === 'sheet' && instance.grain === 'width',
    purpose: 'part',
  };
}

/** The part a test piece stands for may be named by instance, by part or by mark. */
function testDemand(
  operation: Operation,
  test: NonNullable<Operation['testPiece']>,
  byId: Map<string, Instance>,
  groupOf: Map<string, PartGroup>,
): Demand {
  const instance =
    byId.get(test.of) ??
    [...byId.values()].find(one => one.part === test.of || groupOf.get(one.id)?.mark === test.of);
  const group = instance && groupOf.get(instance.id);
  const like = instance && group && partDemand(group, instance);
  const grown = (given: number, of: number | undefined, blank: number | undefined): number =>
    of !== undefined && blank !== undefined && Math.abs(given - of) < 0.005 ? Math.max(given, blank) : given;
  return {
    mark: `test ${group?.mark ?? test.of}`,
    instance: `test:${operation.id}`,
    name: `Test piece, ${operation.title}`,
    length: test.length,
    width: grown(test.width, instance?.size.width, like?.width),
    thickness: grown(test.thickness, instance?.size.thickness, like?.thickness),
    material: test.material,
    kind: like?.kind ?? 'timber',
    round: like?.round ?? false,
    ...(like?.wall === undefined ? {} : { wall: like.wall }),
    ...(like?.section === undefined ? {} : { section: like.section }),
    turn: like?.kind === 'sheet',
    across: false,
    purpose: 'test piece',
  };
}
