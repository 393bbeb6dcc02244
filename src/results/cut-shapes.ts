import { type Box, box, boxVolume } from '../geometry/box.ts';
import { type Axis, add, dot, scale, unit, type Vec3, vec } from '../geometry/vector.ts';
import {
  type Cut,
  type EdgeCut,
  type EndCut,
  FACE_AXIS,
  type HoleCut,
  type LocalFace,
  POLYGON_AXES,
  type ProfileCut,
  type Size,
  type TaperCut,
  type TenonCut,
  type TurnedCut,
} from './cuts.ts';
import type { StockShape } from './kernel.ts';

/**
 * What a cut takes away, as plain solids in the part's frame (mm). One list serves mass, likeness of parts,
 * drawings and both solid kernels, so that none of them needs to know a cut's kind.
 */
export type Primitive =
  | { shape: 'box'; box: Box }
  | { shape: 'cylinder'; from: Vec3; to: Vec3; radius: number }
  | { shape: 'cone'; from: Vec3; to: Vec3; radiusFrom: number; radiusTo: number }
  /** A polygon (in the two other axes, cyclic order: y,z for x; z,x for y; x,y for z) drawn out along an axis. */
  | { shape: 'prism'; axis: Axis; from: number; to: number; polygon: [number, number][] }
  /** All beyond a plane: dot(normal, p) above `offset`. */
  | { shape: 'beyond'; normal: Vec3; offset: number }
  /**
   * All outside a turned outline, along x about the part's own axis: stations and radii. `centre` is y and z of
   * the axis, `reach` the radius beyond which nothing stands, `section` the stock's own area (mm2).
   */
  | {
      shape: 'turned';
      profile: [number, number][];
      centre: [number, number];
      reach: number;
      section: number;
    };

export function cutShapes(cut: Cut, size: Size): Primitive[] {
  switch (cut.kind) {
    case 'dovetail':
    case 'curve':
    case 'cut-out':
    case 'bevel':
    case 'slant':
    case 'scribe':
      return [{ shape: 'prism', axis: cut.axis, from: cut.from, to: cut.to, polygon: cut.polygon }];
    case 'turned':
      return [turnedShape(cut, size)];
    case 'bent':
      return cut.air.map(polygon => ({ shape: 'prism', axis: 'y', from: 0, to: size.width, polygon }));
    case 'tenon':
      return tenonShapes(cut, size);
    case 'end-cut':
      return endShapes(cut, size);
    case 'hole':
      return holeShapes(cut);
    case 'chamfer':
    case 'round-over':
      return cut.edges.map(e => edgeShape(cut, e.a, e.b, size));
    case 'taper':
      return [taperShape(cut, size)];
    default:
      return [{ shape: 'box', box: cut.box }];
  }
}

function tenonShapes(cut: TenonCut, s: Size): Primitive[] {
  const [x0, x1] = cut.end === 'end1' ? [0, cut.length] : [s.length - cut.length, s.length];
  const boxes: Box[] = [];
  const { y, z, haunch } = cut;
  const edge = (axis: 'y' | 'z', side: 'low' | 'high', amount: number): void => {
    if (amount <= 0) return;
    const extent = axis === 'y' ? s.width : s.thickness;
    const [a, b] = side === 'low' ? [0, amount] : [extent - amount, extent];
    const spared = haunch && axis !== cut.cheeks && haunch.side === side ? haunch.length : 0;
    const [from, to] = cut.end === 'end1' ? [x0, x1 - spared] : [x0 + spared, x1];
    boxes.push(axis === 'y' ? box(from, a, 0, to, b, s.thickness) : box(from, 0, a, to, s.width, b));
  };
  for (const side of ['low', 'high'] as const) {
    edge('y', side, y[side]);
    edge('z', side, z[side]);
  }
  const shapes: Primitive[] = boxes.map(b => ({ shape: 'box', box: b }));
  if (cut.mitredTip) shapes.push(mitredTip(cut, s));
  return shapes;
}

/** Tip cut at 45 degrees across the tenon's thickness, so that two tenons share one leg. */
function mitredTip(cut: TenonCut, s: Size): Primitive {
  const tip = cut.end === 'end1' ? 0 : s.length;
  const inwards = cut.end === 'end1' ? 1 : -1;
  const [low, high] =
    cut.cheeks === 'z' ? [cut.z.low, s.thickness - cut.z.high] : [cut.y.low, s.width - cut.y.high];
  const thick = high - low;
  const [sharp, cutAway] = cut.mitredTip?.side === 'low' ? [low, high] : [high, low];
  const triangle: [number, number][] = [
    [tip, sharp],
    [tip, cutAway],
    [tip + inwards * thick, cutAway],
  ];
  return cut.cheeks === 'z'
    ? { shape: 'prism', axis: 'y', from: 0, to: s.width, polygon: triangle.map(([x, z]) => [z, x]) }
    : { shape: 'prism', axis: 'z', from: 0, to: s.thickness, polygon: triangle };
}

