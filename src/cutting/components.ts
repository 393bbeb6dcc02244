/** From demands and stock lines to separate problems, and the blanks that no stock can give. */
import type { Demand } from '../results/cutting.ts';
import { type CutItem, type CutProblem, type Lie, toMm } from './problem.ts';
import { liesOn, type Miss, type StockLine, sensibleLies } from './stock.ts';
import { sectionWords } from './words.ts';

export interface Unplaced {
  demand: Demand;
  reason: string;
  mend: string;
}

export interface Component extends CutProblem {
  notes: string[];
}

interface Served {
  demand: Demand;
  lies: Map<number, Lie[]>;
  unpriced: StockLine[];
}

/** Splits the demands into problems that share no stock. Order follows the demands, so plans stay still. */
export function components(
  demands: readonly Demand[],
  lines: readonly StockLine[],
): { problems: Component[]; unplaced: Unplaced[] } {
  const unplaced: Unplaced[] = [];
  const groups = new Map<string, { served: Served; demands: Demand[] }>();
  for (const demand of demands) {
    const key = likeness(demand);
    const known = groups.get(key);
    if (known) {
      known.demands.push(demand);
      continue;
    }
    const served = serve(demand, lines);
    groups.set(key, { served, demands: [demand] });
  }
  const placeable: { served: Served; demands: Demand[] }[] = [];
  for (const group of groups.values())
    if (group.served.lies.size > 0) placeable.push(group);
    else {
      const why = whyNot(group.served, lines);
      unplaced.push(
        ...group.demands.flatMap(whole => (whole.members ?? [whole]).map(demand => ({ demand, ...why }))),
      );
    }
  return { problems: join(placeable, lines), unplaced };
}

const likeness = (d: Demand): string =>
  [
    d.material,
    d.kind,
    d.length,
    d.width,
    d.thickness,
    d.wall ?? '',
    d.section ?? '',
    d.round,
    d.turn,
    d.across,
    d.grade ?? '',
    d.oneBoard ?? '',
    d.members ? d.run?.word : '',
  ].join('|');

function sizesFault(demand: Demand): string | undefined {
  const sizes = { length: demand.length, width: demand.width, thickness: demand.thickness };
  const wrong = Object.entries(sizes).find(([, value]) => !Number.isFinite(value) || value <= 0);
  return wrong && `its ${wrong[0]} is ${Number.isFinite(wrong[1]) ? `${wrong[1]} mm` : 'missing'}`;
}

function serve(demand: Demand, lines: readonly StockLine[]): Served {
  const served: Served = { demand, lies: new Map(), unpriced: [] };
  if (sizesFault(demand)) return served;
  const thick = new Map<number, Lie[]>();
  lines.forEach((on, index) => {
    const lies = liesOn(demand, on);
    if (typeof lies === 'string') return;
    if (!on.priced) {
      served.unpriced.push(on);
      return;
    }
    const fitting = sensibleLies(demand, on, lies);
    if (fitting.length > 0) served.lies.set(index, fitting);
    else thick.set(index, lies);
  });
  if (served.lies.size === 0) served.lies = thick;
  return served;
}

function join(groups: { served: Served; demands: Demand[] }[], lines: readonly StockLine[]): Component[] {
  const root = lines.map((_, i) => i);
  const find = (i: number): number => {
    let at = i;
    while (root[at] !== at) at = root[at]!;
    return at;
  };
  for (const { served } of groups) {
    const [first, ...others] = [...served.lies.keys()];
    for (const other of others) root[find(other)] = find(first!);
  }
  const byRoot = new Map<number, { served: Served; demands: Demand[] }[]>();
  for (const group of groups) {
    const at = find([...group.served.lies.keys()][0]!);
    byRoot.set(at, [...(byRoot.get(at) ?? []), group]);
  }
  return [...byRoot.values()].map(members => toProblem(members, lines));
}

function toProblem(members: { served: Served; demands: Demand[] }[], lines: readonly StockLine[]): Component {
  const used = [...new Set(members.flatMap(member => [...member.served.lies.keys()]))].sort((a, b) => a - b);
  const unpriced = new Set(members.flatMap(member => member.served.unpriced));
  const items: CutItem[] = members.map(({ served, demands }) => {
    const lies = used.map(index => served.lies.get(index) ?? []);
    const oneBoard = demands[0]?.oneBoard;
    return {
      ...(oneBoard === undefined ? {} : { oneBoard }),
      demands,
      lies,
      area: Math.min(...lies.flat().map(lie => lie.l * lie.w)),
    };
  });
  return {
    items,
    stocks: used.map(index => lines[index]!.stock),
    notes: [...unpriced].map(
      on =>
        `${on.stock.use.label}${on.supplierName ? ` of ${on.supplierName}` : ''} has no price and is left out.`,
    ),
  };
}

/** The nearest miss, in words with a figure. */
function whyNot(served: Served, lines: readonly StockLine[]): { reason: string; mend: string } {
  const { demand } = served;
  const wrong = sizesFault(demand);
  if (wrong) return { reason: `${demand.name}: ${wrong}.`, mend: 'Give the part a size greater than 0 mm.' };
  const unpriced = served.unpriced[0];
  if (unpriced)
    return {
      reason: `${unpriced.stock.use.label} would serve but has no price.`,
      mend: `Write a price for ${unpriced.stock.use.label}${unpriced.supplierName ? ` of ${unpriced.supplierName}` : ''}.`,
    };
  const missed = (miss: Miss): StockLine[] => lines.filter(on => liesOn(demand, on) === miss);
  const size = `${round(demand.length)} x ${round(demand.width)} x ${round(demand.thickness)}`;
  const short = missed('length');
  if (short.length > 0) {
    const best = short.reduce((a, b) => (b.stock.l * b.stock.w > a.stock.l * a.stock.w ? b : a));
    return {
      reason: `${size} does not lie on the largest ${demand.material} of its section: ${best.stock.use.label} gives ${toMm(best.stock.l)} x ${toMm(best.stock.w)} after trim.`,
      mend:
        demand.kind === 'sheet'
          ? 'Add a larger sheet, turn the grain, or join the part.'
          : 'Add longer or wider stock, or join the part.',
    };
  }
  const section = sectionWords(demand);
  // Timber is ripped and planed to its section; metal has to come in it.
  const orMore = demand.kind === 'timber' ? ' or more' : '';
  const worse = missed('grade')[0];
  if (worse)
    return {
      reason: `${demand.name} asks for ${demand.grade} timber; ${worse.stock.use.label} is ${worse.grade}.`,
      mend: `Add ${demand.grade} ${demand.material} for ${size}, or let the part come from ${worse.grade} timber.`,
    };
  if (missed('section').length > 0)
    return {
      reason: `No ${demand.material} ${demand.kind === 'sheet' ? `${round(demand.thickness)} thick` : `of section ${section}${orMore}`} on the rack or at a supplier.`,
      mend: `Add ${demand.material} ${demand.kind === 'sheet' ? `sheet ${round(demand.thickness)} thick` : section} to the rack or to a supplier.`,
    };
  return {
    reason: `No ${demand.material} ${demand.kind} stock on the rack or at a supplier.`,
    mend: `Add ${demand.material} for ${demand.kind === 'sheet' ? size : `${round(demand.length)} of ${section}`} to the rack or to a supplier.`,
  };
}

const round = (mm: number): number => Math.round(mm * 10) / 10;
