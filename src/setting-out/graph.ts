import { type Figure, FigureBook } from '../figures/book.ts';
import { FigureFault } from '../figures/evaluate.ts';
import { clean, lengthOf, type Measure, textOf } from '../figures/measure.ts';
import { nearest } from '../figures/nearest.ts';
import type { LengthUnit } from '../quantities/length.ts';
import type { LocalFace } from '../results/cuts.ts';
import type { QuantityKind } from '../results/quantity.ts';
import { type Copy, copyFromId } from './copies.ts';
import { enteredFigure } from './entered.ts';
import { featureFigures } from './feature-figures.ts';
import { jointFigures } from './joint-figures.ts';
import type { JointCatalogue } from './joint-type.ts';
import { Pairings } from './pairings.ts';
import { copyFaceFigure, partFigures, SIZE_NAMES } from './part-figures.ts';
import type { JobDocument, ParameterDocument } from './schema.ts';

export interface Graph {
  book: FigureBook;
  pairings: Pairings;
  resolve(name: string): string;
  unit: LengthUnit;
}

const PARAMETER_KIND: Record<string, QuantityKind> = {
  length: 'length',
  angle: 'angle',
  number: 'number',
  choice: 'text',
};

export const parameterParts = (p: ParameterDocument) => (typeof p === 'object' ? p : { value: p });

/** An angle written with its unit, or a plain count inside an expression, tells its own kind. */
export function parameterKind(p: ParameterDocument): QuantityKind {
  const { value, kind, choices } = parameterParts(p) as Exclude<ParameterDocument, string | number>;
  if (kind) return PARAMETER_KIND[kind]!;
  if (choices) return 'text';
  return typeof value === 'string' && /^\s*-?[\d.]+\s*(deg|\u00b0)\s*$/.test(value) ? 'angle' : 'length';
}

