import { expect, test } from 'vitest';
import { overlapChecks } from '../../src/proof/overlap-check.ts';
import type { Proved } from '../../src/proof/prove.ts';

const proved = (over: Partial<Proved>): Proved => ({
  volumes: {},
  overlaps: [],
  fits: [],
  pairs: 4,
  kernel: 'test',
  complete: true,
  ...over,
});

test('not yet compared is pending, and stopped early too', () => {
  expect(overlapChecks(undefined, []).map(c => c.severity)).toEqual(['pending']);
  expect(overlapChecks(proved({ complete: false }), []).map(c => c.severity)).toEqual(['pending']);
});

test('nothing shared passes; what is shared stops, the greatest first', () => {
  expect(overlapChecks(proved({}), []).map(c => [c.severity, c.figure])).toEqual([['pass', 0]]);
  const shared = overlapChecks(
    proved({
      overlaps: [
        { a: 'a', b: 'b', volume: 5 },
        { a: 'c', b: 'd', volume: 90 },
      ],
    }),
    [],
  );
  expect(shared.map(c => [c.severity, c.subject, c.figure])).toEqual([
    ['stop', 'c+d', 90],
    ['stop', 'a+b', 5],
  ]);
});
