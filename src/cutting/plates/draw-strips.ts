/** Draws strips on a plate as slabs with their cuts, and fills what is left over. */
import { fillSlabs } from '../fill.ts';
import type { CutProblem, Layout, Lie, Slab } from '../problem.ts';
import type { Strip } from './strips.ts';

/**
 * @param left pieces still wanted beyond those in the strips; taken from as free places are filled
 * @param order items for the free places, first tried first; none leaves them empty
 */
export function drawStrips(
  problem: CutProblem,
  stock: number,
  strips: readonly Strip[],
  along: boolean,
  left: Int32Array,
  order: readonly number[],
): Layout {
  const on = problem.stocks[stock]!;
  const root: Slab = { x: 0, y: 0, l: on.l, w: on.w };
  const counts = new Map<number, number>();
  const free: Slab[] = [];
  let area = 0;
  const put = (slab: Slab, item: number, lie: Lie): void => {
    slab.item = item;
    slab.lie = lie;
    counts.set(item, (counts.get(item) ?? 0) + 1);
    area += lie.l * lie.w;
  };
  const [stripCut, columnCut] = along ? (['rip', 'cross'] as const) : (['cross', 'rip'] as const);
  const across = (lie: Lie): number => (along ? lie.w : lie.l);
  let plate: Slab | undefined = root;
  for (const strip of strips) {
    if (!plate) break;
    const height = Math.max(...strip.columns.map(c => c.stack * (across(c.lie) + on.kerf) - on.kerf));
    const [band, above] = parted(plate, stripCut, height, on.kerf);
    plate = above;
    let rest: Slab | undefined = band;
    for (const { item, lie, stack } of strip.columns) {
      if (!rest) break;
      const [column, beyond] = parted(rest, columnCut, along ? lie.l : lie.w, on.kerf);
      rest = beyond;
      let pile: Slab | undefined = column;
      for (let k = 0; k < stack && pile; k++) {
        const [piece, higher] = parted(pile, stripCut, across(lie), on.kerf);
        put(piece, item, lie);
        pile = higher;
      }
      if (pile) free.push(pile);
    }
    if (rest) free.push(rest);
  }
  if (plate) free.push(plate);
  area += fillSlabs(problem.items, problem.stocks, stock, free, left, order, counts);
  return { stock, slab: root, counts, area };
}

/** Cuts `at` off a slab; the rest beyond the kerf is undefined when there is none. */
export function parted(slab: Slab, cut: 'cross' | 'rip', at: number, kerf: number): [Slab, Slab | undefined] {
  const whole = cut === 'cross' ? slab.l : slab.w;
  if (whole === at) return [slab, undefined];
  slab.cut = cut;
  const beyond = whole - at - kerf;
  const { x, y, l, w } = slab;
  slab.kept = cut === 'cross' ? { x, y, l: at, w } : { x, y, l, w: at };
  if (beyond > 0)
    slab.rest =
      cut === 'cross' ? { x: x + at + kerf, y, l: beyond, w } : { x, y: y + at + kerf, l, w: beyond };
  return [slab.kept, slab.rest];
}
