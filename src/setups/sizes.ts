import { directionToLocal, directionToWorld } from '../geometry/frame.ts';
import { AXES, type Axis, axisVector } from '../geometry/vector.ts';
import { type Cut, FACE_AXIS, type LocalFace } from '../results/cuts.ts';
import type { Instance } from '../results/piece.ts';
import { isHigh, OPPOSITE, SIZE_OF_AXIS } from '../setting-out/faces.ts';
import { say1 } from './figures.ts';

export const FACES: Record<Axis, { low: LocalFace; high: LocalFace }> = {
  x: { low: 'end1', high: 'end2' },
  y: { low: 'backEdge', high: 'faceEdge' },
  z: { low: 'back', high: 'face' },
};

export const faceAxis = (face: LocalFace): Axis => FACE_AXIS[face];

export const opposite = (face: LocalFace): LocalFace => OPPOSITE[face];

export const FACE_WORDS: Record<LocalFace, string> = {
  end1: 'end 1',
  end2: 'end 2',
  backEdge: 'back edge',
  faceEdge: 'face edge',
  back: 'back face',
  face: 'face side',
};

/** The third axis. */
export const otherAxis = (a: Axis, b: Axis): Axis => AXES.find(k => k !== a && k !== b) ?? a;

/** Size along an axis as the parts list has it. */
export const nominal = (instance: Instance, axis: Axis): number => instance.size[SIZE_OF_AXIS[axis]];

/** Size along an axis as the calipers say, or the list where nobody measured. */
export const trueSize = (instance: Instance, axis: Axis): number =>
  instance.measured?.[SIZE_OF_AXIS[axis]] ?? instance.size[SIZE_OF_AXIS[axis]];

export const isMeasured = (instance: Instance, axis: Axis): boolean =>
  instance.measured?.[SIZE_OF_AXIS[axis]] !== undefined;

/** `32.1 measured` or `32.0`. */
export const sizeWords = (instance: Instance, axis: Axis): string =>
  `${say1(trueSize(instance, axis))}${isMeasured(instance, axis) ? ' measured' : ''}`;

/** Distance of a coordinate of the part's nominal frame from one of its faces (mm). */
export const distanceFrom = (instance: Instance, face: LocalFace, at: number): number =>
  isHigh(face) ? nominal(instance, faceAxis(face)) - at : at;

/** The axis of `mate` that lies along `axis` of `instance`, and how truly (1 parallel). */
export function mateAxis(instance: Instance, axis: Axis, mate: Instance): Axis {
  const d = directionToLocal(mate.frame, directionToWorld(instance.frame, axisVector(axis)));
  return AXES.reduce((best, k) => (Math.abs(d[k]) > Math.abs(d[best]) ? k : best), 'x');
}

/** What measuring the mate changed in its size along `axis` of `instance` (mm, 0 when nobody measured). */
export function mateDelta(instance: Instance, axis: Axis, mate: Instance): number {
  const along = mateAxis(instance, axis, mate);
  return trueSize(mate, along) - nominal(mate, along);
}

/** Across an axis: the reference face side or face edge, and for x the nearer end. */
export function referenceFace(instance: Instance, axis: Axis, low: number, high: number): LocalFace {
  if (axis !== 'x') return FACES[axis].high;
  return low <= nominal(instance, 'x') - high ? 'end1' : 'end2';
}

export const cutName = (cut: Cut): string => {
  const names: Record<Cut['kind'], string> = {
    mortise: 'mortise',
    'open-mortise': 'open mortise',
    housing: 'housing',
    groove: 'groove',
    rebate: 'rebate',
    recess: 'recess',
    halving: 'halving',
    notch: 'notch',
    tenon: 'tenon',
    'end-cut': cut.kind === 'end-cut' && cut.bevel === 0 && cut.mitre !== 0 ? 'mitre' : 'end cut',
    hole: 'hole',
    chamfer: 'chamfer',
    'round-over': 'round-over',
    taper: 'taper',
    dovetail: 'dovetail',
    curve: 'curve',
    'cut-out': 'cut-out',
    bevel: 'bevel',
    slant: 'slanting cut',
    scribe: 'scribed edge',
    turned: 'turning',
    bent: 'bend',
  };
  return names[cut.kind];
};

const PLURAL: Partial<Record<string, string>> = { recess: 'recesses', notch: 'notches' };

/** `mortises`, `Notches` when `capital`. */
export function cutNames(cut: Cut, capital = false): string {
  const one = cutName(cut);
  const many = PLURAL[one] ?? `${one}s`;
  return capital ? many[0]!.toUpperCase() + many.slice(1) : many;
}

/** `Notch`. */
export const cutTitle = (cut: Cut): string => {
  const one = cutName(cut);
  return one[0]!.toUpperCase() + one.slice(1);
};
