import { DESK, small } from '../src/drawings/manner.ts';
import { turned } from '../src/drawings/projection.ts';
import { toSvg } from '../src/drawings/svg.ts';
import { turnedView } from '../src/drawings/view.ts';
import {
  type Box,
  boxCentre,
  boxSize,
  boxToLocal,
  boxToWorld,
  corners,
  intersectBoxes,
} from '../src/geometry/box.ts';
import { directionToWorld, toWorld } from '../src/geometry/frame.ts';
import { type Axis, add, dot, scale, type Vec3, vec } from '../src/geometry/vector.ts';
import { profileSpan } from '../src/results/cut-shapes.ts';
import { type Cut, FACE_AXIS, type HoleCut, POLYGON_AXES } from '../src/results/cuts.ts';
import type { Instance, JointMade, Piece } from '../src/results/piece.ts';
import { LOCAL_NORMAL, SIZE_OF_AXIS } from '../src/setting-out/faces.ts';

/** A joint drawn: its two parts cut off near the joint, taken apart the way they go together, in isometric. */

/** Isometric: the three axes equally foreshortened. */
const ELEVATION = (Math.asin(Math.tan(Math.PI / 6)) * 180) / Math.PI;
const AROUND = [45, -45, 135, -135];
/** A view from above is worth so much more than one from below. */
const UPRIGHT = 1.3;
const SIZE = { width: 460, height: 320 };
const AXES: readonly Axis[] = ['x', 'y', 'z'];

/** What is kept of a part around the joint: as far again as the parts are thick, no more than `most` in all, mm. */
interface Keep {
  around: number;
  most: number;
}

export function jointSvg(piece: Piece, joint: JointMade, thick: number): string {
  const [from, into] = joint.instances.map(id => piece.instances.find(i => i.id === id)!) as [
    Instance,
    Instance,
  ];
  const away = apartAlong(joint, from, into);
  const long = boxSize(slanting(joint, [from, into]));
  const around = 3 * thick;
  // The whole of a scarf is drawn, however long it is.
  const most = joint.type === 'scarf' ? Math.max(long.x, long.y, long.z) + 2 * around : 13 * thick;
  const keep = { around, most };
  const focus = focused(joint, [from, into], keep);
  const [a, b] = [cropped(from, focus, keep), cropped(into, focus, keep)];
  const view = viewOf([a, b], away);
  const least = reachOf(from) + 2 * thick;
  // Where the second part stands before the first, the first is drawn wholly clear of it.
  const distance =
    dot(turned(view.azimuth, view.elevation).eye, away) < 0 ? clearOf(a, b, away, view) : least;
  const moved = shifted(a, scale(away, Math.max(least, distance + thick)));
  const drawn = [b, moved];
  const list = turnedView(
    { ...piece, instances: drawn, bounds: outer(drawn) },
    { ...SIZE, manner: small(DESK), show: { unit: 'mm', currency: 'GBP' }, rods: false, ...view },
  );
  return toSvg({ ...list, title: `${joint.title}, taken apart` }, { ground: 'print' });
}

const shifted = (i: Instance, by: Vec3): Instance => ({
  ...i,
  frame: { ...i.frame, origin: add(i.frame.origin, by) },
});

const outer = (parts: readonly Instance[]): Box =>
  parts
    .map(i =>
      boxToWorld(i.frame, { min: vec(0, 0, 0), max: vec(i.size.length, i.size.width, i.size.thickness) }),
    )
    .reduce((p, q) => ({
      min: vec(Math.min(p.min.x, q.min.x), Math.min(p.min.y, q.min.y), Math.min(p.min.z, q.min.z)),
      max: vec(Math.max(p.max.x, q.max.x), Math.max(p.max.y, q.max.y), Math.max(p.max.z, q.max.z)),
    }));

/** How far a part was lengthened into the other, mm. */
const reachOf = (i: Instance): number => Math.max(0, ...Object.values(i.added));

