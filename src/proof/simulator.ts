/**
 * Repeats the cuts of the set-up cards on a blank, from the figures of the cards alone: the settings, how the work
 * is laid, the tool's width and its moves. It knows nothing of joints, nor of how the settings were made, so that a
 * wrong figure shows as wood that should be there and is not.
 *
 * Coordinates are those of the part: x along from end 1, y across from the back edge, z up from the back face, mm.
 */

import type { Box } from '../geometry/box.ts';
import type { Axis } from '../geometry/vector.ts';
import type { LocalFace, Size } from '../results/cuts.ts';
import type { Lay, Run, SetUp } from '../results/setups.ts';
import { AXIS, figure, inFrom } from './simulator-card.ts';
import type { Region } from './simulator-regions.ts';
import {
  betweenBores,
  bevelRegions,
  boreRegion,
  type Drawn,
  edgeRegion,
  endRegions,
  type HoleFigures,
  outlineRegions,
  sunkRegion,
  taperRegions,
  turnedRegions,
  undercutRegions,
} from './simulator-shapes.ts';

/** A rectangular way that a tool has cut, and the set-up that cut it. */
export interface Way {
  setUp: string;
  cut: string;
  box: Box;
}

/** A round hole: where its centre enters, which way it goes, how deep. */
export interface Bore {
  setUp: string;
  cut: string;
  face: LocalFace;
  at: Partial<Record<Axis, number>>;
  diameter: number;
  depth: number;
}

export interface Sunk {
  setUp: string;
  cut: string;
  face: LocalFace;
  at: Partial<Record<Axis, number>>;
  diameter: number;
}

export interface Tapered {
  setUp: string;
  cut: string;
  face: LocalFace;
  end: LocalFace;
  from: number;
  amount: number;
}

export interface Sawn {
  setUp: string;
  cut: string;
  end: LocalFace;
  mitre: number;
  bevel: number;
  /** Faces on which the end stays long. */
  long: readonly LocalFace[];
}

export interface Moulded {
  setUp: string;
  cut: string;
  profile: 'chamfer' | 'round-over';
  size: number;
  edges: [LocalFace, LocalFace][];
}

/** What a card brings one size to, from the face that meets fence, stop or table. */
export interface Sized {
  setUp: string;
  cut: string;
  axis: Axis;
  size: number;
}

/** A region taken away that is no rectangular way. */
export interface Taken {
  setUp: string;
  cut: string;
  region: Region;
}

export interface CutByCards {
  ways: Way[];
  sizes: Sized[];
  taken: Taken[];
  bores: Bore[];
  sunk: Sunk[];
  tapers: Tapered[];
  edges: Moulded[];
  ends: Sawn[];
  /** Cuts whose card does not say enough to repeat them. */
  notSimulated: { setUp: string; cut: string; reason: string }[];
}

/** Everything the cards take from one blank, in the order of the set-ups. */
export function cutByCards(instance: string, blank: Size, setUps: readonly SetUp[]): CutByCards {
  const result: CutByCards = {
    ways: [],
    sizes: [],
    taken: [],
    bores: [],
    sunk: [],
    tapers: [],
    edges: [],
    ends: [],
    notSimulated: [],
  };
  for (const setUp of [...setUps].sort((a, b) => a.number - b.number))
    for (const run of setUp.runs) {
      if (run.instance !== instance) continue;
      const reason = repeat(result, blank, setUp, run);
      if (reason !== undefined) result.notSimulated.push({ setUp: setUp.id, cut: run.cut, reason });
    }
  return result;
}

/** Adds what one run takes away; the reason when the card does not say enough to repeat it. */
function repeat(result: CutByCards, blank: Size, setUp: SetUp, run: Run): string | undefined {
  const lay = run.lays?.[0];
  const owner = { setUp: setUp.id, cut: run.cut };
  if (!setUp.removal || !run.lays || !lay) return 'the card does not say how the work lies';
  const { removal, settings } = setUp;
  const take = (drawn: Drawn): string | undefined => {
    if (typeof drawn === 'string') return drawn;
    result.taken.push(...drawn.map(region => ({ ...owner, region })));
    return undefined;
  };
  switch (removal.shape) {
    case 'slot': {
      const ways = slot(blank, setUp, run, run.lays);
      if (typeof ways === 'string') return ways;
      result.ways.push(...ways);
      return undefined;
    }
    case 'size': {
      const size = figure(settings, 'fence', 'stop', 'height', 'gauge');
      if (size === undefined) return 'no size on the card';
      result.sizes.push({ ...owner, axis: AXIS[lay.entry], size });
      return undefined;
    }
    case 'bore':
    case 'cone':
      return hole(result, blank, setUp, run, lay);
    case 'wedge': {
      const amount = figure(settings, 'offset');
      const from = figure(settings, 'from');
      if (amount === undefined || from === undefined || !lay.end) return 'no offset on the card';
      result.tapers.push({ ...owner, face: lay.entry, end: lay.end, from, amount });
      return take(taperRegions(blank, from, amount, lay, lay.end));
    }
    case 'edge': {
      const profile = removal.profile ?? 'chamfer';
      const size = figure(settings, 'depth') ?? Number.NaN;
      result.edges.push({ ...owner, profile, size, edges: run.lays.map(l => [l.entry, l.against]) });
      return take(run.lays.map(l => edgeRegion(blank, l, size, profile)));
    }
    case 'end': {
      const [mitre, bevel] = [figure(settings, 'mitre'), figure(settings, 'tilt')];
      if (mitre === undefined || bevel === undefined) return 'no angle on the card';
      result.ends.push({ ...owner, end: lay.entry, mitre, bevel, long: lay.long ?? [] });
      return take(endRegions(blank, settings, lay));
    }
    case 'outline':
      return take(outlineRegions(blank, settings, run, lay, removal));
    case 'bevel':
      return take(bevelRegions(blank, settings, lay));
    case 'undercut':
      return take(undercutRegions(blank, settings, run, lay, removal));
    case 'turned':
      return take(turnedRegions(blank, settings, lay, removal));
    case 'datum':
      return 'a face or edge planed until it is true: no size is set';
    default:
      return 'worked by eye to lines';
  }
}

