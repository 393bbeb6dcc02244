/** Sizes against the list, and what the cards take in round, sloping and curved shapes against the design, point by point. */
import { cutShapes } from '../results/cut-shapes.ts';
import type { CutKind, Size } from '../results/cuts.ts';
import type { Instance } from '../results/piece.ts';
import type { CutByCards } from './simulator.ts';
import { extent } from './simulator-card.ts';
import { depthIn, depthInAny, pointsIn, type Region, reachOf } from './simulator-regions.ts';

export interface WrongCut {
  setUp: string;
  instance: string;
  cut: string;
  what: string;
}

/** Points looked at for each cut: a kerf of 1 mm on a wedge of 50 still meets a score of them. */
const POINTS = 2500;

const BOXED: readonly CutKind[] = [
  'mortise',
  'open-mortise',
  'housing',
  'groove',
  'rebate',
  'recess',
  'halving',
  'notch',
  'tenon',
];

/**
 * Each size a card brings a part to is the blank's or the finished part's, and the last one of each way is the
 * finished part's: nothing is cut shorter than it must be, nothing is left over.
 */
export function compareSizes(
  instance: Instance,
  blank: Size,
  done: CutByCards,
  tolerance: number,
): WrongCut[] {
  const wrong: WrongCut[] = [];
  const last = new Map<string, (typeof done.sizes)[number]>();
  const say = (of: (typeof done.sizes)[number], what: string): void => {
    wrong.push({ setUp: of.setUp, instance: instance.id, cut: of.cut, what });
  };
  for (const sized of done.sizes) {
    const finished = extent(instance.size, sized.axis);
    const reserved = extent(blank, sized.axis);
    if (Math.abs(sized.size - finished) > tolerance && Math.abs(sized.size - reserved) > tolerance)
      say(
        sized,
        `brought to ${sized.size.toFixed(1)}, wanted ${finished.toFixed(1)} or the blank's ${reserved.toFixed(1)}`,
      );
    last.set(sized.axis, sized);
  }
  const mitred = instance.cuts.some(c => c.kind === 'end-cut');
  for (const [axis, sized] of last) {
    const finished = extent(instance.size, sized.axis);
    // Mitres at both ends bring the part to length themselves.
    if (axis === 'x' && mitred) continue;
    if (sized.size - finished > tolerance && !instance.measureFirst)
      say(sized, `left at ${sized.size.toFixed(1)}, wanted ${finished.toFixed(1)}`);
  }
  return wrong;
}

/** Points that the cards take and the design keeps, or the other way round, further than the tolerance from either's surface. */
export function compareRegions(
  instance: Instance,
  blank: Size,
  done: CutByCards,
  tolerance: number,
): WrongCut[] {
  const wrong: WrongCut[] = [];
  const byCut = new Map<string, CutByCards['taken']>();
  for (const taken of done.taken) byCut.set(taken.cut, [...(byCut.get(taken.cut) ?? []), taken]);
  const whole: Region[] = instance.cuts.flatMap(c => cutShapes(c, instance.size));
  for (const cut of instance.cuts) {
    const cards = byCut.get(cut.id);
    // Rectangular ways are compared cell by cell; of a tenon only its mitred tip is left.
    const meant: Region[] = cutShapes(cut, instance.size).filter(
      s => s.shape !== 'box' || !BOXED.includes(cut.kind),
    );
    if (!cards || meant.length === 0) continue;
    const regions = cards.map(c => c.region);
    const lost = new Map<string, string>();
    const left = new Map<string, string>();
    for (const p of pointsIn(
      [...meant, ...regions].map(r => reachOf(r, blank)),
      POINTS,
    )) {
      const design = depthInAny(p, meant);
      const depths = cards.map(c => depthIn(p, c.region));
      const card = Math.max(...depths);
      if (Math.abs(design) <= tolerance || Math.abs(card) <= tolerance || design > 0 === card > 0) continue;
      // Wood that another cut takes is no loss: a drill in a mitred end passes where the wood was.
      if (design < 0 && depthInAny(p, whole) > 0) continue;
      // The card that goes deepest there answers: it took the wood, or came nearest to taking it.
      const { setUp } = cards[depths.indexOf(card)]!;
      const where = `at ${p.x.toFixed(1)}, ${p.y.toFixed(1)}, ${p.z.toFixed(1)}`;
      const list = design > 0 ? left : lost;
      if (!list.has(setUp)) list.set(setUp, `${design > 0 ? 'wood left standing' : 'wood lost'} ${where}`);
    }
    // A tool in the wrong place both leaves and takes: what it took tells which card it was.
    for (const [setUp, what] of lost.size > 0 ? lost : left)
      wrong.push({ setUp, instance: instance.id, cut: cut.id, what });
  }
  return wrong;
}