/** The way the first part is drawn off the second: square to the faces that meet, or out of the cut that takes it. */
function apartAlong(joint: JointMade, from: Instance, into: Instance): Vec3 {
  const { min, max } = joint.contact;
  const flat = AXES.find(a => max[a] - min[a] < 0.05);
  if (flat) {
    const there = outer([from]);
    const sign = (there.min[flat] + there.max[flat]) / 2 >= min[flat] ? 1 : -1;
    return { ...vec(0, 0, 0), [flat]: sign };
  }
  const cut = into.cuts.find(c => c.by === joint.joint);
  if (cut && 'face' in cut) return directionToWorld(into.frame, LOCAL_NORMAL[cut.face]);
  // Mitred corners: along the first part, out of the corner.
  const middle = scale(add(min, max), 0.5);
  const own = scale(add(outer([from]).min, outer([from]).max), 0.5);
  return scale(from.frame.x, dot(from.frame.x, add(own, scale(middle, -1))) >= 0 ? 1 : -1);
}

interface View {
  azimuth: number;
  elevation: number;
}

/** The isometric view that shows most of what is cut; of equals the one in which the second part hides nothing. */
function viewOf(parts: readonly Instance[], away: Vec3): View {
  const views = [ELEVATION, -ELEVATION].flatMap(elevation => AROUND.map(azimuth => ({ azimuth, elevation })));
  const score = ({ azimuth, elevation }: View): number => {
    const { eye } = turned(azimuth, elevation);
    return (seen(parts, eye) + (dot(eye, away) > 0 ? 1 : 0)) * (elevation > 0 ? UPRIGHT : 1);
  };
  return views.reduce((best, v) => (score(v) > score(best) + 1e-6 ? v : best));
}

/** Area of the mouths of all cuts that look towards the eye, mm2. */
function seen(parts: readonly Instance[], eye: Vec3): number {
  return parts.reduce(
    (sum, i) =>
      sum +
      i.cuts.reduce((own, cut) => {
        if (!('face' in cut)) return own;
        const open = dot(eye, directionToWorld(i.frame, LOCAL_NORMAL[cut.face])) > 0.3;
        return open ? own + mouth(cut) : own;
      }, 0),
    0,
  );
}

function mouth(cut: Cut): number {
  if (cut.kind === 'hole') return (Math.PI / 4) * cut.diameter ** 2;
  if (!('box' in cut)) return 0;
  const size = boxSize(cut.box);
  const [p, q] = AXES.filter(a => a !== FACE_AXIS[cut.face]);
  return size[p!] * size[q!];
}

/** How far the first part must move for the two to lie apart on the page, mm. */
function clearOf(a: Instance, b: Instance, away: Vec3, { azimuth, elevation }: View): number {
  const { right, up } = turned(azimuth, elevation);
  const flat = (p: Vec3): [number, number] => [dot(right, p), dot(up, p)];
  const [u, v] = flat(away);
  const long = Math.hypot(u, v);
  const along = (i: Instance): number[] =>
    corners(outer([i])).map(p => {
      const [x, y] = flat(p);
      return (x * u + y * v) / long;
    });
  return Math.max(0, (Math.max(...along(b)) - Math.min(...along(a))) / long);
}

/** The meeting, drawn out over the length of what is cut at a slant: a scarf is longer than where its ends meet. */
function slanting(joint: JointMade, parts: readonly Instance[]): Box {
  let { contact } = joint;
  for (const i of parts)
    for (const cut of i.cuts) {
      if (cut.by !== joint.joint || cut.kind !== 'slant') continue;
      const [from, to] = profileSpan(cut, 'x');
      const local = boxToLocal(i.frame, contact);
      const x = {
        low: Math.min(local.min.x, Math.max(0, from)),
        high: Math.max(local.max.x, Math.min(i.size.length, to)),
      };
      contact = boxToWorld(i.frame, { min: { ...local.min, x: x.low }, max: { ...local.max, x: x.high } });
    }
  return { min: { ...contact.min }, max: { ...contact.max } };
}

