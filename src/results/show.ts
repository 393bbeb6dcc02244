import { formatLength, type LengthUnit, roundTo, unitLabel } from '../quantities/length.ts';
import { formatMoney } from '../quantities/money.ts';
import { formatMinutes } from '../quantities/time.ts';
import type { Size } from './cuts.ts';
import type { Say } from './message.ts';
import type { Quantity } from './quantity.ts';

/**
 * The one way a quantity becomes text, for screens, papers and the command line.
 * Inside stays millimetres, kilograms, minutes and minor units; here the person's unit and precision come in.
 */
export interface ShowOptions {
  /** Unit of lengths. */
  unit: LengthUnit;
  /** Decimals of lengths in mm, cm or m. */
  decimals?: number;
  /** Least fraction of an inch, e.g. 64. */
  denominator?: number;
  /** ISO 4217 code, for money. */
  currency: string;
  /** Drop trailing zeros of lengths (default). False where the zero tells precision: 45.0 at the saw. */
  trim?: boolean;
}

/** A figure and its unit apart, so that the unit can be set smaller. `unit` is empty where there is none. */
export interface Shown {
  figure: string;
  unit: string;
  /** Units that stand close up to the figure and at its size: degrees, per cent. */
  close: boolean;
}

/** Between a figure and its unit: a thin space that does not break. */
export const THIN = '\u202f';
const MINUS = '\u2212';
const TIMES = '\u00d7';

const shown = (figure: string, unit = '', close = false): Shown => ({ figure, unit, close });

const plain = (value: number, decimals: number): string => {
  const rounded = roundTo(Math.abs(value), decimals);
  return (value < 0 && rounded !== 0 ? MINUS : '') + String(rounded);
};

const smallDecimals = (value: number): number => Math.min(12, 2 - Math.floor(Math.log10(Math.abs(value))));

/** Masses: two decimals under 10 kg, one above, as a maker would say them. */
const massFigure = (kg: number): string =>
  (kg < 0 ? MINUS : '') + Math.abs(kg).toFixed(Math.abs(kg) < 10 ? 2 : 1);

const SQUARE_FOOT = 304.8 ** 2;
const isInch = (unit: LengthUnit): boolean => unit === 'in' || unit === 'ft';

/** The figure of a quantity in the person's own units. A quantity that is not a number is shown as it is. */
export function showQuantity(quantity: Quantity, options: ShowOptions): Shown {
  const { kind, value } = quantity;
  if (kind === 'date' && typeof value === 'string') return shown(showDate(value));
  if (typeof value === 'string') return shown(value);
  if (typeof value === 'boolean') return shown(value ? 'yes' : 'no');
  if (!Number.isFinite(value)) return shown('not known');
  switch (kind) {
    case 'length':
      return shown(formatLength(value, options), unitLabel(options.unit));
    case 'area':
      return isInch(options.unit)
        ? shown(plain(value / SQUARE_FOOT, 2), 'ft\u00b2')
        : shown(plain(value / 1e6, 3), 'm\u00b2');
    case 'volume':
      // What two parts share, or a drop of glue, is far too small for cubic metres.
      if (Math.abs(value) < 1e6)
        return isInch(options.unit)
          ? shown(plain(value / 25.4 ** 3, 3), 'in\u00b3')
          : shown(plain(value / 1000, 2), 'cm\u00b3');
      return isInch(options.unit)
        ? shown(plain(value / SQUARE_FOOT / 304.8, 3), 'ft\u00b3')
        : shown(plain(value / 1e9, 4), 'm\u00b3');
    case 'angle':
      return shown(plain(value, 1), '\u00b0', true);
    case 'mass':
      return shown(massFigure(value), 'kg');
    case 'money':
      return shown(formatMoney(value, options.currency));
    case 'moisture':
    case 'percent':
      return shown(plain(value, 1), '%', true);
    case 'temperature':
      return shown(plain(value, 0), '\u00b0C', true);
    case 'time':
      return shown(formatMinutes(value));
    case 'force':
      return shown(plain(value, value < 10 ? 1 : 0), 'N');
    case 'stress':
      return shown(plain(value, Math.abs(value) < 10 ? 2 : 1), 'N/mm\u00b2');
    case 'density':
      return shown(plain(value, 0), 'kg/m\u00b3');
    case 'count':
      return shown(plain(value, 0));
    default:
      // Coefficients are small: three figures that count, not three decimals.
      return shown(plain(value, Math.abs(value) >= 1 || value === 0 ? 3 : smallDecimals(value)));
  }
}

/** Figure and unit in one string: `1357 mm`, `9 %`, `45\u00b0`. */
export function showText(quantity: Quantity, options: ShowOptions): string {
  const { figure, unit } = showQuantity(quantity, options);
  if (unit === '') return figure;
  return unit === '\u00b0' ? figure + unit : figure + THIN + unit;
}

/** A run of a filled sentence: words, or a figure to be set strong with its unit small. */
export type SayRun = { words: string } | { name: string; figure: Shown };

const PLACE = /\{([A-Za-z][\w.]*)\}/g;

/** Fills a template's places with its quantities. A place without a quantity stays as written, so it is seen. */
export function fillSay(message: Say, options: ShowOptions): SayRun[] {
  const runs: SayRun[] = [];
  let last = 0;
  for (const match of message.template.matchAll(PLACE)) {
    const name = match[1]!;
    if (!Object.hasOwn(message.values, name)) continue;
    if (match.index > last) runs.push({ words: message.template.slice(last, match.index) });
    runs.push({ name, figure: showQuantity(message.values[name]!, options) });
    last = match.index + match[0].length;
  }
  if (last < message.template.length) runs.push({ words: message.template.slice(last) });
  return runs;
}

/** The filled sentence as plain text. */
export const sayText = (message: Say, options: ShowOptions): string =>
  fillSay(message, options)
    .map(run => ('words' in run ? run.words : shownText(run.figure)))
    .join('');

/** Joins a shown figure and its unit. */
export const shownText = ({ figure, unit }: Shown): string =>
  unit === '' ? figure : unit === '\u00b0' ? figure + unit : figure + THIN + unit;

/** `1357 \u00d7 70 \u00d7 32` or, for round stock, `1221 \u00d7 16 dia`; no unit, for columns headed with one. */
export function showSize(size: Size, options: ShowOptions, round = false): string {
  const [length, width, thickness] = [size.length, size.width, size.thickness].map(v =>
    formatLength(v, options),
  );
  return round ? `${length} ${TIMES} ${width} dia` : `${length} ${TIMES} ${width} ${TIMES} ${thickness}`;
}

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/**
 * An ISO date, or the date of an ISO time, in words. `short`: `Fri 11 Dec`; `long`: `Friday 11 December 2026`;
 * `plain`: `11 December 2026`. Anything else is given back as it is.
 */
export function showDate(iso: string, form: 'short' | 'long' | 'plain' = 'plain'): string {
  const match = /^(\d{4})-(\d{2})-(\d{2})/.exec(iso);
  if (!match) return iso;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const name = MONTHS[month - 1];
  if (name === undefined) return iso;
  const weekday = WEEKDAYS[new Date(Date.UTC(year, month - 1, day)).getUTCDay()]!;
  if (form === 'short') return `${weekday.slice(0, 3)} ${day} ${name.slice(0, 3)}`;
  return form === 'long' ? `${weekday} ${day} ${name} ${year}` : `${day} ${name} ${year}`;
}

/** The clock of a local ISO time: `9:20`. */
export const showClock = (local: string): string => {
  const match = /T(\d{2}):(\d{2})/.exec(local);
  return match ? `${Number(match[1])}:${match[2]}` : local;
};
