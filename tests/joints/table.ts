import { add, scale } from '../../src/geometry/vector.ts';
import { prove } from '../../src/proof/prove.ts';
import { stockVolume } from '../../src/results/cut-shapes.ts';
import type { SolidKernel } from '../../src/results/kernel.ts';
import type { Instance } from '../../src/results/piece.ts';
import { pieceOf } from '../setting-out/piece.ts';
import { type Gap, gapsBetween } from './gaps.ts';
import { PIECES } from './pieces/index.ts';
import { grownAt, grownFace, pushed, thickerRound } from './spoil.ts';

/** Thickness of the thinner part at which every joint is tried, mm. */
export const SIZES = [12, 20, 45];
/** Gaps are looked for up to here: wider is no fit, mm. */
export const MOST = 9;
/** What the entering part is made too big by, beyond the gap it has, mm. */
export const TOO_BIG = 0.2;

type Read = (figure: string) => number;

/** Gaps that the figures of a joint state, mm, besides faces that touch. */
const STATED: Record<string, (f: Read) => number[]> = {
  'mortise-and-tenon': f => [f('mortise.deeper')],
  'pegged-tenon': f => [f('mortise.deeper')],
  'twin-tenon': f => [f('mortise.deeper')],
  'round-tenon': f => [f('bore.deeper')],
  'lapped-dovetail': f => [f('length')],
  'sliding-dovetail': f => [f('depth')],
  'breadboard-end': f => [f('deeper'), ...(f('tenons') > 1 ? [f('play')] : [])],
  'stopped-housing': f => [f('notch.room'), f('depth')],
  'corner-notch': f => [f('play')],
  'grooved-panel': f => [f('fit') / 2, f('gap.side')],
  'tongue-and-groove': f => [f('fit') / 2, f('groove.deeper'), f('tongue.length') + f('groove.deeper')],
  'bar-in-hole': f => [f('gap')],
  'bed-connector': f => [2 * f('plate.thickness')],
  'table-plate': f => [f('thickness')],
  'shelf-pins': () => [1],
  'hinge-recess': f => [1.5, f('knuckle')],
  'lock-recess': f => [2, 2 + f('plate.thickness')],
  'runner-groove': f => [f('play') / 2, f('behind'), f('at.end')],
  welded: f => [f('gap')],
  'sheet-let-in': f => [f('glue.line')],
};

/** Joints whose fit lies in faces that are not square to an axis: round, mitred, or slanting. */
const ROUND = ['round-tenon', 'bar-in-hole'];
/** Joints whose walls slant: the part is pushed on as a whole, square to the widest faces that meet. */
const PUSHED = ['through-dovetail', 'lapped-dovetail', 'sliding-dovetail', 'finger-joint'];
const WAY: Record<string, string> = { 'tapered-housing': '+z' };

export interface Tried {
  joint: string;
  t: number;
  faults: string[];
  /** mm3, as the proof tells it. */
  overlap: number;
  gaps: Gap[];
  /** Gaps up to MOST that the figures state, ascending, mm. */
  stated: number[];
  /** What the solids of the part made too big share with the other, and what the figures say they should, mm3. */
  spoiled: { told: number; expected: number };
}

export function tryJoint(kernel: SolidKernel, joint: string, t: number): Tried {
  const { parts, set } = PIECES[joint]!(t);
  const made = pieceOf({
    parts,
    joints: { j: { type: joint, from: 'from', into: 'into', ...(set ? { set } : {}) } },
  });
  const [from, into] = [made.instance('from'), made.instance('into')];
  const told = (part: Instance): number =>
    prove({ piece: { ...made.piece, instances: [part, into] } }, kernel).overlaps.reduce(
      (s, o) => s + o.volume,
      0,
    );
  const gaps = gapsBetween(kernel, from, into, MOST);
  const figure: Read = name => made.book.number(`joints.j.${name}`) ?? Number.NaN;
  const touch = gaps.some(g => g.gap < 0.02) ? [0] : [];
  const stated = [...new Set([...touch, ...(STATED[joint]?.(figure) ?? [])])]
    .filter(g => g <= MOST)
    .sort((a, b) => a - b);
  const { part, expected } = spoil(figure, joint, from, into, gaps);
  return {
    joint,
    t,
    faults: made.said,
    overlap: prove(made, kernel).overlaps.reduce((s, o) => s + o.volume, 0),
    gaps,
    stated,
    spoiled: { told: told(part), expected },
  };
}

/** A circle as the mesh kernel draws it: 32 sides. */
const AREA = 16 * Math.sin(Math.PI / 16);

