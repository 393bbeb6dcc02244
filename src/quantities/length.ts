/** Lengths: read in any unit of the trade, kept in millimetres, shown in the person's unit. Row 0. */

export type LengthUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft';

export const MM_PER: Record<LengthUnit, number> = { mm: 1, cm: 10, m: 1000, in: 25.4, ft: 304.8 };

export type Parsed<T> = { ok: true; value: T } | { ok: false; fault: string; expected: string };

const ok = <T>(value: T): Parsed<T> => ({ ok: true, value });
const bad = <T>(fault: string, expected: string): Parsed<T> => ({ ok: false, fault, expected });

const LENGTH_HINT = 'a length such as 40, 40 mm, 4 cm, 1.2 m, 1 3/4 in or 5\'2"';
const NUMBER = String.raw`\d+(?:\.\d+)?|\.\d+`;
const FRACTION = String.raw`(?:(\d+)(?:\s+|-))?(\d+)\/(\d+)`;
const METRIC = new RegExp(String.raw`^(${NUMBER})\s*(mm|cm|m)?$`);
const INCHES = new RegExp(String.raw`^(?:(${NUMBER})|${FRACTION})\s*(in|inch|inches|")$`);
const FEET = new RegExp(
  String.raw`^(${NUMBER})\s*(?:ft|feet|foot|')\s*(?:(?:(${NUMBER})|${FRACTION})\s*(?:in|inch|inches|")?)?$`,
);

const inchValue = (plain?: string, whole?: string, top?: string, under?: string): number =>
  plain !== undefined
    ? Number(plain)
    : top !== undefined
      ? Number(whole ?? 0) + Number(top) / Number(under)
      : 0;

/**
 * Reads a length. A typed unit wins; a bare number or fraction takes `unit`.
 * Accepts `40`, `-3 mm`, `1.2 m`, `1 3/4 in`, `1-3/4"`, `5'2"`, `5 ft 2 1/2 in`. A decimal comma is refused, not guessed.
 */
export function parseLength(input: string, unit: LengthUnit = 'mm'): Parsed<number> {
  let source = input
    .trim()
    .replace(/\u2212/g, '-')
    .replace(/[\u2033\u201d]/g, '"')
    .replace(/[\u2032\u2019]/g, "'");
  if (source === '') return bad('nothing is written', LENGTH_HINT);
  if (source.length > 60) return bad('the text is too long for a length', LENGTH_HINT);
  if (/\d,\d/.test(source)) return bad(`"${input}" has a comma`, 'a full stop as decimal mark, e.g. 19.5');
  const sign = source.startsWith('-') ? -1 : 1;
  source = source.replace(/^[-+]\s*/, '');
  const metric = METRIC.exec(source);
  if (metric)
    return finite(sign * Number(metric[1]) * MM_PER[(metric[2] as LengthUnit | undefined) ?? unit], input);
  const inches = INCHES.exec(source);
  if (inches) return finite(sign * inchValue(inches[1], inches[2], inches[3], inches[4]) * 25.4, input);
  const feet = FEET.exec(source);
  if (feet) {
    const rest = inchValue(feet[2], feet[3], feet[4], feet[5]);
    return finite(sign * (Number(feet[1]) * 304.8 + rest * 25.4), input);
  }
  const bare = new RegExp(`^${FRACTION}$`).exec(source);
  if (bare) return finite(sign * inchValue(undefined, bare[1], bare[2], bare[3]) * MM_PER[unit], input);
  return bad(`"${input}" is not a length`, LENGTH_HINT);
}

const finite = (value: number, input: string): Parsed<number> =>
  Number.isFinite(value) ? ok(value) : bad(`"${input}" is not a finite length`, LENGTH_HINT);

export interface LengthFormat {
  unit: LengthUnit;
  /** mm, cm, m: decimals. */
  decimals?: number;
  /** in, ft: least denominator shown, e.g. 64. */
  denominator?: number;
  /** Drop trailing zeros (default): 45.0 is written 45. */
  trim?: boolean;
}

/** Rounds half away from zero at `decimals`, without the float noise of 1.005 * 100. */
export function roundTo(value: number, decimals: number): number {
  const factor = 10 ** decimals;
  const scaled = Math.abs(value) * factor;
  return (Math.sign(value) * Math.round(scaled + scaled * 1e-12)) / factor || 0;
}

function fraction(value: number, denominator: number): string {
  const total = Math.round(value * denominator);
  const whole = Math.floor(total / denominator);
  let top = total % denominator;
  let under = denominator;
  while (top > 0 && top % 2 === 0) {
    top /= 2;
    under /= 2;
  }
  if (top === 0) return `${whole}`;
  return whole === 0 ? `${top}/${under}` : `${whole} ${top}/${under}`;
}

/** The figure alone, without its unit: `1357`, `53 7/16`. True minus for negatives. */
export function formatLength(valueMm: number, format: LengthFormat): string {
  const minus = valueMm < 0 ? '\u2212' : '';
  const magnitude = Math.abs(valueMm);
  if (format.unit === 'in' || format.unit === 'ft') {
    const written = fraction(magnitude / 25.4, format.denominator ?? 64);
    return written === '0' ? '0' : minus + written;
  }
  const decimals = format.decimals ?? { mm: 1, cm: 2, m: 4 }[format.unit];
  const fixed = roundTo(magnitude / MM_PER[format.unit], decimals).toFixed(decimals);
  const written = (format.trim ?? true) && fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
  return Number(written) === 0 ? written : minus + written;
}

/** Inches are always written with their unit; feet are read, never written. */
export const unitLabel = (unit: LengthUnit): string => (unit === 'ft' ? 'in' : unit);

/** Figure and unit as one text, for messages: `508 mm`, `20 in`. */
export const lengthText = (valueMm: number, unit: LengthUnit): string =>
  `${formatLength(valueMm, { unit })} ${unitLabel(unit)}`;
