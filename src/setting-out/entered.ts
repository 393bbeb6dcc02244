import type { Figure } from '../figures/book.ts';
import { evaluate, FigureFault, type Read } from '../figures/evaluate.ts';
import { parseExpression, plainLength } from '../figures/expression.ts';
import {
  DIMENSION_OF,
  dimensionName,
  LENGTH,
  type Measure,
  numberOf,
  PLAIN,
  sameDimension,
  textOf,
} from '../figures/measure.ts';
import { type LengthUnit, MM_PER } from '../quantities/length.ts';
import type { QuantityKind } from '../results/quantity.ts';
import type { FigureText } from './schema.ts';

const WANTED: Partial<Record<QuantityKind, string>> = {
  length: 'a length',
  angle: 'an angle',
  mass: 'a mass',
  money: 'money',
};

/** A bare number takes the unit its field stands for; inside an expression it has none (design, section 5). */
function bare(text: FigureText, kind: QuantityKind, unit: LengthUnit): Measure | undefined {
  if (kind === 'length')
    return typeof text === 'number' ? numberOf(text * MM_PER[unit], LENGTH) : plainLength(text, unit);
  if (typeof text === 'number') return numberOf(text, DIMENSION_OF[kind] ?? PLAIN);
  const [, figure, written] = QUANTITY.exec(text) ?? [];
  const factor = figure === undefined ? undefined : FACTORS[kind]?.[written ?? ''];
  return factor === undefined ? undefined : numberOf(Number(figure) * factor, DIMENSION_OF[kind] ?? PLAIN);
}

const QUANTITY = /^\s*(-?\d+(?:\.\d+)?)\s*(deg|\u00b0|kg|g)?\s*$/;
const BARE = { '': 1 };
/** Units that may stand behind a figure of each kind, and what they count. */
const FACTORS: Partial<Record<QuantityKind, Record<string, number>>> = {
  angle: { ...BARE, deg: 1, '\u00b0': 1 },
  mass: { ...BARE, kg: 1, g: 0.001 },
  number: BARE,
  count: BARE,
  percent: BARE,
  money: BARE,
};

function refuse(kind: QuantityKind, value: Measure): never {
  const wanted = WANTED[kind] ?? (kind === 'text' ? 'a word' : 'a plain number');
  const mend =
    kind === 'length' && value.type === 'number' && sameDimension(value.dimension, PLAIN)
      ? 'give the figures their unit, as in 1400 mm + 20 mm'
      : `write ${wanted}`;
  throw new FigureFault(`this gives ${dimensionName(value)}, where ${wanted} is needed`, mend);
}

function fits(kind: QuantityKind, value: Measure): boolean {
  if (kind === 'text') return value.type === 'text';
  if (kind === 'truth') return value.type === 'truth';
  return value.type === 'number' && sameDimension(value.dimension, DIMENSION_OF[kind] ?? PLAIN);
}

/** Works out what the maker wrote in a field of the given kind, reading names through `read`. */
export function workOut(text: FigureText, kind: QuantityKind, unit: LengthUnit, read: Read): Measure {
  if (typeof text === 'number' && !Number.isFinite(text))
    throw new FigureFault('this is not a finite number', 'write a plain figure');
  const plain = bare(text, kind, unit);
  if (plain) return plain;
  if (/^\s*-?\d+,\d+\s*[a-z"]*\s*$/.test(String(text)))
    throw new FigureFault(
      `"${text}" has a comma`,
      `write a full stop as decimal mark: ${String(text).replace(',', '.')}`,
    );
  const parsed = parseExpression(String(text));
  if (!parsed.ok) throw new FigureFault(parsed.fault, parsed.mend);
  const value = evaluate(parsed.node, read);
  if (value.type === 'number' && !Number.isFinite(value.value))
    throw new FigureFault('this gives no finite figure', 'look for a division by a very small figure');
  return fits(kind, value) ? value : refuse(kind, value);
}

export const isBare = (text: FigureText, kind: QuantityKind, unit: LengthUnit): boolean =>
  bare(text, kind, unit) !== undefined;

/** A figure made from the maker's own words. */
export function enteredFigure(
  name: string,
  label: string,
  place: string,
  text: FigureText,
  kind: QuantityKind,
  unit: LengthUnit,
  resolve: (name: string) => string,
): Figure {
  const plain = isBare(text, kind, unit);
  return {
    name,
    label,
    place,
    kind,
    how: plain ? 'entered' : 'expression',
    ...(plain ? {} : { formula: String(text) }),
    source: { text: 'the setting-out', basis: 'maker' },
    compute: read =>
      kind === 'text' ? word(text, read, resolve) : workOut(text, kind, unit, n => read(resolve(n))),
  };
}

/** A choice is a bare word, or an expression that gives one. */
function word(text: FigureText, read: Read, resolve: (name: string) => string): Measure {
  const written = String(text);
  if (!/[?'"(]/.test(written)) return textOf(written);
  const parsed = parseExpression(written);
  if (!parsed.ok) return textOf(written);
  const value = evaluate(parsed.node, n => read(resolve(n)));
  return value.type === 'text' ? value : refuse('text', value);
}
