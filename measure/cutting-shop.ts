/**
 * Shop-size jobs: the demos, and 200 random ones of 10 to 60 parts with kerf, trim, grain and mixed stock, planned at the
 * first effort and at the one that follows. `npm run measure -- cutting-shop [--jobs 200]`.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { load } from '../src/cli/load.ts';
import { checkDemands } from '../src/cutting/check-cutting.ts';
import { collectDemands } from '../src/cutting/demands.ts';
import { DEFAULT_EFFORT, planDemands } from '../src/cutting/plan-cutting.ts';
import { seeded } from '../src/cutting/random.ts';
import { wished } from '../src/cutting/wishes.ts';
import type { Demand } from '../src/results/cutting.ts';
import type { Effort } from '../src/results/solver.ts';
import type { RackItem, SupplierItem, Workshop } from '../src/workshop/workshop.ts';
import { median } from './families/options.ts';

const EFFORTS: Record<string, Effort> = {
  first: DEFAULT_EFFORT,
  'that follows': { seed: 1, iterations: 3000 },
};

type Draw = (low: number, high: number, step?: number) => number;

function randomJob(seed: number): { demands: Demand[]; workshop: Workshop } {
  const random = seeded(seed);
  const draw: Draw = (low, high, step = 1) =>
    low + step * Math.floor((random() * (high - low)) / step + random());
  const demands: Demand[] = [];
  const wanted = draw(10, 60);
  while (demands.length < wanted) {
    const like = oneBlank(draw, random());
    const n = Math.min(wanted - demands.length, draw(1, 6));
    for (let k = 0; k < n; k++)
      demands.push({ ...like, mark: `P${demands.length}`, instance: `p${demands.length}` });
  }
  return { demands, workshop: randomShop(draw) };
}

function oneBlank(draw: Draw, which: number): Demand {
  const base = {
    mark: '',
    instance: '',
    name: 'part',
    round: false,
    turn: false,
    across: false,
    purpose: 'part' as const,
  };
  if (which < 0.5)
    return {
      ...base,
      kind: 'timber',
      material: 'ash-european',
      length: draw(200, 1500, 5),
      width: draw(25, 150, 5),
      thickness: [18, 22, 45][draw(0, 2)]!,
    };
  if (which < 0.85)
    return {
      ...base,
      kind: 'sheet',
      material: 'birch-plywood',
      length: draw(150, 1200, 5),
      width: draw(100, 600, 5),
      thickness: 18,
      turn: draw(0, 1) === 1,
    };
  return {
    ...base,
    kind: 'bar',
    material: 'steel-stainless',
    length: draw(150, 1300, 5),
    width: 16,
    thickness: 16,
    round: true,
  };
}

function randomShop(draw: Draw): Workshop {
  const line = (
    id: string,
    kind: SupplierItem['kind'],
    material: string,
    l: number,
    w: number,
    t: number,
    price: number,
    round = false,
  ): SupplierItem => ({
    id,
    kind,
    material,
    label: id,
    length: l,
    width: w,
    thickness: t,
    round,
    price,
  });
  const timber = [1800, 2400, 3000].flatMap(l =>
    [
      [27, 100],
      [27, 160],
      [52, 80],
      [52, 160],
    ].map(([t, w]) =>
      line(
        `ash-${l}-${w}-${t}`,
        'planed length',
        'ash-european',
        l,
        w!,
        t!,
        Math.round(l * w! * t! * 2.6e-4),
      ),
    ),
  );
  const items = [
    ...timber,
    line('ply', 'sheet', 'birch-plywood', 2440, 1220, 18, 9000),
    line('ply-half', 'sheet', 'birch-plywood', 1220, 1220, 18, 5000),
    line('bar', 'bar', 'steel-stainless', 3000, 16, 16, 3000, true),
    line('bar-long', 'bar', 'steel-stainless', 6000, 16, 16, 5500, true),
  ];
  const rack: RackItem[] = Array.from({ length: 8 }, (_, i) => {
    const sheet = i % 3 === 0;
    return {
      id: `rack-${i}`,
      kind: sheet ? 'offcut' : 'planed length',
      material: sheet ? 'birch-plywood' : 'ash-european',
      label: `rack ${i}`,
      length: draw(500, 1900),
      width: sheet ? draw(200, 700) : draw(60, 180),
      thickness: sheet ? 18 : [27, 52][i % 2]!,
      round: false,
      quantity: draw(1, 2),
      value: draw(200, 1500),
    };
  });
  const none = { length: 0, width: 0, thickness: 0 };
  return {
    name: 'random',
    currency: 'GBP',
    machines: [],
    cutters: [],
    drills: [],
    jigs: [],
    clamps: [],
    rack,
    blades: [
      { id: 'saw', machine: 's', name: 'saw', kerf: 3.2, diameter: 250, use: 'combination' },
      { id: 'metal', machine: 'm', name: 'metal', kerf: 1.3, diameter: 0, use: 'metal' },
    ],
    suppliers: [{ id: 'yard', name: 'The yard', delivery: 0, leadDays: 1, items }],
    calendar: { week: {}, daysOff: [] },
    rates: { hour: 0, contingency: 0, margin: 0, tax: { registered: false, rate: 0 }, consumables: 0 },
    allowances: { timber: none, sheet: none, bar: none, tube: none },
    adhesives: {},
    finishes: {},
    times: {},
    leastOffcut: { length: 300, width: 80 },
    climate: { temperature: 18, humidity: 55 },
  };
}

/** The demo jobs as they stand in the examples, with their workshop. */
function demoJobs(): { name: string; demands: Demand[]; workshop: Workshop }[] {
  const folder = fileURLToPath(new URL('../examples', import.meta.url));
  return readdirSync(folder)
    .filter(file => file.endsWith('.yaml') && file !== 'workshop.yaml')
    .map(file => {
      const { deriving, document, workshop } = load(join(folder, file), { today: '2026-11-30' });
      const { piece, operations } = deriving.derived;
      return {
        name: file,
        demands: wished(collectDemands(piece, operations), piece, document.cutting),
        workshop,
      };
    });
}

