/**
 * Shapes after one changed dimension, in Node and in the browser (design, section 10: 100 ms for 40 parts), the first
 * exact result, and memory over 2,000 rebuilds: `npm run measure -- shapes [rounds] [rebuilds]`. The browser figure
 * needs a build and CHROMIUM_PATH or a Chromium on the search path.
 */
import { readFileSync } from 'node:fs';
import { loadExactKernel } from '../src/host/exact-kernel-node.ts';
import { loadMeshKernel } from '../src/host/mesh-kernel-node.ts';
import { createNodeExact } from '../src/host/node-exact.ts';
import { deriveJob } from '../src/job/derive.ts';
import { readWorkshopFile } from '../src/job-file/read.ts';
import { prove } from '../src/proof/prove.ts';
import type { SolidKernel } from '../src/results/kernel.ts';
import type { Instance, Piece } from '../src/results/piece.ts';
import { hasShape, SolidCache } from '../src/solids/shapes.ts';
import { fortyParts } from './derive.ts';
import { timesInBrowser } from './shapes/in-browser.ts';

const median = (values: number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
const spread = (values: number[]): string =>
  `median ${median(values).toFixed(1)} ms, best ${Math.min(...values).toFixed(1)}, worst ${Math.max(...values).toFixed(1)} over ${values.length}`;
const megabytes = (bytes: number): string => (bytes / 1e6).toFixed(0);

const { workshop } = readWorkshopFile(
  readFileSync(new URL('../examples/workshop.yaml', import.meta.url), 'utf8'),
);
const pieceOf = (length: number): Piece =>
  deriveJob(fortyParts(length), workshop!, { today: '2026-11-25' }).derived.piece;

/** `times` settles side by side, as one piece. */
function beside(piece: Piece, times: number): Piece {
  const copies = Array.from({ length: times }, (_, n) => {
    const own = (id: string): string => (n === 0 ? id : `${id}__${n}`);
    const moved = (i: Instance): Instance => ({
      ...i,
      id: own(i.id),
      frame: { ...i.frame, origin: { ...i.frame.origin, x: i.frame.origin.x + n * 3000 } },
      cuts: i.cuts.map(c => ({
        ...c,
        ...(c.mate ? { mate: { ...c.mate, instance: own(c.mate.instance) } } : {}),
        // Nothing shared between the copies: every solid is made anew.
        ...(c.kind === 'tenon' ? { length: c.length + n / 1000 } : {}),
      })),
    });
    return piece.instances.map(moved);
  });
  return { ...piece, instances: copies.flat() };
}

/** What the office does after a change: new solids, their triangles, and the comparison of all that meet. */
function changed(kernel: SolidKernel, cache: SolidCache, piece: Piece): { shapes: number; proof: number } {
  const start = performance.now();
  for (const i of piece.instances.filter(hasShape)) cache.surface(i);
  const shapes = performance.now() - start;
  prove({ piece }, kernel, { cache });
  return { shapes, proof: performance.now() - start };
}

export async function run(args: string[]): Promise<void> {
  const rounds = Number(args[0] ?? 21);
  const rebuilds = Number(args[1] ?? 2000);
  const began = performance.now();
  const mesh = await loadMeshKernel();
  console.log(`mesh kernel loaded in ${(performance.now() - began).toFixed(0)} ms`);
  for (const times of [1, 4]) {
    const cache = new SolidCache(mesh);
    const pieces = Array.from({ length: rounds + 3 }, (_, i) => beside(pieceOf(1500 + i), times));
    const figures = pieces.map(piece => changed(mesh, cache, piece)).slice(3);
    console.log(
      `${pieces[0]!.instances.length} parts, one changed dimension to new shapes: ${spread(figures.map(f => f.shapes))}; compared and fits measured: ${spread(figures.map(f => f.proof))}`,
    );
    cache.keep([]);
  }
  await exactFirst();
  await rebuild('mesh', mesh, rebuilds);
  await recycled(rebuilds);
  await inBrowser(rounds);
}

async function exactFirst(): Promise<void> {
  const start = performance.now();
  const exact = await loadExactKernel();
  const loaded = performance.now();
  const cache = new SolidCache(exact);
  const shown = pieceOf(1500).instances.filter(hasShape);
  const first = cache.of(shown[0]!).volume();
  const one = performance.now();
  for (const i of shown) cache.of(i).volume();
  console.log(
    `exact kernel: loaded in ${(loaded - start).toFixed(0)} ms, first exact volume (${first.toFixed(3)} mm3) ${(one - loaded).toFixed(0)} ms after that, all ${shown.length} parts after ${(performance.now() - loaded).toFixed(0)} ms`,
  );
  cache.keep([]);
}

/** A leg with its joints made again and again in one thread. */
async function rebuild(name: string, kernel: SolidKernel, times: number): Promise<void> {
  const leg = pieceOf(1500).instances.find(i => i.part === 'leg')!;
  const held: number[] = [];
  for (let n = 0; n < times; n++) {
    const cache = new SolidCache(kernel);
    cache.surface({ ...leg, size: { ...leg.size, length: leg.size.length + n / 100 } });
    cache.keep([]);
    if (n % (times / 4) === 0) held.push(process.memoryUsage().rss);
  }
  held.push(process.memoryUsage().rss);
  console.log(
    `${name}: ${times} rebuilds of a leg, memory of the process ${held.map(megabytes).join(', ')} MB`,
  );
}

/** The whole piece as STEP, its leg a little longer each time, in the thread that is recycled. */
async function recycled(times: number): Promise<void> {
  const desk = createNodeExact();
  const { instances } = pieceOf(1500);
  const leg = instances.find(i => i.part === 'leg')!;
  let most = 0;
  let last = 0;
  let threads = 1;
  for (let n = 0; n < times; n++) {
    const longer = { ...leg, size: { ...leg.size, length: leg.size.length + n / 100 } };
    const { memory } = await desk.run('step', { title: 'leg', instances: [longer] });
    if (memory < last) threads += 1;
    last = memory;
    most = Math.max(most, memory);
  }
  desk.close();
  console.log(
    `exact: ${times} rebuilds of a leg to STEP in its thread, at most ${megabytes(most)} MB held, ${threads} threads in all`,
  );
}

async function inBrowser(rounds: number): Promise<void> {
  for (const times of [1, 4]) {
    const pieces = Array.from({ length: rounds + 4 }, (_, i) => beside(pieceOf(1500 + i), times));
    const [first, ...later] = await timesInBrowser(pieces);
    console.log(
      `browser, ${pieces[0]!.instances.length} parts: first answer with the kernel's loading ${first!.toFixed(0)} ms; after a changed dimension, asked to answered with all compared: ${spread(later.slice(3))}`,
    );
  }
}
