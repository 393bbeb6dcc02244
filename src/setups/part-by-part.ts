import type { Batch } from './batches.ts';
import { changeOver } from './changeover.ts';
import type { MachineState } from './method.ts';

/**
 * Change-over minutes when each part is made ready by itself before the next is begun: the same set-ups visited
 * again for every part, in the order of the parts list as far as precedence allows. For comparison only.
 */
export function partByPartMinutes(
  batches: readonly Batch[],
  groupOf: (instance: string) => number,
  standing: ReadonlyMap<string, MachineState>,
): number {
  interface Visit {
    batch: number;
    group: number;
  }
  const visits: Visit[] = [];
  const index = new Map<string, number>();
  batches.forEach((batch, b) => {
    const groups = new Set(batch.steps.map(s => groupOf(s.task.instance.id)));
    for (const group of groups) {
      index.set(`${b}:${group}`, visits.length);
      visits.push({ batch: b, group });
    }
  });
  const waiting = visits.map(v => batches[v.batch]!.before.filter(b => index.has(`${b}:${v.group}`)).length);
  const left = new Set(visits.keys());
  const state = new Map(standing);
  let total = 0;
  while (left.size > 0) {
    let pick = -1;
    for (const v of left) {
      if (waiting[v]! > 0) continue;
      if (
        pick === -1 ||
        visits[v]!.group < visits[pick]!.group ||
        (visits[v]!.group === visits[pick]!.group && visits[v]!.batch < visits[pick]!.batch)
      )
        pick = v;
    }
    if (pick === -1) break;
    left.delete(pick);
    const { batch, group } = visits[pick]!;
    const draft = batches[batch]!.steps[0]!.draft;
    total += changeOver(draft.machine, state.get(draft.machine.id), draft.state).minutes;
    state.set(draft.machine.id, draft.state);
    for (const v of left)
      if (visits[v]!.group === group && batches[visits[v]!.batch]!.before.includes(batch)) waiting[v]!--;
  }
  return total;
}
