import type { LocalFace, Size, Stage } from '../results/cuts.ts';
import type { FeatureLength } from './feature-figures.ts';
import type { FaceWord, FeatureDocument } from './schema.ts';

/** What a maker of features reads: figures, the part's size and its faces. */
export interface Context {
  id: string;
  feature: FeatureDocument;
  size: Size;
  stage: Stage;
  face(word: FaceWord): LocalFace;
  /** Value of a written figure; undefined when it is not written or cannot be worked out. */
  get(field: FeatureLength | 'angle' | 'tilt' | 'repeat.step' | 'repeat.count'): number | undefined;
  need(field: FeatureLength | 'angle'): number;
  /** Entered points; undefined when none are written. */
  points(): [number, number][] | undefined;
  /** Stations along the length are measured from end 1 of the body: this is where it lies in the cut size. */
  start: number;
  round: boolean;
  material: string;
  /** Place of the neutral line in a bend, share of the thickness. */
  kFactor: number;
}

/** Raised by the makers, turned into a Fault where they are called. */
export class Lacking extends Error {
  readonly field: string;
  readonly mend: string;
  constructor(field: string, message: string, mend: string) {
    super(message);
    this.field = field;
    this.mend = mend;
  }
}

export const base = (c: Context) => ({ by: c.id, stage: c.stage });

export function faceOf(c: Context, field: 'face' | 'edge'): FaceWord {
  const word = c.feature[field];
  if (word === undefined)
    throw new Lacking(
      field,
      `no ${field} is named`,
      `give ${field}: left, right, front, back, bottom or top`,
    );
  return word;
}

const ABOVE_NOTHING: readonly string[] = ['width', 'depth', 'size', 'diameter', 'amount'];

/** A size of nothing or less is no size; a count is a whole number. */
export function sound(field: string, value: number | undefined): number | undefined {
  if (value === undefined) return undefined;
  if (ABOVE_NOTHING.includes(field) && value <= 0)
    throw new Lacking(field, `${field} comes to ${value} mm`, 'it must be above 0');
  if (field === 'travel' && value < 0)
    throw new Lacking(field, `${field} comes to ${value} mm`, 'it must not be below 0');
  if (field === 'repeat.count' && (!Number.isInteger(value) || value < 0 || value > MOST_REPEATS))
    throw new Lacking(field, `the count comes to ${value}`, `give a whole number from 0 to ${MOST_REPEATS}`);
  return value;
}

const MOST_REPEATS = 200;
