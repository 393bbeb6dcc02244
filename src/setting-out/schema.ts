import { z } from 'zod';
import { doorSchema, drawerSchema, panelSchema } from './builder-schema.ts';
import { cuttingSchema } from './cutting-schema.ts';

/**
 * The job file (version job/1) as it is written: sizes are numbers in the file's unit, quantities or
 * expressions. Collections are keyed by id so that edits can name what they change. Row 3.
 */
export const JOB_VERSION = 1;
export const JOB_KIND = `job/${JOB_VERSION}`;

const WRITTEN_DAY = /^\d{4}-\d{2}-\d{2}$/;

/** A day of the civil calendar written 2026-12-24; a leap day only in a leap year. */
export function isDay(iso: string): boolean {
  if (!WRITTEN_DAY.test(iso)) return false;
  const [y = 0, m = 0, d = 0] = iso.split('-').map(Number);
  const leap = (y % 4 === 0 && y % 100 !== 0) || y % 400 === 0;
  const days = [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  return m >= 1 && m <= 12 && d >= 1 && d <= days[m - 1]!;
}

const ID = /^[A-Za-z][A-Za-z0-9_]{0,40}$/;
const id = z.string().regex(ID, 'an id is a letter, then letters, figures or _, at most 41 in all');
const byId = <T extends z.ZodType>(of: T) => z.record(id, of);
const words = z.string().max(4000);
const short = z.string().max(200);
const figure = z
  .union([z.number(), z.string().max(400)])
  .describe("A number in the file's unit, a quantity such as 40 mm or 1 3/4 in, or an expression");
const date = z
  .string()
  .regex(WRITTEN_DAY, 'a date is written 2026-12-24')
  .refine(d => isDay(d), 'there is no such day');
const band = (least: number, most: number, unit: string) =>
  z
    .strictObject({ low: z.number().min(least).max(most), high: z.number().min(least).max(most) })
    .refine(b => b.low <= b.high, `low must not be above high (${unit})`);
const axis = z.enum(['x', 'y', 'z']);
const direction = z.enum(['left', 'right', 'front', 'back', 'up', 'down']);
export const FACE_WORDS = ['left', 'right', 'front', 'back', 'bottom', 'top', 'end1', 'end2'] as const;
const face = z.enum(FACE_WORDS);
/** What a scale or calipers read: no expression, only a figure. */
const reading = z.union([z.number().min(0), z.string().max(40)]);
const sizes = z.strictObject({
  length: figure.optional(),
  width: figure.optional(),
  thickness: figure.optional(),
});

const parameter = z.union([
  figure,
  z.strictObject({
    value: figure,
    label: short.optional(),
    min: figure.optional(),
    max: figure.optional(),
    choices: z.array(short).max(40).optional(),
    kind: z
      .enum(['length', 'angle', 'number', 'choice'])
      .optional()
      .describe('What it measures; length unless said'),
    note: words.optional(),
  }),
]);

const place = z.strictObject({
  left: figure.optional(),
  right: figure.optional(),
  centre_x: figure.optional(),
  front: figure.optional(),
  back: figure.optional(),
  centre_y: figure.optional(),
  bottom: figure.optional(),
  top: figure.optional(),
  centre_z: figure.optional(),
});

const part = z.strictObject({
  name: short.optional(),
  kind: z.enum(['timber', 'sheet', 'bar', 'tube', 'bought-in']),
  material: short.optional().describe('Key of the timber, sheet or metal; for bought-in parts the item'),
  length: figure
    .optional()
    .describe('Between shoulders; joints lengthen it. May be left out when two places fix it'),
  width: figure.optional(),
  thickness: figure.optional(),
  diameter: figure.optional().describe('Round bar, tube or dowel: stands for width and thickness'),
  wall: figure
    .optional()
    .describe('Of a tube, or of the legs of an angle or the web and flanges of a channel'),
  section: z
    .enum(['angle', 'channel'])
    .optional()
    .describe('Metal bar that is open: legs on the back and the back edge, or web on the back'),
  along: direction.optional().describe('Where end 2 lies, seen from end 1'),
  facing: direction.optional().describe('Where the face side looks'),
  at: place.optional(),
  turn: z
    .strictObject({ x: figure.optional(), y: figure.optional(), z: figure.optional() })
    .optional()
    .describe("Degrees about the body's centre, about x, then y, then z"),
  repeat: z.strictObject({ count: figure, along: axis, step: figure }).optional(),
  mirror: z.strictObject({ x: figure.optional(), y: figure.optional(), z: figure.optional() }).optional(),
  count: figure.optional().describe('Bought-in parts and loose pieces without a place: how many'),
  measure_first: z.strictObject({ when: short, reserve: sizes.optional() }).optional(),
  allowance: sizes.optional().describe('Added to the cut size for the blank; wins over the workshop'),
  grain: z.enum(['length', 'width', 'free']).optional(),
  show: z.boolean().optional(),
  price: z
    .union([z.number(), z.string().max(40)])
    .optional()
    .describe('Bought-in: price of one'),
  mass: figure.optional().describe('Bought-in: mass of one'),
  note: words.optional(),
});

const joint = z.strictObject({
  type: short,
  from: short.describe('The part that enters, lies upon or is held'),
  into: short.describe('The part that receives it'),
  pair: z
    .union([z.literal('touching'), z.array(z.tuple([short, short])).max(200)])
    .optional()
    .describe('Which copies meet: those that touch (default), or a list of pairs'),
  count: figure.optional().describe('How many joints this must make; anything else is a fault'),
  set: z.record(z.string().max(60), figure).optional().describe('Figures of the joint that you fix yourself'),
  adhesive: short.optional(),
  dry: z.boolean().optional(),
  note: words.optional(),
});

const feature = z.strictObject({
  type: z.enum([
    'rebate',
    'groove',
    'hole',
    'countersink',
    'chamfer',
    'round-over',
    'taper',
    'mitre',
    'notch',
    'curve',
    'scribe',
    'cut-out',
    'bevel',
    'rounded-corner',
    'turned',
    'bent',
  ]),
  on: short,
  face: face.optional(),
  edge: face.optional(),
  edges: z
    .array(z.tuple([face, face]))
    .max(12)
    .optional(),
  end: z.enum(['end1', 'end2']).optional(),
  width: figure.optional(),
  depth: figure.optional(),
  size: figure.optional(),
  from: figure.optional(),
  to: figure.optional(),
  along: figure.optional(),
  across: figure.optional(),
  diameter: figure.optional(),
  angle: figure.optional(),
  tilt: figure.optional().describe('Mitre: second angle, across the other faces, for a compound end'),
  radius: figure.optional().describe('Corners of a cut-out; inside of a bend'),
  form: z.enum(['L', 'U', 'Z']).optional().describe('Bent bar: one leg up at end 2, both ends up, or a step'),
  points: z
    .array(z.tuple([figure, figure]))
    .min(2)
    .max(60)
    .optional()
    .describe('Stations from end 1 with the depth taken there (curve, scribe) or the diameter (turned)'),
  start: figure.optional(),
  amount: figure.optional(),
  travel: figure.optional(),
  repeat: z.strictObject({ count: figure, step: figure }).optional(),
  after: short.optional().describe('Assembly after whose glue-up it is cut'),
  note: words.optional(),
});

const outwork = z
  .strictObject({
    by: short,
    days: z.number().int().min(0).max(365),
    price: z.union([z.number().nonnegative(), z.string().max(40)]).optional(),
    note: words.optional(),
  })
  .describe('Done by somebody else: who, days away with weekends, what it costs');

const assembly = z.strictObject({
  name: short.optional(),
  parts: z.array(short).max(500).optional(),
  assemblies: z.array(short).max(100).optional(),
  glue: short.optional(),
  dry_fit: z.boolean().optional(),
  outwork: outwork.optional(),
  mirror: axis.optional().describe('Makes a second one of the mirrored copies'),
});

const step = z.strictObject({
  kind: z.enum(['prepare', 'raise grain', 'stain', 'ink', 'sand back', 'coat', 'seal', 'wait', 'polish']),
  name: short.optional(),
  product: short.optional(),
  grit: z.number().int().positive().optional(),
  minutes_per_m2: z.number().nonnegative().optional(),
  wait: short.optional().describe('e.g. 12 h'),
  within: short.optional().describe('Next coat no later than this after the wait'),
});

const finish = z.strictObject({
  name: short.optional(),
  on: z.array(short).max(500),
  when: z.enum(['before glue-up', 'after glue-up']).optional(),
  sample: z.strictObject({ asked: z.boolean(), agreed: date.optional() }).optional(),
  outwork: outwork.optional(),
  steps: byId(step).optional(),
});

const drawer = drawerSchema({ figure, short });
const door = doorSchema({ figure, short });
const panel = panelSchema({ figure, short, place: place as never });

export const jobSchema = z.strictObject({
  scantling: z.string(),
  title: short,
  number: z.union([z.string().max(40), z.number()]).optional(),
  units: z.enum(['mm', 'cm', 'm', 'in']).optional(),
  client: short.optional().describe("Id of the client's own record; never their data"),
  brief: words.optional(),
  site: z
    .strictObject({
      name: short,
      humidity: band(0, 100, '%').optional(),
      temperature: band(-40, 70, 'degrees C').optional(),
      doors: byId(z.strictObject({ name: short.optional(), width: figure, height: figure })).optional(),
    })
    .optional(),
  start: date.optional(),
  deadline: date.optional(),
  moisture: z.number().min(0).max(40).optional().describe('Of the timber when made up, %'),
  parameters: byId(parameter).optional(),
  parts: byId(part).optional(),
  joints: byId(joint).optional(),
  features: byId(feature).optional(),
  drawers: byId(drawer).optional().describe('Built from their opening: parts, joints and an assembly each'),
  doors: byId(door).optional().describe('Built from their opening: parts, joints and an assembly each'),
  panels: byId(panel).optional().describe('Sheets with lippings and faces: core, strips and faces each'),
  assemblies: byId(assembly).optional(),
  finishes: byId(finish).optional(),
  agree: byId(z.strictObject({ label: short.optional(), figure, with: figure, note: words.optional() }))
    .optional()
    .describe('Figures that must come to the same: a chain that closes'),
  measured: z.record(short, sizes).optional().describe("Calipers' word, by part or by copy"),
  allowances: z
    .strictObject({
      timber: sizes.optional(),
      sheet: sizes.optional(),
      bar: sizes.optional(),
      tube: sizes.optional(),
    })
    .optional(),
  price: z
    .strictObject({
      margin: z.number().min(0).max(3).optional(),
      contingency: z.number().min(0).max(3).optional(),
      extras: byId(
        z.strictObject({ label: short, amount: z.union([z.number(), z.string().max(40)]) }),
      ).optional(),
      hours: byId(z.strictObject({ label: short, hours: z.number().nonnegative() })).optional(),
    })
    .optional(),
  marks: z.record(short, z.string().max(6)).optional().describe('Marks frozen once printed or cut, by part'),
  cutting: cuttingSchema({ short }).optional().describe('What you say about cutting: boards, grades'),
  overruled: z
    .record(short, z.strictObject({ reason: short, was: z.string().max(400).optional() }))
    .optional()
    .describe('Checks the maker has judged and set aside, with the reason'),
  standing: z
    .record(
      short,
      z.strictObject({
        tool: short.optional().describe('Id of the blade, cutter or drill in it'),
        jig: short.optional(),
        fence: reading.optional(),
        height: reading.optional(),
        tilt: z.number().min(-90).max(90).optional().describe('Degrees; 0 is square'),
        mitre: z.number().min(-90).max(90).optional().describe('Degrees from square'),
      }),
    )
    .optional()
    .describe('What stands on the machines now, by machine: the order of set-ups starts from it'),
  trials: z
    .record(
      z.string().max(200),
      z.record(
        z.string().regex(/^[1-9]\d?$/, 'trial cuts are numbered 1, 2, 3'),
        z.strictObject({ set: reading, measured: reading }),
      ),
    )
    .optional()
    .describe('Trial cuts by set-up: what the setting read and what came out'),
  notes: words.optional(),
});

export type JobDocument = z.infer<typeof jobSchema>;
export type PartDocument = z.infer<typeof part>;
export type JointDocument = z.infer<typeof joint>;
export type FeatureDocument = z.infer<typeof feature>;
export type AssemblyDocument = z.infer<typeof assembly>;
export type OutworkDocument = z.infer<typeof outwork>;
export type FinishDocument = z.infer<typeof finish>;
export type ParameterDocument = z.infer<typeof parameter>;
export type DrawerDocument = z.infer<typeof drawer>;
export type PanelDocument = z.infer<typeof panel>;
export type DoorDocument = z.infer<typeof door>;
export type FigureText = string | number;
export type FaceWord = (typeof FACE_WORDS)[number];
export type Direction = z.infer<typeof direction>;
