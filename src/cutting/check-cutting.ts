/**
 * Checks a cutting plan apart from the program that made it: it saws every piece of stock again, cut by
 * cut, from the plan alone, and compares what lies on the bench with what the piece needs. Nothing but
 * types is shared with the planner; the figures of the rules stand here a second time on purpose.
 */
import { materialDensity } from '../reference/materials.ts';
import type { CuttingPlan, Demand, MaterialPlan, Placed, StockUse } from '../results/cutting.ts';
import type { Operation } from '../results/operations.ts';
import type { Piece } from '../results/piece.ts';
import type { Workshop } from '../workshop/workshop.ts';
import { boardAsMeasured, clearOfDefects, wholeWidth, widest, woodWidth } from './check-boards.ts';
import { wantedBlanks } from './check-demands.ts';
import { runsAreWhole } from './check-runs.ts';
import { resaw } from './check-sawing.ts';

const TRIM: Record<StockUse['kind'], readonly [number, number]> = {
  sheet: [5, 5],
  board: [25, 5],
  'planed length': [10, 0],
  bar: [3, 0],
  tube: [3, 0],
  offcut: [0, 0],
};
const LARGEST_PLANED_STRIP = 6;
/** Sizes are kept to 0.01 mm, blanks rounded up. */
const TOLERANCE = 0.011;

/** What is wrong with the plan, each fault in words; empty when it holds. */
export function checkCutting(
  plan: CuttingPlan,
  piece: Piece,
  operations: readonly Operation[],
  workshop: Workshop,
): string[] {
  return checkDemands(plan, wantedBlanks(piece, operations), workshop);
}

/** The same against demands given as they are. */
export function checkDemands(plan: CuttingPlan, demands: readonly Demand[], workshop: Workshop): string[] {
  const faults: string[] = [];
  const uses = plan.materials.flatMap(material => material.uses);
  everyDemandOnce(plan, demands, faults);
  const byInstance = new Map(demands.map(demand => [demand.instance, demand]));
  for (const use of uses) {
    for (const words of resaw(use)) faults.push(`${use.id}: ${words}`);
    if (use.kept) keptIsHonest(use, byInstance, faults);
    else {
      stockIsReal(use, workshop, faults);
      kerfIsTheBlades(use, workshop, faults);
    }
    insideTheTrim(use, faults);
    clearOfDefects(use, faults);
    for (const placed of use.placed) {
      const demand = byInstance.get(placed.instance);
      if (demand && !use.kept) rightPart(placed, demand, use, workshop, faults);
    }
    offcutsAreJudged(use, workshop, faults);
  }
  rackIsNotOverdrawn(uses, workshop, faults);
  for (const material of plan.materials) figuresAdd(material, faults);
  runsAreWhole(plan, demands, faults);
  totalsAdd(plan, workshop, faults);
  ordersAdd(plan, workshop, faults);
  return faults;
}

function everyDemandOnce(plan: CuttingPlan, demands: readonly Demand[], faults: string[]): void {
  const times = new Map<string, number>();
  const add = (instance: string): void => void times.set(instance, (times.get(instance) ?? 0) + 1);
  for (const material of plan.materials) {
    for (const use of material.uses) for (const placed of use.placed) add(placed.instance);
    for (const missing of material.unplaced) {
      add(missing.demand.instance);
      if (missing.reason === '' || missing.mend === '')
        faults.push(`${missing.demand.mark} is unplaced without a reason`);
    }
  }
  for (const demand of demands) {
    const n = times.get(demand.instance) ?? 0;
    if (n !== 1) faults.push(`${demand.mark} ${demand.instance} is in the plan ${n} times`);
    times.delete(demand.instance);
  }
  const gone = new Set(
    plan.materials.flatMap(one => one.uses.flatMap(use => (use.kept ? use.placed.map(p => p.instance) : []))),
  );
  for (const instance of times.keys())
    if (!gone.has(instance)) faults.push(`${instance} is in the plan and nobody wants it`);
  const ids = plan.materials.flatMap(material => material.uses.map(use => use.id));
  if (new Set(ids).size !== ids.length) faults.push('two pieces of stock share an id');
}

