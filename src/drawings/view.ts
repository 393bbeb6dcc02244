import { corners } from '../geometry/box.ts';
import { dot, type Vec3, vec } from '../geometry/vector.ts';
import { formatLength } from '../quantities/length.ts';
import type { Instance, Piece } from '../results/piece.ts';
import type { ShowOptions } from '../results/show.ts';
import { inkOf } from './ink.ts';
import { type DisplayList, type Item, line, type Point, polyline } from './list.ts';
import { list, type Manner } from './manner.ts';
import { ELEVATIONS, type Elevation, onPage, type Projection, turned } from './projection.ts';
import { lyingRod, type Station, sizeRod, standingRod } from './rod.ts';
import { seedOf } from './seeded.ts';

export interface ViewOptions {
  /** Space to draw in, list units. */
  width: number;
  height: number;
  manner: Manner;
  show: ShowOptions;
  picked?: string;
}

/** Keys, wedges and hardware have no place in the piece: they are not drawn in it. */
const placed = (piece: Piece): Instance[] => piece.instances.filter(i => !i.loose);

interface Frame2 {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

const extent = (view: Projection, points: readonly Vec3[]): Frame2 => {
  const flat = points.map(onPage(view, 1, [0, 0]));
  const xs = flat.map(p => p[0]);
  const ys = flat.map(p => p[1]);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
};

/** Azimuth and elevation of the turned view that shows most pieces well. */
export const TURNED = { azimuth: 33, elevation: 17 };

/**
 * The piece turned, with its overall sizes inside three small rods projected from it: width and depth under the
 * floor outline, height at the near left corner.
 */
export function turnedView(
  piece: Piece,
  options: ViewOptions & { azimuth?: number; elevation?: number; rods?: boolean },
): DisplayList {
  const { manner } = options;
  const { px } = manner;
  const view = turned(options.azimuth ?? TURNED.azimuth, options.elevation ?? TURNED.elevation);
  const rods = options.rods ?? true;
  const room = rods ? { left: manner.rod + 34 * px, foot: manner.rod + 22 * px } : { left: 0, foot: 0 };
  const pad = 4 * px;
  const e = extent(view, corners(piece.bounds));
  const scale = Math.min(
    (options.width - room.left - 2 * pad) / Math.max(e.right - e.left, 1),
    (options.height - room.foot - 2 * pad) / Math.max(e.bottom - e.top, 1),
  );
  const origin: Point = [room.left + pad - e.left * scale, pad - e.top * scale];
  const width = room.left + 2 * pad + (e.right - e.left) * scale;
  const height = room.foot + 2 * pad + (e.bottom - e.top) * scale;
  const ink = inkOf(placed(piece), view, { ...options, scale, origin });
  const overall = rods ? overallRods(piece, view, scale, origin, options) : [];
  return list(manner, 'The piece, turned', width, height, [...overall, ...ink]);
}

function overallRods(
  piece: Piece,
  view: Projection,
  scale: number,
  origin: Point,
  { manner, show }: ViewOptions,
): Item[] {
  const { min, max } = piece.bounds;
  const { px } = manner;
  const p = onPage(view, scale, origin);
  const [left, near, far] = [
    p(vec(min.x, min.y, min.z)),
    p(vec(max.x, min.y, min.z)),
    p(vec(max.x, max.y, min.z)),
  ];
  const back = p(vec(min.x, max.y, min.z));
  const top = p(vec(min.x, min.y, max.z));
  const foot = Math.max(left[1], near[1], far[1]) + 14 * px;
  const standing = left[0] - manner.rod - 20 * px;
  const figure = (value: number): string => formatLength(value, show);
  const drop = (at: Point): Item => line([at[0], at[1] + 2 * px], [at[0], foot - 3 * px]);
  const level = (at: Point): Item => line([standing + manner.rod + 3 * px, at[1]], [left[0] - 3 * px, at[1]]);
  return [
    polyline([left, near, far], { stroke: 'thin' }),
    polyline([far, back, left], { stroke: 'hidden' }),
    drop(left),
    drop(near),
    drop(far),
    ...sizeRod([left[0], foot], near[0] - left[0], figure(max.x - min.x), seedOf('width'), manner),
    ...sizeRod([near[0], foot], far[0] - near[0], figure(max.y - min.y), seedOf('depth'), manner),
    ...sizeRod([standing, top[1]], left[1] - top[1], figure(max.z - min.z), seedOf('height'), manner, true),
    level(left),
    level(top),
  ];
}

const AXES_OF: Record<Elevation, readonly ['x' | 'y', 'y' | 'z']> = {
  front: ['x', 'z'],
  end: ['y', 'z'],
  plan: ['x', 'y'],
};

const TITLES: Record<Elevation, string> = {
  front: 'From the front',
  end: 'From the right',
  plan: 'From above',
};

/** An elevation to scale with a rod under it and one beside it, carrying the main faces of the parts. */
export function elevationView(
  piece: Piece,
  which: Elevation,
  options: ViewOptions & { scale?: number; stations?: number },
): DisplayList {
  const { manner, show } = options;
  const { px, text } = manner;
  const view = ELEVATIONS[which];
  const room = elevationRoom(manner, show);
  const pad = text * 0.8;
  const e = extent(view, corners(piece.bounds));
  const scale = options.scale ?? elevationScale(piece, which, options);
  const origin: Point = [room.left + pad - e.left * scale, pad - e.top * scale];
  const [across, up] = AXES_OF[which];
  const wide = (e.right - e.left) * scale;
  const high = (e.bottom - e.top) * scale;
  const most = options.stations ?? 12;
  const at: Point = [origin[0] + e.left * scale, origin[1] + e.top * scale];
  const apart = (text * 0.3) / scale;
  const lying = mainStations(piece, across, most, Math.max(2, Math.floor(wide / manner.least)), show, apart);
  const standing = mainStations(piece, up, most, Math.max(2, Math.floor(high / (text * 1.22))), show, apart);
  const items: Item[] = [
    ...lyingRod({
      at: [at[0], at[1] + high + 14 * px],
      length: wide,
      total: e.right - e.left,
      stations: lying,
      seed: seedOf(`${which} lying`),
      manner,
    }),
    ...standingRod({
      at: [at[0] - manner.rod - 14 * px, at[1]],
      length: high,
      total: e.bottom - e.top,
      stations: standing,
      seed: seedOf(`${which} standing`),
      manner,
    }),
    ...inkOf(placed(piece), view, { ...options, scale, origin }),
  ];
  return list(manner, TITLES[which], room.left + 2 * pad + wide, room.foot + 2 * pad + high, items);
}

/** Room beside and under an elevation for its rods and their figures. */
const elevationRoom = ({ rod, text, px }: Manner, { unit }: ShowOptions): { left: number; foot: number } => {
  // Inches are written with their fractions: `54 21/64`.
  const letters = unit === 'in' || unit === 'ft' ? 4.4 : 3;
  return { left: rod + text * letters + 30 * px, foot: rod + text * (letters - 0.4) + 34 * px };
};

/** Size an elevation takes with its rods at a scale, list units: to choose one scale for several. */
export function elevationSize(
  piece: Piece,
  which: Elevation,
  { manner, show }: Pick<ViewOptions, 'manner' | 'show'>,
  scale: number,
): { width: number; height: number } {
  const room = elevationRoom(manner, show);
  const e = extent(ELEVATIONS[which], corners(piece.bounds));
  const pad = 1.6 * manner.text;
  return {
    width: room.left + pad + (e.right - e.left) * scale,
    height: room.foot + pad + (e.bottom - e.top) * scale,
  };
}

/** The largest scale at which an elevation fits a space. */
function elevationScale(piece: Piece, which: Elevation, options: ViewOptions): number {
  const { width, height } = options;
  const bare = elevationSize(piece, which, options, 0);
  const e = extent(ELEVATIONS[which], corners(piece.bounds));
  return Math.min(
    (width - bare.width) / Math.max(e.right - e.left, 1),
    (height - bare.height) / Math.max(e.bottom - e.top, 1),
  );
}

/**
 * Faces of the parts along one axis of the world, measured from the piece's own low side. Where they are more than
 * there is room for, those of the largest parts stay; both ends always do. Faces nearer than `apart` (mm) to one of a
 * larger part are left to it.
 */
export function mainStations(
  piece: Piece,
  axis: 'x' | 'y' | 'z',
  most: number,
  fit: number,
  show: ShowOptions,
  apart = 0.05,
): Station[] {
  const zero = piece.bounds.min[axis];
  const total = piece.bounds.max[axis] - zero;
  const places = new Map<number, number>();
  for (const instance of placed(piece)) {
    const [low, high] = spanOf(instance, axis);
    const size = instance.size.length * instance.size.width * instance.size.thickness;
    for (const place of [low, high]) {
      const at = Math.round((place - zero) * 10) / 10;
      places.set(at, Math.max(places.get(at) ?? 0, size));
    }
  }
  const chosen: number[] = [0, total];
  for (const [at] of [...places].sort((a, b) => b[1] - a[1] || a[0] - b[0])) {
    if (chosen.length >= Math.min(most, fit)) break;
    if (chosen.every(other => Math.abs(other - at) > apart)) chosen.push(at);
  }
  return chosen
    .sort((a, b) => a - b)
    .map(at => ({ at, label: formatLength(at, show), strong: at === total }));
}

/** Where the body of an instance, between its shoulders, begins and ends along a world axis. */
function spanOf(instance: Instance, axis: 'x' | 'y' | 'z'): [number, number] {
  const { frame, size, added } = instance;
  const low = vec(added.end1 ?? 0, added.backEdge ?? 0, added.back ?? 0);
  const high = vec(
    size.length - (added.end2 ?? 0),
    size.width - (added.faceEdge ?? 0),
    size.thickness - (added.face ?? 0),
  );
  const ways = { x: frame.x[axis], y: frame.y[axis], z: frame.z[axis] };
  const reach = (v: Vec3): number => frame.origin[axis] + dot(vec(ways.x, ways.y, ways.z), v);
  const all = corners({ min: low, max: high }).map(reach);
  return [Math.min(...all), Math.max(...all)];
}
