import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { runOf } from './fixing.ts';
import { screwed } from './screwed.ts';
import { flatArea, limit, longAxis, rule } from './shape.ts';

const CL1 = rule(
  'CL-1',
  'A cleat along the grain is glued and screwed; across the grain of solid wood it is screwed only, in slots.',
  'Glued across, it splits the board that it should carry.',
);
const CL2 = rule(
  'CL-2',
  'A slot across the grain gives 1 mm for each 50 mm of cleat, 2 mm at least.',
  'A board moves about a hundredth either way through the year.',
  { text: 'remembered, 0.5 to 1.5 %', basis: 'memory' },
);
const CL3 = rule(
  'CL-3',
  'A cleat is as thick as the part it carries, 12 mm at least.',
  'Thinner, its screws split it.',
);

const crossing = (r: JointReader): boolean =>
  r.kind('into') === 'timber' && longAxis(r.contact.inInto, r.contact.intoFace) !== 'x';

/** A strip on the side of a board, on which a shelf, a bottom or slats lie. */
export const cleat: JointType = {
  ...screwed,
  type: 'cleat',
  title: 'Cleat',
  says: 'A strip screwed, and along the grain glued, to the side of a part so that another lies upon it.',
  rules: [CL1, CL2, CL3],
  figures: screwed.figures.map(f =>
    f.name === 'slot'
      ? {
          ...f,
          rule: CL2,
          formula: 'nothing along the grain; across it a fiftieth of the cleat, 2 mm at least, whole mm',
          value: (r: JointReader) => (crossing(r) ? Math.max(2, Math.round(runOf(r.contact).long / 50)) : 0),
        }
      : f,
  ),
  make,
};

function make(c: MakeContext) {
  const made = screwed.make(c);
  const across = c.into.kind === 'timber' && longAxis(c.contact.inInto, c.contact.intoFace) !== 'x';
  const thin = Math.min(c.from.body.width, c.from.body.thickness);
  return {
    ...made,
    glue: across ? [] : [{ area: flatArea(c.contact.inInto), grain: 'long' as const }],
    limits: [
      ...made.limits,
      limit(CL3, 'cleat thickness', thin, { min: 12 }, 'attend', 'Make the cleat 12 mm thick.'),
      ...(across
        ? [
            limit(
              CL2,
              'slot',
              c.figure('slot'),
              { min: 2 },
              'attend',
              `Give ${Math.max(2, Math.round(runOf(c.contact).long / 50))} mm: the board moves across the cleat.`,
            ),
          ]
        : []),
    ],
  };
}