function stockIsReal(use: StockUse, workshop: Workshop, faults: string[]): void {
  const rack = workshop.rack.find(item => item.id === use.item);
  const bought = workshop.suppliers
    .filter(supplier => supplier.id === use.supplier)
    .flatMap(supplier => supplier.items)
    .find(item => item.id === use.item);
  const found = use.from === 'rack' ? rack : bought;
  if (!found) {
    faults.push(`${use.id}: no such stock`);
    return;
  }
  const price = use.from === 'rack' ? rack?.value : bought?.price;
  if (price !== use.price) faults.push(`${use.id}: price ${use.price} is not ${price}`);
  const wide = use.from === 'rack' && rack ? widest(rack) : found.width;
  if (wide !== use.width) faults.push(`${use.id}: width ${use.width} is not ${wide}`);
  if (use.from === 'rack' && rack) boardAsMeasured(use, rack, faults);
  for (const key of ['length', 'thickness', 'material', 'kind', 'round'] as const)
    if (found[key] !== use[key]) faults.push(`${use.id}: ${key} ${use[key]} is not ${found[key]}`);
}

function kerfIsTheBlades(use: StockUse, workshop: Workshop, faults: string[]): void {
  const isMetal =
    use.kind === 'bar' || use.kind === 'tube' || materialDensity(use.material)?.kind === 'metal';
  let widest = -1;
  for (const blade of workshop.blades) {
    const suits = isMetal ? blade.use === 'metal' : blade.use !== 'metal' && blade.use !== 'groove';
    if (suits && blade.kerf > widest) widest = blade.kerf;
  }
  if (widest < 0) widest = isMetal ? 1.5 : 3.2;
  if (Math.abs(use.kerf - widest) > TOLERANCE) faults.push(`${use.id}: kerf ${use.kerf} is not ${widest}`);
}

