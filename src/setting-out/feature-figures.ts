import type { Figure } from '../figures/book.ts';
import type { LengthUnit } from '../quantities/length.ts';
import type { QuantityKind } from '../results/quantity.ts';
import { enteredFigure } from './entered.ts';
import type { FeatureDocument, JobDocument } from './schema.ts';

const LENGTHS = [
  'width',
  'depth',
  'size',
  'from',
  'to',
  'along',
  'across',
  'diameter',
  'start',
  'amount',
  'travel',
  'radius',
] as const;
export type FeatureLength = (typeof LENGTHS)[number];

/** Figures written in features, named `features.ID.depth` and the like. */
export function featureFigures(
  document: JobDocument,
  unit: LengthUnit,
  resolve: (name: string) => string,
): Figure[] {
  return Object.entries(document.features ?? {}).flatMap(([id, feature]) => {
    const one = (field: string, text: string | number, kind: QuantityKind): Figure =>
      enteredFigure(
        `features.${id}.${field}`,
        `${feature.type}, ${field}`,
        `features.${id}.${field}`,
        text,
        kind,
        unit,
        resolve,
      );
    const figures = LENGTHS.flatMap(field => {
      const text = feature[field as keyof FeatureDocument];
      return typeof text === 'string' || typeof text === 'number' ? [one(field, text, 'length')] : [];
    });
    if (feature.angle !== undefined) figures.push(one('angle', feature.angle, 'angle'));
    if (feature.tilt !== undefined) figures.push(one('tilt', feature.tilt, 'angle'));
    feature.points?.forEach(([at, by], i) => {
      figures.push(one(`points.${i}.0`, at, 'length'), one(`points.${i}.1`, by, 'length'));
    });
    if (feature.repeat) {
      figures.push(one('repeat.count', feature.repeat.count, 'count'));
      figures.push(one('repeat.step', feature.repeat.step, 'length'));
    }
    return figures;
  });
}
