import { expect, test } from 'vitest';
import { latestOnly } from '../../src/office/latest.ts';

const later = (ms: number): Promise<void> => new Promise(resolve => setTimeout(resolve, ms));

test('one at a time, only the newest waits, the overtaken answer nothing', async () => {
  const ran: number[] = [];
  let most = 0;
  let now = 0;
  const ask = latestOnly(async (n: number) => {
    most = Math.max(most, ++now);
    ran.push(n);
    await later(5);
    now--;
    return n * 10;
  });
  const answers = await Promise.all([1, 2, 3, 4].map(ask));
  expect(answers).toEqual([10, undefined, undefined, 40]);
  expect(ran).toEqual([1, 4]);
  expect(most).toBe(1);
});

test('a failure is told and does not stop the next', async () => {
  const ask = latestOnly(async (n: number) => {
    await later(1);
    if (n === 1) throw new Error('no');
    return n;
  });
  await expect(Promise.allSettled([ask(1), ask(2)])).resolves.toMatchObject([
    { status: 'rejected' },
    { status: 'fulfilled', value: 2 },
  ]);
});
