import { type Cut, ON_PART } from '../../results/cuts.ts';
import type { Operation } from '../../results/operations.ts';
import type { Instance } from '../../results/piece.ts';
import type { Step } from '../batches.ts';
import type { Draft } from '../method.ts';

/** A step that cuts nothing: its run stands for the whole of what is worked on, under one name. */
export function benchStep(operation: Operation, instance: Instance, mark: string, draft: Draft): Step {
  const id = operation.id.replace(/[^A-Za-z0-9]+/g, '.');
  const cut: Pick<Cut, 'id' | 'by' | 'stage'> = { id, by: id, stage: ON_PART };
  return { task: { instance, mark, cut }, draft, operations: [operation], index: 0 };
}
