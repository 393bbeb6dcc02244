import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { deriveJob } from '../../src/job/derive.ts';
import { readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';
import { fitChecks } from '../../src/proof/fit-check.ts';
import { prove } from '../../src/proof/prove.ts';
import type { TenonCut } from '../../src/results/cuts.ts';
import type { Derived } from '../../src/results/derived.ts';
import { SolidCache } from '../../src/solids/shapes.ts';

const example = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), 'utf8');
const workshop = readWorkshopFile(example('workshop')).workshop!;
const demo = (name: string): Derived =>
  deriveJob(readJobFile(example(name)).document!, workshop, { today: '2026-11-25' }).derived;

test.each(['porch-bench', 'writing-table', 'wall-cabinet'])(
  '%s: no two parts share room, and every mass agrees with its solid',
  async name => {
    const derived = demo(name);
    const proved = prove(derived, await loadMeshKernel());
    expect(proved.complete).toBe(true);
    expect(proved.pairs).toBeGreaterThan(10);
    expect(proved.overlaps).toEqual([]);
    const { instances, joints } = derived.piece;
    expect(fitChecks(proved, instances, joints).map(c => c.severity)).toEqual(['pass']);
    for (const group of derived.piece.groups.filter(g => g.kind !== 'bought-in')) {
      const solid = proved.volumes[group.instances[0]!]!;
      // Facets of round stock take 0.65 % (32 segments: 1 - sin(2 pi/32) 32/(2 pi)); a haunch under a mitred tip 0.2 %.
      expect(Math.abs(group.volume / solid - 1), group.name).toBeLessThan(0.007);
    }
  },
);

test('a tenon 0.2 mm too thick shares exactly its skin with the mortise', async () => {
  const derived = demo('porch-bench');
  const rail = derived.piece.instances.find(i => i.id === 'low_rail')!;
  const tenon = rail.cuts.find((c): c is TenonCut => c.kind === 'tenon')!;
  tenon.z = { low: tenon.z.low, high: tenon.z.high - 0.2 };
  const width = rail.size.width - tenon.y.low - tenon.y.high;
  const { overlaps } = prove(derived, await loadMeshKernel());
  expect(overlaps).toHaveLength(1);
  expect(overlaps[0]!.volume).toBeCloseTo(0.2 * width * tenon.length, 1);
});

test('unchanged parts are not made again, and what is no longer needed is freed', async () => {
  const kernel = await loadMeshKernel();
  const cache = new SolidCache(kernel);
  const derived = demo('porch-bench');
  prove(derived, kernel, { cache });
  const before = cache.size;
  const kept = derived.piece.instances.map(i => cache.of(i));
  const post = derived.piece.instances.find(i => i.id === 'post')!;
  post.size = { ...post.size, length: post.size.length + 1 };
  prove(derived, kernel, { cache });
  const again = derived.piece.instances.map(i => cache.of(i));
  expect(cache.size).toBe(before);
  expect(again.filter((s, i) => s !== kept[i])).toHaveLength(1);
  cache.keep([]);
  expect(cache.size).toBe(0);
});

test('stopped before the end it says so', async () => {
  const stop = new AbortController();
  stop.abort();
  expect(prove(demo('porch-bench'), await loadMeshKernel(), { signal: stop.signal }).complete).toBe(false);
});

test.each([
  'mf1-057-blacking-case-tabouret',
  'mf1-070-settee',
  'mf1-087-piano-bench',
  'mf2-062-side-chair',
  'mf3-025-oak-table',
  'mf3-050-wall-shelf',
  'mf3-053-pedestal',
])('published piece %s: no two parts share room', async id => {
  expect(prove(demo(`published/${id}`), await loadMeshKernel()).overlaps).toEqual([]);
});
