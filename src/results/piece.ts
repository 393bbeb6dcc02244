import type { Box } from '../geometry/box.ts';
import type { Frame } from '../geometry/frame.ts';
import type { Cut, LocalFace, Size } from './cuts.ts';
import type { Fault } from './fault.ts';
import type { Rule } from './source.ts';

export type OpenSection = 'angle' | 'channel';

export type PartKind = 'timber' | 'sheet' | 'bar' | 'tube' | 'bought-in';

/** One piece of material in the piece. Definitions are shared; instances have stable ids. */
export interface Instance {
  /** `leg`, `leg_x` (mirrored in x), `slat_3`, `slat_3_x`. */
  id: string;
  /** Id of its definition in the setting-out. */
  part: string;
  name: string;
  kind: PartKind;
  /** Key into the reference or the workshop's own materials. */
  material: string;
  /** Round section: width = thickness = diameter. */
  round: boolean;
  /** Wall of a tube, or thickness of an angle's legs or a channel's web and flanges, mm. */
  wall?: number;
  /** Open metal section: an angle's legs lie on the back and the back edge, a channel's web on the back. */
  section?: OpenSection;
  /** Place of the envelope's origin (end 1, back edge, back face) in the world. */
  frame: Frame;
  /** Between shoulders, before joints lengthen it. */
  body: Size;
  /** Cut size with tenons, tongues and housed edges: what the parts list calls the size. */
  size: Size;
  /** What the joints added to each face of the body. */
  added: Partial<Record<LocalFace, number>>;
  cuts: Cut[];
  /** Calipers' word, where the maker has given it; the rest is nominal. */
  measured?: Partial<Size>;
  /** Size is held until the named measurement is taken (usually at a dry fit). */
  measureFirst?: { when: string /** Added to the blank, mm, until it is measured. */; reserve: Size };
  /** Has no place in the piece (keys, wedges, hardware): drawn and weighed apart. */
  loose: boolean;
  /** Mirror-image copy of its definition. */
  mirrored: boolean;
  /** Grain: along the length for timber; a sheet part may be turned on its sheet when `free`. */
  grain: 'length' | 'width' | 'free';
  /** Finishing recipe id, where one covers it. */
  finish?: string;
  /** May it fail to show? Decides sanding and grading. */
  show: boolean;
}

/** Like parts under one mark. Handed parts are groups of their own, sharing the mark's letter. */
export interface PartGroup {
  /** `A`, or `A L` and `A R` when handed. */
  mark: string;
  part: string;
  name: string;
  kind: PartKind;
  material: string;
  instances: string[];
  size: Size;
  shoulderLength: number;
  /** Cut size plus workshop allowances: what a layout reserves. */
  blank: Size;
  /** Net of all cuts, mm3. */
  volume: number;
  /** Of one, kg. Null when the material's density is unknown. */
  mass: number | null;
  /** Centre of gravity in the part's frame, mm, from the box envelope and its pocket cuts. */
  centre: { x: number; y: number; z: number };
  hand?: 'L' | 'R';
}

export interface Fastener {
  /** Size as the trade says it: `4.0 x 40`, `8 x 40 dowel`. */
  item: string;
  kind: 'screw' | 'dowel' | 'pin' | 'other';
  quantity: number;
  /** mm */
  length: number;
  diameter: number;
}

export interface GlueFace {
  between: [string, string];
  area: number;
  grain: 'long' | 'end' | 'cross' | 'sheet' | 'metal';
}

/** A figure of a joint with the range within which the trade keeps it. */
export interface JointLimit {
  rule: Rule;
  /** Figure path under the joint, e.g. `tenon.thickness`. */
  figure: string;
  value: number;
  min?: number;
  max?: number;
  kind: 'length' | 'number' | 'angle';
  severity: 'stop' | 'attend' | 'note';
  /** The figure that would work at this joint. */
  remedy: string;
}

/** One made joint between instances, as data only. */
export interface JointMade {
  /** `<joint id>:<instance>+<instance>`: stable over edits elsewhere. */
  id: string;
  joint: string;
  type: string;
  title: string;
  instances: string[];
  /** Place in the world where the parts meet, for drawing and exploding. */
  contact: Box;
  glue: GlueFace[];
  fasteners: Fastener[];
  limits: JointLimit[];
  /** Welded: length of the run all round, mm. */
  weld?: { length: number };
  /** Left without glue so that timber may move. */
  dry: boolean;
  /** The play that movement needs or gets: solid panels and slotted screws. */
  room?: MovementRoom;
  /** A thin sheet let into or bonded upon another. */
  bond?: {
    sheet: string;
    core: string;
    adhesive: string;
    glueLine: number;
    recessDepth?: number;
    bothFaces: boolean;
  };
}

/** Where a solid part may move across its grain, how far, and what holds it. */
export interface MovementRoom {
  instance: string;
  /** Width across the grain that moves towards this place, mm. */
  width: number;
  /** Gap or slot travel given for swelling and for shrinking, mm, at assembly. */
  swell: number;
  shrink: number;
  what: 'panel in groove' | 'slotted screw' | 'button' | 'glued' | 'free';
}

/** Work given out: who does it, how long it is away, what it costs. */
export interface Outwork {
  by: string;
  /** Whole days away, weekends counted. */
  days: number;
  /** Minor units of money; null while nobody has named a price. */
  price: number | null;
  note?: string;
}

/** A sub-assembly, its members, its dry fit and its glue-up. */
export interface Assembly {
  id: string;
  name: string;
  /** Instances and other assemblies that go into it. */
  instances: string[];
  assemblies: string[];
  /** Made joints closed at this glue-up. */
  joints: string[];
  glue?: string;
  /** Done by somebody else: its welding. */
  outwork?: Outwork;
  dryFit: boolean;
  /** Order number among the glue-ups. */
  order: number;
}

export interface Piece {
  instances: Instance[];
  groups: PartGroup[];
  joints: JointMade[];
  assemblies: Assembly[];
  /** Outer box in the world, mm. */
  bounds: Box;
  faults: Fault[];
}
