import { box } from '../geometry/box.ts';
import { type Vec3, vec } from '../geometry/vector.ts';
import { cutShapes, type Primitive } from '../results/cut-shapes.ts';
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

const n = (value: number): string => (Math.round(value * 100) / 100 || 0).toFixed(2);
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
  const radii =
    shape.shape === 'cylinder' ? [shape.radius, shape.radius] : [shape.radiusFrom, shape.radiusTo];
  const ends = [`${point(at(shape.from))} r${n(radii[0]!)}`, `${point(at(shape.to))} r${n(radii[1]!)}`];
  return `round ${shape.shape === 'cylinder' ? ends.sort().join(' ') : ends.join(' ')}`;
}

export interface Likeness {
  /** Equal for parts that are the same after turning them about. */
  same: string;
  /** The `same` of the mirror image. */
  mirror: string;
}

/** A text that is equal for like parts, whichever way up each stands in the piece. */
export function likeness(instance: Instance): Likeness {
  const { size } = instance;
  const shapes = instance.cuts.flatMap(c =>
    cutShapes(c, size).map(shape => ({ shape, stage: c.stage.when })),
  );
  const square = Math.abs(size.width - size.thickness) < 0.005;
  const text = (s: Symmetry): string =>
    shapes
      .map(({ shape, stage }) => `${stage} ${shapeText(shape, s, size)}`)
      .sort()
      .join('; ');
  const least = (mirror: boolean): string =>
    ALL.filter(s => isMirror(s) === mirror && (square || !s.turn))
      .map(text)
      .sort()[0]!;
  const held = instance.measureFirst ? `held ${instance.measureFirst.when}` : '';
  const measured = instance.measured ? JSON.stringify(instance.measured) : '';
  const head = [instance.part, n(size.length), n(size.width), n(size.thickness), held, measured].join(' ');
  return { same: `${head} | ${least(false)}`, mirror: `${head} | ${least(true)}` };
}
