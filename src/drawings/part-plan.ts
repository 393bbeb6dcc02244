import { WORLD } from '../geometry/frame.ts';
import { type Vec3, vec } from '../geometry/vector.ts';
import { formatLength } from '../quantities/length.ts';
import { profileSpan } from '../results/cut-shapes.ts';
import type { Size } from '../results/cuts.ts';
import type { Instance } from '../results/piece.ts';
import type { ShowOptions } from '../results/show.ts';
import { breakLine } from './break-line.ts';
import { type Fold, fold } from './fold.ts';
import { inkOf } from './ink.ts';
import { type DisplayList, type Item, line, type Point } from './list.ts';
import { list, type Manner } from './manner.ts';
import { faceSideMark } from './marks.ts';
import { hidden } from './part-hidden.ts';
import { cutPlanes } from './planes.ts';
import { type Projection, projection } from './projection.ts';
import { lyingRod, type Station, standingRod } from './rod.ts';
import { seedOf } from './seeded.ts';
import { spreadLabels } from './spread.ts';

export interface PartPlanOptions {
  width: number;
  height: number;
  manner: Manner;
  show: ShowOptions;
  /** Scales that may be taken, best first; what fits when none does. */
  scales?: readonly number[];
}

/** The face side looked at, face edge up; and the face edge above it, face side down, so that they share an arris. */
const FACE: Projection = projection(vec(1, 0, 0), vec(0, 1, 0));
const EDGE: Projection = projection(vec(1, 0, 0), vec(0, 0, -1));

interface Laid {
  along: Fold;
  scale: number;
}

export interface PartPlan extends DisplayList {
  scale: number;
  broken: boolean;
}

/**
 * One part for marking out: its face edge and its face side, long plain stretches left out, with rods that carry what is
 * gauged from end 1, from the face edge and from the face side. Cuts on the far side are dashed.
 */
export function partPlan(instance: Instance, options: PartPlanOptions): PartPlan {
  const { manner, show } = options;
  const { px, text } = manner;
  const { size } = instance;
  const loose: Instance = { ...instance, frame: WORLD };
  const stations = stationsOf(instance);
  const room = {
    left: manner.rod + text * 3 + 26 * px,
    foot: manner.rod + 24 * px + text * 2.8,
    gap: 5 * px,
  };
  const laid = layOut([...stations.x, ...rimsOf(instance)], size, options, room);
  const { scale, along } = laid;
  const x = (at: number): number => room.left + along.at(at) * scale;
  const edgeTop = text;
  const faceTop = edgeTop + size.thickness * scale + room.gap;
  const edgePage = (p: Vec3): Point => [x(p.x), edgeTop + p.z * scale];
  const facePage = (p: Vec3): Point => [x(p.x), faceTop + (size.width - p.y) * scale];
  const ink = { scale, origin: [0, 0] as Point, manner };
  const foot = faceTop + size.width * scale;
  const rodX = room.left - manner.rod - 12 * px;
  const right = x(size.length);
  const items: Item[] = [
    ...inkOf([loose], EDGE, { ...ink, toPage: edgePage }),
    ...inkOf([loose], FACE, { ...ink, toPage: facePage }),
    ...instance.cuts.flatMap(cut => hidden(cut, size, { edgePage, facePage, px, scale })),
    ...along.breaks.map(b => breakLine((x(b.from) + x(b.to)) / 2, edgeTop, foot, px)),
    ...standingPair(
      { places: stations.z, total: size.thickness, at: [rodX, edgeTop], zero: 'foot' },
      { places: stations.y, total: size.width, at: [rodX, faceTop], zero: 'top' },
      scale,
      { manner, show },
    ),
    alongRod(stations.x, x, foot + 10 * px, { manner, show }, along),
    // The loop stands on the face side with its tail at the face edge: turned over, as the arris is above it.
    ...(instance.round
      ? []
      : [
          faceSideMark(
            markPlace(instance, stations.x, x, faceTop),
            -Math.min(0.8 * px, (size.width * scale) / 44),
          ),
        ]),
  ].flat();
  const height = foot + room.foot;
  return {
    ...list(manner, `${instance.name}, face edge and face side`, right + text * 1.2, height, items),
    scale,
    broken: along.breaks.length > 0,
  };
}

