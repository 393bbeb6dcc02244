/**
 * Plates of strips built up under priced pieces: first every strip that can still be part of a plate better
 * than the best known, or the best few of a height, then strips one above another in the same way.
 */
import type { CutProblem, Layout } from '../problem.ts';
import { seeded } from '../random.ts';
import type { BuildTerms, Built } from './build-up.ts';
import { drawStrips } from './draw-strips.ts';
import { PackedCounts } from './packed-counts.ts';
import { ONE_ABOVE_ANOTHER, PIECE, Picks, Rectangles } from './rectangles.ts';
import type { StripPlate } from './strip-plate.ts';
import type { Strip } from './strips.ts';

const EPS = 1e-6;

export function buildStrips(problem: CutProblem, plate: StripPlate, terms: BuildTerms): Built {
  return new StripBuild(problem, plate, terms).run();
}

class StripBuild {
  private readonly problem: CutProblem;
  private readonly plate: StripPlate;
  private readonly terms: BuildTerms;
  private readonly counts: PackedCounts;
  private readonly hashes: Int32Array;
  private readonly needed: number;
  private readonly store: Rectangles;
  private readonly made: number[][] = [];
  private complete = true;
  private stopped = false;

  constructor(problem: CutProblem, plate: StripPlate, terms: BuildTerms) {
    this.problem = problem;
    this.plate = plate;
    this.terms = terms;
    this.counts = new PackedCounts(terms.caps);
    this.store = new Rectangles(this.counts.words, 4096);
    const random = seeded(1);
    this.hashes = Int32Array.from(terms.worth, () => Math.floor(random() * 2 ** 32) | 0);
    const back = terms.caps.reduce((sum, cap, i) => sum + cap * (terms.worth[i]! - terms.priced[i]!), 0);
    this.needed = terms.above + 1 - back - EPS;
    plate.most(terms.priced);
  }

  run(): Built {
    const none = { layout: undefined, value: this.terms.above };
    const byHeight = this.plate.heights.map((_, h) => this.strips(h));
    const at = this.stack(byHeight);
    if (this.stopped || at === undefined) return { ...none, complete: !this.stopped && this.complete };
    return { layout: this.draw(at), value: this.store.value[at]!, complete: this.complete };
  }

  /** Strips of one height, most gain first: rows of the store. */
  private strips(h: number): number[] {
    const { plate, terms, store } = this;
    const { across, reach } = plate.heights[h]!;
    const lower = h === 0 ? 0 : plate.heights[h - 1]!.reach;
    const row = plate.length + 1;
    const picks = new Picks(store, this.counts, terms.width);
    const floor = Math.max(-EPS, this.needed - plate.plate[plate.width - across]!);
    picks.begin(floor);
    const left = terms.caps.slice();
    const chosen: number[] = [];
    const most = terms.most / plate.heights.length;
    let asked = 0;
    const visit = (r: number, x: number, gain: number, tall: boolean): void => {
      if (gain + plate.strip[r * row + x]! <= picks.floor || this.stopped) return;
      if (r <= lower && !tall) return;
      if (++asked > most) {
        this.complete = false;
        return;
      }
      if ((asked & 1023) === 0 && terms.stop?.()) this.stopped = true;
      if (r === 0) {
        this.offer(picks, chosen);
        return;
      }
      const { item, along } = plate.pieces[r - 1]!;
      for (let k = Math.min(left[item]!, Math.floor(x / along)); k >= 0; k--) {
        left[item]! -= k;
        for (let n = 0; n < k; n++) chosen.push(r - 1);
        visit(r - 1, x - k * along, gain + k * terms.priced[item]!, tall || (k > 0 && r > lower));
        chosen.length -= k;
        left[item]! += k;
      }
    };
    visit(reach, plate.length, 0, false);
    if (picks.floor > floor || picks.size > terms.width) this.complete = false;
    const kept: number[] = [];
    picks.keep(id => kept.push(id));
    return kept;
  }

  private offer(picks: Picks, chosen: readonly number[]): void {
    const { plate, terms, hashes } = this;
    let hash = 0;
    let gain = 0;
    let value = 0;
    const items = chosen.map(k => plate.pieces[k]!.item);
    for (const item of items) {
      hash = (hash + hashes[item]!) | 0;
      gain += terms.priced[item]!;
      value += terms.worth[item]!;
    }
    this.made.push([...chosen]);
    picks.set(items, this.made.length - 1, hash, gain, value);
  }

  /** The best plate above the worth wanted, as a row of the store. */
  private stack(byHeight: readonly number[][]): number | undefined {
    const { plate, terms, store } = this;
    const picks = new Picks(store, this.counts, terms.width);
    const lists: number[][] = [];
    let best: number | undefined;
    let bestValue = terms.above;
    for (let y = 0; y <= plate.width; y++) {
      const floor = Math.max(-EPS, this.needed - plate.plate[plate.width - y]!);
      picks.begin(floor);
      for (const id of lists[y - 1] ?? []) picks.again(id);
      plate.heights.forEach(({ across }, h) => {
        if (across > y) return;
        for (const id of across === y || y === plate.width ? byHeight[h]! : []) picks.again(id);
        this.pairs(picks, lists[y - across]!, byHeight[h]!);
      });
      if (picks.floor > floor || picks.size > terms.width) this.complete = false;
      const list: number[] = [];
      picks.keep(id => {
        list.push(id);
        if (store.value[id]! > bestValue) {
          best = id;
          bestValue = store.value[id]!;
        }
      });
      lists.push(list);
      if (store.size > terms.most || terms.stop?.()) this.stopped = true;
      if (this.stopped) break;
    }
    return best;
  }

  private pairs(picks: Picks, plates: readonly number[], strips: readonly number[]): void {
    const { gain } = this.store;
    for (const one of plates)
      for (const strip of strips) {
        if (gain[one]! + gain[strip]! <= picks.floor) break;
        picks.pair(one, strip, ONE_ABOVE_ANOTHER);
      }
  }

  private draw(at: number): Layout {
    const { store, plate } = this;
    const strips: Strip[] = [];
    let id = at;
    for (;;) {
      const strip = store.kind[id] === PIECE ? id : store.second[id]!;
      const columns = this.made[store.first[strip]!]!.map(k => ({ ...plate.pieces[k]!, stack: 1 }));
      strips.push({ across: 0, columns, worth: 0 });
      if (store.kind[id] === PIECE) break;
      id = store.first[id]!;
    }
    const none = new Int32Array(this.problem.items.length);
    return drawStrips(this.problem, 0, strips, plate.alongLength, none, []);
  }
}
