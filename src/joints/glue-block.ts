import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { runOf } from './fixing.ts';
import { flatArea, limit, longAxis, rule } from './shape.ts';

const GB1 = rule(
  'GB-1',
  'A block is no longer than 75 mm where it lies across the grain of solid wood.',
  'A longer one splits the board or comes off when that moves; several short ones do not.',
  { text: 'remembered, 50 to 100 mm', basis: 'memory' },
);
const GB2 = rule(
  'GB-2',
  'A block stands on each of its two faces with 12 mm at least.',
  'A narrower face of glue peels.',
);

export const glueBlock: JointType = {
  type: 'glue-block',
  title: 'Glue block',
  says: 'A block rubbed into an inner corner with glue; it meets each of the two parts with a joint of this kind.',
  meets: 'face to face',
  many: true,
  needs: ['two faces planed square to each other'],
  rules: [GB1, GB2],
  figures: [
    {
      name: 'longest',
      label: 'longest block',
      kind: 'length',
      rule: GB1,
      formula: '75 mm across the grain of solid wood; else as long as the two meet',
      value: (r: JointReader) => (crosses(r.contact, r.kind('into')) ? 75 : runOf(r.contact).long),
    },
  ],
  adds: () => undefined,
  make,
};

const crosses = (contact: JointReader['contact'], kind: string): boolean =>
  kind === 'timber' && longAxis(contact.inInto, contact.intoFace) !== 'x';

function make(c: MakeContext) {
  const { long, short } = runOf(c.contact);
  return {
    cuts: [],
    glue: [
      {
        area: flatArea(c.contact.inInto),
        grain: crosses(c.contact, c.into.kind) ? ('cross' as const) : ('long' as const),
      },
    ],
    fasteners: [],
    limits: [
      limit(
        GB1,
        'length',
        long,
        { max: c.figure('longest') },
        'attend',
        `Make blocks of ${Math.min(75, Math.floor(long / 2))} mm with gaps between them.`,
      ),
      limit(GB2, 'width', short, { min: 12 }, 'attend', 'Use a block 12 mm or more on each face.'),
    ],
  };
}
