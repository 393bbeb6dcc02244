import { type Box, box, boxVolume, intersectBoxes, unionVolume } from '../geometry/box.ts';
import { polygonArea } from '../geometry/polygon.ts';
import { add, scale, type Vec3, vec } from '../geometry/vector.ts';
import { cutShapes, hollowOf, type Primitive, stockVolume } from './cut-shapes.ts';
import type { Cut, EndCut, HoleCut, Size, TaperCut } from './cuts.ts';
import { FACE_AXIS } from './cuts.ts';
import type { StockShape } from './kernel.ts';
import { sawnEnd, sectionOf } from './sawn-end.ts';

/** Volume and centre of gravity of a part in closed form: the first tier, before any solid is made. */

const wholeBox = (s: Size): Box => box(0, 0, 0, s.length, s.width, s.thickness);

/** What is taken but sawn ends, of which the section decides: see `sawnEnd`. */
type Waste = Exclude<Primitive, { shape: 'beyond' }>;
const wastesOf = (cut: Exclude<Cut, EndCut>, size: Size): Waste[] =>
  cutShapes(cut, size).filter((p): p is Waste => p.shape !== 'beyond');

/** Closed-form volume of one primitive, mm3, as if it lay wholly in the wood. */
export function primitiveVolume(p: Waste): number {
  switch (p.shape) {
    case 'box':
      return boxVolume(p.box);
    case 'prism':
      return polygonArea(p.polygon) * Math.abs(p.to - p.from);
    case 'turned':
      return turnedPieces(p).reduce((sum, piece) => sum + piece.volume, 0);
    default: {
      const height = Math.hypot(p.to.x - p.from.x, p.to.y - p.from.y, p.to.z - p.from.z);
      const [r, t] = p.shape === 'cylinder' ? [p.radius, p.radius] : [p.radiusFrom, p.radiusTo];
      return (Math.PI * height * (r * r + r * t + t * t)) / 3;
    }
  }
}

/** Waste of a turned outline, one cone of the outline at a time: stock less the cone. */
function turnedPieces({ profile, section }: Extract<Primitive, { shape: 'turned' }>) {
  return profile.slice(1).map(([b, s], i) => {
    const [a, r] = profile[i]!;
    return { volume: (b - a) * (section - (Math.PI * (r * r + r * s + s * s)) / 3), at: (a + b) / 2 };
  });
}

/**
 * Volume of a part, mm3. Pockets are united exactly; holes and edge cuts are added in closed form, less what
 * a counterbore shares with its hole and two tapers with each other. Other crossings (a hole through a
 * groove) are counted twice: a few mm3 in practice; the exact solid answers in the second tier.
 */
export function partVolume(stock: StockShape, cuts: readonly Cut[]): number {
  const { size } = stock;
  const boxes = cuts
    .filter(c => c.kind !== 'hole')
    .flatMap(c => cutShapes(c, size).flatMap(p => (p.shape === 'box' ? [p.box] : [])));
  const prisms = cuts.flatMap(c =>
    c.kind === 'hole' || c.kind === 'end-cut' ? [] : wastesOf(c, size).filter(p => p.shape !== 'box'),
  );
  const ends = cuts.filter(c => c.kind === 'end-cut');
  const holes = cuts.filter(c => c.kind === 'hole');
  const gone =
    unionVolume(boxes, wholeBox(size)) +
    prisms.reduce((sum, p) => sum + primitiveVolume(p), 0) +
    ends.reduce((sum, c) => sum + sawnEnd(stock, c).volume, 0) -
    sharedByTapers(cuts.filter(c => c.kind === 'taper')) +
    holes.reduce((sum, h) => sum + holeVolume(h) * shareOfWall(h, stock), 0) -
    sharedByHoles(holes);
  return Math.max(0, stockVolume(stock) - gone);
}

/** Share of a square hole's depth that runs through metal: 1 but for tubes and open sections. */
function shareOfWall(h: HoleCut, stock: StockShape): number {
  const { size, round, wall } = stock;
  const axis = FACE_AXIS[h.face];
  if (wall === undefined || axis === 'x' || h.depth <= 0) return 1;
  const out = h.direction[axis] < 0 ? h.at[axis] - h.depth : h.at[axis];
  const [from, to] = [out, out + h.depth];
  const hollow = round ? roundHollow(size, wall) : hollowOf(stock);
  const other = axis === 'y' ? 'z' : 'y';
  if (!hollow || h.at[other] <= hollow.min[other] || h.at[other] >= hollow.max[other]) return 1;
  const open = Math.max(0, Math.min(to, hollow.max[axis]) - Math.max(from, hollow.min[axis]));
  return (h.depth - open) / h.depth;
}

/** The bore of a round tube as the box round it: what a hole through the middle meets. */
const roundHollow = (s: Size, wall: number): Box =>
  box(0, wall, wall, s.length, s.width - wall, s.thickness - wall);