/** Positive mitre takes more from the face edge, positive bevel more from the face; the long point keeps the length. */
function endShapes(cut: EndCut, s: Size): Primitive[] {
  if (cut.mitre !== 0 && cut.bevel !== 0) return [compoundEnd(cut, s)];
  const end = cut.end === 'end1' ? 0 : s.length;
  const inwards = cut.end === 'end1' ? 1 : -1;
  const wedge = (degrees: number, extent: number): [number, number][] => {
    const run = Math.tan((Math.abs(degrees) * Math.PI) / 180) * extent;
    const short = degrees > 0 ? extent : 0;
    return [
      [end, 0],
      [end, extent],
      [end + inwards * run, short],
    ];
  };
  const shapes: Primitive[] = [];
  if (cut.mitre !== 0)
    shapes.push({ shape: 'prism', axis: 'z', from: 0, to: s.thickness, polygon: wedge(cut.mitre, s.width) });
  if (cut.bevel !== 0)
    shapes.push({
      shape: 'prism',
      axis: 'y',
      from: 0,
      to: s.width,
      polygon: wedge(cut.bevel, s.thickness).map(([x, z]) => [z, x]),
    });
  return shapes;
}

/** A compound end: all beyond one plane through the long point. */
function compoundEnd(cut: EndCut, s: Size): Primitive {
  const [m, b] = [cut.mitre, cut.bevel].map(a => Math.tan((a * Math.PI) / 180)) as [number, number];
  const raw = vec(cut.end === 'end1' ? -1 : 1, m, b);
  const long = vec(cut.end === 'end1' ? 0 : s.length, m > 0 ? 0 : s.width, b > 0 ? 0 : s.thickness);
  const normal = unit(raw);
  return { shape: 'beyond', normal, offset: dot(normal, long) };
}

function turnedShape(cut: TurnedCut, s: Size): Primitive {
  return {
    shape: 'turned',
    profile: cut.profile.map(p => [p.at, p.diameter / 2]),
    centre: [s.width / 2, s.thickness / 2],
    reach: Math.hypot(s.width, s.thickness) / 2 + 1,
    section: stockVolume({ size: { ...s, length: 1 }, round: cut.round }),
  };
}

/** How far before its centre a slanted drill meets the face: its rim must be through before the hole counts as open. */
function mouth({ face, direction, diameter }: HoleCut): number {
  const square = Math.abs(direction[FACE_AXIS[face]]);
  return square > 1 - 1e-9 || square < 0.05 ? 0 : (diameter / 2) * (Math.sqrt(1 - square * square) / square);
}

function holeShapes(cut: HoleCut): Primitive[] {
  const to = add(cut.at, scale(cut.direction, cut.depth));
  const radius = cut.diameter / 2;
  const shapes: Primitive[] = [];
  if (cut.slot) {
    const half = cut.slot.travel / 2;
    const along = vec(
      cut.slot.along === 'x' ? half : 0,
      cut.slot.along === 'y' ? half : 0,
      cut.slot.along === 'z' ? half : 0,
    );
    for (const sign of [-1, 1]) {
      const shift = scale(along, sign);
      shapes.push({ shape: 'cylinder', from: add(cut.at, shift), to: add(to, shift), radius });
    }
    const points = [cut.at, to].flatMap(p => [add(p, along), add(p, scale(along, -1))]);
    const side = ['x', 'y', 'z'].find(
      k => k !== cut.slot?.along && Math.abs(cut.direction[k as Axis]) < 0.5,
    ) as Axis;
    const span = (k: Axis): [number, number] =>
      k === side
        ? [cut.at[k] - radius, cut.at[k] + radius]
        : [Math.min(...points.map(p => p[k])), Math.max(...points.map(p => p[k]))];
    const [x, y, z] = [span('x'), span('y'), span('z')];
    shapes.push({ shape: 'box', box: box(x[0], y[0], z[0], x[1], y[1], z[1]) });
  } else shapes.push({ shape: 'cylinder', from: add(cut.at, scale(cut.direction, -mouth(cut))), to, radius });
  if (cut.countersink) {
    const { diameter, angle } = cut.countersink;
    const deep = (diameter - cut.diameter) / 2 / Math.tan(((angle / 2) * Math.PI) / 180);
    shapes.push({
      shape: 'cone',
      from: cut.at,
      to: add(cut.at, scale(cut.direction, deep)),
      radiusFrom: diameter / 2,
      radiusTo: radius,
    });
  }
  return shapes;
}

