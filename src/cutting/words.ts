/** The plan in plain words, with a figure. */
import type { Demand, StockUse } from '../results/cutting.ts';
import type { SolverStatus } from '../results/solver.ts';

const COUNTS = [
  'No',
  'One',
  'Two',
  'Three',
  'Four',
  'Five',
  'Six',
  'Seven',
  'Eight',
  'Nine',
  'Ten',
  'Eleven',
  'Twelve',
];
const PLURAL: Record<StockUse['kind'], string> = {
  'planed length': 'planed lengths',
  board: 'boards',
  sheet: 'sheets',
  bar: 'bars',
  tube: 'tubes',
  offcut: 'offcuts',
};

const number = (n: number): string => COUNTS[n] ?? String(n);
const named = (n: number, kind: StockUse['kind']): string => `${number(n)} ${n === 1 ? kind : PLURAL[kind]}`;
const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

/** `Two sheets; one cannot do.` */
export function planWords(
  uses: readonly StockUse[],
  status: SolverStatus,
  value: number,
  bound: number,
  unplaced: number,
): string {
  const missing =
    unplaced === 0 ? '' : ` ${number(unplaced)} ${unplaced === 1 ? 'blank has' : 'blanks have'} no stock.`;
  if (uses.length === 0) return unplaced === 0 ? 'Nothing to cut.' : missing.trim();
  return `${stockWords(uses)}${verdict(uses, status, value, bound)}.${missing}`;
}

function stockWords(uses: readonly StockUse[]): string {
  const tally = new Map<string, { kind: StockUse['kind']; from: StockUse['from']; count: number }>();
  for (const { kind, from } of uses) {
    const held = tally.get(`${from} ${kind}`) ?? { kind, from, count: 0 };
    tally.set(`${from} ${kind}`, { ...held, count: held.count + 1 });
  }
  const rows = [...tally.values()];
  const mixed = new Set(rows.map(row => row.from)).size > 1;
  const written = rows.map(row => {
    const where = row.from === 'rack' ? ' from the rack' : mixed ? ' to buy' : '';
    return `${named(row.count, row.kind)}${where}`;
  });
  const [first, ...others] = written;
  const last = others.pop();
  const middle = others.map(words => `, ${lower(words)}`).join('');
  return `${first}${middle}${last === undefined ? '' : ` and ${lower(last)}`}`;
}

function verdict(uses: readonly StockUse[], status: SolverStatus, value: number, bound: number): string {
  const alike = uses.every(use => use.item === uses[0]!.item);
  if (status === 'proved best') {
    if (uses.length === 1) return ' will do';
    return alike && value > 0 ? `; ${lower(number(uses.length - 1))} cannot do` : '; nothing cheaper will do';
  }
  if (status === 'stopped') return '; the rack ran out before all was placed';
  if (bound <= 0) return '; how far from the least is not known';
  const above = Math.max(0.1, Math.round((value / bound - 1) * 1000) / 10);
  const least = Math.ceil((bound / value) * uses.length - 1e-9);
  if (!alike || least >= uses.length) return `; at most ${above} % above the least it can cost`;
  return `; ${lower(number(least))} might do, fewer cannot`;
}

/** `45 x 45`, `16 dia`, `30 x 30 x 2`, `angle 40 x 40 x 4`; of a sheet its thickness, `18`. mm */
export function sectionWords({ kind, round, width, thickness, wall, section }: Demand): string {
  if (kind === 'sheet') return figure(thickness);
  const through = wall === undefined ? '' : ` x ${figure(wall)}`;
  if (round) return `${figure(width)}${through} dia`;
  return `${section ? `${section} ` : ''}${figure(width)} x ${figure(thickness)}${through}`;
}

const figure = (mm: number): string => String(Math.round(mm * 100) / 100);
