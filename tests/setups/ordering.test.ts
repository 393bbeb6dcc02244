import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arborescence } from '../../src/setups/ordering/arborescence.ts';
import { lagrangianBound } from '../../src/setups/ordering/bound.ts';
import { checkOrder } from '../../src/setups/ordering/check-order.ts';
import { construct } from '../../src/setups/ordering/construct.ts';
import { Exchange } from '../../src/setups/ordering/exchange.ts';
import { changeMinutes, type MachineOrder, orderMachines } from '../../src/setups/ordering/order-machines.ts';
import { seeded } from '../../src/setups/ordering/random.ts';
import { grainOf, solveSop } from '../../src/setups/ordering/solve-sop.ts';
import {
  Contradiction,
  closePrecedence,
  mustPrecede,
  type Sop,
  sharpen,
} from '../../src/setups/ordering/sop.ts';

const LIMIT = { seed: 1, iterations: 300, rounds: 60, width: 4000, states: 100_000 };

/** A random problem: whole costs, precedences along a hidden order so that it can be done. */
function randomSop(n: number, seed: number, density: number): Sop {
  const random = seeded(seed);
  const hidden = Array.from({ length: n - 1 }, (_, i) => i + 1);
  for (let i = hidden.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [hidden[i], hidden[j]] = [hidden[j]!, hidden[i]!];
  }
  const before: number[][] = Array.from({ length: n }, () => []);
  for (let i = 0; i < hidden.length; i++)
    for (let j = i + 1; j < hidden.length; j++) if (random() < density) before[hidden[j]!]!.push(hidden[i]!);
  const cost = Float64Array.from({ length: n * n }, () => Math.floor(random() * 20));
  return { n, cost, before };
}

/** Every order tried: for eight nodes at most. */
function bruteForce(sop: Sop): number {
  let best = Number.POSITIVE_INFINITY;
  const go = (last: number, done: Set<number>, value: number): void => {
    if (value >= best) return;
    if (done.size === sop.n) {
      best = value;
      return;
    }
    for (let v = 1; v < sop.n; v++) {
      if (done.has(v) || sop.before[v]!.some(u => !done.has(u))) continue;
      done.add(v);
      go(v, done, value + sop.cost[last * sop.n + v]!);
      done.delete(v);
    }
  };
  go(0, new Set([0]), 0);
  return best;
}

describe('precedence', () => {
  it('closes and thins', () => {
    const p = closePrecedence(4, [[], [], [1], [1, 2]]);
    expect(mustPrecede(p, 1, 3)).toBe(true);
    expect(mustPrecede(p, 3, 1)).toBe(false);
    expect(p.prev[3]).toEqual([2]);
  });

  it('shows a contradiction as the loop it is', () => {
    expect(() => closePrecedence(4, [[], [3], [1], [2]])).toThrow(Contradiction);
    try {
      closePrecedence(4, [[], [3], [1], [2]]);
    } catch (error) {
      expect([...(error as Contradiction).loop].sort()).toEqual([1, 2, 3]);
    }
  });
});

describe('exchange of neighbouring stretches', () => {
  it('keeps every precedence and its own sum, through shakes, repairs and undoing', () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 30 }), fc.integer({ min: 0, max: 1e6 }), (n, seed) => {
        const sop = randomSop(n, seed, 0.15);
        const precedence = closePrecedence(n, sop.before);
        const sharp = sharpen(sop, precedence);
        const search = new Exchange(sharp, precedence, construct(sharp, precedence), 8, seed % 2 === 1);
        const random = seeded(seed + 1);
        search.wakeAll();
        search.improve();
        for (let i = 0; i < 40; i++) {
          const value = search.value;
          const kept = Array.from(search.order);
          search.mark();
          search.shake(random, 8);
          search.improve();
          const order = Array.from(search.order);
          expect(checkOrder(sop, order, search.value).wrong).toEqual([]);
          if (i % 2 === 0) {
            search.undo(value);
            expect(Array.from(search.order)).toEqual(kept);
            expect(checkOrder(sop, kept, search.value).wrong).toEqual([]);
          }
        }
      }),
      { numRuns: 40, seed: 11 },
    );
  });
});

describe('bounds', () => {
  it('an arborescence by hand: 0 to 1 costs 10, 1 and 2 in a ring for 1 each: 10 + 1', () => {
    const inf = 1e6;
    const cost = Float64Array.from([inf, 10, 12, inf, inf, 1, inf, 1, inf]);
    const tree = arborescence(3, 0, cost);
    expect(tree.value).toBe(11);
    expect(Array.from(tree.parent)).toEqual([-1, 0, 1]);
  });

  it('never passes the best order, and is no worse than the plain arborescence', () => {
    for (let seed = 0; seed < 30; seed++) {
      const n = 7;
      const given = randomSop(n, seed, 0.2);
      const end = n;
      const all = Array.from({ length: n - 1 }, (_, i) => i + 1);
      const cost = new Float64Array((n + 1) ** 2);
      for (let u = 0; u < n; u++) for (let v = 0; v < n; v++) cost[u * (n + 1) + v] = given.cost[u * n + v]!;
      const sop: Sop = { n: n + 1, cost, before: [...given.before, all] };
      const sharp = sharpen(sop, closePrecedence(n + 1, sop.before));
      const best = bruteForce(given);
      const plain = lagrangianBound(sharp, end, best, 1).value;
      const raised = lagrangianBound(sharp, end, best, 80).value;
      expect(plain).toBeLessThanOrEqual(best + 1e-6);
      expect(raised).toBeLessThanOrEqual(best + 1e-6);
      expect(raised).toBeGreaterThanOrEqual(plain - 1e-9);
    }
  });

  it('grain of the costs', () => {
    expect(grainOf(Float64Array.from([1, 2, 5]))).toBe(1);
    expect(grainOf(Float64Array.from([1, 2.5]))).toBe(0.5);
    expect(grainOf(Float64Array.from([1, 0.31]))).toBe(1e-6);
  });
});