/** Builds the one graph of named figures of a setting-out (design, section 4.1). */
export function buildGraph(document: JobDocument, catalogue: JointCatalogue): Graph {
  const unit: LengthUnit = document.units ?? 'mm';
  const parts = document.parts ?? {};
  const joints = document.joints ?? {};
  const parameters = document.parameters ?? {};
  const labelOf = (id: string): string => parts[id]?.name ?? id;

  const resolve = (name: string): string => {
    const [head = '', ...rest] = name.split('.');
    if (rest.length === 0) {
      if (Object.hasOwn(parameters, name)) return `parameters.${name}`;
      if (copyFromId(name, parts))
        throw new FigureFault(
          `${name} is a part, not a figure`,
          `say which figure of it: ${name}.length, ${name}.right ...`,
        );
      throw unknown(name);
    }
    if (head === 'parameters' || head === 'parts' || head === 'joints') return name;
    if (copyFromId(head, parts)) return `parts.${name}`;
    if (Object.hasOwn(joints, head)) return `joints.${name}`;
    throw unknown(name);
  };

  const unknown = (name: string): FigureFault => {
    const plainName = name.replace(/^(parts|parameters)\./, '');
    const [head = ''] = plainName.split('.');
    const near = plainName.includes('.')
      ? nearest(plainName, [...book.names().map(n => n.replace(/^parts\./, '')), ...derivedNames()])
      : nearest(plainName, Object.keys(parameters));
    const headNear =
      near ?? nearest(head, [...Object.keys(parts), ...Object.keys(joints), ...Object.keys(parameters)]);
    return new FigureFault(
      `there is no figure ${plainName}`,
      headNear ? `did you mean ${headNear}?` : 'give it as a parameter, or check the name',
    );
  };
  const derivedNames = (): string[] =>
    Object.keys(parts).flatMap(p => [`${p}.length`, `${p}.width`, `${p}.thickness`, `${p}.shoulder`]);

  const late = (name: string): Figure | undefined => {
    if (!name.startsWith('parts.')) return undefined;
    const [, id = '', ...rest] = name.split('.');
    const copy = copyFromId(id, parts);
    return copy && madeAtAll(copy) ? copyFigure(copy, rest.join('.')) : undefined;
  };

  /** A copy beyond the count has no figures; one whose count cannot be told is not judged here. */
  const madeAtAll = (copy: Copy): boolean => {
    if (copy.k === 1) return true;
    const many = parts[copy.part]!.repeat ? 'repeat.count' : 'count';
    return copy.k <= (book.number(`parts.${copy.part}.${many}`) ?? Number.POSITIVE_INFINITY);
  };

  const copyFigure = (copy: Copy, what: string): Figure | undefined => {
    const label = labelOf(copy.part);
    if (what === 'shoulder')
      return same(copy, what, `parts.${copy.part}.body.length`, `${label}, between shoulders`);
    const size = SIZE_NAMES.find(s => s === what);
    if (size) return cutSize(copy, size, label);
    if (copy.id === copy.part) return undefined;
    const face = copyFaceFigure(copy, what, label);
    if (face) return face;
    return what.startsWith('body.')
      ? same(copy, what, `parts.${copy.part}.${what}`, `${label}, ${what.slice(5)}`)
      : undefined;
  };

  const same = (copy: Copy, what: string, as: string, label: string): Figure => ({
    name: `parts.${copy.id}.${what}`,
    label,
    place: `parts.${copy.part}`,
    kind: 'length',
    how: 'computed',
    formula: `same as ${as.replace('parts.', '')}`,
    compute: read => read(as),
  });

  /** Cut size: the body and what the joints add to its two ends or sides. */
  const cutSize = (copy: Copy, size: (typeof SIZE_NAMES)[number], label: string): Figure => ({
    name: `parts.${copy.id}.${size}`,
    label: `${label}, ${size === 'length' ? 'cut length' : size}`,
    place: `parts.${copy.part}.${size}`,
    kind: 'length',
    how: 'computed',
    formula:
      size === 'length'
        ? 'shoulder length and the most that a joint adds at each end'
        : `${size} and the most that a joint adds at each side`,
    compute: read => {
      const body = read(`parts.${copy.part}.body.${size}`);
      const added = SIDES[size].map(face =>
        Math.max(0, ...pairings.addedFigures(copy.id, face).map(name => numberIn(read(name)))),
      );
      return lengthOf(clean(numberIn(body) + added.reduce((a, b) => a + b, 0)));
    },
  });

  const book = new FigureBook(late, unknown);
  const pairings = new Pairings(document, catalogue, book);

  for (const [id, p] of Object.entries(parameters)) {
    const { value, label, choices } = parameterParts(p) as {
      value: string | number;
      label?: string;
      choices?: string[];
    };
    const figure = enteredFigure(
      `parameters.${id}`,
      label ?? id,
      `parameters.${id}`,
      value,
      parameterKind(p),
      unit,
      resolve,
    );
    // A choice is a word even where it reads like an expression: Oak (quartered).
    const chosen = choices?.includes(String(value)) ? textOf(String(value)) : undefined;
    book.define(chosen ? { ...figure, compute: () => chosen } : figure);
    for (const edge of ['min', 'max'] as const) {
      const text = typeof p === 'object' ? p[edge] : undefined;
      if (text !== undefined)
        book.define(
          enteredFigure(
            `limits.${id}.${edge}`,
            `${label ?? id}, ${edge}`,
            `parameters.${id}.${edge}`,
            text,
            parameterKind(p),
            unit,
            resolve,
          ),
        );
    }
  }
  for (const [id, part] of Object.entries(parts))
    for (const figure of partFigures(id, part, unit, resolve)) book.define(figure);
  for (const figure of jointFigures(document, catalogue, pairings, unit, resolve)) book.define(figure);
  for (const figure of featureFigures(document, unit, resolve)) book.define(figure);
  return { book, pairings, resolve, unit };
}

const SIDES: Record<(typeof SIZE_NAMES)[number], LocalFace[]> = {
  length: ['end1', 'end2'],
  width: ['backEdge', 'faceEdge'],
  thickness: ['back', 'face'],
};

const numberIn = (m: Measure): number => (m.type === 'number' ? m.value : Number.NaN);
