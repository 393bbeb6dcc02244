import { afterAll, beforeAll, expect, test } from 'vitest';
import { axeFaults, type Desk, overflow, startDesk } from './desk.ts';

let desk: Desk;
beforeAll(async () => {
  desk = await startDesk();
});
afterAll(() => desk.close());

test('the cutting page goes on looking, and what it finds is kept', async () => {
  const { page, troubles } = await desk.open({ place: '/jobs/writing-table/cutting' });
  const keep = page.getByRole('button', { name: 'Keep these layouts' });
  await keep.waitFor({ timeout: 60_000 });
  expect(await page.getByText('A longer look finds layouts for').textContent()).toMatch(
    /for .*766\.00.* in place of .*804\.00.*, proved best\./,
  );
  expect(await axeFaults(page)).toEqual([]);
  expect(await overflow(page)).toBeLessThanOrEqual(0);
  await keep.click();
  await page.getByText('Kept as it stands.').first().waitFor();
  expect(await keep.count()).toBe(0);
  expect(troubles).toEqual([]);
  await page.close();
});
