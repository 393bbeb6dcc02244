import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Piece } from '../../src/results/piece.ts';
import { ROOT, startDesk } from '../../tests/browser/desk.ts';

/**
 * Milliseconds from asking to answer for each piece, in the built office's own worker in a headless Chromium: solids,
 * triangles, and all that meets compared. The first answer holds the loading of the kernel.
 */
export async function timesInBrowser(pieces: readonly Piece[]): Promise<number[]> {
  const built = readdirSync(join(ROOT, 'dist/office/assets')).find(file =>
    /^shape\.worker.*\.js$/.test(file),
  );
  if (!built) throw new Error('the office is not built: run npm run build');
  const desk = await startDesk();
  try {
    const { page } = await desk.open();
    return await page.evaluate(
      async ({ address, given }) => {
        const worker = new Worker(address, { type: 'module' });
        const times: number[] = [];
        for (const [id, piece] of given.entries()) {
          const start = performance.now();
          await new Promise<void>((done, fail) => {
            worker.onerror = event => fail(new Error(event.message));
            worker.onmessage = ({ data }: MessageEvent<{ kind: string; words?: string }>) => {
              if (data.kind === 'done') done();
              else if (data.kind === 'failed') fail(new Error(data.words));
            };
            worker.postMessage({ id, task: 'shapes', input: { piece, known: [] } });
          });
          times.push(performance.now() - start);
        }
        worker.terminate();
        return times;
      },
      { address: `${desk.address}assets/${built}`, given: pieces as Piece[] },
    );
  } finally {
    await desk.close();
  }
}
