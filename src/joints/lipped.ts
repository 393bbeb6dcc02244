import type { JointType, MakeContext } from '../setting-out/joint-type.ts';
import { flatArea, limit, rule } from './shape.ts';

const LI1 = rule(
  'LI-1',
  'A lipping on a sheet is 3 mm thick at least, and thicker than any round-over or chamfer on its edge.',
  'Thinner it is worked through where the edge is broken.',
);
const LI2 = rule(
  'LI-2',
  'A solid lipping is 10 mm thick at most beside a veneered face.',
  'Solid timber moves where sheet does not, and the line shows through.',
);
const LI3 = rule(
  'LI-3',
  'A lipping is glued on 2 mm wider than the edge and planed flush after.',
  'No edge is met exactly, and sheet must not be planed to the timber.',
);

/** The glue line along a lipping, which also tells the least and the most it should be thick. */
export const lipped: JointType = {
  type: 'lipped',
  title: 'Lipping',
  says: 'A strip of solid timber glued along the edge of a sheet.',
  meets: 'face to face',
  many: true,
  needs: ['sash clamps or tape', 'a flush plane or a bearing-guided cutter'],
  rules: [LI1, LI2, LI3],
  figures: [],
  adds: () => undefined,
  make: (c: MakeContext) => {
    const thick = Math.min(c.from.body.thickness, c.from.body.width);
    return {
      cuts: [],
      glue: [{ area: flatArea(c.contact.inInto), grain: 'long' as const }],
      fasteners: [],
      limits: [
        limit(LI1, 'lipping', thick, { min: 3 }, 'attend', 'Make the lipping 3 mm or more.'),
        limit(LI2, 'lipping', thick, { max: 10 }, 'note', 'Keep it to 10 mm beside a veneered face.'),
      ],
    };
  },
};
