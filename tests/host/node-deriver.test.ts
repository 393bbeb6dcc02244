import { readFileSync } from 'node:fs';
import { afterAll, describe, expect, it } from 'vitest';
import { DERIVE_WORK } from '../../src/host/derive-work.ts';
import { createNodeDeriver } from '../../src/host/node-deriver.ts';
import type { JsonObject } from '../../src/job/edits.ts';
import { readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), 'utf8');
const job = readJobFile(example('porch-bench')).document as unknown as JsonObject;
const workshop = readWorkshopFile(example('workshop')).document as unknown as JsonObject;
const today = '2026-11-25';

const desk = createNodeDeriver();
afterAll(() => desk.close());

describe('deriving in a thread', () => {
  it('gives exactly what deriving here gives', async () => {
    const there = await desk.run('derive', { job, workshop, today });
    if (!('derived' in there)) throw new Error(there.faults[0]!.fault);
    expect(there.derived.piece.groups.length).toBeGreaterThan(5);
    expect(there).toEqual(DERIVE_WORK.derive({ job, workshop, today }));
  });

  it('leaves this thread free meanwhile', async () => {
    let turns = 0;
    const timer = setInterval(() => {
      turns += 1;
    }, 1);
    await desk.run('derive', { job, workshop, today });
    clearInterval(timer);
    expect(turns).toBeGreaterThan(2);
  });
});
