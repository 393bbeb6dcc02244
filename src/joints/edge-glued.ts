import type { JointType, MakeContext } from '../setting-out/joint-type.ts';
import { flatArea, rule } from './shape.ts';

const EG1 = rule(
  'EG-1',
  'Boards are glued long grain to long grain, edges shot straight or a shade hollow.',
  'Such a joint is as strong as the wood; the ends dry first and must be in compression.',
);
const EG2 = rule(
  'EG-2',
  'Glued boards move as one across their whole width.',
  'Movement is reckoned over the panel, never over one board.',
);

export const edgeGlued: JointType = {
  type: 'edge-glued',
  title: 'Boards edge-glued',
  says: 'Boards made into one width, long grain to long grain.',
  meets: 'face to face',
  many: true,
  needs: ['a planer or a jointing plane', 'sash clamps at 250 to 300 mm'],
  rules: [EG1, EG2],
  figures: [],
  adds: () => undefined,
  make: (c: MakeContext) => ({
    cuts: [],
    glue: [{ area: flatArea(c.contact.inInto), grain: 'long' as const }],
    fasteners: [],
    limits: [],
  }),
};
