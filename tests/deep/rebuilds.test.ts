import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { expect, test } from 'vitest';
import { vec } from '../../src/geometry/vector.ts';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { createNodeExact } from '../../src/host/node-exact.ts';
import { SolidCache } from '../../src/solids/shapes.ts';
import { hole, part, pocket, tenon } from '../checks/fixtures.ts';

const REBUILDS = 2000;

/** What the process holds once its own garbage is taken away, bytes: only what is kept counts as growth. */
function held(): number {
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();
  return process.memoryUsage().rss;
}

/** A rail with a tenon, a mortise and a bore, a little longer each time. */
const rail = (n: number) =>
  part('rail', {
    size: [600 + n / 100, 80, 30],
    cuts: [
      tenon({ id: 'a.1' }),
      pocket({ id: 'b.1', box: { min: vec(100, 30, 10), max: vec(150, 50, 30) } }),
      hole({ id: 'c.1', at: vec(300, 40, 30), direction: vec(0, 0, -1) }),
    ],
  });

test('2,000 rebuilds in the mesh kernel, after as many to warm up, leave nothing behind', async () => {
  const cache = new SolidCache(await loadMeshKernel());
  let settled = 0;
  for (let n = 0; n < 2 * REBUILDS; n++) {
    const one = rail(n);
    expect(cache.surface(one).indices.length).toBeGreaterThan(30);
    cache.keep([one]);
    expect(cache.size).toBe(1);
    if (n === REBUILDS) settled = held();
  }
  expect(held() - settled).toBeLessThan(12e6);
  cache.keep([]);
});

test('2,000 exact rebuilds stay near the limit, because their thread is ended and begun again', async () => {
  const desk = createNodeExact();
  let most = 0;
  for (let n = 0; n < REBUILDS; n++) {
    const { bytes, memory } = await desk.run('step', { title: 'rail', instances: [rail(n)] });
    expect(bytes.length).toBeGreaterThan(5000);
    most = Math.max(most, memory);
  }
  desk.close();
  // The limit is looked at after a rebuild, and the heap grows in steps.
  expect(most).toBeLessThan(650e6);
});
