import type { Box } from '../geometry/box.ts';
import type { Frame } from '../geometry/frame.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { Cut, LocalFace, Size } from '../results/cuts.ts';
import type { Fastener, GlueFace, JointLimit, JointMade, MovementRoom, PartKind } from '../results/piece.ts';
import type { QuantityKind } from '../results/quantity.ts';
import type { Rule } from '../results/source.ts';
import type { Slope } from './slopes.ts';

export type Role = 'from' | 'into';

/**
 * Where two copies meet. Boxes are the shared footprint, flat for faces that touch and solid where
 * bodies overlap: `world`, and the same in each part's own body frame.
 */
export interface Contact {
  from: string;
  into: string;
  fromFace: LocalFace;
  intoFace: LocalFace;
  world: Box;
  inFrom: Box;
  inInto: Box;
  /** Only where an end runs against a face at a slant. */
  slope?: Slope;
  /** How far the two faces stand apart, mm: 0 where they touch or overlap. */
  apart: number;
}

/** How the copies of a joint find each other. */
export type Meets =
  | 'end to slope'
  | 'end to face'
  | 'end to end'
  | 'edge to face'
  | 'face to face'
  | 'overlap'
  | 'corner';

/** Reads figures for a default; everything read shows up in "why". */
export interface JointReader {
  /** Body size of a member, mm. */
  size(role: Role, which: keyof Size): number;
  /** Wall of a tube or open section, mm; nothing where the part is solid. */
  wall(role: Role): number | undefined;
  /** Size of the receiving member along the way in: how deep a mortise could be at most, mm. */
  depthOf(role: Role): number;
  figure(name: string): number;
  word(name: string): string;
  /** A pair that stands for all pairs of the joint. */
  contact: Contact;
  kind(role: Role): PartKind;
  material(role: Role): string;
}

/** A figure of a joint with the rule of the trade that gives it unless the maker says otherwise. */
export interface JointFigure {
  name: string;
  label: string;
  kind: Extract<QuantityKind, 'length' | 'angle' | 'number' | 'count' | 'text'>;
  rule: Rule;
  /** In words, e.g. `a third of the rail's thickness`. */
  formula: string;
  choices?: string[];
  /** Of 0 there is no joint: it is refused, and nothing is cut. */
  positive?: true;
  value(read: JointReader): number | string;
}

export interface Member {
  role: Role;
  instance: string;
  part: string;
  kind: PartKind;
  material: string;
  round: boolean;
  body: Size;
  frame: Frame;
}

export interface MakeContext {
  id: string;
  figure(name: string): number;
  word(name: string): string;
  contact: Contact;
  from: Member;
  into: Member;
  /** Middle of the whole piece in the world: what lies towards it is inside. */
  middle: Vec3;
  /** Body box, in the member's own frame, of the glued panel it belongs to (itself when it is not one). */
  panel(role: Role): Box;
  adhesive: string | undefined;
  dry: boolean;
}

export type CutDraft = Cut extends infer C ? (C extends Cut ? Omit<C, 'id' | 'by' | 'stage'> : never) : never;

/** What a joint returns: data only (design, section 3, row 4). Cuts are in body frames. */
export interface JointParts {
  cuts: { role: Role; cut: CutDraft }[];
  /** Pairs of cuts that must fit each other, by position in `cuts`. */
  mates?: [number, number][];
  glue: Omit<GlueFace, 'between'>[];
  weld?: JointMade['weld'];
  fasteners: Fastener[];
  limits: JointLimit[];
  room?: MovementRoom;
  bond?: JointMade['bond'];
  /** Why this joint cannot exist with these figures, and the figure that would work: then nothing is cut. */
  impossible?: { figure: string; fault: string; mend: string }[];
}

export interface JointType {
  type: string;
  title: string;
  /** One sentence for the reader of docs and hints. */
  says: string;
  meets: Meets;
  /** Faces may stand this far apart and still meet, mm: a door from its frame, a shelf from its side. Touching unless said. */
  within?: number;
  /** May one end meet more than one receiving part? */
  many: boolean;
  /** What the joint needs from the shop, in words. */
  needs: string[];
  rules: Rule[];
  figures: JointFigure[];
  /** The figure by which `from` is lengthened beyond the face that meets, if it is. */
  adds(contact: Contact): string | undefined;
  make(context: MakeContext): JointParts;
}

export type JointCatalogue = ReadonlyMap<string, JointType>;