/** The meeting, and of a long one what lies about the first cut. */
function focused(joint: JointMade, parts: readonly Instance[], { around, most }: Keep): Box {
  const contact = slanting(joint, parts);
  const part = parts.find(i => i.cuts.some(c => c.by === joint.joint && ('box' in c || c.kind === 'hole')));
  const cut = part?.cuts.find(c => c.by === joint.joint && ('box' in c || c.kind === 'hole'));
  if (!part || !cut) return contact;
  const at = toWorld(
    part.frame,
    'box' in cut ? boxCentre(cut.box) : cut.kind === 'hole' ? cut.at : vec(0, 0, 0),
  );
  const half = most / 2 - around;
  for (const axis of AXES) {
    const [low, high] = [contact.min[axis], contact.max[axis]];
    if (high - low <= 2 * half) continue;
    const middle = Math.min(Math.max(at[axis], low + half), high - half);
    contact.min[axis] = middle - half;
    contact.max[axis] = middle + half;
  }
  return contact;
}

/** A part cut off beyond the joint, in length and width. */
function cropped(i: Instance, contact: Box, { around, most }: Keep): Instance {
  const near = boxToLocal(i.frame, contact);
  const [low, high] = [vec(0, 0, 0), vec(i.size.length, i.size.width, i.size.thickness)];
  for (const axis of ['x', 'y'] as const) {
    const whole = i.size[SIZE_OF_AXIS[axis]];
    let [a, b] = [near.min[axis] - around, near.max[axis] + around];
    if (b - a > most) [a, b] = a > whole - b ? [b - most, b] : [a, a + most];
    low[axis] = Math.max(0, a);
    high[axis] = Math.min(whole, b);
  }
  const size = { length: high.x - low.x, width: high.y - low.y, thickness: i.size.thickness };
  const origin = add(i.frame.origin, add(scale(i.frame.x, low.x), scale(i.frame.y, low.y)));
  if (i.round)
    return {
      ...i,
      size: { ...i.size, length: size.length },
      frame: { ...i.frame, origin: add(i.frame.origin, scale(i.frame.x, low.x)) },
      cuts: [],
    };
  return {
    ...i,
    size,
    frame: { ...i.frame, origin },
    cuts: i.cuts.flatMap(c => croppedCut(c, low, high, i.size)),
  };
}

/** Is a hole wholly on what is kept? */
const inWindow = (hole: HoleCut, low: Vec3, high: Vec3, size: Instance['size']): boolean =>
  AXES.every(
    a =>
      (low[a] <= 0 || hole.at[a] >= low[a] + hole.diameter / 2) &&
      (high[a] >= size[SIZE_OF_AXIS[a]] || hole.at[a] <= high[a] - hole.diameter / 2),
  );

function croppedCut(cut: Cut, low: Vec3, high: Vec3, size: Instance['size']): Cut[] {
  const back = scale(low, -1);
  switch (cut.kind) {
    case 'tenon':
    case 'end-cut':
      return (cut.end === 'end1' ? low.x > 0 : high.x < size.length) ? [] : [cut];
    case 'hole':
      return inWindow(cut, low, high, size) ? [{ ...cut, at: add(cut.at, back) }] : [];
    case 'turned':
      return [{ ...cut, profile: cut.profile.map(p => ({ ...p, at: p.at - low.x })) }];
    case 'dovetail':
    case 'curve':
    case 'cut-out':
    case 'bevel':
    case 'slant':
    case 'scribe': {
      const [u, v] = POLYGON_AXES[cut.axis];
      return [
        {
          ...cut,
          from: Math.max(cut.from, low[cut.axis]) - low[cut.axis],
          to: Math.min(cut.to, high[cut.axis]) - low[cut.axis],
          polygon: cut.polygon.map(([a, b]): [number, number] => [a - low[u], b - low[v]]),
        },
      ];
    }
    default: {
      if (!('box' in cut)) return [];
      const inside = intersectBoxes(cut.box, { min: low, max: high });
      return inside ? [{ ...cut, box: { min: add(inside.min, back), max: add(inside.max, back) } }] : [];
    }
  }
}