const extentOf = (s: Size): Record<Axis, number> => ({ x: s.length, y: s.width, z: s.thickness });
const atFace = (face: LocalFace, s: Size): number =>
  face === 'end2' || face === 'faceEdge' || face === 'face' ? extentOf(s)[FACE_AXIS[face]] : 0;

const ARC_STEPS = 6;

/** Waste of one chamfered or rounded edge. Ends run the edge's whole length. */
function edgeShape(cut: EdgeCut, a: LocalFace, b: LocalFace, s: Size): Primitive {
  const axis = (['x', 'y', 'z'] as const).find(k => k !== FACE_AXIS[a] && k !== FACE_AXIS[b])!;
  const [first] = POLYGON_AXES[axis];
  const [p, q2] = FACE_AXIS[a] === first ? [a, b] : [b, a];
  const corner: [number, number] = [atFace(p, s), atFace(q2, s)];
  const inP = corner[0] === 0 ? 1 : -1;
  const inQ = corner[1] === 0 ? 1 : -1;
  const polygon: [number, number][] = [corner];
  if (cut.kind === 'chamfer')
    polygon.push([corner[0] + inP * cut.size, corner[1]], [corner[0], corner[1] + inQ * cut.size]);
  else
    for (let i = 0; i <= ARC_STEPS; i++) {
      const t = ((Math.PI / 2) * i) / ARC_STEPS;
      polygon.push([
        corner[0] + inP * cut.size * (1 - Math.sin(t)),
        corner[1] + inQ * cut.size * (1 - Math.cos(t)),
      ]);
    }
  return { shape: 'prism', axis, from: 0, to: extentOf(s)[axis], polygon };
}

function taperShape(cut: TaperCut, s: Size): Primitive {
  const high = cut.face === 'faceEdge' || cut.face === 'face';
  const acrossY = cut.face === 'faceEdge' || cut.face === 'backEdge';
  const at = high ? (acrossY ? s.width : s.thickness) : 0;
  const inner = at + (high ? -cut.amount : cut.amount);
  const triangle: [number, number][] = [
    [cut.from, at],
    [cut.to, at],
    [cut.to, inner],
  ];
  return acrossY
    ? { shape: 'prism', axis: 'z', from: 0, to: s.thickness, polygon: triangle }
    : { shape: 'prism', axis: 'y', from: 0, to: s.width, polygon: triangle.map(([x, z]) => [z, x]) };
}

/** How far a profile cut reaches along an axis of the part, mm. */
export function profileSpan(cut: ProfileCut, axis: Axis): [number, number] {
  if (axis === cut.axis) return [cut.from, cut.to];
  const which = POLYGON_AXES[cut.axis][0] === axis ? 0 : 1;
  const at = cut.polygon.map(p => p[which]);
  return [Math.min(...at), Math.max(...at)];
}

/**
 * What a square tube, an angle or a channel lacks of its envelope, along its whole length: a box in the part's frame.
 * Corners are taken as sharp, flanges as parallel. Nothing where the section is solid or round.
 */
export function hollowOf(stock: StockShape): Box | undefined {
  const { size, round, wall, section } = stock;
  if (round || wall === undefined || !(wall > 0)) return undefined;
  const { length, width, thickness } = size;
  const turned = section === 'angle' && (stock.mirrored ?? false);
  const low = turned ? 0 : wall;
  const high = section === 'angle' && !turned ? width : width - wall;
  const top = section === undefined ? thickness - wall : thickness;
  return high > low && top > wall ? box(0, low, wall, length, high, top) : undefined;
}

/** Volume of the uncut envelope: solid, round, tube or open section. */
export function stockVolume(stock: StockShape): number {
  const { size, round, wall } = stock;
  const { length, width, thickness } = size;
  if (!round) {
    const hollow = hollowOf(stock);
    return length * width * thickness - (hollow ? boxVolume(hollow) : 0);
  }
  const inner = wall === undefined || !(wall > 0) ? 0 : Math.max(0, width - 2 * wall);
  return (Math.PI / 4) * (width * width - inner * inner) * length;
}
