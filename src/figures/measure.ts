import type { Quantity, QuantityKind } from '../results/quantity.ts';

/** Exponents of the base dimensions of a number. `length: 2` is an area. */
export interface Dimension {
  length: number;
  angle: number;
  mass: number;
  money: number;
}

export const PLAIN: Dimension = { length: 0, angle: 0, mass: 0, money: 0 };
export const LENGTH: Dimension = { ...PLAIN, length: 1 };
export const ANGLE: Dimension = { ...PLAIN, angle: 1 };
export const MASS: Dimension = { ...PLAIN, mass: 1 };
export const MONEY: Dimension = { ...PLAIN, money: 1 };

/** A value inside the graph of figures: a number with its dimension (mm, degrees, kg), a word or a truth. */
export type Measure =
  | { type: 'number'; value: number; dimension: Dimension }
  | { type: 'text'; value: string }
  | { type: 'truth'; value: boolean };

export const numberOf = (value: number, dimension: Dimension = PLAIN): Measure => ({
  type: 'number',
  value,
  dimension,
});
export const lengthOf = (value: number): Measure => numberOf(value, LENGTH);
export const textOf = (value: string): Measure => ({ type: 'text', value });

const KEYS = ['length', 'angle', 'mass', 'money'] as const;

export const sameDimension = (a: Dimension, b: Dimension): boolean => KEYS.every(k => a[k] === b[k]);

export const combine = (a: Dimension, b: Dimension, sign: 1 | -1): Dimension => ({
  length: a.length + sign * b.length,
  angle: a.angle + sign * b.angle,
  mass: a.mass + sign * b.mass,
  money: a.money + sign * b.money,
});

const NAMED: [Dimension, string, QuantityKind][] = [
  [PLAIN, 'a plain number', 'number'],
  [LENGTH, 'a length', 'length'],
  [{ ...PLAIN, length: 2 }, 'an area', 'area'],
  [{ ...PLAIN, length: 3 }, 'a volume', 'volume'],
  [ANGLE, 'an angle', 'angle'],
  [MASS, 'a mass', 'mass'],
  [MONEY, 'money', 'money'],
];

/** `a length`, `a plain number`: for error messages. */
export function dimensionName(m: Measure | Dimension): string {
  if ('type' in m) {
    if (m.type === 'text') return 'a word';
    if (m.type === 'truth') return 'a yes or no';
    return dimensionName(m.dimension);
  }
  return NAMED.find(([d]) => sameDimension(d, m))?.[1] ?? 'a mixed unit';
}

export const DIMENSION_OF: Partial<Record<QuantityKind, Dimension>> = {
  length: LENGTH,
  angle: ANGLE,
  number: PLAIN,
  count: PLAIN,
  percent: PLAIN,
  mass: MASS,
  money: MONEY,
};

/** Float noise never leaves the graph: values are kept to 1e-9. */
export const clean = (value: number): number => Math.round(value * 1e9) / 1e9 || 0;

export function toQuantity(m: Measure): Quantity {
  if (m.type === 'text') return { kind: 'text', value: m.value };
  if (m.type === 'truth') return { kind: 'truth', value: m.value };
  const kind = NAMED.find(([d]) => sameDimension(d, m.dimension))?.[2] ?? 'number';
  return { kind, value: m.value };
}
