import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { deriveJob } from '../../src/job/derive.ts';
import { checkJobDocument, readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';
import type { Check } from '../../src/results/checks.ts';
import type { Workshop } from '../../src/workshop/workshop.ts';

/** The demo jobs from setting-out to checks: what a changed figure does to the judgement. */
const read = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), 'utf8');

let shop: Workshop;
beforeAll(() => {
  shop = readWorkshopFile(read('workshop')).workshop!;
});

type Edit = { path: string[]; value: string | number };

function checksAfter(job: string, edits: Edit[] = []): Check[] {
  const document = structuredClone(readJobFile(read(job)).document) as unknown as Record<string, unknown>;
  for (const { path, value } of edits) {
    let at = document;
    for (const key of path.slice(0, -1)) {
      at[key] ??= {};
      at = at[key] as Record<string, unknown>;
    }
    at[path.at(-1)!] = value;
  }
  const checked = checkJobDocument(document);
  if (!checked.document) throw new Error(checked.faults.map(f => `${f.place}: ${f.fault}`).join('; '));
  return deriveJob(checked.document, shop, { today: '2026-11-30' }).derived.checks;
}

const find = (checks: Check[], name: string, subject: string): Check => {
  const found = checks.find(c => c.check === name && c.subject === subject);
  if (!found) throw new Error(`no ${name} of ${subject} among ${checks.map(c => `${c.check}:${c.subject}`)}`);
  return found;
};

describe('porch bench', () => {
  it('has nothing that stops it, and each judgement under a name of its own', () => {
    const checks = checksAfter('porch-bench');
    expect(checks.filter(c => c.severity === 'stop').map(c => c.title)).toEqual([]);
    const keys = checks.map(c => `${c.check}:${c.subject}`);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('bars of 16 sag 3.3 mm; of 12 they sag 10.4 and the check speaks', () => {
    expect(find(checksAfter('porch-bench'), 'sag', 'bar')).toMatchObject({ severity: 'pass' });
    expect(find(checksAfter('porch-bench'), 'sag', 'bar').figure).toBeCloseTo(3.3, 1);
    const thin = find(
      checksAfter('porch-bench', [{ path: ['parameters', 'bar', 'value'], value: 12 }]),
      'sag',
      'bar',
    );
    expect(thin.severity).toBe('attend');
    expect(thin.figure).toBeCloseTo(10.4, 1);
  });

  it('short slots stop it, and the edit the check offers clears it', () => {
    const shortSlot = { path: ['joints', 'seat_on_rail', 'set', 'slot'], value: '1 mm' };
    const stopped = find(checksAfter('porch-bench', [shortSlot]), 'movement', 'seat_on_rail');
    expect([stopped.severity, stopped.title]).toEqual(['stop', 'Seat board slots are too short']);
    const mended = checksAfter('porch-bench', [shortSlot, stopped.mend!.edit!]);
    expect(find(mended, 'movement', 'seat_on_rail').severity).toBe('pass');
  });

  it('is not known to move when the room is not known', () => {
    const document = read('porch-bench').replace(/^ {2}humidity:.*$/m, '');
    const checked = readJobFile(document);
    const { derived } = deriveJob(checked.document!, shop, { today: '2026-11-30' });
    expect(derived.checks.filter(c => c.check === 'movement').map(c => c.severity)).not.toContain('pass');
  });
});

describe('writing table', () => {
  it('leaves 174 for thighs under a 450 seat, and speaks when the frieze comes lower', () => {
    const at = (edits: Edit[]) => checksAfter('writing-table', edits).find(c => c.check === 'knees')!;
    expect([at([]).severity, at([]).figure]).toEqual(['pass', 174]);
    expect(at([{ path: ['parameters', 'height', 'value'], value: 720 }]).severity).toBe('attend');
  });

  it('has tenons that meet in the back legs, mitred for it', () => {
    const meeting = checksAfter('writing-table').filter(c => c.rule?.number === 'CHK-9');
    expect(meeting.map(c => c.severity)).toEqual(['note']);
  });
});
