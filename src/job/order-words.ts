import { ORDER_RULES, type OrderRule } from '../operations/order-rules.ts';
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import type { Operation } from '../results/operations.ts';
import { count, q } from '../results/quantity.ts';
import type { Why } from '../results/why.ts';

/** A note for each order rule set aside: how many pairs of operations it no longer holds apart, and the risk. */
export function orderNotes(operations: readonly Operation[]): Check[] {
  return ORDER_RULES.flatMap((rule): Check[] => {
    const pairs = operations.flatMap(o => o.setAside ?? []).filter(s => s.rule.number === rule.number);
    if (pairs.length === 0) return [];
    return [
      {
        check: 'order',
        subject: rule.number,
        severity: 'note',
        rule: plain(rule),
        title: `${rule.says}: set aside`,
        figure: pairs.length,
        limit: null,
        unit: 'count',
        source: rule.source.text,
        basis: rule.source.basis,
        remedy: `Set aside: ${pairs[0]!.because}. The risk: ${rule.reason}.`,
        say: say('{pairs} times the second no longer waits for the first.', { pairs: count(pairs.length) }),
      },
    ];
  });
}

const plain = ({ number, says, reason, source }: OrderRule) => ({ number, says, reason, source });

/** Why the order is so: `order.ORD-10` names what the rule holds apart here, or held before it was set aside. */
export function whyOrder(figure: string, operations: readonly Operation[]): Why | undefined {
  const rule = ORDER_RULES.find(r => figure === `order.${r.number}`);
  if (!rule) return undefined;
  const titles = new Map(operations.map(o => [o.id, o.title]));
  const pairs = operations.flatMap(o =>
    [...o.after, ...(o.setAside ?? [])]
      .filter(after => after.rule.number === rule.number)
      .map(after => ({ first: titles.get(after.operation) ?? after.operation, next: o })),
  );
  const because = operations.flatMap(o => o.setAside ?? []).find(s => s.rule.number === rule.number)?.because;
  return {
    figure,
    label: because === undefined ? rule.says : `${rule.says}: set aside, ${because}`,
    value: count(pairs.length),
    how: 'rule',
    rule: plain(rule),
    source: rule.source,
    inputs: pairs.map(({ first, next }) => ({
      figure: `operations.${next.id}.minutes`,
      label: `"${first}" before "${next.title}"`,
      value: q('text', because === undefined ? (rule.hard ? 'must' : 'should') : 'not kept'),
      how: 'rule',
      inputs: [],
    })),
  };
}
