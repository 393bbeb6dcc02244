import { z } from 'zod';
import { GRADES } from '../results/cutting.ts';

/** What the maker says about cutting a job, beside what follows from it; parts by id, or one copy by its own. */
export function cuttingSchema({ short }: { short: z.ZodString }) {
  const parts = z.array(short).min(1).max(100);
  const id = z
    .string()
    .regex(/^[A-Za-z][A-Za-z0-9_]{0,40}$/, 'an id is a letter, then letters, figures or _');
  return z.strictObject({
    one_board: z.record(id, parts).optional().describe('Parts that come from one board, for colour'),
    grades: z.record(short, z.enum(GRADES)).optional().describe('Least grade of timber, by part'),
  });
}

export type CuttingDocument = z.infer<ReturnType<typeof cuttingSchema>>;
