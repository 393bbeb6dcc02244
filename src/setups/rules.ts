import type { Basis, Rule } from '../results/source.ts';

const PRACTICE = 'common practice';
const rule = (
  number: string,
  says: string,
  reason: string,
  text = PRACTICE,
  basis: Basis = 'common practice',
): Rule => ({ number, says, reason, source: { text, basis } });

/** The numbered rules by which settings are made. Tests quote the number; "why" shows the words. */
export const SET_RULES = {
  reference: rule(
    'SET-1',
    'Measure every setting from the face side or the face edge, ends from the nearer end.',
    'One surface for all parts of a joint: what differs in thickness then falls on the side nobody sees.',
  ),
  kerf: rule(
    'SET-2',
    'The kerf falls in the waste: read to the near teeth when the fence side is kept, to the far teeth when it is waste.',
    'On the wrong side the part is short by a whole kerf.',
  ),
  flipped: rule(
    'SET-3',
    'Cheeks cut by turning the work: the fence stands at jig + (stock + tenon) / 2.',
    'Two equal cuts leave the tenon in the middle of the stock whatever its thickness.',
  ),
  halfClearance: rule(
    'SET-4',
    'From an open mortise to its tenon, same jig and equal thickness, the fence moves the kerf less half the clearance.',
    'The kerf lies inside the slot and outside the tenon; turning takes the other half of the clearance.',
  ),
  oneFace: rule(
    'SET-5',
    'Both cheeks from one face: the fence moves tenon + kerf, and a correction is taken whole.',
    'Only the second cut sets the size; the spread of thickness does not reach the tenon.',
  ),
  correction: rule(
    'SET-6',
    'A trial cut made by turning is corrected by half the measured error, one made from one face by the whole.',
    'Turning shifts both sides of the tenon or slot at once.',
  ),
  fit: rule(
    'SET-7',
    'A tenon is set to the slot it enters less the clearance; 0.1 mm where none is given.',
    'It slides by hand and holds its own weight; the glue needs the rest.',
    'trade fits 0.05 to 0.15 mm, remembered; an open joint 0.1 mm tight was strongest in Elek et al. 2020, doi 10.1007/s00107-020-01509-w',
    'memory',
  ),
  toStock: rule(
    'SET-8',
    'A groove or housing is set to the measured sheet or part that enters it.',
    'Nominal 18 mm plywood comes 17.1 to 18.7.',
    'plyterra.com size tables',
    'read',
  ),
  wideSlot: rule(
    'SET-9',
    'A slot wider than the tool: the fence moves slot less kerf, in steps no wider than the tool.',
    'First and last cut set the two walls, the rest clear between them.',
    'two-cut slot arithmetic',
    'computed',
  ),
  rebateTwoCuts: rule(
    'SET-10',
    'A rebate in two cuts: the second is run so that the strip falls clear of the fence.',
    'A strip caught between blade and fence is thrown back.',
  ),
  through: rule(
    'SET-11',
    'A through tenon or bridle is cut as long as its mate measures.',
    'The list says the thickness that was ordered, the calipers the one that came.',
  ),
  bladeOver: rule(
    'SET-12',
    'For a cut right through the blade stands 5 mm over the work.',
    'Enough teeth to clear the dust and no more blade than needed.',
    'blade teeth 3 to 6 mm over the stock, renovateyourworld.com blade-height',
    'read',
  ),
  depthPass: rule(
    'SET-13',
    'A router takes about half its cutter at a pass, 6 mm at most, 4 in timber of 650 kg/m3 and over.',
    'Deeper passes burn, chatter and break small cutters.',
    'half the cutter, under 6 to 8 mm: remembered',
    'memory',
  ),
  speed: rule(
    'SET-14',
    'Router: to 25 mm cutter 24000, to 50 mm 18000, to 63 mm 16000, to 89 mm 12000, and never over the mark on the tool.',
    'The rim of a large cutter outruns what holds it together.',
    'speed ladder, woodworking.about.com RouterBitSpeeds',
    'read',
  ),
  drillSpeed: rule(
    'SET-15',
    'Drill: n = 60000 v / (pi D), v by drill and material.',
    'The rim does the work: a large drill turns slowly.',
    'cutting speed v = pi D n / 60000; ranges of v remembered',
    'memory',
  ),
  hole: rule(
    'SET-16',
    'A hole takes the drill of its size; a bar fits up to 0.1 mm over, a clearance hole up to 0.5 over.',
    'A visible pin shows a gap from 0.1 mm on.',
    'job practice for a visible pin: measured bar +0 to 0.1 mm',
  ),
  countersink: rule(
    'SET-17',
    'A countersink is set (head - hole) / 2 / tan(half its angle) below the face.',
    'The head then lies flush.',
    'geometry of a cone',
    'computed',
  ),
  mitre: rule(
    'SET-18',
    'A mitre is set from square; both conventions are written, and a ring is tried on waste.',
    'Scales print 45 or 90 less 45, and an error counts twice at every corner.',
    'mitre ring: closing error 2 N e',
    'computed',
  ),
  bothSides: rule(
    'SET-19',
    'A mortise right through is worked from both sides, the face side to the fence both times.',
    'The far arris does not break out and the two halves meet.',
  ),
  taper: rule(
    'SET-20',
    'A taper sled is set by its offset over the tapered length: the part leaves the blade line by that much.',
    'Two lengths are set more truly than an angle of two degrees.',
  ),
  recess: rule(
    'SET-21',
    'A recess for a thin sheet is set to the sheet and its glue line: about 1 mm for 0.9 mm.',
    'The sheet ends flush; proud is sanded through, deep shows an edge.',
  ),
  shortPiece: rule(
    'SET-22',
    'A piece shorter than the machine’s least is not run by itself.',
    'Hands come too near and the work tips into the tool.',
  ),
  alike: rule(
    'SET-23',
    'All cuts with one machine, tool and setting are made in one set-up.',
    'Every new setting differs by 0.1 to 0.2 mm from the last.',
  ),
  edge: rule(
    'SET-24',
    'A moulded edge is cut across the ends first, then along the grain.',
    'The last cut takes the splinters of the first away.',
  ),
  sizing: rule(
    'SET-25',
    'Face flat, edge square, then thickness, width and length: parts of one size in one setting, test pieces with them.',
    'Each face is the datum of the next, and what comes through in one pass is equally thick.',
  ),
  planing: rule(
    'SET-26',
    'Planing takes the spare in equal passes no deeper than the machine may, the last a light one.',
    'Deep passes tear the grain; a light one leaves the surface that stays.',
  ),
  outline: rule(
    'SET-27',
    'A line is marked from the face edge and the nearer end, sawn outside it and worked down to it with the grain.',
    'The saw’s wander stays in the waste; cut downhill, the grain does not tear.',
  ),
  band: rule(
    'SET-28',
    'A band turns no tighter than its width lets it: 3 mm to a radius of 5, 6 to 16, 10 to 37, 13 to 64, 19 to 138.',
    'Forced round, it twists, wanders and breaks.',
    'radius chart of band makers, remembered',
    'memory',
  ),
  bevel: rule(
    'SET-29',
    'A bevel is sawn with the blade leaning away from the fence, the narrow face down; the fence stands at the narrow face’s width.',
    'The waste then lies free above the blade and is not trapped under it.',
  ),
  dovetail: rule(
    'SET-30',
    'A dovetail cutter goes its whole depth in one pass; a straight cutter or saw clears the middle first.',
    'Raised or lowered again it would spoil its own slope.',
  ),
  bend: rule(
    'SET-40',
    'A bar is sawn to its developed length and bent from marks on the straight: legs less radius and thickness, and (pi / 2) (r + K t) for each bend.',
    'Outside a bend the bar grows and inside it shrinks; only the neutral line keeps its length.',
  ),
  turning: rule(
    'SET-31',
    'Turned to calipers: a groove at each station to its diameter, then the line between them.',
    'The parting grooves carry the sizes; the eye joins them.',
  ),
  clamping: rule(
    'SET-32',
    'Clamps stand open before the glue: the outside size and room for cauls; one to each line of joints, along boards within 50 mm of the ends and every 300.',
    'Glue gives minutes, and a clamp that does not reach gives none.',
    'clamps every 200 to 300 mm, 38 to 50 from the ends: blog.eroko.com gluing guide',
    'read',
  ),
  grits: rule(
    'SET-33',
    'Each grit is at most half as fine again as the one before.',
    'A longer step leaves scratches that the finish shows.',
    'gumbollworks.com grit',
    'read',
  ),
} as const satisfies Record<string, Rule>;

export type SetRuleName = keyof typeof SET_RULES;
