import { boxSize } from '../geometry/box.ts';
import type { Axis } from '../geometry/vector.ts';
import type { LocalFace, PocketCut } from '../results/cuts.ts';
import type { Instance } from '../results/piece.ts';
import { isHigh } from '../setting-out/faces.ts';
import { distanceFrom, FACES, faceAxis, nominal, otherAxis, referenceFace } from './sizes.ts';

/** A pocket seen from the tool: how deep, how wide, how long, and how far from the reference surfaces. */
export interface PocketView {
  entry: LocalFace;
  depthAxis: Axis;
  runAxis: Axis;
  acrossAxis: Axis;
  depth: number;
  width: number;
  length: number;
  /** Face from which the walls are measured. */
  reference: LocalFace;
  near: number;
  far: number;
  /** End from which stations along the run are measured. */
  runFrom: LocalFace;
  start: number;
  finish: number;
  /** Runs out at both ends. */
  runsOut: boolean;
  /** The pocket reaches the reference face itself (a rebate, an end halving): no near wall. */
  openNear: boolean;
  openFar: boolean;
}

const EPS = 1e-6;

/**
 * The view of a pocket. For a mortise the run is its long way whatever `run` says of the two;
 * for an open mortise it is the way the saw travels, right across the end.
 */
export function viewPocket(instance: Instance, cut: PocketCut, from?: LocalFace): PocketView {
  const depthAxis = faceAxis(cut.face);
  const size = boxSize(cut.box);
  let runAxis = cut.run === depthAxis ? longerOf(cut, depthAxis) : cut.run;
  if (cut.kind === 'mortise') {
    const other = otherAxis(depthAxis, runAxis);
    if (size[other] > size[runAxis]) runAxis = other;
  }
  const acrossAxis = otherAxis(depthAxis, runAxis);
  const low = Math.max(0, cut.box.min[acrossAxis]);
  const high = Math.min(nominal(instance, acrossAxis), cut.box.max[acrossAxis]);
  const touchesLow = low <= EPS;
  const touchesHigh = high >= nominal(instance, acrossAxis) - EPS;
  const reference =
    from ??
    (touchesLow !== touchesHigh
      ? touchesHigh
        ? FACES[acrossAxis].high
        : FACES[acrossAxis].low
      : referenceFace(instance, acrossAxis, low, high));
  const a = distanceFrom(instance, reference, low);
  const b = distanceFrom(instance, reference, high);
  const runLow = Math.max(0, cut.box.min[runAxis]);
  const runHigh = Math.min(nominal(instance, runAxis), cut.box.max[runAxis]);
  const runFrom = referenceFace(instance, runAxis, runLow, runHigh);
  const r1 = distanceFrom(instance, runFrom, runLow);
  const r2 = distanceFrom(instance, runFrom, runHigh);
  const depthLow = Math.max(0, cut.box.min[depthAxis]);
  const depthHigh = Math.min(nominal(instance, depthAxis), cut.box.max[depthAxis]);
  return {
    entry: cut.face,
    depthAxis,
    runAxis,
    acrossAxis,
    depth: isHigh(cut.face) ? nominal(instance, depthAxis) - depthLow : depthHigh,
    width: high - low,
    length: runHigh - runLow,
    reference,
    near: Math.min(a, b),
    far: Math.max(a, b),
    runFrom,
    start: Math.min(r1, r2),
    finish: Math.max(r1, r2),
    runsOut: runLow <= EPS && runHigh >= nominal(instance, runAxis) - EPS,
    openNear: Math.min(a, b) <= EPS,
    openFar: Math.max(a, b) >= nominal(instance, acrossAxis) - EPS,
  };
}

function longerOf(cut: PocketCut, depthAxis: Axis): Axis {
  const size = boxSize(cut.box);
  const [a, b] = (['x', 'y', 'z'] as const).filter(k => k !== depthAxis);
  return size[a!] >= size[b!] ? a! : b!;
}

/** Positions of a tool across a slot: first against the near wall, last against the far one (mm, from the first). */
export function slotMoves(width: number, tool: number): number[] {
  const travel = width - tool;
  if (travel <= 0.02) return [0];
  const steps = Math.ceil(travel / (tool * 0.9) - 1e-9);
  return Array.from({ length: steps + 1 }, (_, i) => (travel * i) / steps);
}
