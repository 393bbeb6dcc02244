/** What several checks ask of a piece: names, places in the world, moistures, panels of edge-glued boards. */
import { type Box, boxToLocal, boxToWorld } from '../geometry/box.ts';
import { type Axis, dot, type Vec3, vec } from '../geometry/vector.ts';
import { timberSpecies } from '../reference/timber-species.ts';
import type { Size } from '../results/cuts.ts';
import type { Instance, JointMade, PartGroup } from '../results/piece.ts';
import type { Source } from '../results/source.ts';
import { equilibriumMoisture, siteMoisture } from '../timber/moisture.ts';
import type { CheckInput } from './check.ts';

/** A moisture, %, and whose word it is. */
export interface KnownMoisture {
  percent: number;
  source: Source;
  /** False when it is only what the shop's air would bring. */
  read: boolean;
}

/** A solid width: one board, or boards glued edge to edge. Width across the grain in mm. */
export interface Panel {
  instances: Instance[];
  width: number;
}

export interface View {
  instance(id: string): Instance | undefined;
  /** The part's name as the maker wrote it, for an instance id. */
  name(id: string): string;
  group(id: string): PartGroup | undefined;
  jointsOf(id: string): JointMade[];
  /** Bounds of the cut size in the world. */
  bounds(instance: Instance): Box;
  /** The moistures the room swings between; undefined without a site. */
  room: { low: number; high: number } | undefined;
  /** Moisture of an instance's timber when it is made up. */
  made(id: string): KnownMoisture;
  panels: Panel[];
  /** Parts without a size, which no other check sees. */
  unsized: Instance[];
}

/** Bought-in parts may have no size; of any other it is a gap. */
export const isSized = ({ kind, size }: Instance): boolean =>
  kind === 'bought-in' || (size.length > 0 && size.width > 0 && size.thickness > 0);

export const envelope = (size: Size): Box => ({
  min: vec(0, 0, 0),
  max: vec(size.length, size.width, size.thickness),
});

/** Directions are the same line when their dot product is 1 or -1, within a thousandth. */
export const parallel = (a: Vec3, b: Vec3): boolean => Math.abs(Math.abs(dot(a, b)) - 1) < 1e-3;

/** The world axis a direction lies along, if any. */
export function worldAxis(d: Vec3): Axis | undefined {
  if (Math.abs(d.x) > 0.999) return 'x';
  if (Math.abs(d.y) > 0.999) return 'y';
  return Math.abs(d.z) > 0.999 ? 'z' : undefined;
}

/** Groups items by a key, in the order in which keys first appear. */
export function gather<T>(items: readonly T[], key: (item: T) => string): T[][] {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const held = groups.get(key(item));
    if (held) held.push(item);
    else groups.set(key(item), [item]);
  }
  return [...groups.values()];
}

/** Works out once for each instance: several checks ask for the same. */
function remembered<T>(work: (instance: Instance) => T): (instance: Instance) => T {
  const held = new Map<Instance, T>();
  return instance => {
    const known = held.get(instance);
    if (known !== undefined) return known;
    const fresh = work(instance);
    held.set(instance, fresh);
    return fresh;
  };
}

export function viewOf(input: CheckInput): View {
  const { piece } = input;
  const sized = piece.instances.filter(isSized);
  const byId = new Map(sized.map(i => [i.id, i]));
  const groups = new Map(piece.groups.flatMap(g => g.instances.map(id => [id, g] as const)));
  const joints = new Map<string, JointMade[]>();
  for (const joint of piece.joints) {
    for (const id of joint.instances) {
      const held = joints.get(id);
      if (held) held.push(joint);
      else joints.set(id, [joint]);
    }
  }
  const site = input.commission.site;
  return {
    instance: id => byId.get(id),
    name: id => byId.get(id)?.name ?? id,
    group: id => groups.get(id),
    jointsOf: id => joints.get(id) ?? [],
    bounds: remembered(i => boxToWorld(i.frame, envelope(i.size))),
    room:
      site?.humidity && site.temperature
        ? siteMoisture({ humidity: site.humidity, temperature: site.temperature })
        : undefined,
    made: madeMoisture(input),
    panels: panelsOf(sized, piece.joints, byId),
    unsized: piece.instances.filter(i => !isSized(i)),
  };
}

