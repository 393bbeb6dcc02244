/** From a layout to what the maker does at the saw: cuts in order with settings, parts placed, what is left. */
import type { Demand, Left, Placed, SawCut, StockUse } from '../results/cutting.ts';
import { type CutStock, type Layout, type Slab, toMm, unitsDown } from './problem.ts';

/** A slab in stock coordinates, grown over the trim at the far end and edge, which nobody cuts off idly. */
interface Piece {
  x: number;
  y: number;
  l: number;
  w: number;
}

interface Step {
  kind: 'cross' | 'rip';
  at: number;
  from: number;
  to: number;
  setting: number;
  stage: number;
  trim?: true;
}

interface Frame {
  length: number;
  width: number;
  end: number;
  edge: number;
  kerf: number;
}

/** `take` hands out the demands of an item one by one. */
export function sawn(
  id: string,
  stock: CutStock,
  layout: Layout,
  take: (item: number) => Demand,
  leastOffcut: { length: number; width: number },
): StockUse {
  const frame = frameOf(stock);
  const steps: Step[] = [];
  const placed: Placed[] = [];
  const spare: Piece[] = [];
  const start = trimmed(frame, stock, steps, spare);
  const walk = (slab: Slab, piece: Piece, stage: number, last: 'cross' | 'rip' | undefined): void => {
    if (slab.item !== undefined && slab.lie) {
      const cut = toSize(piece, slab.lie, stage, last, frame.kerf, steps, spare);
      const demand = take(slab.item);
      placed.push({
        mark: demand.mark,
        instance: demand.instance,
        x: toMm(cut.x),
        y: toMm(cut.y),
        length: toMm(cut.l),
        width: toMm(cut.w),
        turned: slab.lie.turned,
        purpose: demand.purpose,
      });
    } else if (slab.cut && slab.kept) {
      const at = slab.cut === 'cross' ? slab.kept.l : slab.kept.w;
      const next = last === slab.cut ? stage : stage + 1;
      const [kept, rest] = divided(piece, slab.cut, at, next, frame.kerf, steps);
      walk(slab.kept, kept, next, slab.cut);
      if (rest && slab.rest) walk(slab.rest, rest, next, slab.cut);
      else if (rest) spare.push(rest);
    } else spare.push(piece);
  };
  walk(layout.slab, start, 0, undefined);
  return {
    id,
    item: stock.item,
    ...(stock.supplier === undefined ? {} : { supplier: stock.supplier }),
    ...stock.use,
    price: stock.cost,
    placed,
    cuts: inOrder(steps),
    left: spare.map(piece => leftOver(piece, stock, frame, leastOffcut)),
  };
}

/** Real size of the stock: the usable size the solver worked in and the trim round it. */
const frameOf = (stock: CutStock): Frame => ({
  length: unitsDown(stock.use.length),
  width: unitsDown(stock.use.width),
  end: unitsDown(stock.use.trim.end),
  edge: unitsDown(stock.use.trim.edge),
  kerf: stock.kerf,
});

/** Trims the near end and the near edge; the far ones are met by the cuts that follow. */
function trimmed(frame: Frame, stock: CutStock, steps: Step[], spare: Piece[]): Piece {
  const { length, width, end, edge, kerf } = frame;
  if (end > 0) {
    const base = { kind: 'cross', from: 0, to: width, stage: 0, trim: true } as const;
    steps.push({ ...base, at: end, setting: length - end });
    if (end > kerf) spare.push({ x: 0, y: 0, l: end - kerf, w: width });
  }
  if (edge > 0) {
    const base = { kind: 'rip', from: end, to: length, stage: 0, trim: true } as const;
    steps.push({ ...base, at: edge, setting: width - edge });
    if (edge > kerf) spare.push({ x: end, y: 0, l: length - end, w: edge - kerf });
  }
  const piece = { x: end, y: edge, l: length - end, w: width - edge };
  return stock.single ? { ...piece, y: 0, w: width } : piece;
}

/** One cut. The rest beyond the kerf is absent when the kerf takes it all. */
function divided(
  piece: Piece,
  kind: 'cross' | 'rip',
  at: number,
  stage: number,
  kerf: number,
  steps: Step[],
): [Piece, Piece | undefined] {
  const cross = kind === 'cross';
  const size = cross ? piece.l : piece.w;
  const near = cross ? piece.x : piece.y;
  const side = cross ? { from: piece.y, to: piece.y + piece.w } : { from: piece.x, to: piece.x + piece.l };
  steps.push({ kind, at: near + at, ...side, setting: at, stage });
  const kept = cross ? { ...piece, l: at } : { ...piece, w: at };
  const beyond = size - at - kerf;
  if (beyond <= 0) return [kept, undefined];
  const rest = cross
    ? { ...piece, x: piece.x + at + kerf, l: beyond }
    : { ...piece, y: piece.y + at + kerf, w: beyond };
  return [kept, rest];
}

/** The last cuts on a piece at the far end or edge, which still carries the factory edge. */
function toSize(
  piece: Piece,
  lie: { l: number; w: number },
  stage: number,
  last: 'cross' | 'rip' | undefined,
  kerf: number,
  steps: Step[],
  spare: Piece[],
): Piece {
  let now = piece;
  let at = stage;
  const order: ('cross' | 'rip')[] = last === 'rip' ? ['rip', 'cross'] : ['cross', 'rip'];
  for (const kind of order) {
    const size = kind === 'cross' ? lie.l : lie.w;
    if (size >= (kind === 'cross' ? now.l : now.w)) continue;
    at = kind === last ? at : at + 1;
    const [kept, rest] = divided(now, kind, size, at, kerf, steps);
    if (rest) spare.push(rest);
    now = kept;
  }
  return now;
}

/** All cuts of a stage before those of the next: the stock is broken down first, then each piece. */
function inOrder(steps: readonly Step[]): SawCut[] {
  return steps
    .map((step, i) => ({ step, i }))
    .sort((a, b) => a.step.stage - b.step.stage || a.i - b.i)
    .map(({ step }, i) => ({
      order: i + 1,
      kind: step.kind,
      at: toMm(step.at),
      from: toMm(step.from),
      to: toMm(step.to),
      setting: toMm(step.setting),
      ...(step.trim ? { trim: step.trim } : {}),
    }));
}

/** Back to the rack when it reaches the least offcut (CUT-8). */
function leftOver(
  piece: Piece,
  stock: CutStock,
  frame: Frame,
  least: { length: number; width: number },
): Left {
  const l = toMm(piece.l);
  const w = toMm(piece.w);
  const grained = stock.single || stock.crossFirst;
  const along = l >= least.length && (w >= least.width || (grained && piece.w === frame.width));
  const across = !grained && w >= least.length && l >= least.width;
  return {
    x: toMm(piece.x),
    y: toMm(piece.y),
    length: l,
    width: w,
    fate: along || across ? 'back to the rack' : 'waste',
  };
}