function measureDemos(effort: Effort): void {
  for (const { name, demands, workshop } of demoJobs()) {
    const began = process.cpuUsage();
    const plan = planDemands(demands, workshop, effort);
    const used = process.cpuUsage(began);
    const faults = checkDemands(plan, demands, workshop);
    if (faults.length > 0) throw new Error(`${name}: ${faults[0]}`);
    const best = plan.materials.filter(material => material.status === 'proved best').length;
    console.log(
      `${name}: ${demands.length} blanks, ${best} of ${plan.materials.length} material plans proved best, ${((used.user + used.system) / 1000).toFixed(0)} ms`,
    );
  }
}

export function run(args: string[]): void {
  measureDemos(EFFORTS['that follows']!);
  const { values } = parseArgs({ args, options: { jobs: { type: 'string' } } });
  const jobs = Number(values.jobs ?? 200);
  for (const [name, effort] of Object.entries(EFFORTS)) {
    const took: number[] = [];
    let plans = 0;
    let proved = 0;
    let whole = 0;
    let cost = 0;
    let bound = 0;
    let slow = 0;
    for (let seed = 1; seed <= jobs; seed++) {
      const { demands, workshop } = randomJob(seed);
      const began = process.cpuUsage();
      const plan = planDemands(demands, workshop, effort);
      const used = process.cpuUsage(began);
      const seconds = (used.user + used.system) / 1e6;
      took.push(seconds);
      const faults = checkDemands(plan, demands, workshop);
      if (faults.length > 0) throw new Error(`job ${seed}: ${faults[0]}`);
      const best = plan.materials.filter(material => material.status === 'proved best').length;
      plans += plan.materials.length;
      proved += best;
      if (seconds > 2) slow += 1;
      else if (best === plan.materials.length) whole += 1;
      cost += plan.cost;
      bound += plan.materials.reduce((sum, material) => sum + material.bound, 0);
    }
    console.log(
      `the effort ${name} (${effort.iterations}): ${jobs} jobs, ${proved} of ${plans} material plans proved best, ${whole} jobs wholly within 2 s of processor time, ${slow} slower; all at ${((100 * cost) / bound - 100).toFixed(1)} % above their bounds; cost ${cost}; median ${(1000 * median(took)).toFixed(1)} ms, longest ${(1000 * Math.max(...took)).toFixed(0)} ms`,
    );
  }
}
