/**
 * Set-up order on generated shop cases: `npm run measure -- sop-shop [--cases 200] [--seconds 2] [--json FILE]`.
 * Up to 40 set-ups on one to six machines, with tools, jigs, fences, heights and the minutes of a usual shop;
 * precedence as trade rules make it (mortise before tenon, joints before tapers, glue-ups between).
 */
import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { changeMinutes, type MachineOrder, orderMachines } from '../src/setups/ordering/order-machines.ts';
import { seeded } from '../src/setups/ordering/random.ts';

const MINUTES = { tool: 4, jig: 2, fence: 1, height: 1 };

/** A case by its seed: the same for ever. */
export function shopCase(seed: number): MachineOrder {
  const random = seeded(seed);
  const pick = (n: number): number => Math.floor(random() * n);
  const count = 10 + pick(31);
  const machines = 1 + pick(6);
  const stages = 1 + pick(3);
  const setUps = Array.from({ length: count }, () => {
    // Half of the work is done at the first machine, as at a table saw.
    const machine = random() < 0.5 ? 0 : pick(machines);
    return { machine, tool: pick(3), jig: pick(3), fence: pick(8), height: pick(6), stage: pick(stages) };
  }).sort((a, b) => a.stage - b.stage);
  const before = setUps.map((s, v) =>
    setUps.flatMap((t, u) => {
      if (u >= v) return [];
      // A glue-up stands between the stages for some parts; within a stage a few rules bind.
      if (t.stage < s.stage && random() < 0.35) return [u];
      return t.stage === s.stage && random() < 2.5 / count ? [u] : [];
    }),
  );
  return {
    count,
    machine: setUps.map(s => `m${s.machine}`),
    change: (from, to) => {
      const b = setUps[to]!;
      if (from < 0) return MINUTES.tool + MINUTES.jig + MINUTES.fence + MINUTES.height;
      const a = setUps[from]!;
      return (['tool', 'jig', 'fence', 'height'] as const).reduce(
        (sum, what) => sum + (a[what] === b[what] ? 0 : MINUTES[what]),
        0,
      );
    },
    before,
  };
}

/** Counts the plan again: every set-up once, precedence kept, minutes added up machine by machine. */
function faultOf(problem: MachineOrder, order: readonly number[], claimed: number): string | undefined {
  if (new Set(order).size !== problem.count || order.length !== problem.count)
    return 'a set-up is missing or twice';
  const place = new Map(order.map((v, i) => [v, i]));
  for (let v = 0; v < problem.count; v++)
    for (const u of problem.before[v]!) if (place.get(u)! > place.get(v)!) return `${v} comes before ${u}`;
  const value = changeMinutes(problem, order);
  return Math.abs(value - claimed) > 1e-6 ? `claimed ${claimed}, adds up to ${value}` : undefined;
}

export function run(args: string[]): void {
  const { values } = parseArgs({
    args,
    options: { cases: { type: 'string' }, seconds: { type: 'string' }, json: { type: 'string' } },
  });
  const cases = Number(values.cases ?? 200);
  const limit = Number(values.seconds ?? 2);
  let proved = 0;
  let gaps = 0;
  let longest = 0;
  const rows = [];
  for (let seed = 1; seed <= cases; seed++) {
    const problem = shopCase(seed);
    const began = performance.now();
    const found = orderMachines(
      problem,
      {
        seed: 1,
        iterations: 3000,
        rounds: 300,
        width: 20_000,
        states: 400_000,
        stop: () => performance.now() - began > 1000 * limit,
      },
      200,
    );
    const seconds = (performance.now() - began) / 1000;
    longest = Math.max(longest, seconds);
    const fault = faultOf(problem, found.order, found.value);
    if (fault) throw new Error(`case ${seed}: the plan does not hold: ${fault}`);
    const isProved = found.status === 'proved best' && seconds <= limit * 1.1;
    if (isProved) proved++;
    else {
      gaps++;
      console.log(
        `case ${seed}: ${problem.count} set-ups, ${found.value} min, bound ${found.bound}, gap ${(100 * (found.value / found.bound - 1)).toFixed(1)} %, ${seconds.toFixed(2)} s`,
      );
    }
    rows.push({
      instance: `shop-${seed}`,
      value: found.value,
      bound: found.bound,
      status: isProved ? 'proved-best' : 'within',
      seconds,
    });
  }
  if (values.json !== undefined) writeFileSync(values.json, `${JSON.stringify(rows, null, 1)}\n`);
  console.log(
    `sop-shop: ${proved} of ${cases} proved within ${limit} s, ${gaps} open, longest ${longest.toFixed(2)} s`,
  );
}
