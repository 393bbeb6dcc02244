import type { Box } from '../geometry/box.ts';
import type { Axis, Vec3 } from '../geometry/vector.ts';

/**
 * The closed list of cut kinds. Joints and features return these and nothing else; operations, set-ups,
 * checks and solids read them and never ask which joint they came from.
 * All positions are in the part's own frame (design, section 6): x along the grain from end 1, y across
 * the width from the back edge, z through the thickness from the back face; millimetres.
 */
export type LocalFace = 'end1' | 'end2' | 'backEdge' | 'faceEdge' | 'back' | 'face';
/** The axis of a part across which a face lies. */
export const FACE_AXIS: Record<LocalFace, Axis> = {
  end1: 'x',
  end2: 'x',
  backEdge: 'y',
  faceEdge: 'y',
  back: 'z',
  face: 'z',
};
/** The axes in which a polygon drawn out along an axis lies, in cyclic order. */
export const POLYGON_AXES: Record<Axis, [Axis, Axis]> = { x: ['y', 'z'], y: ['z', 'x'], z: ['x', 'y'] };
export type EndName = 'end1' | 'end2';

/** When a cut is made: on the loose part, or on a glued sub-assembly. */
export type Stage = { when: 'part' } | { when: 'after'; assembly: string };
export const ON_PART: Stage = { when: 'part' };

interface CutBase {
  /** Unique within the instance, stable over edits: `<by>.<n>`. */
  id: string;
  /** Id of the joint or feature that asked for it. */
  by: string;
  stage: Stage;
  /** The cut of another part that this one must fit; set-ups and fits read the mate's measured size. */
  mate?: { instance: string; cut: string };
  /** Play wanted between this cut and its mate, mm in all (not a side). */
  clearance?: number;
}

/** A rectangular pocket: trade meaning by kind, geometry by box. `face` is the side the tool enters. */
export interface PocketCut extends CutBase {
  kind: 'mortise' | 'open-mortise' | 'housing' | 'groove' | 'rebate' | 'recess' | 'halving' | 'notch';
  face: LocalFace;
  box: Box;
  /** The axis along which the cut runs (its long way, or the way the tool travels). */
  run: Axis;
  /** Goes right through the part, away from `face`. */
  through: boolean;
  /** Ends of the pocket, along `run`, as the tool leaves them. */
  corner: 'square' | 'round';
}

/**
 * A tenon: everything at one end beyond the shoulder is taken away except the tenon.
 * `y` and `z` are the amounts taken from each side (0 = no shoulder on that side).
 */
export interface TenonCut extends CutBase {
  kind: 'tenon';
  end: EndName;
  /** Shoulder to tip, mm. */
  length: number;
  y: { low: number; high: number };
  z: { low: number; high: number };
  /** The axis across the cheeks, i.e. the tenon's thickness direction. */
  cheeks: 'y' | 'z';
  /** A short full-thickness stub beside the tenon, left on one edge (across the other axis). */
  haunch?: { side: 'low' | 'high'; width: number; length: number };
  /** Tips cut to 45 degrees where two mortises meet. */
  mitredTip?: { side: 'low' | 'high' };
  through: boolean;
}

/** An end sawn at an angle: `mitre` in the plane of the face (about z), `bevel` about y; degrees from square. */
export interface EndCut extends CutBase {
  kind: 'end-cut';
  end: EndName;
  mitre: number;
  bevel: number;
}

export interface HoleCut extends CutBase {
  kind: 'hole';
  role: 'clearance' | 'pilot' | 'dowel' | 'bar' | 'plain' | 'slot' | 'tapped';
  face: LocalFace;
  /** Centre on the entry face. */
  at: Vec3;
  /** Unit vector into the wood. */
  direction: Vec3;
  diameter: number;
  depth: number;
  through: boolean;
  countersink?: { diameter: number; angle: number };
  /** Lengthened into a slot: overall travel beyond the diameter, along a local axis. */
  slot?: { travel: number; along: Axis };
}

/** Edges named by the two faces that meet there. */
export interface EdgeCut extends CutBase {
  kind: 'chamfer' | 'round-over';
  edges: { a: LocalFace; b: LocalFace }[];
  /** Chamfer leg or radius, mm. */
  size: number;
}

/** A plane taken off one long face: nothing at `from`, `amount` at `to` (stations along x). */
export interface TaperCut extends CutBase {
  kind: 'taper';
  face: Exclude<LocalFace, 'end1' | 'end2'>;
  from: number;
  to: number;
  amount: number;
}

/**
 * A cut whose sides slant or curve: a polygon (in the two axes other than `axis`, cyclic order: y,z for x;
 * z,x for y; x,y for z), drawn out along `axis`. Curves come as short chords. Kinds say how it is worked:
 * `dovetail` waste beside tails, pins, a dovetailed way or tongue; `curve` sawn to a line; `cut-out` closed all
 * round; `bevel` a long edge out of square; `slant` any other slanting seat, slot or scarf; `scribe` to a wall.
 */
export interface ProfileCut extends CutBase {
  kind: 'dovetail' | 'curve' | 'cut-out' | 'bevel' | 'slant' | 'scribe';
  /** The face the line is drawn on and the tool enters. */
  face: LocalFace;
  axis: Axis;
  from: number;
  to: number;
  polygon: [number, number][];
  /** Goes right through the part along `axis`. */
  through: boolean;
}

/** Turned between centres about the part's own axis: stations from end 1 and the diameter there, mm. */
export interface TurnedCut extends CutBase {
  kind: 'turned';
  /** Ascending stations; two of one station make a square step. */
  profile: { at: number; diameter: number }[];
  /** Turned from round stock, not from a square. */
  round: boolean;
}

/**
 * A flat or square bar bent at right angles about its width. Nothing is cut: `air` is what the box round the
 * bent bar holds beside it, outlines across y in z, x. `L` rises at end 2, `U` at both ends, `Z` steps up between.
 */
export interface BentCut extends CutBase {
  kind: 'bent';
  form: 'L' | 'U' | 'Z';
  /** Thickness of the bar and inside radius of its bends, mm. */
  stock: number;
  radius: number;
  /** Length of the straight bar before it is bent, mm. */
  developed: number;
  air: [number, number][][];
}

export type Cut =
  | PocketCut
  | TenonCut
  | EndCut
  | HoleCut
  | EdgeCut
  | TaperCut
  | ProfileCut
  | TurnedCut
  | BentCut;
export type CutKind = Cut['kind'];

/** Envelope sizes of a part in its own frame, mm. For round stock width = thickness = diameter. */
export interface Size {
  length: number;
  width: number;
  thickness: number;
}
