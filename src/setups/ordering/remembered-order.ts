import { type MachineOrder, type OrderResult, orderMachines } from './order-machines.ts';
import type { SopLimit } from './solve-sop.ts';

/** Orders kept: enough for a change and its undoing, back and forth. */
const KEPT = 12;
const kept = new Map<string, OrderResult>();

/**
 * The order of set-ups, found again only when what decides it has changed: machines, every change-over, every
 * precedence and the limits are its key, so the answer is the one a new search would give.
 * @throws Contradiction as the search does
 */
export function rememberedOrder(problem: MachineOrder, limit: SopLimit): OrderResult {
  if (limit.gone || limit.stop || limit.purse) return orderMachines(problem, limit);
  const key = keyOf(problem, limit);
  const known = kept.get(key);
  const found = known ?? orderMachines(problem, limit);
  // The one used last is the last to go.
  kept.delete(key);
  kept.set(key, found);
  if (kept.size > KEPT) kept.delete(kept.keys().next().value!);
  return { ...found, order: [...found.order] };
}

function keyOf({ count, machine, change, before }: MachineOrder, limit: SopLimit): string {
  const { seed, iterations, rounds, width, states } = limit;
  const words: (string | number)[] = [seed, iterations, rounds, width, states, count];
  for (let i = 0; i < count; i++) {
    words.push(machine[i]!, change(-1, i), before[i]!.join());
    for (let j = 0; j < count; j++) if (i !== j && machine[i] === machine[j]) words.push(change(i, j));
  }
  return words.join(' ');
}
