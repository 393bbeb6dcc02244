import { box, intersectBoxes } from '../geometry/box.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { Cut, HoleCut, Size } from '../results/cuts.ts';
import { type Item, type Point, polygon } from './list.ts';
import { holeMark } from './marks.ts';

/** Where a point of the part lies in the view on its face edge and in that on its face side. */
export interface Pages {
  edgePage: (p: Vec3) => Point;
  facePage: (p: Vec3) => Point;
  px: number;
  scale: number;
}

const dashed = (a: Point, b: Point): Item =>
  polygon([a, [b[0], a[1]], b, [a[0], b[1]]], { stroke: 'hidden' });

/** Cuts that the two views do not show: those that enter from the back, the back edge, or lie within. */
export function hidden(cut: Cut, size: Size, at: Pages): Item[] {
  if (cut.kind === 'hole') return holeLines(cut, size, at);
  if (!('box' in cut)) return [];
  const inside = intersectBoxes(cut.box, box(0, 0, 0, size.length, size.width, size.thickness));
  if (!inside) return [];
  const outline = (page: Pages['facePage']): Item => dashed(page(inside.min), page(inside.max));
  return [
    ...(cut.face === 'face' ? [] : [outline(at.facePage)]),
    ...(cut.face === 'faceEdge' ? [] : [outline(at.edgePage)]),
  ];
}

/** A hole square to a face: its centre cross in the view along it, its depth dashed in the view across it. */
function holeLines(cut: HoleCut, size: Size, { edgePage, facePage, px, scale }: Pages): Item[] {
  const axis = Math.abs(cut.direction.z) > 0.99 ? 'z' : Math.abs(cut.direction.y) > 0.99 ? 'y' : undefined;
  if (!axis) return [];
  const extent = axis === 'z' ? size.thickness : size.width;
  const seen = cut.through || cut.face === (axis === 'z' ? 'face' : 'faceEdge');
  const [along, across] = axis === 'z' ? [facePage, edgePage] : [edgePage, facePage];
  const reach = cut.diameter / 2;
  const from = cut.at[axis];
  const to = cut.through
    ? from > extent / 2
      ? 0
      : extent
    : from + cut.depth * Math.sign(cut.direction[axis]);
  const corner = (x: number, depth: number): Point => across({ ...cut.at, x, [axis]: depth });
  return [
    ...holeMark(along(cut.at), reach * scale, px, seen),
    dashed(corner(cut.at.x - reach, from), corner(cut.at.x + reach, to)),
  ];
}
