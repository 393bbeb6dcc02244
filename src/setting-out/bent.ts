import type { BentCut, Size } from '../results/cuts.ts';

type Point = [x: number, z: number];

/** Chords of a quarter turn. */
const STEPS = 8;

/** Points of a quarter circle about a centre from one angle to another, degrees. */
function arc(x: number, z: number, radius: number, from: number, to: number): Point[] {
  return Array.from({ length: STEPS + 1 }, (_, i): Point => {
    const angle = ((from + ((to - from) * i) / STEPS) * Math.PI) / 180;
    return [x + radius * Math.cos(angle), z + radius * Math.sin(angle)];
  });
}

export interface Bend {
  form: BentCut['form'];
  /** Thickness of the bar and inside radius, mm. */
  stock: number;
  radius: number;
  /** Where the bar rises, for a Z: outside of the riser from end 1, mm. */
  riser?: number;
  /** Share of the thickness, from the inside, at which the bar keeps its length in a bend. */
  kFactor: number;
}

/**
 * Length of the straight bar before it is bent, mm: straight lengths to the tangents, and for each right angle
 *
 *     BA = (pi / 2) (r + K t)
 *
 * with inside radius r, thickness t and K the place of the neutral line. Legs are measured outside. The
 * equation is common practice in sheet metal (bend allowance).
 */
export function developedLength({ form, stock, radius, riser = 0, kFactor }: Bend, s: Size): number {
  const set = radius + stock;
  const bend = (Math.PI / 2) * (radius + kFactor * stock);
  if (form === 'L') return s.length - set + (s.thickness - set) + bend;
  if (form === 'U') return s.length - 2 * set + 2 * (s.thickness - set) + 2 * bend;
  return riser - set + (s.thickness - 2 * set) + (s.length - (riser - stock) - set) + 2 * bend;
}

/** What the box round a bent bar holds beside the bar: outlines in x and z. */
export function airOf({ form, stock: t, radius: r, riser = 0 }: Bend, s: Size): Point[][] {
  const { length: L, thickness: H } = s;
  const R = r + t;
  const cornerRight: Point[] = [...arc(L - R, R, R, -90, 0), [L, 0]];
  const cornerLeft: Point[] = [...arc(R, R, R, -90, -180), [0, 0]];
  if (form === 'L') return [[[0, t], ...arc(L - R, R, r, -90, 0), [L - t, H], [0, H]], cornerRight];
  if (form === 'U')
    return [
      [...arc(R, R, r, -180, -90), ...arc(L - R, R, r, -90, 0), [L - t, H], [t, H]],
      cornerRight,
      cornerLeft,
    ];
  const A = riser;
  return [
    [[0, t], ...arc(A - R, R, r, -90, 0), ...arc(A + r, H - R, R, 180, 90), [0, H]],
    [...arc(A - R, R, R, -90, 0), ...arc(A + r, H - R, r, 180, 90), [L, H - t], [L, 0]],
  ];
}

/** Why a bar of this box cannot be bent so; undefined when it can. */
export function unbendable({ form, stock, radius, riser = 0 }: Bend, s: Size): string | undefined {
  const set = radius + stock;
  const short =
    form === 'U'
      ? s.length < 2 * set
      : form === 'Z'
        ? riser < set || s.length - (riser - stock) < set || s.thickness < 2 * set
        : s.length < set;
  return short || s.thickness < set
    ? `legs of ${s.length} and ${s.thickness} mm are too short for a radius of ${radius} in ${stock} mm`
    : undefined;
}
