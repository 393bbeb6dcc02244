import type { JointType, MakeContext } from '../setting-out/joint-type.ts';
import { flatArea, rule } from './shape.ts';

const SB1 = rule(
  'SB-1',
  'Both faces of a core take the same sheet, on the same day.',
  'One face alone draws the core hollow.',
  { text: 'woodweb, balancing veneered panels', basis: 'read' },
);
const SB2 = rule(
  'SB-2',
  'A glue line of 0.1 mm is reckoned for thin sheet.',
  'It adds to the build-up that a groove must take.',
);

export const sheetBonded: JointType = {
  type: 'sheet-bonded',
  title: 'Sheet bonded to a core',
  says: 'Metal sheet, laminate or veneer glued all over to a core.',
  meets: 'face to face',
  many: true,
  needs: ['a press, vacuum bag or cauls', 'abrasive and degreaser for metal'],
  rules: [SB1, SB2],
  figures: [
    { name: 'glue.line', label: 'glue line', kind: 'length', rule: SB2, formula: '0.1 mm', value: () => 0.1 },
    {
      name: 'faces',
      label: 'faces bonded',
      kind: 'text',
      rule: SB1,
      formula: 'both',
      choices: ['both', 'one'],
      value: () => 'both',
    },
  ],
  adds: () => undefined,
  make: (c: MakeContext) => ({
    cuts: [],
    glue: [{ area: flatArea(c.contact.inInto), grain: 'metal' as const }],
    fasteners: [],
    limits: [],
    bond: {
      sheet: c.from.instance,
      core: c.into.instance,
      adhesive: c.adhesive ?? '',
      glueLine: c.figure('glue.line'),
      bothFaces: c.word('faces') === 'both',
    },
  }),
};
