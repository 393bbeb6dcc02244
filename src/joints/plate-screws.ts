import type { Vec3 } from '../geometry/vector.ts';
import type { WoodScrew } from '../reference/screws.ts';
import type { MakeContext, Role } from '../setting-out/joint-type.ts';
import { bored, pointAcross, type RoleCut } from './fixing.ts';
import { pilotFor, soldLength } from './screw-sizes.ts';
import { sizeAlong } from './shape.ts';

/** Screws through a let-in plate: their length and their pilots, drilled from the floor of the recess. mm. */

/** A point comes no nearer to the far side. */
const COVER = 3;

/** The longest screw sold of `most` or less that stays 3 mm short of the far side of wood `whole` thick. */
export const plateScrew = (s: WoodScrew, most: number, whole: number, plate: number): number =>
  soldLength(s, Math.min(most, whole - plate - COVER));

/** How deep a member is behind the face that meets. */
export const behind = (c: MakeContext, role: Role): number =>
  sizeAlong(c[role].body, role === 'from' ? c.contact.fromFace : c.contact.intoFace);

/** Pilot for a screw of `length` through a plate let in by `plate`, at a point of the meeting in the frame of `from`. */
export function platePilot(
  c: MakeContext,
  role: Role,
  at: Vec3,
  screw: { size: WoodScrew; length: number; plate: number },
): RoleCut {
  const member = c[role];
  const face = role === 'from' ? c.contact.fromFace : c.contact.intoFace;
  return {
    role,
    cut: bored(face, member.body, role === 'from' ? at : pointAcross(c, 'from', at), {
      role: 'pilot',
      diameter: pilotFor(screw.size, member.material),
      // A screw that is too long for the wood is told by its limit, and not drilled through.
      depth: Math.min(screw.plate + screw.length, behind(c, role) - 1),
    }),
  };
}
