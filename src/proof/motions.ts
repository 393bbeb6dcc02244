import { type Box, box, boxToWorld, intersectBoxes, shiftBox } from '../geometry/box.ts';
import type { Frame } from '../geometry/frame.ts';
import { add, dot, scale, type Vec3, vec } from '../geometry/vector.ts';
import type { Solid, SolidKernel } from '../results/kernel.ts';
import type { Assembly, Instance, Piece } from '../results/piece.ts';
import { hasShape, type SolidCache } from '../solids/shapes.ts';

/** What goes into a glue-up in one piece: a part, or an earlier sub-assembly. */
export interface Member {
  /** Id of the part or of the sub-assembly. */
  id: string;
  name: string;
  glued: boolean;
  parts: Instance[];
}

/** Members of a glue-up that no straight motion takes apart, and so none puts together. */
export interface Trapped {
  /** The glue-up, or undefined for what stands together at the end without one. */
  closing: Assembly | undefined;
  member: Member;
  blockers: Member[];
}

/** Room two parts must share along the way before the one is held by the other, mm3. */
const HELD = 10;
/** First looks along the way, mm: past every fit, past the play of a panel, past a short tongue. */
const LOOKS = [1.5, 5, 12];
/** Further looks stand so far apart at least, mm: no part of the trade is thinner and in the way. */
const STRIDE = 10;

/**
 * Takes every glue-up apart by straight motions of its members, what was glued earlier staying whole, and tells what
 * cannot be. A set moves along a way when nothing outside the set stands in the way of it; what is in the way moves
 * along (directional blocking graph: Wilson and Latombe, "Geometric reasoning about mechanical assembly", 1994). What
 * comes apart so goes together the other way round. Ways tried: the world's axes and those of every turned part.
 */
export function trappedMembers(
  piece: Piece,
  kernel: SolidKernel,
  cache: SolidCache,
  signal?: AbortSignal,
): Trapped[] {
  const found: Trapped[] = [];
  const motions = new Motions(kernel, cache);
  for (const { closing, members } of closings(piece)) {
    if (signal?.aborted) break;
    const ways = waysOf(members);
    const apart = (set: readonly Member[]): void => {
      if (set.length < 2) return;
      const moved = movable(set, ways, motions);
      if (!moved) {
        found.push({ closing, ...mostHeld(set, ways, motions) });
        return;
      }
      apart([...moved]);
      apart(set.filter(m => !moved.has(m)));
    };
    apart(members);
  }
  return found;
}

/** Every glue-up with what goes into it, and last what stands together without one. */
function closings(piece: Piece): { closing: Assembly | undefined; members: Member[] }[] {
  const placed = new Map(piece.instances.filter(i => hasShape(i) && !i.loose).map(i => [i.id, i]));
  const within = (a: Assembly, seen = new Set<string>()): Instance[] => {
    if (seen.has(a.id)) return [];
    seen.add(a.id);
    const own = a.instances.flatMap(id => placed.get(id) ?? []);
    return [
      ...own,
      ...piece.assemblies.filter(b => a.assemblies.includes(b.id)).flatMap(b => within(b, seen)),
    ];
  };
  const whole = (a: Assembly): Member => ({ id: a.id, name: a.name, glued: true, parts: within(a) });
  const single = (i: Instance): Member => ({ id: i.id, name: i.name, glued: false, parts: [i] });
  const taken = new Set(piece.assemblies.flatMap(a => a.assemblies));
  const tops = piece.assemblies.filter(a => !taken.has(a.id)).map(whole);
  const held = new Set(tops.flatMap(t => t.parts.map(p => p.id)));
  return [
    ...piece.assemblies.map(a => ({
      closing: a,
      members: [
        ...a.instances.flatMap(id => placed.get(id) ?? []).map(single),
        ...piece.assemblies.filter(b => a.assemblies.includes(b.id)).map(whole),
      ].filter(m => m.parts.length > 0),
    })),
    {
      closing: undefined,
      members: [...tops, ...[...placed.values()].filter(i => !held.has(i.id)).map(single)],
    },
  ];
}

/** The world's six ways, and both ways along each axis of parts that stand at a slant. */
function waysOf(members: readonly Member[]): Vec3[] {
  const ways = [vec(1, 0, 0), vec(0, 1, 0), vec(0, 0, 1)];
  for (const { frame } of members.flatMap(m => m.parts))
    for (const axis of [frame.x, frame.y, frame.z])
      if (!ways.some(w => Math.abs(dot(w, axis)) > 1 - 1e-6)) ways.push(axis);
  return ways.flatMap(w => [w, scale(w, -1)]);
}

