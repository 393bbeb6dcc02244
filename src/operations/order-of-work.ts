import type { Fault } from '../results/fault.ts';
import { fault } from '../results/fault.ts';
import type { Operation, OperationKind, Spell } from '../results/operations.ts';
import type { Rule } from '../results/source.ts';
import { afterBy, NECESSARY } from './order-rules.ts';
import { type OrderJudged, setAsideRules } from './set-aside.ts';
import type { Wait } from './times.ts';

export interface OperationDraft {
  id: string;
  kind: OperationKind;
  title: string;
  handsOn: Spell;
  instances?: string[];
  assembly?: string;
  cuts?: Operation['cuts'];
  sizing?: Operation['sizing'];
  grits?: Operation['grits'];
  wait?: { what: NonNullable<Operation['wait']>['what'] } & Wait;
  batch?: string;
  resources?: string[];
  testPiece?: Operation['testPiece'];
  cautions?: string[];
}

/** Collects operations and what comes before what; several rules may ask for the same pair. */
export class OrderOfWork {
  readonly #operations = new Map<string, Operation>();
  readonly #links: { first: string; next: string; rule: number }[] = [];

  add(draft: OperationDraft): string {
    const { wait } = draft;
    this.#operations.set(draft.id, {
      id: draft.id,
      kind: draft.kind,
      title: draft.title,
      instances: draft.instances ?? [],
      ...(draft.assembly === undefined ? {} : { assembly: draft.assembly }),
      cuts: draft.cuts ?? [],
      ...(draft.sizing === undefined ? {} : { sizing: draft.sizing }),
      ...(draft.grits === undefined ? {} : { grits: draft.grits }),
      handsOn: draft.handsOn,
      ...(wait && wait.minutes > 0
        ? { wait: { minutes: wait.minutes, what: wait.what, source: { text: wait.text, basis: wait.basis } } }
        : {}),
      after: [],
      ...(draft.batch === undefined ? {} : { batch: draft.batch }),
      resources: draft.resources ?? ['hands'],
      ...(draft.testPiece ? { testPiece: draft.testPiece } : {}),
      cautions: draft.cautions ?? [],
    });
    return draft.id;
  }

  has(id: string): boolean {
    return this.#operations.has(id);
  }

  /** `first` before `next` by the numbered rule. Ids without an operation are passed over. */
  link(first: string | readonly string[], next: string | readonly string[], rule: number): void {
    for (const a of [first].flat())
      for (const b of [next].flat()) if (a !== b) this.#links.push({ first: a, next: b, rule });
  }

  /** The next operation must begin within so many minutes of the end of the wait of `id`. */
  within(id: string, next: string, wait: Wait): void {
    const operation = this.#operations.get(id);
    if (operation && this.#operations.has(next))
      operation.window = { minutes: wait.minutes, next, source: { text: wait.text, basis: wait.basis } };
  }

  /** Operations that nothing waits for yet. */
  ends(): string[] {
    const awaited = new Set(this.#links.filter(l => this.has(l.next)).map(l => l.first));
    return [...this.#operations.keys()].filter(id => !awaited.has(id));
  }

  /** Operations with their precedence: what the maker judged set aside, rings opened and told. */
  done(judged: OrderJudged = new Map()): { operations: Operation[]; faults: Fault[] } {
    const seen = new Set<string>();
    for (const { first, next, rule } of this.#links) {
      const operation = this.#operations.get(next);
      const key = `${first}>${next}>${rule}`;
      if (!operation || !this.#operations.has(first) || seen.has(key)) continue;
      seen.add(key);
      operation.after.push(afterBy(first, rule));
    }
    const operations = [...this.#operations.values()];
    const idle = setAsideRules(operations, judged);
    return { operations, faults: [...idle, ...openRings(operations)] };
  }
}

/**
 * Finds each ring of operations that wait for one another, names it with its rules, and opens it where it
 * hurts least: at a soft rule if there is one, else where a measurement waits for what it should serve, else
 * at a rule that a maker may set aside, else at the last link found. What is left can be planned. The fault names
 * the rules to relax, with their risk, and where the ring was opened for now.
 */
export function openRings(operations: readonly Operation[]): Fault[] {
  const faults: Fault[] = [];
  const byId = new Map(operations.map(o => [o.id, o]));
  for (let ring = findRing(operations, byId); ring; ring = findRing(operations, byId)) {
    const links = ring.map((operation, k) => ({ operation, first: ring![(k + 1) % ring!.length]! }));
    const rulesOf = (link: (typeof links)[number]) =>
      link.operation.after.filter(after => after.operation === link.first.id);
    const weakest =
      links.find(link => rulesOf(link).every(after => !after.hard)) ??
      links.find(link => link.operation.kind === 'measure') ??
      links.find(link => rulesOf(link).every(after => !NECESSARY.has(after.rule.number))) ??
      links.at(-1)!;
    const told = links.map(link => ({ ...link, rules: rulesOf(link).map(after => after.rule) }));
    faults.push(describe(told, told[links.indexOf(weakest)]!));
    weakest.operation.after = weakest.operation.after.filter(after => after.operation !== weakest.first.id);
  }
  return faults;
}

interface RingLink {
  operation: Operation;
  first: Operation;
  rules: Rule[];
}

function describe(links: readonly RingLink[], opened: RingLink): Fault {
  const chain = links.map(
    ({ operation, first, rules }) =>
      `"${operation.title}" waits for "${first.title}" (${rules.map(r => `${r.number} ${r.says}`).join('; ')})`,
  );
  return fault(
    `operations.${links[0]!.operation.id}`,
    `the order of work goes round in a ring: ${chain.join(', ')}`,
    `${toRelax([opened, ...links])}or move one of these: cut it at another stage, measure it at another dry fit, finish it at another time. For now "${opened.operation.title}" does not wait for "${opened.first.title}"`,
    'an order in which each thing can be begun',
  );
}

/** Setting aside every rule of one link opens the ring: the rules of the first link where that is allowed. */
function toRelax(links: readonly RingLink[]): string {
  const link = links.find(({ rules }) => rules.every(rule => !NECESSARY.has(rule.number)));
  if (!link) return '';
  const each = link.rules.map(
    rule => `${rule.number} by overruled: {order.${rule.number}: {reason: ...}} (risk: ${rule.reason})`,
  );
  return `set aside ${each.join(' and ')}, `;
}

/** One ring, as operations each of which waits for the next, the last for the first; undefined when there is none. */
function findRing(
  operations: readonly Operation[],
  byId: ReadonlyMap<string, Operation>,
): Operation[] | undefined {
  const state = new Map<string, 'open' | 'done'>();
  const path: Operation[] = [];
  const visit = (operation: Operation): Operation[] | undefined => {
    state.set(operation.id, 'open');
    path.push(operation);
    for (const { operation: id } of operation.after) {
      const first = byId.get(id);
      if (!first) continue;
      if (state.get(id) === 'open') return path.slice(path.indexOf(first));
      if (state.get(id) === 'done') continue;
      const ring = visit(first);
      if (ring) return ring;
    }
    state.set(operation.id, 'done');
    path.pop();
    return undefined;
  };
  for (const operation of operations) {
    if (state.has(operation.id)) continue;
    const ring = visit(operation);
    if (ring) return ring;
  }
  return undefined;
}