function insideTheTrim(use: StockUse, faults: string[]): void {
  const [end, edge] = TRIM[use.kind];
  const single = use.kind === 'bar' || use.kind === 'tube' || use.round;
  const side = single ? 0 : edge;
  if (use.trim.end < end || use.trim.edge < side) faults.push(`${use.id}: trim is less than the rule's`);
  for (const placed of use.placed) {
    const out =
      placed.x < use.trim.end - TOLERANCE ||
      placed.x + placed.length > use.length - use.trim.end + TOLERANCE ||
      placed.y < use.trim.edge - TOLERANCE ||
      placed.y + placed.width > use.width - use.trim.edge + TOLERANCE;
    if (out) faults.push(`${use.id}: ${placed.instance} reaches into the trim or off the stock`);
  }
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= TOLERANCE;
const alike = (a: number, b: number): boolean =>
  Math.abs(a - b) <= Math.max(0.05, 0.03 * Math.min(a, b)) + 1e-6;

function rightPart(
  placed: Placed,
  demand: Demand,
  use: StockUse,
  workshop: Workshop,
  faults: string[],
): void {
  const say = (words: string): void => void faults.push(`${use.id}: ${placed.instance} ${words}`);
  const lines =
    use.from === 'rack'
      ? workshop.rack
      : workshop.suppliers.flatMap(one => (one.id === use.supplier ? one.items : []));
  const stockGrade = lines.find(item => item.id === use.item)?.grade;
  const grades = ['clear', 'sound', 'rough'];
  if (demand.grade && stockGrade && grades.indexOf(stockGrade) > grades.indexOf(demand.grade))
    say(`wants ${demand.grade} timber, the stock is ${stockGrade}`);
  if (use.material !== demand.material) say(`is ${demand.material}, the stock ${use.material}`);
  if (placed.purpose !== demand.purpose || placed.mark !== demand.mark) say('carries a wrong mark');
  const measured = workshop.rack.find(item => item.id === use.item && use.from === 'rack')?.measuredThickness;
  const thickness = measured ?? use.thickness;
  if (demand.kind === 'sheet') {
    const [l, w] = placed.turned ? [demand.width, demand.length] : [demand.length, demand.width];
    if (!near(placed.length, l) || !near(placed.width, w))
      say(`is ${placed.length} x ${placed.width}, not ${l} x ${w}`);
    if (demand.across !== placed.turned && !demand.turn) say('has its grain the wrong way');
    if (!alike(demand.thickness, use.thickness) && !alike(demand.thickness, thickness))
      say('has the wrong thickness');
    return;
  }
  if (!near(placed.length, demand.length)) say(`is ${placed.length} long, not ${demand.length}`);
  if (demand.kind === 'timber') timberSection(placed, demand, use, thickness, say);
  else metalSection(placed, demand, use, thickness, say);
}

function timberSection(
  placed: Placed,
  demand: Demand,
  use: StockUse,
  thickness: number,
  say: (words: string) => void,
): void {
  if (use.round) {
    if (!demand.round || demand.width > thickness + TOLERANCE) say('does not turn out of this round');
    return;
  }
  const [across, through] = placed.turned
    ? [demand.thickness, demand.width]
    : [demand.width, demand.thickness];
  if (through > thickness + TOLERANCE) say(`is ${through} thick, the stock ${thickness}`);
  const spare = placed.width - across;
  if (spare < -TOLERANCE || spare > LARGEST_PLANED_STRIP + TOLERANCE)
    say(`is ${placed.width} wide for ${across}`);
}

function metalSection(
  placed: Placed,
  demand: Demand,
  use: StockUse,
  thickness: number,
  say: (words: string) => void,
): void {
  if (!near(placed.width, use.width)) say('does not take the whole section');
  if (use.round !== demand.round) say('is round where the stock is not');
  const flat =
    alike(demand.width, use.width) &&
    (alike(demand.thickness, use.thickness) || alike(demand.thickness, thickness));
  const onEdge = alike(demand.width, use.thickness) && alike(demand.thickness, use.width);
  if (!flat && !onEdge) say('has another section than the stock');
}

function offcutsAreJudged(use: StockUse, workshop: Workshop, faults: string[]): void {
  const { length, width } = workshop.leastOffcut;
  const timber = materialDensity(use.material)?.kind === 'timber';
  const grained =
    use.round ||
    ['bar', 'tube', 'board', 'planed length'].includes(use.kind) ||
    (use.kind === 'offcut' && timber);
  for (const left of use.left) {
    const fullWidth = grained && Math.abs(left.width - use.width) < 0.02;
    const wood = woodWidth(use, left);
    if (Math.abs(wood - (left.narrow ?? left.width)) > TOLERANCE)
      faults.push(`${use.id}: a piece left is ${wood} wide at its narrow end`);
    const useful = grained
      ? left.length >= length && (wood >= width || fullWidth)
      : (left.length >= length && left.width >= width) || (left.width >= length && left.length >= width);
    if (useful !== (left.fate === 'back to the rack'))
      faults.push(`${use.id}: a piece left of ${left.length} x ${left.width} is sent the wrong way`);
  }
}

function rackIsNotOverdrawn(uses: readonly StockUse[], workshop: Workshop, faults: string[]): void {
  for (const item of workshop.rack) {
    const taken = uses.filter(
      use => use.from === 'rack' && use.item === item.id && use.kept?.done === undefined,
    ).length;
    if (taken > item.quantity) faults.push(`${item.id}: ${taken} taken, ${item.quantity} on the rack`);
  }
}

function figuresAdd(material: MaterialPlan, faults: string[]): void {
  const name = `${material.material} ${material.section}`;
  const cost = material.uses.reduce((sum, use) => sum + use.price, 0);
  if (Math.abs(cost - material.cost) > 1e-6 || Math.abs(cost - material.value) > 1e-6)
    faults.push(`${name}: cost ${material.cost} is not ${cost}`);
  let stock = 0;
  let kept = 0;
  for (const use of material.uses) {
    stock += use.length * wholeWidth(use) * use.thickness;
    for (const one of use.placed) kept += one.length * one.width * use.thickness;
    for (const one of use.left)
      if (one.fate === 'back to the rack') kept += one.length * (one.narrow ?? one.width) * use.thickness;
  }
  const waste = stock > 0 ? 1 - kept / stock : 0;
  if (Math.abs(waste - material.waste) > 1e-6)
    faults.push(`${name}: waste ${material.waste} is not ${waste}`);
  if (material.bound > material.value + 1e-6) faults.push(`${name}: the bound lies above the value`);
  const met = material.uses.length > 0 && material.value <= material.bound + 1e-6;
  if (material.status === 'proved best' && !met)
    faults.push(`${name}: called best without meeting its bound`);
  if (material.status === 'none' && material.uses.length > 0)
    faults.push(`${name}: called none with stock in use`);
}

/** A kept layout whose blanks are no longer wanted, or no longer lie on it whole, says so. */
function keptIsHonest(use: StockUse, wanted: ReadonlyMap<string, Demand>, faults: string[]): void {
  const off = use.placed.filter(placed => {
    const demand = wanted.get(placed.instance);
    if (!demand || demand.material !== use.material) return true;
    const sizes = [demand.length, demand.width, demand.thickness];
    const long = demand.kind === 'sheet' && placed.turned ? demand.width : demand.length;
    const enough =
      sizes.some(size => size <= placed.width + TOLERANCE) || use.kind === 'bar' || use.kind === 'tube';
    return placed.length < long - TOLERANCE || !enough;
  });
  if (off.length > 0 && use.kept?.stale.length === 0)
    faults.push(`${use.id}: ${off[0]!.instance} no longer agrees and nothing says so`);
}

/** Carriage once a supplier, goods as listed, least orders made up. */
function ordersAdd(plan: CuttingPlan, workshop: Workshop, faults: string[]): void {
  const names = new Set(plan.buy.map(line => line.supplier));
  if (names.size !== plan.orders.length) faults.push(`${plan.orders.length} orders, ${names.size} suppliers`);
  for (const order of plan.orders) {
    const supplier = workshop.suppliers.find(one => one.name === order.supplier);
    let goods = 0;
    for (const line of plan.buy) if (line.supplier === order.supplier) goods += line.price;
    const least = Math.max(goods, supplier?.minimum ?? 0);
    const right = supplier && order.goods === goods && order.delivery === supplier.delivery;
    if (!right || order.total !== least + supplier.delivery || order.shortfall !== least - goods)
      faults.push(`the order at ${order.supplier} does not add`);
  }
}

function totalsAdd(plan: CuttingPlan, workshop: Workshop, faults: string[]): void {
  const cost = plan.materials.reduce((sum, material) => sum + material.cost, 0);
  if (Math.abs(cost - plan.cost) > 1e-6) faults.push(`cost ${plan.cost} is not ${cost}`);
  const bought = plan.materials
    .flatMap(material => material.uses)
    .filter(use => use.from === 'buy' && use.kept?.done === undefined);
  const listed = plan.buy.reduce((sum, line) => sum + line.quantity, 0);
  if (listed !== bought.length)
    faults.push(`${listed} on the shopping list, ${bought.length} in the layouts`);
  for (const line of plan.buy) {
    const supplier = workshop.suppliers.find(one => one.name === line.supplier);
    const count = bought.filter(use => use.item === line.id && use.supplier === supplier?.id).length;
    if (count !== line.quantity) faults.push(`${line.item}: ${line.quantity} listed, ${count} laid out`);
    if (Math.abs(line.price - line.quantity * line.unitPrice) > 1e-6)
      faults.push(`${line.item}: price does not add`);
  }
}
