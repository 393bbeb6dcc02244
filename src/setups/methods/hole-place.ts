import { AXES, axisVector, dot, scale } from '../../geometry/vector.ts';
import type { HoleCut } from '../../results/cuts.ts';
import type { Lay } from '../../results/setups.ts';
import { isHigh } from '../../setting-out/faces.ts';
import type { Task } from '../method.ts';
import { distanceFrom, FACES, faceAxis, referenceFace } from '../sizes.ts';

/** Where a hole lies: from fence and end, and how it leans. */
export interface HolePlace {
  fenceFace: Lay['against'];
  fence: number;
  endFace: NonNullable<Lay['end']>;
  station: number;
  tilt: number;
}

/** Fence from the reference surface, station from the nearer end (SET-1), tilt from square. */
export function placeHole(task: Task<HoleCut>): HolePlace {
  const { cut, instance } = task;
  const into = faceAxis(cut.face);
  const inward = scale(axisVector(into), isHigh(cut.face) ? -1 : 1);
  const square = Math.min(1, Math.max(-1, dot(cut.direction, inward)));
  const tilt = (Math.acos(square) * 180) / Math.PI;
  const fenceAxis = into === 'x' ? 'y' : into === 'y' ? 'z' : 'y';
  const endAxis = into === 'x' ? 'z' : 'x';
  const fenceFace = FACES[fenceAxis].high;
  const at = cut.at[endAxis];
  const endFace = endAxis === 'x' ? referenceFace(instance, 'x', at, at) : FACES[endAxis].high;
  return {
    fenceFace,
    fence: distanceFrom(instance, fenceFace, cut.at[fenceAxis]),
    endFace,
    station: distanceFrom(instance, endFace, at),
    tilt: tilt < 0.05 ? 0 : tilt,
  };
}

/** Faces that a leaning hole runs towards, each with its slope in that plane. */
export function leanOf(cut: HoleCut): NonNullable<Lay['lean']> {
  const into = faceAxis(cut.face);
  const deep = Math.abs(cut.direction[into]);
  return AXES.filter(a => a !== into && Math.abs(cut.direction[a]) > 1e-3).map(a => ({
    towards: cut.direction[a] > 0 ? FACES[a].high : FACES[a].low,
    angle: (Math.atan2(Math.abs(cut.direction[a]), deep) * 180) / Math.PI,
  }));
}
