import { box } from '../geometry/box.ts';
import { add, dot, scale, sub, type Vec3, vec } from '../geometry/vector.ts';
import { cutShapes, hollowOf, type Primitive } from '../results/cut-shapes.ts';
import type { Size } from '../results/cuts.ts';
import type { Instance } from '../results/piece.ts';

/** Symmetries of a box that carry its grain to itself; `turn` swaps width and thickness of a square section. */
interface Symmetry {
  x: boolean;
  y: boolean;
  z: boolean;
  turn: boolean;
}

const ALL: Symmetry[] = [false, true].flatMap(turn =>
  [false, true].flatMap(x => [false, true].flatMap(y => [false, true].map(z => ({ x, y, z, turn })))),
);

/** A turn of the section by itself mirrors; each flip mirrors once more. */
const isMirror = (s: Symmetry): boolean =>
  (Number(s.x) + Number(s.y) + Number(s.z) + Number(s.turn)) % 2 === 1;

function move(p: Vec3, s: Symmetry, size: Size): Vec3 {
  const q = s.turn ? vec(p.x, p.z, p.y) : p;
  return vec(s.x ? size.length - q.x : q.x, s.y ? size.width - q.y : q.y, s.z ? size.thickness - q.z : q.z);
}

/**
 * Thousandths of a millimetre. The grid stands a little off the halves on which fractions of an inch fall, so
 * that float noise never tips one copy of a size up and another down.
 */
const n = (value: number): string => String(Math.floor(value * 1000 + 0.56));
const point = (p: Vec3): string => `${n(p.x)},${n(p.y)},${n(p.z)}`;

function shapeText(shape: Primitive, s: Symmetry, size: Size): string {
  const at = (p: Vec3): Vec3 => move(p, s, size);
  if (shape.shape === 'box') {
    const [a, b] = [at(shape.box.min), at(shape.box.max)];
    const moved = box(a.x, a.y, a.z, b.x, b.y, b.z);
    return `box ${point(moved.min)} ${point(moved.max)}`;
  }
  if (shape.shape === 'prism') {
    const corners = shape.polygon.flatMap(([u, v]) =>
      [shape.from, shape.to].map(w =>
        point(at(shape.axis === 'x' ? vec(w, u, v) : shape.axis === 'y' ? vec(v, w, u) : vec(u, v, w))),
      ),
    );
    return `prism ${corners.sort().join(' ')}`;
  }
  if (shape.shape === 'beyond') {
    // A plane is told by its normal, in hundredths, and by its distance from the frame's origin.
    const foot = scale(shape.normal, shape.offset);
    const normal = sub(at(add(foot, shape.normal)), at(foot));
    return `beyond ${point(scale(normal, 100))} ${n(dot(normal, at(foot)))}`;
  }
  if (shape.shape === 'turned') {
    const rings = shape.profile.map(([x, r]) => `${point(at(vec(x, ...shape.centre)))} r${n(r)}`);
    return `turned ${(s.x ? rings.reverse() : rings).join(' ')}`;
  }
  const radii =
    shape.shape === 'cylinder' ? [shape.radius, shape.radius] : [shape.radiusFrom, shape.radiusTo];
  const ends = [`${point(at(shape.from))} r${n(radii[0]!)}`, `${point(at(shape.to))} r${n(radii[1]!)}`];
  return `round ${shape.shape === 'cylinder' ? ends.sort().join(' ') : ends.join(' ')}`;
}

/** What is missing of the envelope: its cuts, and what an open section or a tube lacks from the start. */
function shapesOf(instance: Instance): { shape: Primitive; stage: string }[] {
  const hollow = hollowOf(instance);
  return [
    ...(hollow ? [{ shape: { shape: 'box' as const, box: hollow }, stage: 'section' }] : []),
    ...instance.cuts.flatMap(c => cutShapes(c, instance.size).map(shape => ({ shape, stage: c.stage.when }))),
  ];
}

const textOf = (shapes: ReturnType<typeof shapesOf>, s: Symmetry, size: Size): string =>
  shapes
    .map(({ shape, stage }) => `${stage} ${shapeText(shape, s, size)}`)
    .sort()
    .join('; ');

/** What must agree whichever way the part is turned. */
function headOf(instance: Instance): string {
  const { size, measureFirst, measured } = instance;
  const held = measureFirst ? `held ${measureFirst.when}` : '';
  return [
    instance.part,
    n(size.length),
    n(size.width),
    n(size.thickness),
    held,
    measured ? JSON.stringify(measured) : '',
  ].join(' ');
}

const AS_IT_STANDS: Symmetry = { x: false, y: false, z: false, turn: false };

/** The part as it stands, as a text: two parts are alike when the text of one is a turning of the other. */
export const shapeOf = (instance: Instance): string =>
  `${headOf(instance)} | ${textOf(shapesOf(instance), AS_IT_STANDS, instance.size)}`;

export interface Turnings {
  /** Texts of the part turned about in every way that carries its grain to itself. */
  same: ReadonlySet<string>;
  /** Texts of its mirror image, turned likewise. */
  mirror: ReadonlySet<string>;
}

export function turnings(instance: Instance): Turnings {
  const { size } = instance;
  const shapes = shapesOf(instance);
  const head = headOf(instance);
  const square = Math.abs(size.width - size.thickness) < 0.005;
  const ways = ALL.filter(s => square || !s.turn);
  const texts = (mirror: boolean): ReadonlySet<string> =>
    new Set(ways.filter(s => isMirror(s) === mirror).map(s => `${head} | ${textOf(shapes, s, size)}`));
  return { same: texts(false), mirror: texts(true) };
}