/** The maker's reading of the job, else the reading of the stock it is cut from, else what the shop's air brings. */
function madeMoisture(input: CheckInput): View['made'] {
  const { commission, cutting, workshop } = input;
  if (commission.moistureAtMaking !== undefined) {
    const known: KnownMoisture = {
      percent: commission.moistureAtMaking,
      source: { text: 'moisture at making, read by the maker', basis: 'measured' },
      read: true,
    };
    return () => known;
  }
  const readings = new Map<string, KnownMoisture>();
  const rack = new Map(workshop.rack.map(item => [item.id, item]));
  for (const use of cutting.materials.flatMap(m => m.uses)) {
    const moisture = use.from === 'rack' ? rack.get(use.item)?.moisture : undefined;
    if (moisture === undefined) continue;
    for (const placed of use.placed) {
      readings.set(placed.instance, {
        percent: moisture,
        source: { text: `moisture of ${use.label} on the rack`, basis: 'measured' },
        read: true,
      });
    }
  }
  const { temperature, humidity } = workshop.climate;
  const shop: KnownMoisture = {
    percent: equilibriumMoisture(temperature, humidity),
    source: {
      text: `what the shop's air brings at ${temperature} degC and ${humidity} %`,
      basis: 'computed',
    },
    read: false,
  };
  return id => readings.get(id) ?? shop;
}

/** Boards joined edge to edge along the grain move as one width. */
function panelsOf(
  instances: readonly Instance[],
  joints: readonly JointMade[],
  byId: ReadonlyMap<string, Instance>,
): Panel[] {
  const solid = instances.filter(i => i.kind === 'timber' && !i.round);
  const leader = new Map(solid.map(i => [i.id, i.id]));
  const root = (id: string): string => {
    const up = leader.get(id)!;
    return up === id ? id : root(up);
  };
  for (const joint of joints) {
    for (const { between, grain } of joint.glue) {
      const [a, b] = [byId.get(between[0]), byId.get(between[1])];
      if (grain !== 'long' || !a || !b || !leader.has(a.id) || !leader.has(b.id)) continue;
      if (parallel(a.frame.x, b.frame.x) && parallel(a.frame.y, b.frame.y) && besideEachOther(a, b))
        leader.set(root(b.id), root(a.id));
    }
  }
  return gather(solid, i => root(i.id)).map(boards => ({
    instances: boards,
    width: spanAcross(boards),
  }));
}

/** A board in another's frame: square boards only, which all timber of a panel is. */
const seenFrom = (a: Instance, b: Instance): Box =>
  boxToLocal(a.frame, boxToWorld(b.frame, envelope(b.size)));

/** Edge to edge: thicknesses on one level, widths beside each other. */
function besideEachOther(a: Instance, b: Instance): boolean {
  const local = seenFrom(a, b);
  const level = Math.min(local.max.z, a.size.thickness) - Math.max(local.min.z, 0);
  const over = Math.min(local.max.y, a.size.width) - Math.max(local.min.y, 0);
  return (
    level > 0.5 * Math.min(a.size.thickness, b.size.thickness) &&
    over < 0.5 * Math.min(a.size.width, b.size.width)
  );
}

/** Width over all boards, measured across the grain of the first. */
function spanAcross(boards: readonly Instance[]): number {
  const seen = boards.map(b => seenFrom(boards[0]!, b));
  return Math.max(...seen.map(b => b.max.y)) - Math.min(...seen.map(b => b.min.y));
}

export const speciesOf = (instance: Instance) =>
  instance.kind === 'timber' ? timberSpecies(instance.material) : undefined;