/** The smallest set that moves some way without the rest, or nothing. */
function movable(set: readonly Member[], ways: readonly Vec3[], motions: Motions): Set<Member> | undefined {
  let best: Set<Member> | undefined;
  for (const way of ways)
    for (const first of set) {
      const moved = new Set([first]);
      for (const one of moved)
        for (const other of set)
          if (moved.size < set.length && !moved.has(other) && motions.blocked(one, other, way))
            moved.add(other);
      if (moved.size === 1) return moved;
      if (moved.size < (best?.size ?? set.length)) best = moved;
    }
  return best;
}

/** The member that the fewest others hold, parts before sub-assemblies, and those that hold it. */
function mostHeld(set: readonly Member[], ways: readonly Vec3[], motions: Motions) {
  const held = set.map(member => ({
    member,
    blockers: set.filter(other => other !== member && ways.some(w => motions.blocked(member, other, w))),
  }));
  const weight = ({ member, blockers }: (typeof held)[number]): number =>
    blockers.length + (member.glued ? set.length : 0);
  return held.reduce((a, b) => (weight(b) < weight(a) ? b : a));
}

/** Remembers which member stands in the way of which. */
class Motions {
  private readonly known = new Map<string, boolean>();
  private readonly boxes = new Map<Instance, Box>();
  private readonly solids = new Map<Instance, Solid>();
  private readonly kernel: SolidKernel;
  private readonly cache: SolidCache;
  constructor(kernel: SolidKernel, cache: SolidCache) {
    this.kernel = kernel;
    this.cache = cache;
  }

  /** Does `other` stand in the way of `one`, going straight along `way` until it is clear? */
  blocked(one: Member, other: Member, way: Vec3): boolean {
    return one.parts.some(a => other.parts.some(b => this.partBlocked(a, b, way)));
  }

  private partBlocked(a: Instance, b: Instance, way: Vec3): boolean {
    const key = `${a.id} ${b.id} ${way.x.toFixed(4)} ${way.y.toFixed(4)} ${way.z.toFixed(4)}`;
    const known = this.known.get(key);
    if (known !== undefined) return known;
    const blocked = this.look(a, b, way);
    this.known.set(key, blocked);
    return blocked;
  }

  private look(a: Instance, b: Instance, way: Vec3): boolean {
    const [from, still] = [this.boxOf(a), this.boxOf(b)];
    const last = clearAfter(from, still, way);
    if (last <= 0) return false;
    const far = Array.from(
      { length: Math.min(60, Math.floor((last - LOOKS[2]!) / STRIDE)) },
      (_, n) => LOOKS[2]! + (n + 1) * Math.max(STRIDE, (last - LOOKS[2]!) / 60),
    );
    return [...LOOKS.filter(d => d < last), ...far].some(d => {
      const move = scale(way, d);
      if (!intersectBoxes(shiftBox(from, move), still)) return false;
      const at: Frame = { ...a.frame, origin: add(a.frame.origin, move) };
      return this.kernel.shared(this.solidOf(a), at, this.solidOf(b), b.frame) > HELD;
    });
  }

  private boxOf(i: Instance): Box {
    const kept = this.boxes.get(i);
    if (kept) return kept;
    const made = boxToWorld(i.frame, box(0, 0, 0, i.size.length, i.size.width, i.size.thickness));
    this.boxes.set(i, made);
    return made;
  }

  private solidOf(i: Instance): Solid {
    const kept = this.solids.get(i) ?? this.cache.of(i);
    this.solids.set(i, kept);
    return kept;
  }
}

/** How far a box goes along a way before it is clear of another for good, mm; 0 where it never meets it. */
function clearAfter(a: Box, b: Box, way: Vec3): number {
  let [enter, leave] = [0, Number.POSITIVE_INFINITY];
  for (const k of ['x', 'y', 'z'] as const) {
    const [low, high] = [b.min[k] - a.max[k], b.max[k] - a.min[k]];
    if (Math.abs(way[k]) < 1e-9) {
      if (low >= 0 || high <= 0) return 0;
      continue;
    }
    const [s, t] = [low / way[k], high / way[k]];
    enter = Math.max(enter, Math.min(s, t));
    leave = Math.min(leave, Math.max(s, t));
  }
  return leave > enter ? leave : 0;
}
