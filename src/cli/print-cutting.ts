import pc from 'picocolors';
import type { BuyingChoice } from '../cutting/choices.ts';
import { millLists } from '../cutting/mill-lists.ts';
import { boughtFigures } from '../cutting/orders.ts';
import { formatMinutes } from '../quantities/time.ts';
import { materialName } from '../reference/material-name.ts';
import type { Derived } from '../results/derived.ts';
import { q } from '../results/quantity.ts';
import { type ShowOptions, showText } from '../results/show.ts';
import { figure, table } from './print.ts';

export function cutLines(derived: Derived, show: ShowOptions): string[] {
  const money = (minor: number): string => showText(q('money', minor), show);
  const lines: string[] = [];
  for (const m of derived.cutting.materials) {
    lines.push(
      pc.bold(`${materialName(m.material)}, ${m.section}`),
      `  ${m.words} Waste ${Math.round(m.waste * 100)} %.`,
    );
    for (const use of m.uses) {
      lines.push(
        `  ${use.label}, ${figure(use.length, show)}${use.kind === 'bar' || use.kind === 'tube' ? '' : ` x ${figure(use.width, show)}`} (${use.from === 'rack' ? 'rack' : 'to buy'})`,
      );
      lines.push(`    parts ${use.placed.map(p => p.mark).join(', ')}`);
      if (use.cuts.length > 0)
        lines.push(`    cuts  ${use.cuts.map(c => `${c.kind} ${figure(c.setting, show)}`).join(', ')}`);
      for (const left of use.left.filter(l => l.fate === 'back to the rack'))
        lines.push(`    back to the rack ${figure(left.length, show)} x ${figure(left.width, show)}`);
    }
    for (const u of m.unplaced)
      lines.push(pc.red(`  ${u.demand.mark} ${u.demand.name}: ${u.reason}. ${u.mend}`));
  }
  lines.push('', pc.bold('To buy'));
  if (derived.cutting.buy.length === 0) lines.push('  Nothing.');
  for (const b of derived.cutting.buy)
    lines.push(`  ${b.quantity} x ${b.item}, ${b.supplier}, ${money(b.price)}`);
  for (const order of derived.cutting.orders) {
    const least = order.shortfall > 0 ? `, ${money(order.shortfall)} up to the least order` : '';
    lines.push(
      `  ${order.supplier}: carriage ${money(order.delivery)}${least}; in all ${money(order.total)}`,
    );
  }
  for (const one of boughtFigures(derived.cutting))
    lines.push(
      `  ${materialName(one.material)} ${one.section}: ${Math.round(one.waste * 100)} % of what is bought is waste; offcuts worth ${money(one.leftValue)} stay`,
    );
  return lines;
}

/** What else could be bought, the best first, with what follows of each. */
export function choiceLines(choices: readonly BuyingChoice[], show: ShowOptions): string[] {
  const money = (minor: number): string => showText(q('money', minor), show);
  if (choices.length === 0) return ['Nothing else that a supplier sells would serve.'];
  return choices.flatMap(one => {
    const change = one.after - one.now;
    const thick =
      one.to === undefined ? '' : `, ${figure(one.from ?? null, show)} to ${figure(one.to, show)}`;
    const said =
      one.short > 0
        ? pc.red(`${one.short} without stock`)
        : change === 0
          ? 'costs the same'
          : `${money(Math.abs(change))} ${change < 0 ? 'less' : 'more'}`;
    const milling =
      one.milling.now === one.milling.after
        ? []
        : [`  milling ${formatMinutes(one.milling.now)}, then ${formatMinutes(one.milling.after)}`];
    return [
      `${pc.bold(materialName(one.material))} ${one.what}${thick}: ${said}`,
      ...milling,
      ...one.follows.map(f => `  ${f}`),
    ];
  });
}

/** Timber as two lists, with the rest between them. */
export function millLines(derived: Derived, show: ShowOptions): string[] {
  const lists = millLists(derived.cutting, derived.piece, derived.operations);
  const rough = lists.rough.map(row => [
    row.label,
    row.mark,
    row.name,
    String(row.number),
    ...[row.length, row.width, row.thickness].map(v => figure(v, show)),
  ]);
  const final = lists.final.map(row => [
    row.mark,
    row.name,
    String(row.number),
    ...(row.size
      ? [row.size.length, row.size.width, row.size.thickness].map(v => figure(v, show))
      : ['', '', `after ${row.waits}`]),
    materialName(row.material),
  ]);
  const rest = lists.rest.map(one => `${materialName(one.material)} ${formatMinutes(one.minutes)}`);
  return [
    pc.bold('Rough-mill'),
    ...table(['From', 'Mark', 'Part', 'No.', 'Length', 'Width', 'Board'], rough, [
      'left',
      'left',
      'left',
      'right',
      'right',
      'right',
      'right',
    ]),
    '',
    rest.length > 0 ? `Rest in stick: ${rest.join(', ')}.` : 'No rest between the two.',
    '',
    pc.bold('Final-mill'),
    ...table(['Mark', 'Part', 'No.', 'Length', 'Width', 'Thick', 'Timber'], final, [
      'left',
      'left',
      'right',
      'right',
      'right',
      'right',
      'left',
    ]),
  ];
}
