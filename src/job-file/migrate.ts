import type { Fault } from '../results/fault.ts';

type Json = Record<string, unknown>;

/**
 * Older job files, brought up version by version. Each step is a tiny pure function from version n to n + 1;
 * shipped steps are never edited. Version 1 is the first, so there is none yet to bring up but the drafts
 * named job/0, whose sizes stood under `sizes`.
 */
const STEPS: Record<number, (job: Json) => Json> = {
  0: job => {
    const { sizes, ...rest } = job;
    return { ...rest, ...(sizes === undefined ? {} : { parameters: sizes }), scantling: 'job/1' };
  },
};

export function migrateJob(job: Json): { value: Json; faults: Fault[] } {
  let value = job;
  let version = Number(/^job\/(\d+)$/.exec(String(job.scantling))?.[1] ?? Number.NaN);
  for (let step = STEPS[version]; step; step = STEPS[++version]) value = step(value);
  return { value, faults: [] };
}
