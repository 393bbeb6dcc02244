import { afterEach, describe, expect, it } from 'vitest';
import type { Desk } from '../../src/host/desk.ts';
import { createDesk } from '../../src/host/desk.ts';
import { nodePort } from '../../src/host/node-port.ts';
import type { TRIALS } from './trial-tasks.ts';

const desks: { close(): void }[] = [];
afterEach(() => {
  for (const desk of desks.splice(0)) desk.close();
});

/** A desk over real worker threads, with a count of how many were begun. */
function newDesk(): { desk: Desk<typeof TRIALS>; begun: () => number } {
  let begun = 0;
  const desk = createDesk<typeof TRIALS>(() => {
    begun += 1;
    return nodePort(new URL('./trial-worker.ts', import.meta.url));
  });
  desks.push(desk);
  return { desk, begun: () => begun };
}

describe('a desk', () => {
  it('gives what the task gives, with progress on the way, and keeps its worker', async () => {
    const { desk, begun } = newDesk();
    const heard: number[][] = [];
    const answer = await desk.run('count', { to: 4 }, { progress: (...told) => heard.push(told) });
    expect(answer).toEqual({ sum: 10 });
    expect(heard).toEqual([
      [1, 4, 1],
      [2, 4, 3],
      [3, 4, 6],
      [4, 4, 10],
    ]);
    expect(await desk.run('count', { to: 100 })).toEqual({ sum: 5050 });
    expect(begun()).toBe(1);
  });

  it('begins no worker before there is work', () => {
    expect(newDesk().begun()).toBe(0);
  });

  it('does one task after another, in order', async () => {
    const { desk } = newDesk();
    const order: number[] = [];
    await Promise.all([3, 2, 1].map(to => desk.run('count', { to }).then(() => order.push(to))));
    expect(order).toEqual([3, 2, 1]);
  });

  it('ends a task that is aborted though it never would end, and goes on with the next', async () => {
    const { desk, begun } = newDesk();
    const stop = new AbortController();
    const endless = desk.run(
      'forever',
      {},
      { signal: stop.signal, progress: () => stop.abort(new Error('enough')) },
    );
    const after = desk.run('count', { to: 2 });
    await expect(endless).rejects.toThrow('enough');
    expect(await after).toEqual({ sum: 3 });
    expect(begun()).toBe(2);
  });

  it('drops a task that is aborted while it waits, or before it is asked', async () => {
    const { desk, begun } = newDesk();
    const stop = new AbortController();
    const first = desk.run('count', { to: 2 });
    const second = desk.run('forever', {}, { signal: stop.signal });
    stop.abort(new Error('not any more'));
    await expect(second).rejects.toThrow('not any more');
    await expect(desk.run('count', { to: 1 }, { signal: stop.signal })).rejects.toThrow('not any more');
    expect(await first).toEqual({ sum: 3 });
    expect(begun()).toBe(1);
  });

  it('tells of a failure and of a worker that broke down, and goes on', async () => {
    const { desk, begun } = newDesk();
    await expect(desk.run('fail', { words: 'no stock' })).rejects.toThrow('no stock');
    expect(begun()).toBe(1);
    await expect(desk.run('breakDown', {})).rejects.toThrow('ended (3)');
    expect(await desk.run('count', { to: 2 })).toEqual({ sum: 3 });
    expect(begun()).toBe(2);
  });

  it('when closed leaves nobody waiting', async () => {
    const { desk } = newDesk();
    const both = [desk.run('forever', {}), desk.run('count', { to: 1 })];
    const told = Promise.allSettled(both);
    desk.close();
    expect((await told).map(one => one.status)).toEqual(['rejected', 'rejected']);
  });
});
