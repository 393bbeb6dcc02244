import type { Operation } from '../results/operations.ts';
import type { Instance, Piece } from '../results/piece.ts';
import type { Workshop } from '../workshop/workshop.ts';
import type { Task } from './method.ts';

/** A task and the operations that ask for it. */
export interface Asked {
  task: Task;
  operations: Operation[];
}

/** Every cut of every instance that is made here, in the order of the piece. */
export function tasksOf(piece: Piece, operations: readonly Operation[], workshop: Workshop): Asked[] {
  const byId = new Map(piece.instances.map(i => [i.id, i]));
  const marks = marksOf(piece);
  const asking = new Map<string, Operation[]>();
  for (const operation of operations)
    for (const { instance, cut } of operation.cuts) {
      const key = cutKey(instance, cut);
      const list = asking.get(key);
      if (list) list.push(operation);
      else asking.set(key, [operation]);
    }
  return piece.instances
    .filter(instance => instance.kind !== 'bought-in')
    .flatMap(instance =>
      instance.cuts.map(cut => {
        const mate = cut.mate ? byId.get(cut.mate.instance) : enters(piece, instance, cut, byId);
        const mateCut = mate?.cuts.find(c => c.id === cut.mate?.cut);
        return {
          task: {
            instance,
            cut,
            mark: marks.get(instance.id) ?? instance.name,
            workshop,
            ...(mate ? { mate: { instance: mate, ...(mateCut ? { cut: mateCut } : {}) } } : {}),
          },
          operations: asking.get(cutKey(instance.id, cut.id)) ?? [],
        };
      }),
    );
}

/**
 * The part that enters a cut without a cut of its own (a shelf in its housing, a panel in its groove): the other
 * part of the made joint that asked for it. Cuts of one joint on one part are numbered in the order of its joints.
 */
function enters(
  piece: Piece,
  instance: Instance,
  cut: Task['cut'],
  byId: ReadonlyMap<string, Instance>,
): Instance | undefined {
  const joints = piece.joints.filter(j => j.joint === cut.by && j.instances.includes(instance.id));
  if (joints.length === 0) return undefined;
  const own = instance.cuts.filter(c => c.by === cut.by);
  const share = own.length / joints.length;
  const joint = Number.isInteger(share)
    ? joints[Math.floor(own.indexOf(cut) / share)]
    : joints.length === 1
      ? joints[0]
      : undefined;
  const other = joint?.instances.filter(id => id !== instance.id) ?? [];
  return other.length === 1 ? byId.get(other[0]!) : undefined;
}

export const cutKey = (instance: string, cut: string): string => `${instance} / ${cut}`;

/** `C1`, `C2` in a group of several; the mark alone for a single part; `A L1` when handed. */
export function marksOf(piece: Piece): Map<string, string> {
  const marks = new Map<string, string>();
  for (const group of piece.groups)
    group.instances.forEach((id, i) => {
      marks.set(id, group.instances.length === 1 ? group.mark : `${group.mark}${i + 1}`);
    });
  return marks;
}
