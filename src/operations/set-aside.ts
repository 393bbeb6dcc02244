import { type Fault, fault } from '../results/fault.ts';
import type { After, Operation, SetAside } from '../results/operations.ts';
import { afterBy, NECESSARY, ORDER_RULES, staysBy } from './order-rules.ts';

/** Reasons of the maker by the number of the rule that he sets aside, e.g. `ORD-10`. */
export type OrderJudged = ReadonlyMap<string, string>;

const KEY = /^order\.(.+)$/;

/**
 * The order rules that a job sets aside: keys `order.ORD-10` of `overruled`. A number that no rule has, and one
 * without which nothing could be made, come back as faults and are not set aside.
 */
export function readOrderJudged(overruled: Readonly<Record<string, { reason: string }>>): {
  judged: OrderJudged;
  faults: Fault[];
} {
  const judged = new Map<string, string>();
  const faults: Fault[] = [];
  for (const [key, { reason }] of Object.entries(overruled)) {
    const number = KEY.exec(key)?.[1];
    if (number === undefined) continue;
    const rule = ORDER_RULES.find(r => r.number === number);
    if (!rule) faults.push(unfit(key, `no order rule is called ${number}`, 'docs/order-rules.md lists them'));
    else if (NECESSARY.has(number))
      faults.push(unfit(key, `${number} cannot be set aside: ${rule.reason}`, 'take the line out'));
    else judged.set(number, reason);
  }
  return { judged, faults };
}

const unfit = (key: string, what: string, mend: string): Fault => fault(`overruled.${key}`, what, mend);

/**
 * Takes the links of rules set aside out of the operations, in place. What waited through such a link for earlier
 * work on its own parts goes on waiting for that work: without a dry run, glue still waits for the cuts.
 * Rules that hold no two operations apart here are told: nothing changes by setting them aside.
 */
export function setAsideRules(operations: readonly Operation[], judged: OrderJudged): Fault[] {
  if (judged.size === 0) return [];
  const asWritten = new Map(operations.map(o => [o.id, o.after]));
  const byId = new Map(operations.map(o => [o.id, o]));
  const used = new Set<string>();
  for (const operation of operations) {
    const dropped = operation.after.filter(after => judged.has(after.rule.number));
    if (dropped.length === 0) continue;
    const stays = dropped.flatMap(after => standing(operation, after, judged) ?? []);
    operation.after = [...operation.after.filter(after => !judged.has(after.rule.number)), ...stays];
    operation.setAside = dropped.map(
      (after): SetAside => ({ ...after, because: judged.get(after.rule.number)! }),
    );
    for (const after of dropped) used.add(after.rule.number);
  }
  for (const operation of operations.filter(o => o.setAside))
    operation.after.push(...stillFirst(operation, byId, asWritten, judged));
  for (const operation of operations) if (isOpenEnded(operation, byId)) delete operation.window;
  return [...judged.keys()]
    .filter(number => !used.has(number))
    .map(number =>
      unfit(
        `order.${number}`,
        `${number} holds nothing apart in this job`,
        'take the line out; cautions and shared set-ups are not set aside by it',
      ),
    );
}

/** What is left of a link: itself, the same by another rule, or nothing. */
function standing(operation: Operation, after: After, judged: OrderJudged): After | undefined {
  if (!judged.has(after.rule.number)) return after;
  const by = staysBy(after.rule.number, operation.handsOn.likely === 0);
  return by === undefined ? undefined : afterBy(after.operation, by);
}

/** Was the rule that asks for its window set aside? */
const isOpenEnded = (operation: Operation, byId: ReadonlyMap<string, Operation>): boolean =>
  operation.window !== undefined &&
  (byId.get(operation.window.next)?.setAside ?? []).some(s => s.operation === operation.id);

/** Earlier work on the operation's own parts that only a dropped link had put before it. */
function stillFirst(
  operation: Operation,
  byId: ReadonlyMap<string, Operation>,
  asWritten: ReadonlyMap<string, readonly After[]>,
  judged: OrderJudged,
): After[] {
  const mine = new Set(operation.instances);
  const held = above(operation, byId);
  const kept: After[] = [];
  const seen = new Set(operation.setAside!.map(s => s.operation));
  const queue = [...seen];
  for (let id = queue.shift(); id !== undefined; id = queue.shift())
    for (const after of asWritten.get(id) ?? []) {
      const first = byId.get(after.operation);
      if (!first || first === operation || seen.has(first.id) || held.has(first.id)) continue;
      const left = standing(byId.get(id)!, after, judged);
      if (left && first.instances.some(i => mine.has(i))) kept.push(left);
      else queue.push(first.id);
      seen.add(first.id);
    }
  return kept;
}

/** Everything that comes before an operation by the links it has. */
function above(operation: Operation, byId: ReadonlyMap<string, Operation>): Set<string> {
  const found = new Set<string>();
  const queue = [operation];
  for (let here = queue.pop(); here; here = queue.pop())
    for (const { operation: id } of here.after) {
      const first = byId.get(id);
      if (!first || found.has(id)) continue;
      found.add(id);
      queue.push(first);
    }
  return found;
}

/** `Set aside: mortise before tenon (ORD-10). Risk: ... Your reason: ...`, once for each rule. */
export function setAsideWords(operations: readonly Operation[]): string[] {
  const words = operations.flatMap(o => o.setAside ?? []).map(wordsOf);
  return [...new Set(words)];
}

const wordsOf = ({ rule, because }: SetAside): string =>
  `Set aside: ${rule.says} (${rule.number}). Risk: ${rule.reason}. Your reason: ${because}`;
