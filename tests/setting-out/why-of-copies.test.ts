import { expect, test } from 'vitest';
import { deriveJob } from '../../src/job/derive.ts';
import { checkJobDocument, checkWorkshopDocument } from '../../src/job-file/read.ts';
import type { Why } from '../../src/results/why.ts';
import { timber } from './piece.ts';

const { workshop } = checkWorkshopDocument({ scantling: 'workshop/1', name: 'Trial' });

/** Two rails of which only the first is tenoned into a leg. */
const { document } = checkJobDocument({
  scantling: 'job/1',
  title: 'Trial',
  parts: {
    rail: timber({
      length: 300,
      width: 60,
      thickness: 21,
      at: { left: 50, front: 10, bottom: 100 },
      repeat: { count: 2, along: 'z', step: 100 },
    }),
    leg: timber({ length: 180, width: 50, thickness: 50, along: 'up', at: { left: 0, front: 0, bottom: 0 } }),
    held: timber({
      length: 200,
      width: 40,
      thickness: 12,
      measure_first: { when: 'dry fit', reserve: { width: 3 } },
    }),
  },
  joints: { j: { type: 'mortise-and-tenon', from: 'rail', into: 'leg' } },
});
const { why } = deriveJob(document!, workshop!, { today: '2026-11-30' });
const inputs = (w: Why | undefined): [string, unknown][] =>
  (w?.inputs ?? []).map(i => [i.figure, i.value?.value]);

test('the mass of a copy is explained by the sizes of that copy', () => {
  const volume = why('parts.rail_2.mass')!.inputs[0]!;
  expect(inputs(volume)[0]).toEqual(['parts.rail_2.length', 300]);
  expect(inputs(why('parts.rail.mass')!.inputs[0])[0]).toEqual(['parts.rail.length', 333]);
});

test('the blank of a copy is its own cut size and the allowance', () => {
  const blank = why('parts.rail_2.blank.length')!;
  expect(blank.value?.value).toBe(320);
  expect(inputs(blank).map(([, value]) => value)).toEqual([300, 20]);
});

test('the reserve of a part that is measured first is one of the inputs of its blank', () => {
  const blank = why('parts.held.blank.width')!;
  expect(blank.value?.value).toBe(48);
  expect(inputs(blank).map(([, value]) => value)).toEqual([40, 5, 3]);
});