/** Bore or slot, and the ring that a countersink takes around it. */
function holeVolume(h: HoleCut): number {
  const r = h.diameter / 2;
  const area = Math.PI * r * r + (h.slot ? h.diameter * h.slot.travel : 0);
  if (!h.countersink) return area * h.depth;
  const R = h.countersink.diameter / 2;
  const deep = (R - r) / Math.tan(((h.countersink.angle / 2) * Math.PI) / 180);
  return area * h.depth + (Math.PI * deep * (R * R + R * r - 2 * r * r)) / 3;
}

/** A counterbore lies on the same centre as the hole it widens. */
function sharedByHoles(holes: readonly HoleCut[]): number {
  let shared = 0;
  for (const [i, a] of holes.entries())
    for (const b of holes.slice(i + 1)) {
      const same = Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y, a.at.z - b.at.z) < 1e-6 && a.face === b.face;
      if (!same) continue;
      const [narrow, wide] = a.diameter <= b.diameter ? [a, b] : [b, a];
      const inside = narrow.slot
        ? Math.max(0, Math.min(narrow.slot.travel, wide.diameter - narrow.diameter)) * narrow.diameter
        : 0;
      shared += ((Math.PI / 4) * narrow.diameter ** 2 + inside) * Math.min(a.depth, b.depth);
    }
  return shared;
}

/** Two tapers on neighbouring faces share a wedge: the integral of the product of their depths along x. */
function sharedByTapers(tapers: readonly TaperCut[]): number {
  const depthAt = (t: TaperCut, x: number): number => {
    const along = (x - t.from) / (t.to - t.from);
    return along > 0 && along <= 1 ? t.amount * along : 0;
  };
  let shared = 0;
  for (const [i, a] of tapers.entries())
    for (const b of tapers.slice(i + 1)) {
      if (FACE_AXIS[a.face] === FACE_AXIS[b.face]) continue;
      const low = Math.max(Math.min(a.from, a.to), Math.min(b.from, b.to));
      const high = Math.min(Math.max(a.from, a.to), Math.max(b.from, b.to));
      if (high <= low) continue;
      const middle = (low + high) / 2;
      // A product of two straight lines: Simpson's rule is exact. Ends are taken just inside the tapers.
      const inside = (x: number): number => x + (middle - x) * 1e-12;
      const product = (x: number): number => depthAt(a, inside(x)) * depthAt(b, inside(x));
      shared += ((high - low) / 6) * (product(low) + 4 * product(middle) + product(high));
    }
  return shared;
}

/** Volume (mm3) and middle of a primitive. Holes stand for little, so a cone counts at half its depth. */
function bulk(p: Waste, whole: Box): { volume: number; middle: Vec3 } | undefined {
  if (p.shape === 'box') {
    const inside = intersectBoxes(p.box, whole);
    return inside && { volume: boxVolume(inside), middle: scale(add(inside.min, inside.max), 0.5) };
  }
  if (p.shape === 'turned') {
    const pieces = turnedPieces(p);
    const volume = pieces.reduce((sum, { volume: one }) => sum + one, 0);
    const x = pieces.reduce((sum, { volume: one, at }) => sum + one * at, 0) / (volume || 1);
    return { volume, middle: vec(x, p.centre[0], p.centre[1]) };
  }
  if (p.shape !== 'prism') return { volume: primitiveVolume(p), middle: scale(add(p.from, p.to), 0.5) };
  const area = polygonArea(p.polygon);
  if (area < 1e-9) return undefined;
  const [u, v] = polygonMiddle(p.polygon);
  const w = (p.from + p.to) / 2;
  const middle = p.axis === 'x' ? vec(w, u, v) : p.axis === 'y' ? vec(v, w, u) : vec(u, v, w);
  return { volume: area * Math.abs(p.to - p.from), middle };
}

/** Centroid of a simple polygon of some area. */
function polygonMiddle(polygon: readonly [number, number][]): [number, number] {
  let [twice, u, v] = [0, 0, 0];
  for (const [i, [a, b]] of polygon.entries()) {
    const [c, d] = polygon[(i + 1) % polygon.length]!;
    const cross = a * d - c * b;
    twice += cross;
    u += (a + c) * cross;
    v += (b + d) * cross;
  }
  return [u / (3 * twice), v / (3 * twice)];
}

/**
 * Centre of gravity in the part's frame, mm: the envelope less each thing taken away, by its own middle. Where
 * two cuts share room (the corners of a tenon, two tapers) that room is taken twice; it is small beside the rest.
 */
export function partCentre(stock: StockShape, cuts: readonly Cut[]): Vec3 {
  const { size } = stock;
  const whole = wholeBox(size);
  const { y, z } = sectionOf(stock);
  const middle = vec(size.length / 2, y, z);
  let mass = stockVolume(stock);
  let moment = scale(middle, mass);
  const takeOff = (gone: { volume: number; middle: Vec3 } | undefined): void => {
    if (!gone) return;
    mass -= gone.volume;
    moment = add(moment, scale(gone.middle, -gone.volume));
  };
  for (const cut of cuts)
    if (cut.kind === 'end-cut') takeOff(sawnEnd(stock, cut));
    else for (const shape of wastesOf(cut, size)) takeOff(bulk(shape, whole));
  return mass > 0 ? scale(moment, 1 / mass) : middle;
}
