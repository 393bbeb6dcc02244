/** Bars from one stock length: `npm run measure -- cutting-stock-1d --dir DIR --seconds 10 --json FILE --plans PLANS`. */
import { solveLengths } from '../src/cutting/lengths/solve-lengths.ts';
import {
  bestKnown,
  type FamilyResult,
  findInstances,
  numbersOf,
  readOptions,
  tally,
  writePlan,
  writeResults,
} from './families/options.ts';

interface Bars {
  capacity: number;
  lengths: Int32Array;
  demands: Int32Array;
}

function readBars(text: string): Bars {
  const [types, capacity, ...rest] = numbersOf(text);
  const demand = new Map<number, number>();
  for (let i = 0; i < types!; i++) {
    const length = rest[2 * i]!;
    demand.set(length, (demand.get(length) ?? 0) + rest[2 * i + 1]!);
  }
  const lengths = [...demand.keys()].sort((a, b) => b - a);
  return {
    capacity: capacity!,
    lengths: Int32Array.from(lengths),
    demands: Int32Array.from(lengths, length => demand.get(length)!),
  };
}

interface BarPlan {
  bars: { count: number; pieces: { length: number; count: number }[] }[];
}

/** Counts the plan again from its own file shape. */
function faultOf(plan: BarPlan, bars: Bars): string | undefined {
  const made = new Map<number, number>();
  for (const bar of plan.bars) {
    let used = 0;
    for (const { length, count } of bar.pieces) {
      used += length * count;
      made.set(length, (made.get(length) ?? 0) + count * bar.count);
    }
    if (used > bars.capacity) return `a bar holds ${used} of ${bars.capacity}`;
  }
  for (let i = 0; i < bars.lengths.length; i++) {
    const length = bars.lengths[i]!;
    if (made.get(length) !== bars.demands[i])
      return `${made.get(length) ?? 0} of ${length}, wanted ${bars.demands[i]}`;
    made.delete(length);
  }
  return made.size > 0 ? 'pieces nobody wants' : undefined;
}

export function run(args: string[]): void {
  const options = readOptions(args, 'cutting-stock-1d', 10);
  const known = bestKnown(options.dir, 'best-known.csv');
  const results: FamilyResult[] = [...options.earlier];
  for (const instance of findInstances(options)) {
    const bars = readBars(instance.text());
    const began = performance.now();
    const ends = began + 1000 * options.seconds;
    const found = solveLengths(
      {
        lengths: bars.lengths,
        demands: bars.demands,
        stocks: [{ length: bars.capacity, cost: 1, limit: Infinity }],
      },
      { seed: 1, trials: 40, nodes: Infinity, stop: () => performance.now() > ends },
    );
    const seconds = (performance.now() - began) / 1000;
    const plan = planOf(found.chosen, bars);
    const fault = faultOf(plan, bars);
    if (fault) throw new Error(`${instance.name}: the plan does not hold: ${fault}`);
    const status = found.status === 'proved best' ? 'proved-best' : found.status;
    results.push({ instance: instance.name, value: found.value, bound: found.bound, status, seconds });
    writePlan(options, instance.name, plan);
    writeResults(options, results);
    const best = known.get(instance.name);
    if (best && found.value < best.best && best.proven)
      throw new Error(`${instance.name}: below a proven best value`);
    if (!best || found.value > best.best || status !== 'proved-best')
      console.log(
        `${instance.subset}/${instance.name}: ${found.value}, bound ${found.bound}, known ${best?.best ?? '-'}, ${seconds.toFixed(2)} s`,
      );
  }
  console.log(`cutting-stock-1d: ${tally(results, known, 'less')}`);
}

/** Covers may cut a piece too many; what nobody wants is left out. */
function planOf(
  chosen: readonly { way: { items: readonly number[]; counts: readonly number[] }; times: number }[],
  bars: Bars,
): BarPlan {
  const left = bars.demands.slice();
  const tally = new Map<string, BarPlan['bars'][number]>();
  for (const { way, times } of chosen)
    for (let t = 0; t < times; t++) {
      const pieces = way.items
        .map((item, k) => {
          const count = Math.min(way.counts[k]!, left[item]!);
          left[item]! -= count;
          return { length: bars.lengths[item]!, count };
        })
        .filter(piece => piece.count > 0);
      const key = JSON.stringify(pieces);
      const held = tally.get(key);
      if (held) held.count += 1;
      else tally.set(key, { count: 1, pieces });
    }
  return { bars: [...tally.values()] };
}
