import { z } from 'zod';

/** Drawers and doors as the maker orders them; `src/builders` makes parts and joints of them. */
export interface Words {
  figure: z.ZodType<string | number>;
  short: z.ZodType<string>;
}

const opening = ({ figure }: Words) =>
  z.strictObject({
    left: figure,
    right: figure,
    bottom: figure,
    top: figure,
    front: figure.describe('Plane the front comes flush with'),
  });

const price = z
  .union([z.number(), z.string().max(40)])
  .optional()
  .describe('Price of one');

export function drawerSchema(words: Words) {
  const { figure, short } = words;
  return z.strictObject({
    name: short.optional(),
    opening: opening(words).extend({ back: figure.describe('What the drawer must stay clear of behind') }),
    depth: figure.optional().describe('Over all, from the front; else what the opening or the slides give'),
    material: short.describe('Sides and back'),
    gap: figure.optional().describe('Each side of the front and under it'),
    front: z
      .strictObject({
        material: short.optional(),
        thickness: figure.optional(),
        false_front: figure.optional().describe('Thickness of a front screwed on before the box'),
        overlap: figure.optional().describe('False front over the opening, each way; none when let in'),
      })
      .optional(),
    side: z.strictObject({ thickness: figure.optional(), reserve: figure.optional() }).optional(),
    corner: z.enum(['rebated', 'dovetailed']).optional().describe('How the sides meet the front'),
    back: z.strictObject({ thickness: figure.optional(), from_end: figure.optional() }).optional(),
    bottom: z
      .strictObject({
        material: short,
        thickness: figure,
        groove: figure.optional(),
        up: figure.optional().describe('From the lower edge of the sides'),
      })
      .optional(),
    runner: z
      .strictObject({ front: short, back: short, width: figure.optional(), thickness: figure.optional() })
      .optional()
      .describe('Wooden runners between two parts'),
    kicker: z
      .strictObject({ front: short, back: short, width: figure.optional(), thickness: figure.optional() })
      .optional()
      .describe('Wooden kickers between two parts'),
    slides: z
      .strictObject({
        item: short,
        length: figure,
        room: figure.describe('Each side, as the item in hand says'),
        price,
        mass: figure.optional(),
      })
      .optional()
      .describe('Bought slides instead of runners'),
    stops: z.boolean().optional(),
  });
}

export function doorSchema(words: Words) {
  const { figure, short } = words;
  return z.strictObject({
    name: short.optional(),
    opening: opening(words),
    material: short,
    thickness: figure,
    gap: figure.optional().describe('All round'),
    hinged: z.enum(['left', 'right']),
    stile: figure.optional().describe('Width of the stiles; without it the door is one slab'),
    top_rail: figure.optional(),
    bottom_rail: figure.optional(),
    tenon: figure.optional().describe('Length of the tenons of the rails'),
    groove: figure.optional(),
    panel: z
      .strictObject({
        material: short,
        thickness: figure,
        edge: figure.optional().describe('Thickness that enters the groove, rebated from behind'),
        gap: figure.optional(),
      })
      .optional(),
    hinges: z
      .strictObject({
        item: short,
        length: figure.describe('Of the leaf, as the item in hand measures'),
        count: figure.optional(),
        price,
        mass: figure.optional(),
      })
      .optional(),
  });
}

const WORLD_FACES = ['left', 'right', 'front', 'back', 'bottom', 'top'] as const;

export function panelSchema({ figure, short, place }: Words & { place: z.ZodType<Place> }) {
  const face = z.strictObject({ material: short, thickness: figure });
  return z.strictObject({
    name: short.optional(),
    along: z.enum(['left', 'right', 'front', 'back', 'up', 'down']),
    facing: z.enum(['left', 'right', 'front', 'back', 'up', 'down']),
    at: place.describe('Of the finished panel over its lippings and faces'),
    length: figure.optional(),
    width: figure.optional(),
    mirror: z.strictObject({ x: figure.optional(), y: figure.optional(), z: figure.optional() }).optional(),
    core: z.strictObject({ material: short, thickness: figure }),
    glue: short.optional(),
    faces: z
      .strictObject({ face: face.optional(), back: face.optional(), glue_line: figure.optional() })
      .optional()
      .describe('Veneer, laminate or metal on the face side and behind'),
    lipping: z
      .strictObject({
        material: short,
        thickness: figure,
        edges: z.array(z.enum(WORLD_FACES)).min(1).max(4),
        when: z.enum(['before faces', 'after faces']).optional(),
      })
      .optional(),
  });
}

type Place = Partial<
  Record<
    'left' | 'right' | 'centre_x' | 'front' | 'back' | 'centre_y' | 'bottom' | 'top' | 'centre_z',
    string | number
  >
>;
