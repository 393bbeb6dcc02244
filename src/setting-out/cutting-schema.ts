import { z } from 'zod';
import { GRADES } from '../results/cutting.ts';

const mm = z.number().min(0).max(1e6);
const avoid = z.strictObject({
  what: z.enum(['knot', 'sapwood', 'split', 'wane', 'rot', 'stain', 'other']),
  from: mm,
  to: mm,
  low: mm.optional(),
  high: mm.optional(),
});

/** A layout as it was accepted, whole: what `StockUse` holds. */
const layoutSchema = z.strictObject({
  id: z.string().max(200),
  item: z.string().max(200),
  supplier: z.string().max(200).optional(),
  label: z.string().max(200),
  from: z.enum(['rack', 'buy']),
  kind: z.enum(['planed length', 'board', 'sheet', 'bar', 'tube', 'offcut']),
  material: z.string().max(200),
  length: mm,
  width: mm,
  thickness: mm,
  round: z.boolean(),
  narrow: z.strictObject({ near: mm, far: mm }).optional(),
  avoid: z.array(avoid).max(60).optional(),
  kerf: mm,
  trim: z.strictObject({ end: mm, edge: mm }),
  price: z.number().min(0),
  placed: z
    .array(
      z.strictObject({
        mark: z.string().max(60),
        instance: z.string().max(200),
        x: mm,
        y: mm,
        length: mm,
        width: mm,
        turned: z.boolean(),
        purpose: z.enum(['part', 'test piece', 'spare']),
      }),
    )
    .max(2000),
  cuts: z
    .array(
      z.strictObject({
        order: z.number().int(),
        kind: z.enum(['cross', 'rip']),
        at: mm,
        from: mm,
        to: mm,
        setting: mm,
        trim: z.literal(true).optional(),
      }),
    )
    .max(4000),
  left: z
    .array(
      z.strictObject({
        x: mm,
        y: mm,
        length: mm,
        width: mm,
        narrow: mm.optional(),
        fate: z.enum(['back to the rack', 'waste']),
      }),
    )
    .max(4000),
});

const laid = z.strictObject({
  made_from: z.string().max(40).describe('Hash of the blanks and the stock it was made from'),
  layout: layoutSchema,
  done: z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}$/, 'a date is written 2026-12-24')
    .optional()
    .describe('Day it was cut'),
  offcuts: z
    .array(z.strictObject({ length: mm, width: mm }))
    .max(200)
    .optional()
    .describe('What was left, as measured'),
});

/** What the maker says about cutting a job, beside what follows from it; parts by id, or one copy by its own. */
export function cuttingSchema({ short }: { short: z.ZodString }) {
  const parts = z.array(short).min(1).max(100);
  const id = z
    .string()
    .regex(/^[A-Za-z][A-Za-z0-9_]{0,40}$/, 'an id is a letter, then letters, figures or _');
  return z.strictObject({
    one_board: z.record(id, parts).optional().describe('Parts that come from one board, for colour'),
    laid: z
      .record(z.string().max(200), laid)
      .optional()
      .describe('Layouts accepted or already cut, by the id of their stock: kept whole'),
    runs: z
      .record(id, z.strictObject({ parts, lie: z.enum(['end to end', 'side by side']) }))
      .optional()
      .describe('Sheet parts whose grain runs on from one to the next, in order'),
    grades: z.record(short, z.enum(GRADES)).optional().describe('Least grade of timber, by part'),
  });
}

export type CuttingDocument = z.infer<ReturnType<typeof cuttingSchema>>;
