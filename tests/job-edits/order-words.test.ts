import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { deriveJob } from '../../src/job/derive.ts';
import { readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';

const read = (file: string): string =>
  readFileSync(new URL(`../../examples/${file}`, import.meta.url), 'utf8');

test('a rule set aside stands on the checks, on the card and in why, with its risk', () => {
  const { workshop } = readWorkshopFile(read('workshop.yaml'));
  const { document } = readJobFile(read('writing-table.yaml'));
  const judged = { ...document!, overruled: { 'order.ORD-10': { reason: 'my jig sizes both' } } };
  const { derived, why } = deriveJob(judged, workshop!, { today: '2026-03-02' });
  const risk = 'the chisel fixes the width, the tenon is trimmed to it';
  const note = derived.checks.find(c => c.check === 'order')!;
  expect(note).toMatchObject({ subject: 'ORD-10', severity: 'note' });
  expect(note.remedy).toContain(risk);
  expect(note.figure).toBe(
    derived.operations.flatMap(o => o.setAside ?? []).filter(s => s.rule.number === 'ORD-10').length,
  );
  const cards = derived.setups.setups.filter(s => s.cautions.some(c => c.includes(risk)));
  expect(cards.length).toBeGreaterThan(0);
  const told = why('order.ORD-10')!;
  expect(told.label).toContain('my jig sizes both');
  expect(told.inputs).toHaveLength(note.figure!);
  expect(why('order.ORD-18')!.inputs).toEqual([]);
  expect(why('order.ORD-999')).toBeUndefined();
});
