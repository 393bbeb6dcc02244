import { whyDays } from '../days/why-days.ts';
import type { FigureBook } from '../figures/book.ts';
import { whyPrice } from '../money/index.ts';
import { materialDensity } from '../reference/materials.ts';
import type { Check } from '../results/checks.ts';
import type { Commission } from '../results/commission.ts';
import type { Derived } from '../results/derived.ts';
import type { BoughtIn } from '../results/price.ts';
import { q } from '../results/quantity.ts';
import type { Why } from '../results/why.ts';
import { whySetUp } from '../setups/why-set-ups.ts';
import type { Workshop } from '../workshop/workshop.ts';
import { whyOrder } from './order-words.ts';

export interface WhyContext {
  derived: Derived;
  book: FigureBook;
  commission: Commission;
  workshop: Workshop;
  boughtIn: BoughtIn[];
}

/** Explains any figure of a job by its path (docs/results.md lists the paths). */
export function whyOf(figure: string, context: WhyContext): Why | undefined {
  const { derived } = context;
  if (figure.startsWith('offer.')) return whyPrice(figure, derived.price, { ...context, ...derived });
  if (figure.startsWith('days.') || figure.startsWith('operations.'))
    return whyDays(figure, derived.operations, derived.days);
  if (figure.startsWith('order.')) return whyOrder(figure, derived.operations);
  if (figure.startsWith('setups.')) return whySetUp(figure, derived.setups, derived.piece);
  if (figure.startsWith('checks.')) return whyCheck(figure.slice('checks.'.length), derived.checks);
  return whyMass(figure, context) ?? whyBlank(figure, context) ?? context.book.why(figure);
}

function whyCheck(key: string, checks: readonly Check[]): Why | undefined {
  const check = checks.find(c => `${c.check}:${c.subject}` === key);
  if (!check) return undefined;
  const one = (label: string, value: number | null): Why => ({
    figure: `checks.${key}.${label}`,
    label,
    value: value === null ? undefined : q(check.unit, value),
    how: value === null ? 'missing' : 'computed',
    inputs: [],
  });
  return {
    figure: `checks.${key}`,
    label: check.title,
    value: q('text', check.severity),
    how: 'rule',
    ...(check.rule ? { rule: check.rule } : {}),
    source: { text: check.source, basis: check.basis },
    inputs: [one('figure', check.figure), one('limit', check.limit)],
  };
}

const groupOf = (id: string, derived: Derived) =>
  derived.piece.groups.find(g => g.instances.includes(id)) ?? derived.piece.groups.find(g => g.part === id);

function whyMass(figure: string, { derived, book }: WhyContext): Why | undefined {
  const id = /^parts\.([^.]+)\.mass$/.exec(figure)?.[1];
  const group = id && groupOf(id, derived);
  if (!group) return undefined;
  const entered = book.why(`parts.${group.part}.mass`);
  if (entered) return entered;
  const density = materialDensity(group.material);
  return {
    figure,
    label: `${group.name}, mass of one`,
    value: group.mass === null ? undefined : q('mass', group.mass),
    how: group.mass === null ? 'missing' : 'computed',
    formula: 'volume after all cuts x density',
    inputs: [
      {
        figure: `parts.${id}.volume`,
        label: `${group.name}, volume`,
        value: q('volume', group.volume),
        how: 'computed',
        formula: 'cut size less what its joints and features take away',
        inputs: sizes(id, book),
      },
      {
        figure: `materials.${group.material}.density`,
        label: `density of ${density?.name ?? group.material}`,
        value: density && q('density', (density.densityKgM3.low + density.densityKgM3.high) / 2),
        how: density ? 'table' : 'missing',
        ...(density
          ? {
              source: { text: density.densityKgM3.source, basis: density.densityKgM3.basis },
              formula: `middle of ${density.densityKgM3.low} to ${density.densityKgM3.high} kg/m3`,
            }
          : {}),
        inputs: [],
      },
    ],
  };
}

const sizes = (part: string, book: FigureBook): Why[] =>
  ['length', 'width', 'thickness'].map(s => book.why(`parts.${part}.${s}`)).filter(w => w !== undefined);

function whyBlank(figure: string, { derived, book, workshop }: WhyContext): Why | undefined {
  const match = /^parts\.([^.]+)\.blank\.(length|width|thickness)$/.exec(figure);
  const group = match && groupOf(match[1]!, derived);
  if (!match || !group) return undefined;
  const which = match[2] as 'length' | 'width' | 'thickness';
  const own =
    book.why(`parts.${group.part}.allowance.${which}`) ?? book.why(`allowances.${group.kind}.${which}`);
  const shop = group.kind === 'bought-in' ? 0 : workshop.allowances[group.kind][which];
  return {
    figure,
    label: `${group.name}, blank ${which}`,
    value: q('length', group.blank[which]),
    how: 'computed',
    formula: 'cut size and the allowance, and the reserve of a part that is measured first',
    inputs: [
      ...[book.why(`parts.${match[1]}.${which}`)].filter(w => w !== undefined),
      own ?? {
        figure: `workshop.allowances.${group.kind}.${which}`,
        label: `allowance of the workshop in ${which}`,
        value: q('length', shop),
        how: 'entered',
        source: { text: 'the workshop file', basis: 'workshop' },
        inputs: [],
      },
      ...[book.why(`parts.${group.part}.reserve.${which}`)].filter(w => w !== undefined),
    ],
  };
}