interface Stations {
  x: number[];
  /** From the face edge. */
  y: number[];
  /** From the face side. */
  z: number[];
}

/** Places that are marked: shoulders, edges of pockets, centres of holes, tapers and sawn ends. */
function stationsOf({ cuts, size, round }: Instance): Stations {
  const x = [0, size.length];
  const y = [0, size.width];
  const z = [0, size.thickness];
  for (const cut of cuts) {
    if (cut.kind === 'tenon') {
      x.push(cut.end === 'end1' ? cut.length : size.length - cut.length);
      y.push(cut.y.high, size.width - cut.y.low);
      z.push(cut.z.high, size.thickness - cut.z.low);
    } else if (cut.kind === 'hole') {
      x.push(cut.at.x);
      if (Math.abs(cut.direction.z) > 0.9 || Math.abs(cut.direction.x) > 0.9) y.push(size.width - cut.at.y);
      if (Math.abs(cut.direction.y) > 0.9 || Math.abs(cut.direction.x) > 0.9)
        z.push(size.thickness - cut.at.z);
    } else if ('box' in cut) {
      x.push(cut.box.min.x, cut.box.max.x);
      y.push(size.width - cut.box.max.y, size.width - cut.box.min.y);
      z.push(size.thickness - cut.box.max.z, size.thickness - cut.box.min.z);
    } else if (cut.kind === 'taper') {
      x.push(cut.from, cut.to);
    } else if (cut.kind === 'turned') {
      x.push(...cut.profile.map(p => p.at));
    } else if ('polygon' in cut) {
      const [along, across, deep] = (['x', 'y', 'z'] as const).map(k => profileSpan(cut, k));
      x.push(...along!);
      y.push(...across!.map(v => size.width - v));
      z.push(...deep!.map(v => size.thickness - v));
    }
  }
  for (const plane of cutPlanes(
    cuts.filter(c => c.kind === 'end-cut'),
    size,
  ))
    x.push(...shortPoints(plane, size));
  const within = (list: number[], most: number): number[] =>
    [...new Set(list.map(v => Math.round(v * 100) / 100))]
      .filter(v => v >= 0 && v <= most)
      .sort((a, b) => a - b);
  return {
    x: within(x, size.length),
    y: round ? within([0, size.width], size.width) : within(y, size.width),
    z: round ? [] : within(z, size.thickness),
  };
}

/** Close enough that no break falls between two of them, mm. */
const UNBROKEN = 5;

const unbroken = (from: number, to: number): number[] =>
  Array.from({ length: Math.ceil((to - from) / UNBROKEN) + 1 }, (_, i) => Math.min(to, from + i * UNBROKEN));

/** Rims of holes along the part, and all along a curve or a turning: a break must not fall within one. */
const rimsOf = ({ cuts, size }: Instance): number[] =>
  cuts
    .flatMap(cut => {
      if (cut.kind === 'turned') return unbroken(cut.profile[0]!.at, cut.profile.at(-1)!.at);
      if ('polygon' in cut && cut.axis !== 'x') return unbroken(...profileSpan(cut, 'x'));
      if (cut.kind !== 'hole') return [];
      const reach = Math.max(cut.diameter, cut.countersink?.diameter ?? 0) / 2;
      return [cut.at.x - reach, cut.at.x + reach];
    })
    .filter(at => at > 0 && at < size.length);

/** In the widest stretch of full width without a cut, a little after its beginning. */
function markPlace(
  instance: Instance,
  places: readonly number[],
  x: (at: number) => number,
  top: number,
): Point {
  const tapered = (a: number, b: number): boolean =>
    instance.cuts.some(c => c.kind === 'taper' && a < Math.max(c.from, c.to) && b > Math.min(c.from, c.to));
  let best: Point = [x(places[0] ?? 0), top];
  let widest = 0;
  for (let i = 1; i < places.length; i++) {
    const [from, to] = [places[i - 1]!, places[i]!];
    const [a, b] = [x(from), x(to)];
    if (b - a > widest && !tapered(from, to)) {
      widest = b - a;
      best = [a + (b - a) * 0.12, top];
    }
  }
  return best;
}

