import type { Figure } from '../figures/book.ts';
import { FigureFault, type Read } from '../figures/evaluate.ts';
import { clean, lengthOf, type Measure } from '../figures/measure.ts';
import { type Axis, cross, dot, type Vec3 } from '../geometry/vector.ts';
import type { LengthUnit } from '../quantities/length.ts';
import type { Copy } from './copies.ts';
import { enteredFigure } from './entered.ts';
import { DIRECTION } from './faces.ts';
import type { Direction, FigureText, PartDocument } from './schema.ts';

/** World words of each axis: low face, high face, centre. */
export const AXIS_WORDS = {
  x: { low: 'left', high: 'right', centre: 'centre_x' },
  y: { low: 'front', high: 'back', centre: 'centre_y' },
  z: { low: 'bottom', high: 'top', centre: 'centre_z' },
} as const;

export const WORLD_FACE: Record<string, { axis: Axis; high: boolean }> = {
  left: { axis: 'x', high: false },
  right: { axis: 'x', high: true },
  front: { axis: 'y', high: false },
  back: { axis: 'y', high: true },
  bottom: { axis: 'z', high: false },
  top: { axis: 'z', high: true },
};

export interface Lie {
  x: Vec3;
  y: Vec3;
  z: Vec3;
}

/** How the part lies: length axis and face side as told, width axis right-handed. Undefined when the two agree. */
export function lieOf(document: PartDocument): Lie | undefined {
  const along: Direction = document.along ?? 'right';
  const facing: Direction = document.facing ?? (along === 'front' || along === 'back' ? 'right' : 'front');
  const x = DIRECTION[along];
  const z = DIRECTION[facing];
  return dot(x, z) === 0 ? { x, y: cross(z, x), z } : undefined;
}

const axisOf = (v: Vec3): Axis => (v.x !== 0 ? 'x' : v.y !== 0 ? 'y' : 'z');

export const SIZE_NAMES = ['length', 'width', 'thickness'] as const;
type SizeName = (typeof SIZE_NAMES)[number];

/** Which body size lies along a world axis. */
export function sizeAlong(lie: Lie, axis: Axis): SizeName {
  if (axisOf(lie.x) === axis) return 'length';
  return axisOf(lie.y) === axis ? 'width' : 'thickness';
}

const worldAxisOf = (lie: Lie, size: SizeName): Axis =>
  axisOf(size === 'length' ? lie.x : size === 'width' ? lie.y : lie.z);

const value = (m: Measure): number => (m.type === 'number' ? m.value : Number.NaN);

