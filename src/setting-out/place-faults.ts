import type { FigureBook } from '../figures/book.ts';
import { AXES } from '../geometry/vector.ts';
import { type LengthUnit, lengthText } from '../quantities/length.ts';
import { type Fault, fault } from '../results/fault.ts';
import { AXIS_WORDS, type Lie, lieOf, sizeAlong } from './part-figures.ts';
import type { JobDocument, PartDocument } from './schema.ts';

/** Places and sizes that contradict each other: one of them would be left aside without a word. */
export function placeFaults(document: JobDocument, book: FigureBook): Fault[] {
  const unit = document.units ?? 'mm';
  return Object.entries(document.parts ?? {}).flatMap(([id, part]) => {
    const lie = lieOf(part);
    return lie ? contradictions(id, part, lie, book, unit) : [lieFault(id, part)];
  });
}

const lieFault = (id: string, part: PartDocument): Fault =>
  fault(
    `parts.${id}.facing`,
    `the face side looks ${part.facing ?? 'to the front'}, along the length itself`,
    'along and facing must be square to each other',
  );

/** Below this two figures are the same, mm: float noise and thousandths of an inch rounded by hand. */
const SAME = 0.02;

function contradictions(
  id: string,
  part: PartDocument,
  lie: Lie,
  book: FigureBook,
  unit: LengthUnit,
): Fault[] {
  const at = part.at;
  if (!at) return [];
  const shown = (mm: number): string => lengthText(mm, unit);
  const figure = (name: string): number => book.number(`parts.${id}.${name}`) ?? Number.NaN;
  return AXES.flatMap(axis => {
    const { low, high, centre } = AXIS_WORDS[axis];
    const size = sizeAlong(lie, axis);
    const apart = figure(high) - figure(low);
    if (at[low] !== undefined && at[high] !== undefined && Math.abs(apart - figure(`body.${size}`)) > SAME)
      return [
        fault(
          `parts.${id}.at.${high}`,
          `${low} and ${high} are ${shown(apart)} apart, the ${size} is ${shown(figure(`body.${size}`))}`,
          `leave out one of ${low}, ${high} and ${size}`,
        ),
      ];
    const middle = (figure(low) + figure(high)) / 2;
    return at[centre] !== undefined && Math.abs(middle - figure(centre)) > SAME
      ? [
          fault(
            `parts.${id}.at.${centre}`,
            `${centre} is ${shown(figure(centre))}, the middle of ${low} and ${high} ${shown(middle)}`,
            `leave out ${centre}`,
          ),
        ]
      : [];
  });
}
