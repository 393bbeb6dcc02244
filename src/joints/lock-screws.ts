import type { Axis, Vec3 } from '../geometry/vector.ts';
import type { MakeContext } from '../setting-out/joint-type.ts';
import { spots } from './fixing.ts';
import { behind, platePilot, plateScrew } from './plate-screws.ts';
import { known } from './screw-sizes.ts';
import { rule } from './shape.ts';

export const LO6 = rule(
  'LO-6',
  'A plate that stands 6 mm or more beyond the body has a screw at each end, 3 mm thick and 16 long or what the wood bears.',
  'The head needs its own width of plate; a shorter plate is held by the body.',
  { text: 'remembered; pilots from the table of screws', basis: 'memory' },
);

const SCREW = known('3.0');

/** Pilots under the ends of the plate on the edge, and their screws; none where the plate has no room for a head. */
export function lockScrews(c: MakeContext, along: Axis, centre: number, across: Partial<Vec3>) {
  const plate = c.figure('plate.thickness');
  const body = c.figure('body.length');
  const ear = (c.figure('plate.length') - body) / 2;
  if (ear < SCREW.headMm.low) return { pilots: [], fasteners: [] };
  const length = plateScrew(SCREW, 16, behind(c, 'from'), plate);
  const at = { ...spots(c, 1, 0)[0]!, ...across };
  return {
    pilots: [-1, 1].map(way =>
      platePilot(
        c,
        'from',
        { ...at, [along]: centre + (way * (body + ear)) / 2 },
        { size: SCREW, length, plate },
      ),
    ),
    fasteners: [
      {
        item: `${SCREW.key} x ${length} screw`,
        kind: 'screw' as const,
        quantity: 2,
        length,
        diameter: SCREW.shankMm,
      },
    ],
  };
}
