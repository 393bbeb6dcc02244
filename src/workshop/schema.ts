import { z } from 'zod';
import { parseLength } from '../quantities/length.ts';
import { parseMoney, wholeMinor } from '../quantities/money.ts';
import { parseMinutes } from '../quantities/time.ts';
import { GRADES } from '../results/cutting.ts';

/**
 * The workshop file (version workshop/1). Bare numbers are millimetres, minutes and major units of money;
 * a typed unit wins. What is left out takes the defaults shown in docs/job-file.md, marked remembered.
 */
export const WORKSHOP_VERSION = 1;
export const WORKSHOP_KIND = `workshop/${WORKSHOP_VERSION}`;

const short = z.string().max(200);
const key = z
  .string()
  .regex(/^[A-Za-z][A-Za-z0-9_-]{0,60}$/, 'an id is a letter, then letters, figures, - or _');
const byKey = <T extends z.ZodType>(of: T) => z.record(key, of);

const mm = z.union([z.number(), short]).transform((value, context): number => {
  if (typeof value === 'number') return value;
  const parsed = parseLength(value);
  if (parsed.ok) return parsed.value;
  context.addIssue({ code: 'custom', message: `${parsed.fault}; write ${parsed.expected}` });
  return 0;
});
const size = mm.refine(v => v >= 0, 'a size is not below 0');
const span = z.union([z.number(), short]).transform((value, context): number => {
  if (typeof value === 'number') return value;
  const parsed = parseMinutes(value);
  if (parsed.ok) return parsed.value;
  context.addIssue({ code: 'custom', message: `${parsed.fault}; write ${parsed.expected}` });
  return 0;
});
const money = z.union([z.number(), short]).transform((value, context): number => {
  if (typeof value === 'number') return wholeMinor(value * 100);
  const parsed = parseMoney(value);
  if (parsed.ok) return parsed.value;
  context.addIssue({ code: 'custom', message: `${parsed.fault}; write ${parsed.expected}` });
  return 0;
});
const clock = z
  .string()
  .regex(/^([01]?\d|2[0-4]):[0-5]\d$/, 'a time of day is written 8:00')
  .transform(t => {
    const [h, m] = t.split(':').map(Number);
    return h! * 60 + m!;
  });
const share = z.number().min(0).max(5);

const machineKinds = [
  'table saw',
  'mitre saw',
  'band saw',
  'planer',
  'thicknesser',
  'router table',
  'hand router',
  'drill press',
  'hand drill',
  'slot mortiser',
  'chisel mortiser',
  'lathe',
  'disc sander',
  'belt sander',
  'metal saw',
  'polisher',
  'hand tools',
  'bench',
  'clamps',
] as const;

const change = z
  .strictObject({
    tool: span.optional(),
    fence: span.optional(),
    height: span.optional(),
    tilt: span.optional(),
    jig: span.optional(),
  })
  .optional();

const machine = z.strictObject({
  kind: z.enum(machineKinds),
  name: short.optional(),
  max_depth: size.optional(),
  fence: size.optional(),
  max_tilt: z.number().min(0).max(90).optional(),
  shortest: size.optional(),
  widest: size.optional(),
  longest: size.optional(),
  speed: z.number().positive().optional().describe('Turns a minute of the spindle'),
  change,
});
const blade = z.strictObject({
  machine: key,
  name: short.optional(),
  kerf: size,
  diameter: size,
  width: size.optional().describe('Width of a band'),
  max_speed: z.number().positive().optional(),
  use: z.enum(['rip', 'cross', 'combination', 'groove', 'curve', 'metal']),
});
const cutter = z.strictObject({
  name: short.optional(),
  kind: z.enum(['straight', 'rebate', 'chamfer', 'round-over', 'groove', 'dovetail']),
  diameter: size,
  depth: size,
  angle: z.number().min(1).max(45).optional().describe('Slope of a dovetail cutter from upright, degrees'),
  shank: size.optional(),
  bearing: z.boolean().optional(),
  max_speed: z.number().positive().optional(),
});
const drill = z.strictObject({
  name: short.optional(),
  kind: z.enum(['twist', 'brad point', 'forstner', 'countersink', 'mortise chisel']),
  diameter: size,
  depth: size.optional(),
});
const jig = z.strictObject({
  name: short.optional(),
  kind: z.enum(['upright tenon jig', 'cross-cut sled', 'mitre sled', 'taper sled', 'dowel jig', 'other']),
  machine: key,
  offset: size.optional(),
});
const stock = {
  material: short,
  label: short.optional(),
  length: size,
  width: size.optional(),
  thickness: size.optional(),
  diameter: size.optional(),
  wall: size.optional(),
  section: z.enum(['angle', 'channel']).optional().describe('Metal bars that are open, with their wall'),
};
/** A place on a sawn board to keep out of, from end 1 and from the straighter edge. */
const avoid = z
  .strictObject({
    what: z.enum(['knot', 'sapwood', 'split', 'wane', 'rot', 'stain', 'other']),
    from: size,
    to: size,
    low: size.optional(),
    high: size.optional(),
  })
  .refine(a => a.to > a.from, 'a place to avoid ends further along than it begins')
  .refine(a => (a.high ?? Number.POSITIVE_INFINITY) > (a.low ?? 0), 'its high lies above its low');