describe('the sequential ordering problem', () => {
  it('finds and proves the best of small problems, as every order tried says', () => {
    for (let seed = 0; seed < 40; seed++) {
      const sop = randomSop(4 + (seed % 5), seed, 0.05 + (seed % 7) * 0.07);
      const result = solveSop(sop, LIMIT);
      expect(result.status).toBe('proved best');
      expect(result.value).toBe(bruteForce(sop));
      expect(result.bound).toBe(result.value);
      expect(checkOrder(sop, result.order, result.value).wrong).toEqual([]);
    }
  });

  it('is the same every time, and its bound is honest when it is stopped short', () => {
    const sop = randomSop(30, 5, 0.03);
    const short = { ...LIMIT, iterations: 20, rounds: 3, states: 50 };
    const a = solveSop(sop, short);
    expect(solveSop(sop, short)).toEqual(a);
    const full = solveSop(sop, { ...LIMIT, iterations: 5000 });
    expect(a.bound).toBeLessThanOrEqual(full.value + 1e-6);
    expect(a.value).toBeGreaterThanOrEqual(full.value);
  });

  it('the checker catches a sabotaged order, a missing node, a wrong sum', () => {
    const sop = randomSop(8, 3, 0.4);
    const { order, value } = solveSop(sop, LIMIT);
    const later = sop.before.findIndex(list => list.length > 0);
    const earlier = sop.before[later]![0]!;
    const swapped = order.map(v => (v === later ? earlier : v === earlier ? later : v));
    expect(checkOrder(sop, swapped).wrong.length).toBeGreaterThan(0);
    expect(checkOrder(sop, order.slice(0, -1)).wrong).toEqual([`node ${order.at(-1)} is missing`]);
    expect(checkOrder(sop, [...order.slice(0, -1), order[1]!]).wrong.length).toBe(2);
    expect(checkOrder(sop, order, value - 1).wrong).toEqual([`claimed ${value - 1}, adds up to ${value}`]);
  });
});

describe('several machines', () => {
  interface Case {
    machines: string[];
    tools: number[];
    fences: number[];
    before: number[][];
  }
  const randomCase = (seed: number, count: number, machines: number): Case => {
    const random = seeded(seed);
    return {
      machines: Array.from({ length: count }, () => `m${Math.floor(random() * machines)}`),
      tools: Array.from({ length: count }, () => Math.floor(random() * 3)),
      fences: Array.from({ length: count }, () => Math.floor(random() * 3)),
      before: Array.from({ length: count }, (_, v) =>
        Array.from({ length: v }, (_, u) => u).filter(() => random() < 0.2),
      ),
    };
  };
  const problemOf = (c: Case): MachineOrder => ({
    count: c.machines.length,
    machine: c.machines,
    change: (from, to) =>
      from < 0 ? 5 : (c.tools[from] === c.tools[to] ? 0 : 4) + (c.fences[from] === c.fences[to] ? 0 : 1),
    before: c.before,
  });
  const brute = (problem: MachineOrder): number => {
    let best = Number.POSITIVE_INFINITY;
    const go = (done: number[]): void => {
      if (done.length === problem.count) {
        best = Math.min(best, changeMinutes(problem, done));
        return;
      }
      for (let v = 0; v < problem.count; v++)
        if (!done.includes(v) && problem.before[v]!.every(u => done.includes(u))) go([...done, v]);
    };
    go([]);
    return best;
  };

  it('is proved and right where every order can be tried', () => {
    for (let seed = 0; seed < 40; seed++) {
      const problem = problemOf(randomCase(seed, 7, 1 + (seed % 3)));
      const result = orderMachines(problem, LIMIT);
      expect(result.status).toBe('proved best');
      expect(result.value).toBe(brute(problem));
      result.order.forEach((v, i) => {
        for (const u of problem.before[v]!) expect(result.order.indexOf(u)).toBeLessThan(i);
      });
    }
  });

  it('turns a stretch round where the machines contradict each other', () => {
    // On each machine the cheap order runs against what the other needs: 0 < 3 and 2 < 1.
    const problem: MachineOrder = {
      count: 4,
      machine: ['a', 'a', 'b', 'b'],
      change: (from, to) => (from < 0 ? (to === 1 || to === 3 ? 0 : 10) : 1),
      before: [[], [2], [], [0]],
    };
    const result = orderMachines(problem, LIMIT);
    expect(result.value).toBe(brute(problem));
    expect(result.status).toBe('proved best');
  });
});
