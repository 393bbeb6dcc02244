/** What a piece and its operations want from stock, worked out a second time for the checker. */
import type { Demand } from '../results/cutting.ts';
import type { Operation } from '../results/operations.ts';
import type { Instance, PartGroup, Piece } from '../results/piece.ts';

/** One blank for each instance that is not bought in, and one for each test piece. */
export function wantedBlanks(piece: Piece, operations: readonly Operation[]): Demand[] {
  const wanted: Demand[] = [];
  for (const instance of piece.instances) {
    const group = piece.groups.find(one => one.instances.includes(instance.id));
    if (group && instance.kind !== 'bought-in') wanted.push(blankOf(instance, group));
  }
  for (const operation of operations) {
    const test = operation.testPiece;
    if (!test) continue;
    const of = piece.instances.find(
      one =>
        one.id === test.of ||
        one.part === test.of ||
        piece.groups.some(group => group.mark === test.of && group.instances.includes(one.id)),
    );
    const exact = piece.instances.find(one => one.id === test.of) ?? of;
    const group = exact && piece.groups.find(one => one.instances.includes(exact.id));
    const like = exact && group ? blankOf(exact, group) : undefined;
    const sameWidth = like && exact && Math.abs(test.width - exact.size.width) < 0.005;
    const sameThick = like && exact && Math.abs(test.thickness - exact.size.thickness) < 0.005;
    wanted.push({
      mark: `test ${group ? group.mark : test.of}`,
      instance: `test:${operation.id}`,
      name: '',
      length: test.length,
      width: sameWidth ? Math.max(test.width, like.width) : test.width,
      thickness: sameThick ? Math.max(test.thickness, like.thickness) : test.thickness,
      material: test.material,
      kind: like ? like.kind : 'timber',
      round: like ? like.round : false,
      turn: like?.kind === 'sheet',
      across: false,
      purpose: 'test piece',
    });
  }
  return wanted;
}

function blankOf(instance: Instance, group: PartGroup): Demand {
  const size = group.blank;
  const metal = instance.kind === 'bar' || instance.kind === 'tube';
  return {
    mark: group.mark,
    instance: instance.id,
    name: group.name,
    length: size.length,
    width: metal ? instance.size.width : size.width,
    thickness: instance.kind === 'timber' ? size.thickness : straight(instance),
    material: instance.material,
    kind: instance.kind,
    round: instance.round,
    turn: instance.kind === 'sheet' && instance.grain === 'free',
    across: instance.kind === 'sheet' && instance.grain === 'width',
    purpose: 'part',
  };
}

/** Thickness of what is bought: a bent bar is straight before it is bent. */
const straight = (instance: Instance): number =>
  instance.cuts.reduce((t, c) => (c.kind === 'bent' ? c.stock : t), instance.size.thickness);
