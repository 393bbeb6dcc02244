import fc from 'fast-check';
import { expect, it } from 'vitest';
import { readSop } from '../../measure/sop.ts';
import { shopCase } from '../../measure/sop-shop.ts';
import { orderMachines } from '../../src/setups/ordering/order-machines.ts';

const file = (n: number, numbers: readonly number[]): string =>
  `NAME: x\nTYPE: SOP\nDIMENSION: ${n}\nEDGE_WEIGHT_SECTION\n${n}\n${numbers.join(' ')}\nEOF\n`;

it('reads back what was written, precedence from the -1 entries, node 0 left out', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 9 }),
      fc.infiniteStream(fc.integer({ min: -1, max: 99 })),
      (n, stream) => {
        const numbers = Array.from({ length: n * n }, () => stream.next().value as number);
        const sop = readSop(file(n, numbers));
        expect(sop.n).toBe(n);
        expect(Array.from(sop.cost)).toEqual(numbers);
        sop.before.forEach((list, i) => {
          for (let j = 1; j < n; j++) expect(list.includes(j)).toBe(numbers[i * n + j] === -1);
          expect(list.includes(0)).toBe(false);
        });
      },
    ),
    { numRuns: 60, seed: 2 },
  );
});

it('anything else is refused in words', () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 80 }), text => {
      for (const tried of [
        text,
        `EDGE_WEIGHT_SECTION ${text}`,
        file(3, [1, 2]),
        `EDGE_WEIGHT_SECTION\n2\n1 2 x 4`,
      ])
        try {
          expect(readSop(tried).n).toBeGreaterThan(0);
        } catch (error) {
          expect((error as Error).message).toMatch(/EDGE_WEIGHT_SECTION|dimension|matrix|toBeGreaterThan/);
        }
    }),
    { numRuns: 80, seed: 4 },
  );
  expect(() => readSop('nothing')).toThrow('no EDGE_WEIGHT_SECTION');
  expect(() => readSop(file(3, [1, 2]))).toThrow('3 x 3');
  expect(() => readSop('EDGE_WEIGHT_SECTION\n1000000000 1')).toThrow('1000000000');
});

it('shop cases are the same every time; three of them are proved by counts alone', () => {
  const limit = { seed: 1, iterations: 2000, rounds: 200, width: 5000, states: 60_000 };
  for (const seed of [1, 2, 6]) {
    const problem = shopCase(seed);
    expect(shopCase(seed).before).toEqual(problem.before);
    const found = orderMachines(problem, limit);
    expect(found.status).toBe('proved best');
    expect(orderMachines(problem, limit)).toEqual(found);
  }
});
