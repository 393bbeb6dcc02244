import { rule } from '../joints/shape.ts';
import type { Rule } from '../results/source.ts';

/** Rules by which drawers and doors are made of an opening; parts quote their numbers in their notes. */
export const BLD_1 = rule(
  'BLD-1',
  'A drawer front let in stands 1 mm clear at each side and below.',
  'Less binds when the frame racks, more shows.',
);
export const BLD_2 = rule(
  'BLD-2',
  'Over a solid front is left 0.5 mm and what the front grows from the bench to the dampest of its room.',
  'A front fitted tight in the dry jams in the damp.',
  {
    text: 'dD = D C (M_F - M_I), Wood Handbook FPL-GTR-190 (2010) Eq 13-2; 0.5 mm common practice',
    basis: 'read',
  },
);
export const BLD_3 = rule(
  'BLD-3',
  'Drawer sides are 1 mm lower than the front and are held back until the opening is measured.',
  'They are shot to their own opening.',
);
export const BLD_4 = rule(
  'BLD-4',
  'The back stands on the bottom and stays 1 mm under the sides, 10 mm in from their ends.',
  'Air gets out when the drawer is shut, and the ends of the sides carry it when it is out.',
);
export const BLD_5 = rule(
  'BLD-5',
  'A drawer ends 10 mm short of what stands behind it, where no depth is given.',
  'It must meet its stops first.',
);
export const BLD_6 = rule(
  'BLD-6',
  'With bought slides the box leaves on each side exactly the room that the item in hand asks.',
  'A slide runs within 0.5 mm or not at all.',
  { text: 'the fitting sheet of the item', basis: 'maker' },
);
export const BLD_7 = rule(
  'BLD-7',
  'A door let in has 2 mm all round, and on its closing side what its stiles grow besides.',
  'It must open after a wet summer.',
  {
    text: 'dD = D C (M_F - M_I), Wood Handbook FPL-GTR-190 (2010) Eq 13-2; 2 mm common practice',
    basis: 'read',
  },
);
export const BLD_8 = rule(
  'BLD-8',
  'The inner arris of the closing edge swings out by thickness squared over twice the width; the gap must give it.',
  'A thick narrow door strikes its frame: bevel the edge or widen the gap.',
  { text: 'geometry: sqrt(w^2 + t^2) - w, pin in the plane of the face', basis: 'computed' },
);
export const BLD_9 = rule(
  'BLD-9',
  'Two hinges carry a door up to 900 mm high, three one above it.',
  'Screws work loose first at the top hinge.',
);
export const BLD_10 = rule(
  'BLD-10',
  'Stops are two blocks on the rail behind the front, 6 mm thick.',
  'The drawer stops at the front, where it is seen, and not on its back.',
);

export const BLD_11 = rule(
  'BLD-11',
  'The core is smaller than the finished panel by its lippings; strips on the long sides run over those at the ends.',
  'The end grain of a strip is hidden from the front.',
);
export const BLD_12 = rule(
  'BLD-12',
  'A groove or recess is cut to the core as measured, the faces and their glue lines.',
  'Sheet is seldom its nominal thickness, and two glue lines are 0.2 mm.',
);
export const BLD_13 = rule(
  'BLD-13',
  'Faces put on before the lipping are covered by it; faces put on after cover the lipping.',
  'The one hides the edge of the veneer, the other the joint of the strip.',
);

export const BUILDER_RULES: readonly Rule[] = [
  BLD_1,
  BLD_2,
  BLD_3,
  BLD_4,
  BLD_5,
  BLD_6,
  BLD_7,
  BLD_8,
  BLD_9,
  BLD_10,
  BLD_11,
  BLD_12,
  BLD_13,
];
