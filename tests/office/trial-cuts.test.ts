import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { deriveJob } from '../../src/job/derive.ts';
import { applyEdit, type JsonObject } from '../../src/job/edits.ts';
import { checkJobDocument, readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';
import { trialEdit } from '../../src/office/set-ups/trial-cuts.tsx';
import type { SetUp } from '../../src/results/setups.ts';

const { workshop } = readWorkshopFile(readFileSync('examples/workshop.yaml', 'utf8'));
const { document } = readJobFile(readFileSync('examples/porch-bench.yaml', 'utf8'));

test('trials entered one after another are edits of the job, and can be undone', () => {
  let now = document as unknown as JsonObject;
  const card = (): SetUp =>
    deriveJob(checkJobDocument(now).document!, workshop!, { today: '2026-11-25' }).derived.setups.setups.find(
      s => s.title.startsWith('Tenon cheeks') && s.correction,
    )!;
  const keep = (set: string, measured: string) => {
    const applied = applyEdit(now, { operations: [trialEdit(card(), { set, measured })] });
    if (!applied.ok) throw new Error(JSON.stringify(applied.faults));
    now = applied.document;
    return applied.inverse;
  };
  const set = card().settings[0]!.value.value as number;
  const wanted = card().wanted!.value.value as number;
  keep(`${set} mm`, `${wanted + 0.2} mm`);
  expect(card().trials?.map(t => t.now)).toEqual([expect.closeTo(set - 0.1, 6)]);
  const back = keep(`${set - 0.1} mm`, `${wanted} mm`);
  expect(card().trials?.map(t => [t.id, t.fits])).toEqual([
    ['1', false],
    ['2', true],
  ]);
  const undone = applyEdit(now, { operations: back });
  expect(undone.ok && JSON.stringify(undone.document)).not.toContain('"2":{"set"');
});
