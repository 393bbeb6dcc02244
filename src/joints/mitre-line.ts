import type { Axis, Vec3 } from '../geometry/vector.ts';
import { type EndName, POLYGON_AXES } from '../results/cuts.ts';
import type { CutDraft, JointParts, MakeContext, Role } from '../setting-out/joint-type.ts';
import { mitredFrame, mitreOf } from './mitred-frame.ts';
import { SIZE_OF_AXIS } from './shape.ts';

/** The line of a mitre in each member, on which splines, keys and dowels stand. Body frames, mm. */
export interface MitreLine {
  role: Role;
  end: EndName;
  /** Axis in the plane of the corner across the member, and the one square to that plane. */
  plane: 'y' | 'z';
  deep: 'y' | 'z';
  /** Length from the outer to the inner corner. */
  length: number;
  /** Size of the member square to the plane of the corner. */
  thick: number;
  /** Cosine and sine of the line from the member's length. */
  cos: number;
  sin: number;
  /** Length of the member. */
  whole: number;
  /** A point so far along the line from the outer corner, and so far into the member square to it. */
  at(along: number, into: number, deep?: number): Vec3;
  /** Unit vector into the member, square to the line. */
  inwards: Vec3;
}

export function lineOf(c: MakeContext, role: Role): MitreLine {
  const own = role === 'from' ? c.from : c.into;
  const { cut, wide } = mitreOf(c, role);
  if (cut.kind !== 'end-cut') throw new Error('a mitre is an end cut');
  const plane = cut.mitre !== 0 ? 'y' : 'z';
  const deep = plane === 'y' ? 'z' : 'y';
  const angle = ((cut.mitre + cut.bevel) * Math.PI) / 180;
  const tip = cut.end === 'end1' ? 0 : own.body.length;
  const inward = cut.end === 'end1' ? 1 : -1;
  const outer = angle > 0 ? 0 : wide;
  const up = angle > 0 ? 1 : -1;
  const run = wide * Math.tan(Math.abs(angle));
  const length = Math.hypot(wide, run);
  const [cos, sin] = [run / length, wide / length];
  const vector = (x: number, p: number, q: number): Vec3 => ({ x, [plane]: p, [deep]: q }) as unknown as Vec3;
  return {
    role,
    end: cut.end,
    plane,
    deep,
    length,
    thick: own.body[SIZE_OF_AXIS[deep]],
    cos,
    sin,
    whole: own.body.length,
    at: (along, into, q = 0) =>
      vector(tip + inward * (along * cos + into * sin), outer + up * (along * sin - into * cos), q),
    inwards: vector(inward * sin, -up * cos, 0),
  };
}

/** A slanting slot or groove: points in the plane of the corner, drawn square to it. */
export function slanted(
  line: MitreLine,
  points: readonly Vec3[],
  from: number,
  to: number,
  clearance: number,
): CutDraft {
  const [u, v]: [Axis, Axis] = POLYGON_AXES[line.deep];
  return {
    kind: 'slant',
    face: line.end,
    axis: line.deep,
    from,
    to,
    polygon: points.map(p => [p[u], p[v]]),
    through: to - from > line.thick - 0.05,
    clearance,
  };
}

/** The plain mitre, with a strengthening said: its end cuts, glue and refusals, told at a figure of this joint. */
export function plainMitre(c: MakeContext, figure: string): JointParts {
  const made = mitredFrame.make({ ...c, word: () => 'spline' });
  return made.impossible ? { ...made, impossible: made.impossible.map(i => ({ ...i, figure })) } : made;
}