function hole(result: CutByCards, blank: Size, setUp: SetUp, run: Run, lay: Lay): string | undefined {
  const leans = (figure(setUp.settings, 'tilt') ?? 0) !== 0;
  if (leans && (lay.lean ?? []).length === 0) return 'a leaning hole: the card gives no direction';
  const places = centres(setUp, run, lay);
  const depth = figure(setUp.settings, 'depth');
  if (!places || depth === undefined || !setUp.removal) return 'no fence or station on the card';
  const { width: diameter, shape, angle } = setUp.removal;
  const owner = { setUp: setUp.id, cut: run.cut };
  let last: HoleFigures | undefined;
  for (const place of places) {
    const at = locate(blank, place);
    const located = { ...owner, face: lay.entry, at, diameter };
    const figures = { lay, at, diameter, depth, inset: figure(setUp.settings, 'inset') ?? 0 };
    if (shape === 'bore') {
      result.bores.push({ ...located, depth });
      result.taken.push({ ...owner, region: boreRegion(blank, figures) });
      const between = run.joined && last ? betweenBores(blank, last, figures) : undefined;
      if (between) result.taken.push({ ...owner, region: between });
      last = figures;
    } else {
      result.sunk.push(located);
      result.taken.push({ ...owner, region: sunkRegion(blank, figures, angle ?? 90) });
    }
  }
  return undefined;
}

/** The ways of a slot: for each lay and each move, the tool's width from the fence figure, and the depth. */
function slot(blank: Size, setUp: SetUp, run: Run, lays: readonly Lay[]): Way[] | string {
  const { settings, removal, drawing } = setUp;
  const setting = settings.find(
    s => s.to !== undefined && ['fence', 'stop', 'from', 'height', 'gauge'].includes(s.name),
  );
  const depth = figure(settings, 'blade height', 'depth');
  if (!setting || typeof setting.value.value !== 'number') return 'no fence or stop on the card';
  if (depth === undefined || !removal) return 'no depth on the card';
  const read = setting.value.value - (drawing.jig ?? 0);
  const { width } = removal;
  const near =
    setting.to === 'far teeth' || setting.to === 'far edge'
      ? read - width
      : setting.to === 'centre'
        ? read - width / 2
        : read;
  const along = run.along ?? removal.along;
  return lays.flatMap(lay =>
    removal.moves.map(move => ({
      setUp: setUp.id,
      cut: run.cut,
      box: wayBox(blank, lay, [near + move, near + move + width], depth, along),
    })),
  );
}

function wayBox(
  blank: Size,
  lay: Lay,
  across: [number, number],
  depth: number,
  along: { from: number; to: number } | undefined,
): Box {
  const span: Record<Axis, [number, number]> = {
    x: [0, blank.length],
    y: [0, blank.width],
    z: [0, blank.thickness],
  };
  const set = (face: LocalFace, from: number, to: number): void => {
    const a = inFrom(blank, face, from);
    const b = inFrom(blank, face, to);
    span[AXIS[face]] = [Math.min(a, b), Math.max(a, b)];
  };
  if (along && lay.end) set(lay.end, along.from, along.to);
  set(lay.against, across[0], across[1]);
  set(lay.entry, 0, depth);
  const corner = (i: 0 | 1) => ({ x: span.x[i], y: span.y[i], z: span.z[i] });
  return { min: corner(0), max: corner(1) };
}

type Place = { face: LocalFace; distance: number }[];

/** Centres of holes: the fence from one face, the station from another. */
function centres(setUp: SetUp, run: Run, lay: Lay): Place[] | undefined {
  const fence = figure(setUp.settings, 'fence');
  if (fence === undefined || !lay.end || !run.stations || !setUp.removal) return undefined;
  const { end } = lay;
  return run.stations.flatMap(station =>
    setUp.removal!.moves.map(move => [
      { face: lay.against, distance: fence + move },
      { face: end, distance: station },
    ]),
  );
}

const locate = (blank: Size, place: Place): Partial<Record<Axis, number>> =>
  Object.fromEntries(place.map(p => [AXIS[p.face], inFrom(blank, p.face, p.distance)]));