/** Figures of one part definition: body sizes and the world places of its body's faces. */
export function partFigures(
  id: string,
  document: PartDocument,
  unit: LengthUnit,
  resolve: (name: string) => string,
): Figure[] {
  const lie = lieOf(document);
  const label = document.name ?? id;
  const entered = (name: string, what: string, field: string, text: FigureText): Figure =>
    enteredFigure(
      `parts.${id}.${name}`,
      `${label}, ${what}`,
      `parts.${id}.${field}`,
      text,
      'length',
      unit,
      resolve,
    );
  const made = (
    name: string,
    what: string,
    place: string,
    formula: string,
    compute: (read: Read) => Measure,
  ): Figure => ({
    name: `parts.${id}.${name}`,
    label: `${label}, ${what}`,
    place,
    kind: 'length',
    how: 'computed',
    formula,
    compute,
  });

  const sizeFigure = (size: SizeName): Figure => {
    const name = `body.${size}`;
    const what = size === 'length' ? 'between shoulders' : size;
    const diameter = size === 'length' ? undefined : document.diameter;
    const text = document[size] ?? diameter;
    if (text !== undefined) {
      const figure = entered(name, what, document[size] === undefined ? 'diameter' : size, text);
      return { ...figure, compute: read => positive(figure.compute(read), what) };
    }
    const axis = lie && worldAxisOf(lie, size);
    const at = document.at;
    const words = axis && AXIS_WORDS[axis];
    if (words && at?.[words.low] !== undefined && at[words.high] !== undefined) {
      return made(name, what, `parts.${id}.at`, `from ${words.low} to ${words.high}`, read =>
        positive(
          lengthOf(clean(value(read(`parts.${id}.${words.high}`)) - value(read(`parts.${id}.${words.low}`)))),
          what,
        ),
      );
    }
    return made(name, what, `parts.${id}.${size}`, '', () => {
      throw new FigureFault(
        `${label} has no ${size}`,
        words ? `give ${size}, or both ${words.low} and ${words.high}` : `give ${size}`,
      );
    });
  };

  const faceFigures = (axis: Axis): Figure[] => {
    const words = AXIS_WORDS[axis];
    const at = document.at ?? {};
    const size = lie ? sizeAlong(lie, axis) : 'length';
    const sizeName = `parts.${id}.body.${size}`;
    const one = (face: 'low' | 'high'): Figure => {
      const word = words[face];
      const other = words[face === 'low' ? 'high' : 'low'];
      const sign = face === 'low' ? -1 : 1;
      const direct = at[word];
      if (direct !== undefined) return entered(word, `${word} face`, `at.${word}`, direct);
      if (at[other] !== undefined)
        return made(
          word,
          `${word} face`,
          `parts.${id}.at`,
          `${other} face ${sign < 0 ? 'less' : 'and'} ${size}`,
          read => lengthOf(clean(value(read(`parts.${id}.${other}`)) + sign * value(read(sizeName)))),
        );
      if (at[words.centre] !== undefined)
        return made(
          word,
          `${word} face`,
          `parts.${id}.at`,
          `centre ${sign < 0 ? 'less' : 'and'} half the ${size}`,
          read =>
            lengthOf(clean(value(read(`parts.${id}.${words.centre}`)) + (sign * value(read(sizeName))) / 2)),
        );
      return made(word, `${word} face`, `parts.${id}.at`, '', () => {
        throw new FigureFault(
          `${label} has no place ${axis === 'x' ? 'from left to right' : axis === 'y' ? 'from front to back' : 'from the floor up'}`,
          `give ${words.low}, ${words.high} or ${words.centre} under at`,
        );
      });
    };
    const centre = at[words.centre];
    return [
      one('low'),
      one('high'),
      centre === undefined
        ? made(
            words.centre,
            'centre',
            `parts.${id}.at`,
            `half way from ${words.low} to ${words.high}`,
            read =>
              lengthOf(
                clean(
                  (value(read(`parts.${id}.${words.low}`)) + value(read(`parts.${id}.${words.high}`))) / 2,
                ),
              ),
          )
        : entered(words.centre, 'centre', `at.${words.centre}`, centre),
    ];
  };

  const counted = (name: string, what: string, place: string, text: FigureText): Figure => ({
    ...enteredFigure(
      `parts.${id}.${name}`,
      `${label}, ${what}`,
      `parts.${id}.${place}`,
      text,
      'count',
      unit,
      resolve,
    ),
    kind: 'count',
  });

  const figures: Figure[] = [
    ...SIZE_NAMES.map(sizeFigure),
    ...faceFigures('x'),
    ...faceFigures('y'),
    ...faceFigures('z'),
  ];
  if (document.wall !== undefined) figures.push(entered('wall', 'wall', 'wall', document.wall));
  if (document.diameter !== undefined)
    figures.push({ ...entered('diameter', 'diameter', 'diameter', document.diameter) });
  if (document.repeat) {
    figures.push(counted('repeat.count', 'how many', 'repeat.count', document.repeat.count));
    figures.push(entered('repeat.step', 'step', 'repeat.step', document.repeat.step));
    const along = document.repeat.along;
    figures.push({
      name: `parts.${id}.repeat.along`,
      label: `${label}, repeated along`,
      place: `parts.${id}.repeat.along`,
      kind: 'text',
      how: 'entered',
      compute: () => ({ type: 'text', value: along }),
    });
  }
  if (document.count !== undefined) figures.push(counted('count', 'how many', 'count', document.count));
  for (const axis of ['x', 'y', 'z'] as const) {
    const plane = document.mirror?.[axis];
    if (plane !== undefined) figures.push(entered(`mirror.${axis}`, 'mirror plane', `mirror.${axis}`, plane));
    const turn = document.turn?.[axis];
    if (turn !== undefined)
      figures.push(
        enteredFigure(
          `parts.${id}.turn.${axis}`,
          `${label}, turn`,
          `parts.${id}.turn.${axis}`,
          turn,
          'angle',
          unit,
          resolve,
        ),
      );
  }
  for (const size of SIZE_NAMES) {
    const reserve = document.measure_first?.reserve?.[size];
    if (reserve !== undefined)
      figures.push(
        atLeast0(entered(`reserve.${size}`, `reserve in ${size}`, `measure_first.reserve.${size}`, reserve)),
      );
    const allowance = document.allowance?.[size];
    if (allowance !== undefined)
      figures.push(
        atLeast0(entered(`allowance.${size}`, `allowance in ${size}`, `allowance.${size}`, allowance)),
      );
  }
  if (document.mass !== undefined)
    figures.push(
      enteredFigure(
        `parts.${id}.mass`,
        `${label}, mass`,
        `parts.${id}.mass`,
        document.mass,
        'mass',
        unit,
        resolve,
      ),
    );
  return figures;
}

