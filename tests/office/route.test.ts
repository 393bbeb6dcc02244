import { expect, test } from 'vitest';
import { JOB_PAGES, jobAddress, readRoute } from '../../src/office/route.ts';

test('an address is read back as it was made', () => {
  for (const page of JOB_PAGES)
    expect(readRoute(jobAddress('a b/c', page))).toEqual({ screen: 'job', id: 'a b/c', page });
  expect(readRoute(jobAddress('bench', 'set-ups', 7))).toEqual({
    screen: 'job',
    id: 'bench',
    page: 'set-ups',
    card: 7,
  });
});

test('what is no address of ours is the list of jobs', () => {
  for (const hash of ['', '#', '#/', '#/nowhere/7', '#/jobs', '#/jobs/'])
    expect(readRoute(hash)).toEqual({ screen: 'jobs' });
  expect(readRoute('#/jobs/bench/nowhere')).toEqual({ screen: 'job', id: 'bench', page: 'setting-out' });
  expect(readRoute('#/jobs/bench/set-ups/x')).toEqual({ screen: 'job', id: 'bench', page: 'set-ups' });
});

test('an address that cannot be decoded names nothing and breaks nothing', () => {
  expect(readRoute('#/jobs/%E0')).toEqual({ screen: 'job', id: '%E0', page: 'setting-out' });
});