/** How far two halves of a mitre at 45 degrees slide along it when one is pushed on by TOO_BIG, mm. */
const SLID = TOO_BIG * Math.SQRT1_2;
/** Area that the strengthening takes out of a mitre, mm2: there nothing touches. */
const OUT_OF_MITRE: Record<string, (f: Read, line: number, thick: number) => number> = {
  'mitre-spline': (f, line) => f('spline.thickness') * line,
  'mitre-keys': f => f('keys') * f('key.thickness') * f('key.depth'),
  'mitre-dowels': f => (AREA / 4) * f('dowel.count') * f('dowel.diameter') ** 2,
  'box-mitre': (f, _line, thick) => (f('spline.thickness') + SLID) * thick,
};

/** Pushed on along its own length, a mitred end shares what touches, each mm2 of it by its lean. */
function pushedMitre(joint: string, from: Instance, figure: Read): { part: Instance; expected: number } {
  const end = from.cuts.find(c => c.kind === 'end-cut');
  if (end?.kind !== 'end-cut') throw new Error(`${joint} has no mitre`);
  const lean = ((Math.abs(end.mitre) + Math.abs(end.bevel)) * Math.PI) / 180;
  const [wide, thick] =
    end.mitre !== 0 ? [from.size.width, from.size.thickness] : [from.size.thickness, from.size.width];
  const line = wide / Math.cos(lean);
  // The outer corner comes out of the other board by as much as the two slide along the mitre.
  const area = (line - SLID) * thick - OUT_OF_MITRE[joint]!(figure, line, thick);
  const by = end.end === 'end1' ? -TOO_BIG : TOO_BIG;
  return {
    part: { ...from, frame: { ...from.frame, origin: add(from.frame.origin, scale(from.frame.x, by)) } },
    expected: TOO_BIG * area * Math.cos(lean),
  };
}

/** Pushed on along its length a scarf shares its whole section: slope and nibs together. */
const pushedOn = (from: Instance): { part: Instance; expected: number } => ({
  part: { ...from, frame: { ...from.frame, origin: add(from.frame.origin, scale(from.frame.x, -TOO_BIG)) } },
  expected: TOO_BIG * from.size.width * from.size.thickness,
});

function spoil(
  figure: Read,
  joint: string,
  from: Instance,
  into: Instance,
  gaps: Gap[],
): { part: Instance; expected: number } {
  if (['mitred-frame', 'welded-mitre', 'splayed-rail'].includes(joint)) {
    const end = from.cuts.find(c => c.kind === 'end-cut');
    const face = end?.kind === 'end-cut' ? end.end : 'end1';
    // Dowel holes lie on one line in both, so that no wood meets there.
    const bored = from.cuts.reduce(
      (sum, c) => sum + (c.kind === 'hole' ? (AREA / 4) * c.diameter ** 2 : 0),
      0,
    );
    return {
      part: grownFace(from, face, TOO_BIG),
      expected: TOO_BIG * (stockVolume({ ...from, size: { ...from.size, length: 1 } }) - bored),
    };
  }
  if (joint === 'scarf') return pushedOn(from);
  if (OUT_OF_MITRE[joint]) return pushedMitre(joint, from, figure);
  if (ROUND.includes(joint)) {
    const hole = into.cuts.find(c => c.kind === 'hole');
    if (hole?.kind !== 'hole') throw new Error(`${joint} has no bore`);
    const room = gaps.find(g => g.gap > 0.5)?.gap ?? 0;
    const d = hole.diameter;
    return {
      part: thickerRound(from, TOO_BIG),
      expected: (AREA / 4) * ((d + TOO_BIG) ** 2 - d ** 2) * (hole.depth - room),
    };
  }
  const nearest = gaps.filter(g => !gaps.some(o => o.way === g.way && o.gap < g.gap - 1e-6));
  const wanted = nearest.filter(g => WAY[joint] === undefined || g.way === WAY[joint]);
  const widest = wanted.reduce((a, b) => (b.area > a.area ? b : a));
  if (PUSHED.includes(joint))
    return { part: pushed(from, widest, widest.gap + TOO_BIG), expected: TOO_BIG * widest.area };
  return { part: grownAt(from, widest, widest.gap + TOO_BIG), expected: TOO_BIG * widest.area };
}

/** The gaps found, without repeats, ascending, mm. */
export const found = (gaps: readonly Gap[]): number[] =>
  [...new Set(gaps.map(g => Math.round(g.gap * 100) / 100))].sort((a, b) => a - b);