/** Where a sawn end crosses the long arrises: its long and its short point. */
function shortPoints(plane: { normal: Vec3; offset: number }, size: Size): number[] {
  if (Math.abs(plane.normal.x) < 1e-6) return [];
  return [0, size.width].map(y => (plane.offset - plane.normal.y * y) / plane.normal.x);
}

function layOut(
  x: readonly number[],
  size: Size,
  options: PartPlanOptions,
  room: { left: number; foot: number; gap: number },
): Laid {
  const wide = options.width - room.left - options.manner.text * 1.2;
  const high = options.height - room.foot - room.gap - options.manner.text;
  const laid = (scale: number): Laid & { fits: boolean } => {
    const along = fold(x, (wide * 0.3) / scale, (wide * 0.16) / scale);
    return {
      along,
      scale,
      fits: along.total * scale <= wide && (size.width + size.thickness) * scale <= high,
    };
  };
  const found = (options.scales ?? []).map(laid).find(l => l.fits);
  if (found) return found;
  const whole = Math.min(wide / size.length, high / (size.width + size.thickness));
  return { along: fold([0, size.length], Number.POSITIVE_INFINITY, 0), scale: whole };
}

interface Dress {
  manner: Manner;
  show: ShowOptions;
}

interface Upright {
  places: readonly number[];
  total: number;
  at: Point;
  zero: 'foot' | 'top';
}

/** Two rods under each other in one column: they share one spread of labels. */
function standingPair(upper: Upright, lower: Upright, scale: number, { manner, show }: Dress): Item[] {
  const most = (rod: Upright): number => (rod.total * scale) / (manner.text * 0.4);
  const rods = [upper, lower]
    .filter(rod => rod.places.length > 0)
    .map(rod => {
      const stations = rod.places.map(v => ({
        at: v,
        label: formatLength(v, show),
        strong: v === rod.total,
      }));
      const kept = thinned(stations, rod.total, most(rod));
      const down = (v: number): number => rod.at[1] + (rod.zero === 'top' ? v : rod.total - v) * scale;
      return { rod, stations: kept, wanted: kept.map(s => down(s.at)).sort((a, b) => a - b) };
    });
  const spread = spreadLabels(
    rods.flatMap(r => r.wanted),
    manner.text * 1.22,
    manner.text * 0.6,
  );
  let from = 0;
  return rods.flatMap(({ rod, stations, wanted }) => {
    const places = spread.slice(from, from + wanted.length);
    from += wanted.length;
    return standingRod({
      at: rod.at,
      length: rod.total * scale,
      total: rod.total,
      stations,
      places,
      seed: seedOf(`${rod.zero} ${rod.total}`),
      manner,
      zero: rod.zero,
    });
  });
}

/** Both ends and, of the rest, no more than can be told apart. */
const thinned = (stations: readonly Station[], total: number, most: number): Station[] => {
  const kept: Station[] = [];
  for (const station of stations) {
    const last = kept.at(-1);
    if (last && last.at !== 0 && station.at !== total && station.at - last.at < total / most) continue;
    kept.push(station);
  }
  return kept;
};

/** The rod from end 1, broken where the part is. */
function alongRod(
  places: readonly number[],
  x: (at: number) => number,
  top: number,
  { manner, show }: Dress,
  along: Fold,
): Item[] {
  const { px, text } = manner;
  const [first, last] = [places[0] ?? 0, places.at(-1) ?? 0];
  const left = x(first);
  const length = Math.max(x(last) - left, px);
  const spread = spreadLabels(places.map(x), manner.least, left - text * 0.5, left + length + text * 0.5);
  return [
    ...lyingRod({
      at: [left, top],
      length,
      total: length,
      stations: places.map(v => ({
        at: x(v) - left,
        label: formatLength(v, show),
        strong: v === last,
      })),
      places: spread,
      seed: seedOf(`along ${last}`),
      manner,
    }),
    ...along.breaks.flatMap(b => breakLine((x(b.from) + x(b.to)) / 2, top, top + manner.rod, px)),
    line([left, top - 4 * px], [left, top], { stroke: 'edge' }),
  ];
}
