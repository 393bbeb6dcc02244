import { expect, test } from 'vitest';
import { createNodeExact } from '../../src/host/node-exact.ts';
import { recycledDesk } from '../../src/host/recycled.ts';
import type { FromWorker, WorkerPort } from '../../src/host/talk.ts';

type Tasks = { grow: (by: number) => Promise<{ memory: number; thread: number }> };

test('a thread that holds too much is ended, and the next task has a fresh one', async () => {
  let threads = 0;
  const ended: number[] = [];
  const spawn = (): WorkerPort => {
    const thread = ++threads;
    let memory = 0;
    let hear: (message: FromWorker) => void = () => {};
    return {
      post: ({ id, input }) => {
        memory += input as number;
        queueMicrotask(() => hear({ id, kind: 'done', result: { memory, thread } }));
      },
      listen: given => {
        hear = given;
      },
      end: () => void ended.push(thread),
    };
  };
  const desk = recycledDesk<Tasks>(spawn, 500);
  const answers = await Promise.all([200, 200, 200, 200].map(by => desk.run('grow', by)));
  expect(answers.map(a => [a.thread, a.memory])).toEqual([
    [1, 200],
    [1, 400],
    [1, 600],
    [2, 200],
  ]);
  expect(ended).toEqual([1]);
  desk.close();
});

test('the exact kernel works in its thread', async () => {
  const desk = createNodeExact();
  const { bytes, memory } = await desk.run('step', { title: 'Nothing', instances: [] });
  expect(new TextDecoder().decode(bytes)).toContain('ISO-10303-21');
  expect(memory).toBeGreaterThan(1e6);
  desk.close();
});
