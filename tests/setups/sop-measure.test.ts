import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { faultOfPlan } from '../../measure/families/sop-check.ts';
import { yardstick } from '../../measure/families/sop-yardstick.ts';
import { readSop } from '../../measure/sop.ts';
import { seeded } from '../../src/setups/ordering/random.ts';
import { solveSop } from '../../src/setups/ordering/solve-sop.ts';

const LIMIT = { seed: 1, iterations: 300, rounds: 60, width: 4000, states: 100_000 };

/** An instance as published: nodes precede each other by their numbers, some of them; the last is after all. */
function published(n: number, seed: number): string {
  const random = seeded(seed);
  const before = Array.from({ length: n }, () => new Set<number>());
  for (let v = 1; v < n; v++)
    for (let u = 0; u < v; u++)
      if (u === 0 || v === n - 1 || random() < 0.15) {
        before[v]!.add(u);
        for (const w of before[u]!) before[v]!.add(w);
      }
  const rows = Array.from({ length: n }, (_, i) =>
    Array.from({ length: n }, (_, j) =>
      before[i]!.has(j) ? -1 : i === 0 && j === n - 1 ? 1_000_000 : i === j ? 0 : Math.floor(random() * 50),
    ).join(' '),
  );
  return `NAME: x\nTYPE: SOP\nDIMENSION: ${n}\nEDGE_WEIGHT_SECTION\n${n}\n${rows.join('\n')}\nEOF\n`;
}

/** Least value over all orders, by the published matrix alone. */
function everyOrder(text: string): number {
  const n = readSop(text).n;
  const numbers = text.split('SECTION')[1]!.trim().split(/\s+/).slice(1, -1).map(Number);
  let best = Number.POSITIVE_INFINITY;
  const go = (done: number[], value: number): void => {
    if (value >= best) return;
    if (done.length === n) best = value;
    for (let v = 0; v < n; v++) {
      const early = numbers.slice(v * n, v * n + n).some((c, u) => c === -1 && !done.includes(u));
      if (!done.includes(v) && !early) go([...done, v], value + numbers[done.at(-1)! * n + v]!);
    }
  };
  go([0], 0);
  return best;
}

it('the recount of a plan file holds for found orders and catches every sabotage', () => {
  for (let seed = 0; seed < 12; seed++) {
    const text = published(8, seed);
    const { order, value, bound } = solveSop(readSop(text), LIMIT);
    expect(value).toBe(everyOrder(text));
    const plan = (list: readonly number[]): string => JSON.stringify({ order: list });
    expect(faultOfPlan(text, plan(order), { value, bound })).toBeUndefined();
    expect(faultOfPlan(text, plan(order), { value: value - 1, bound: 0 })).toMatch(/adds up to/);
    expect(faultOfPlan(text, plan(order), { value, bound: value + 1 })).toMatch(/above the value/);
    expect(faultOfPlan(text, plan(order.slice(1)), { value, bound })).toMatch(/7 nodes/);
    expect(faultOfPlan(text, plan([...order.slice(0, -1), order[1]!]), { value, bound })).toMatch(
      /twice|comes before/,
    );
    expect(faultOfPlan(text, plan([order.at(-1)!, ...order.slice(0, -1)]), { value, bound })).toMatch(
      /comes before/,
    );
  }
});

it('the yardstick agrees with every order tried', async () => {
  for (let seed = 20; seed < 24; seed++) {
    const text = published(7, seed);
    const { value, bound } = await yardstick(readSop(text), 10);
    expect(value).toBe(everyOrder(text));
    expect(bound).toBeLessThanOrEqual(value! + 1e-6);
  }
});

it('reads subfolders and gzip, writes results and plans, goes on where it was broken off', () => {
  const dir = mkdtempSync(join(tmpdir(), 'sop-'));
  try {
    mkdirSync(join(dir, 'instances', 'deep'), { recursive: true });
    writeFileSync(join(dir, 'instances', 'a1.sop'), published(7, 1));
    writeFileSync(join(dir, 'instances', 'deep', 'b1.x.sop.gz'), gzipSync(published(8, 2)));
    const json = join(dir, 'out.json');
    const measure = (...more: string[]) =>
      spawnSync(
        process.execPath,
        ['--import', 'tsx', 'measure/measure.ts', 'sop', '--dir', dir, '--seconds', '2', '--json', json]
          .concat(['--plans', join(dir, 'plans')])
          .concat(more),
        { encoding: 'utf8' },
      );
    expect(measure('--only', '^a').status).toBe(0);
    const first = readFileSync(json, 'utf8');
    const second = measure('--resume');
    expect(second.stdout.trim().split('\n').at(-1)).toMatch(/^sop: 2 instances, 0 at best known, 2 proved/);
    const results = JSON.parse(readFileSync(json, 'utf8')) as { instance: string; value: number }[];
    expect(results.map(r => r.instance)).toEqual(['a1', 'b1.x']);
    expect(results[0]).toEqual((JSON.parse(first) as unknown[])[0]);
    expect(results[1]!.value).toBe(everyOrder(published(8, 2)));
    // A plan spoilt between two runs is found out.
    writeFileSync(join(dir, 'plans', 'a1.json'), '{"order":[0,1,2,3,4,6,5]}');
    const third = measure('--resume');
    expect(third.status).not.toBe(0);
    expect(third.stderr).toMatch(/a1: the plan does not hold/);
  } finally {
    rmSync(dir, { recursive: true });
  }
}, 60_000);
