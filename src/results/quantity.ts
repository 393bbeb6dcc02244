/**
 * A value with the kind of thing it measures. The unit is fixed by the kind:
 * length mm, area mm2, volume mm3, angle degrees, mass kg, money minor units, moisture % of dry mass,
 * percent %, temperature degrees C, time minutes, force N, stress MPa (N/mm2), density kg/m3,
 * count and number plain, text a word, date ISO 8601, truth a yes or no.
 */
export type QuantityKind =
  | 'length'
  | 'area'
  | 'volume'
  | 'angle'
  | 'mass'
  | 'money'
  | 'moisture'
  | 'percent'
  | 'temperature'
  | 'time'
  | 'force'
  | 'stress'
  | 'density'
  | 'count'
  | 'number'
  | 'text'
  | 'date'
  | 'truth';

export interface Quantity {
  kind: QuantityKind;
  value: number | string | boolean;
}

export const q = (kind: QuantityKind, value: number | string | boolean): Quantity => ({ kind, value });
export const mm = (value: number): Quantity => q('length', value);
export const minutes = (value: number): Quantity => q('time', value);
export const count = (value: number): Quantity => q('count', value);
export const text = (value: string): Quantity => q('text', value);
