/** From a layout to what the maker does at the saw: cuts in order with settings, parts placed, what is left. */
import type { Demand, Left, Placed, SawCut, StockUse } from '../results/cutting.ts';
import { type CutStock, type Layout, type Slab, toMm, unitsDown, unitsUp } from './problem.ts';

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
  const walk = (slab: Slab, on: Piece, before: number, was: 'cross' | 'rip' | undefined): void => {
    const edging = on.y < frame.edge && !stock.single && (slab.item !== undefined || slab.cut === 'rip');
    const [piece, stage, last] = edging
      ? [edged(on, frame, before + 1, steps, spare), before + 1, 'rip' as const]
      : [on, before, was];
    if (slab.item !== undefined && slab.lie) {
      const sized = toSize(piece, slab.lie, stage, last, frame.kerf, steps, spare);
      const whole = take(slab.item);
      const turned = slab.lie.turned;
      for (const { demand, cut } of cutApart(whole, sized, turned, stage + 3, frame.kerf, steps, spare))
        placed.push({
          mark: demand.mark,
          instance: demand.instance,
          x: toMm(cut.x),
          y: toMm(cut.y),
          length: toMm(cut.l),
          width: toMm(cut.w),
          turned,
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

/** Trims the near end and, of a sheet, the near edge; the far ones are met by the cuts that follow. */
function trimmed(frame: Frame, stock: CutStock, steps: Step[], spare: Piece[]): Piece {
  const { length, width, end, edge, kerf } = frame;
  if (end > 0) {
    const base = { kind: 'cross', from: 0, to: width, stage: 0, trim: true } as const;
    steps.push({ ...base, at: end, setting: length - end });
    if (end > kerf) spare.push({ x: 0, y: 0, l: end - kerf, w: width });
  }
  const whole = { x: end, y: 0, l: length - end, w: width };
  // A board keeps its edges until it is cross-cut to rough length (CUT-7).
  if (edge === 0 || stock.single || stock.crossFirst) return whole;
  return edged(whole, frame, 0, steps, spare);
}

/** Rips the near edge straight. */
function edged(piece: Piece, { edge, kerf }: Frame, stage: number, steps: Step[], spare: Piece[]): Piece {
  const { x, l, w } = piece;
  steps.push({ kind: 'rip', from: x, to: x + l, stage, trim: true, at: edge, setting: w - edge });
  if (edge > kerf) spare.push({ x, y: 0, l, w: edge - kerf });
  return { x, y: edge, l, w: w - edge };
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

/** A run of grain cut into its parts, in their order; any other blank is one part. */
function cutApart(
  whole: Demand,
  piece: Piece,
  turned: boolean,
  stage: number,
  kerf: number,
  steps: Step[],
  spare: Piece[],
): { demand: Demand; cut: Piece }[] {
  if (!whole.members) return [{ demand: whole, cut: piece }];
  const along = (whole.run?.lie === 'end to end') !== turned ? 'cross' : 'rip';
  let left: Piece | undefined = piece;
  return whole.members.map(demand => {
    const [l, w] = turned ? [demand.width, demand.length] : [demand.length, demand.width];
    const on: Piece = left!;
    const at = unitsUp(along === 'cross' ? l : w);
    const last = at >= (along === 'cross' ? on.l : on.w);
    const [kept, rest]: [Piece, Piece | undefined] = last
      ? [on, undefined]
      : divided(on, along, at, stage, kerf, steps);
    left = rest;
    const size = { l: unitsUp(l), w: unitsUp(w) };
    return { demand, cut: toSize(kept, size, stage + 1, undefined, kerf, steps, spare) };
  });
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

/** Width of wood over the whole of a piece of a board whose far edge slants, mm from the piece's own edge. */
function woodOver(narrow: { near: number; far: number }, length: number, piece: Piece): number {
  const at = (x: number): number => narrow.near + ((narrow.far - narrow.near) * toMm(x)) / length;
  return Math.floor((Math.min(at(piece.x), at(piece.x + piece.l)) - toMm(piece.y)) * 100 + 1e-6) / 100;
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
  const wood = stock.use.narrow ? woodOver(stock.use.narrow, stock.use.length, piece) : w;
  const real = Math.max(0, Math.min(w, wood));
  const grained = stock.single || stock.crossFirst;
  const along = l >= least.length && (real >= least.width || (grained && piece.w === frame.width));
  const across = !grained && w >= least.length && l >= least.width;
  return {
    x: toMm(piece.x),
    y: toMm(piece.y),
    length: l,
    width: w,
    ...(real < w ? { narrow: real } : {}),
    fate: along || across ? 'back to the rack' : 'waste',
  };
}
