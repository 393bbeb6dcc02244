/** A bar on two supports under loads anywhere along it: reactions, moment, shear, slope, deflection. */

export type BeamLoad =
  | { readonly kind: 'point'; readonly atMm: number; readonly forceN: number }
  | { readonly kind: 'spread'; readonly fromMm: number; readonly toMm: number; readonly forceNPerMm: number };

export interface SimpleBeam {
  readonly spanMm: number;
  readonly stiffnessMPa: number;
  readonly secondMomentMm4: number;
  /** All downward, within the span. */
  readonly loads: readonly BeamLoad[];
}

export interface BeamAnswer {
  readonly leftN: number;
  readonly rightN: number;
  /** At a distance from the left support: N mm, N, radians, mm (down is positive). */
  momentAt(xMm: number): number;
  shearAt(xMm: number): number;
  slopeAt(xMm: number): number;
  deflectionAt(xMm: number): number;
  readonly greatestMoment: { readonly atMm: number; readonly value: number };
  readonly greatestDeflection: { readonly atMm: number; readonly value: number };
}

/**
 * Integrates E I v'' = -M twice with bracket functions, so that one expression holds along the whole span.
 *
 *     M(x) = R x - sum P <x - a> - sum w (<x - a>^2 - <x - b>^2)/2
 *
 * Range: straight uniform bar, small deflections, shear deformation left out. Source: beam theory (Macaulay 1919).
 */
export function simpleBeam(beam: SimpleBeam): BeamAnswer {
  const { spanMm, loads } = beam;
  const rigidity = beam.stiffnessMPa * beam.secondMomentMm4;
  const total = loads.reduce((all, load) => all + wholeForce(load), 0);
  const leftN = loads.reduce((all, load) => all + loadBefore(load, spanMm, 1), 0) / spanMm;
  const sum = (x: number, order: number): number =>
    (leftN * x ** order) / factorial(order) -
    loads.reduce((all, load) => all + loadBefore(load, x, order), 0);
  // v is nothing over the right support: that fixes the slope at the left one.
  const leftSlope = sum(spanMm, 3) / spanMm;
  const answer = {
    leftN,
    rightN: total - leftN,
    momentAt: (x: number) => sum(x, 1),
    shearAt: (x: number) => sum(x, 0),
    slopeAt: (x: number) => (leftSlope - sum(x, 2)) / rigidity,
    deflectionAt: (x: number) => (leftSlope * x - sum(x, 3)) / rigidity,
  };
  const moment = crossing(answer.shearAt, spanMm);
  const deepest = crossing(answer.slopeAt, spanMm);
  return {
    ...answer,
    greatestMoment: { atMm: moment, value: answer.momentAt(moment) },
    greatestDeflection: { atMm: deepest, value: answer.deflectionAt(deepest) },
  };
}

function wholeForce(load: BeamLoad): number {
  return load.kind === 'point' ? load.forceN : load.forceNPerMm * (load.toMm - load.fromMm);
}

/** The load's share left of x, integrated `order` times: order 0 is force, 1 its moment about x, and so on. */
function loadBefore(load: BeamLoad, x: number, order: number): number {
  if (load.kind === 'point') {
    return x > load.atMm ? (load.forceN * (x - load.atMm) ** order) / factorial(order) : 0;
  }
  const { fromMm, toMm, forceNPerMm } = load;
  const bracket = (a: number) => Math.max(0, x - a) ** (order + 1) / factorial(order + 1);
  return forceNPerMm * (bracket(fromMm) - bracket(toMm));
}

const factorial = (n: number): number => (n <= 1 ? 1 : n * factorial(n - 1));

/** Downward loads only make shear and slope fall along the span, so halving finds where they pass nothing. */
function crossing(falling: (x: number) => number, spanMm: number): number {
  let low = 0;
  let high = spanMm;
  while (high - low > 1e-9 * spanMm) {
    const half = (low + high) / 2;
    if (falling(half) > 0) low = half;
    else high = half;
  }
  return (low + high) / 2;
}