function positive(m: Measure, what: string): Measure {
  if (m.type === 'number' && m.value <= 0)
    throw new FigureFault(
      `${what} comes to ${m.value} mm`,
      'it must be above 0: look at what it is made from',
    );
  return m;
}

/** What is added to a blank is never taken from it. */
const atLeast0 = (figure: Figure): Figure => ({
  ...figure,
  compute: read => {
    const m = figure.compute(read);
    if (m.type === 'number' && m.value < 0)
      throw new FigureFault(`this comes to ${m.value} mm`, 'what is added to a blank is 0 or more');
    return m;
  },
});

/** Face places of a copy, from those of its definition: moved by the repeat, then mirrored. */
export function copyFaceFigure(copy: Copy, word: string, label: string): Figure | undefined {
  const middle = (['x', 'y', 'z'] as const).find(a => AXIS_WORDS[a].centre === word);
  if (middle) return copyCentreFigure(copy, middle, label);
  const face = WORLD_FACE[word];
  if (!face) return undefined;
  const { axis, high } = face;
  const flipped = copy.mirrored.includes(axis);
  const words = AXIS_WORDS[axis];
  const source = flipped ? (high ? words.low : words.high) : word;
  return {
    name: `parts.${copy.id}.${word}`,
    label: `${label}, ${word} face`,
    place: `parts.${copy.part}`,
    kind: 'length',
    how: 'computed',
    formula: flipped ? 'mirrored' : 'repeated',
    compute: read => {
      let at = value(read(`parts.${copy.part}.${source}`));
      if (copy.k > 1) at += repeatShift(copy, axis, read);
      return lengthOf(clean(flipped ? 2 * value(read(`parts.${copy.part}.mirror.${axis}`)) - at : at));
    },
  };
}

function copyCentreFigure(copy: Copy, axis: Axis, label: string): Figure {
  const { low, high, centre } = AXIS_WORDS[axis];
  return {
    name: `parts.${copy.id}.${centre}`,
    label: `${label}, centre`,
    place: `parts.${copy.part}`,
    kind: 'length',
    how: 'computed',
    formula: `half way from ${low} to ${high}`,
    compute: read =>
      lengthOf(clean((value(read(`parts.${copy.id}.${low}`)) + value(read(`parts.${copy.id}.${high}`))) / 2)),
  };
}

function repeatShift(copy: Copy, axis: Axis, read: Read): number {
  const along = read(`parts.${copy.part}.repeat.along`);
  return along.type === 'text' && along.value === axis
    ? (copy.k - 1) * value(read(`parts.${copy.part}.repeat.step`))
    : 0;
}