const grade = z.enum(GRADES);
const rackItem = z.strictObject({
  kind: z.enum(['board', 'planed length', 'sheet', 'bar', 'tube', 'offcut']),
  ...stock,
  quantity: z.number().int().min(0).optional(),
  measured: size.optional().describe('Calipers on the thickness or diameter'),
  moisture: z.number().min(0).max(60).optional(),
  width_far: size
    .optional()
    .describe('Sawn boards: width at the far end, where it is not that of the near end'),
  avoid: z.array(avoid).max(60).optional().describe('Sawn boards: defects and sapwood to keep out of'),
  grade: grade.optional().describe('Timber: what its better face is fit for'),
  photo: short.optional().describe('Name of a picture of the board'),
  value: money.optional().describe('What one stands in the books for'),
});
const supplierItem = z.strictObject({
  kind: z.enum(['planed length', 'board', 'sheet', 'bar', 'tube']),
  ...stock,
  grade: grade.optional().describe('Timber: what its better face is fit for'),
  price: money,
});
const supplier = z.strictObject({
  name: short,
  delivery: money.optional(),
  minimum: money.optional().describe('Least order in goods'),
  lead_days: z.number().min(0).optional(),
  items: byKey(supplierItem),
});
const allowance = z.strictObject({ length: size, width: size, thickness: size });
const spell = z.strictObject({ low: span, likely: span, high: span, note: short.optional() });

export const workshopSchema = z.strictObject({
  scantling: z.string(),
  name: short,
  currency: z
    .string()
    .regex(/^[A-Z]{3}$/, 'a currency is three capitals, such as GBP')
    .optional(),
  climate: z
    .strictObject({ temperature: z.number().min(-40).max(70), humidity: z.number().min(0).max(100) })
    .optional(),
  machines: byKey(machine).optional(),
  blades: byKey(blade).optional(),
  cutters: byKey(cutter).optional(),
  drills: byKey(drill).optional(),
  jigs: byKey(jig).optional(),
  clamps: z
    .array(z.strictObject({ length: size, quantity: z.number().int().min(0) }))
    .max(50)
    .optional(),
  rack: byKey(rackItem).optional(),
  suppliers: byKey(supplier).optional(),
  hours: z
    .partialRecord(
      z.enum(['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun']),
      z.array(z.strictObject({ from: clock, to: clock })).max(6),
    )
    .optional(),
  days_off: z
    .array(z.string().regex(/^\d{4}-\d{2}-\d{2}$/))
    .max(400)
    .optional(),
  rates: z
    .strictObject({
      hour: money,
      contingency: share.optional(),
      margin: share.optional(),
      tax: z.strictObject({ registered: z.boolean(), rate: share }).optional(),
      consumables: share.optional(),
    })
    .optional(),
  k_factor: z
    .number()
    .min(0.2)
    .max(0.6)
    .optional()
    .describe('Place of the neutral line in a bend, share of the thickness, as trial bends have shown'),
  allowances: z
    .strictObject({
      timber: allowance.optional(),
      sheet: allowance.optional(),
      bar: allowance.optional(),
      tube: allowance.optional(),
    })
    .optional(),
  adhesives: byKey(
    z.strictObject({
      like: short.optional(),
      name: short,
      open: span.optional(),
      clamp: span.optional(),
      cure: span.optional(),
      price_per_kg: money.optional(),
    }),
  ).optional(),
  finishes: byKey(
    z.strictObject({
      like: short.optional(),
      name: short,
      recoat: span.optional(),
      recoat_within: span.optional(),
      cure: span.optional(),
      spread: z.number().positive().optional().describe('m2 a litre, one coat'),
      price_per_litre: money.optional(),
    }),
  ).optional(),
  times: byKey(spell).optional(),
  least_offcut: z.strictObject({ length: size, width: size }).optional(),
  notes: z.string().max(4000).optional(),
});

export type WorkshopDocument = z.input<typeof workshopSchema>;
export type WorkshopRead = z.output<typeof workshopSchema>;
