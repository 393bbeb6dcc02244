import type { EndCut } from '../results/cuts.ts';
import type { Instance } from '../results/piece.ts';
import type { Workshop } from '../workshop/workshop.ts';
import type { Batch } from './batches.ts';
import { say1 } from './figures.ts';
import { trueSize } from './sizes.ts';

const RAD = Math.PI / 180;

/** Parts of one section, cut alike at both ends, long point to long point. */
export interface Ring {
  lengths: readonly number[];
  /** Across the slant: the width, or the thickness under a tilted blade, mm. */
  across: number;
  /** Degrees from square. */
  angle: number;
  kerf: number;
}

export interface Nesting {
  /** Length of timber taken, sawing included, mm. */
  timber: number;
  cuts: number;
  /** Times the saw is swung or tilted to the other side. */
  changes: number;
}

/** With a waste piece between: every part whole, a wedge between each two; one end of all, then the other. */
export function withWastePiece({ lengths, angle, kerf }: Ring): Nesting {
  const slant = kerf / Math.cos(angle * RAD);
  return {
    timber: lengths.reduce((sum, l) => sum + l, 0) + 2 * lengths.length * slant,
    cuts: 2 * lengths.length,
    changes: 1,
  };
}

/**
 * Nested head to tail: one kerf ends a part and begins the next, so that each takes only its middle length, and one
 * wedge is lost in all. The saw goes to the other side at every cut, unless the board is turned over instead.
 */
export function nestedMitres({ lengths, across, angle, kerf }: Ring, turnedOver: boolean): Nesting {
  const wedge = across * Math.tan(angle * RAD);
  const slant = kerf / Math.cos(angle * RAD);
  return {
    timber: lengths.reduce((sum, l) => sum + l - wedge, 0) + wedge + (lengths.length + 1) * slant,
    cuts: lengths.length + 1,
    changes: turnedOver ? 0 : lengths.length,
  };
}

/** Anything worked along the part: every other part of a nest would have it on the wrong edge. */
export function worksAlong(instance: Instance): string | undefined {
  const cut = instance.cuts.find(
    c =>
      ('run' in c && c.run === 'x') ||
      c.kind === 'chamfer' ||
      c.kind === 'round-over' ||
      c.kind === 'taper' ||
      c.kind === 'bevel',
  );
  return cut?.kind;
}

export interface Costs {
  /** To swing or tilt the saw, minutes. */
  change: number;
  /** An hour, minor units. */
  hour: number;
  /** A millimetre of this section, minor units; 0 where nobody sells it. */
  millimetre: number;
}

/** Nested or with a waste piece, by timber saved at its price against the swinging of the saw, in words. */
export function chooseNesting(
  ring: Ring,
  along: string | undefined,
  turnedOver: boolean,
  costs: Costs,
): { nested: boolean; words: string } {
  const waste = withWastePiece(ring);
  const nested = nestedMitres(ring, turnedOver);
  const saved = Math.max(0, waste.timber - nested.timber);
  if (along !== undefined)
    return {
      nested: false,
      words: `Waste piece between: head to tail the ${along} would lie on the wrong edge of every other part`,
    };
  const minutes = Math.max(0, nested.changes - waste.changes) * costs.change;
  const [gain, loss] = [saved * costs.millimetre, (minutes * costs.hour) / 60];
  const turning = turnedOver
    ? 'the board turned over between cuts'
    : `the saw swung at every cut, ${say1(minutes)} min more`;
  const worth = `${say1(saved)} of timber${costs.millimetre > 0 ? `, ${(gain / 100).toFixed(2)} of money,` : ''}`;
  return gain >= loss
    ? {
        nested: true,
        words: `Head to tail pays: ${nested.cuts} cuts instead of ${waste.cuts}, ${turning}; saves ${worth} if they come from one length`,
      }
    : {
        nested: false,
        words: `Waste piece between: head to tail would save ${worth} and cost ${(loss / 100).toFixed(2)} of swinging the saw`,
      };
}

const slantOf = (cut: EndCut): number => Math.max(Math.abs(cut.mitre), Math.abs(cut.bevel));

/** Words for the card of a set-up that cuts mitres: the parts of its section that are alike at both ends. */
export function nestingWords(batch: Batch, instances: readonly Instance[], workshop: Workshop): string[] {
  const first = batch.steps[0]!;
  const own = instances.find(i => i.id === first.task.instance.id);
  const cut = own?.cuts.find((c): c is EndCut => c.id === first.task.cut.id && c.kind === 'end-cut');
  if (!own || !cut || first.draft.removal.shape !== 'end' || slantOf(cut) < 0.5) return [];
  if (cut.mitre !== 0 && cut.bevel !== 0) return [];
  const tilted = cut.bevel !== 0;
  const like = instances.filter(
    i =>
      i.material === own.material &&
      Math.abs(trueSize(i, 'y') - trueSize(own, 'y')) < 0.05 &&
      Math.abs(trueSize(i, 'z') - trueSize(own, 'z')) < 0.05 &&
      bothEnds(i, slantOf(cut), tilted),
  );
  if (like.length < 2) return [];
  const ring: Ring = {
    lengths: like.map(i => trueSize(i, 'x')),
    across: trueSize(own, tilted ? 'z' : 'y'),
    angle: slantOf(cut),
    kerf: first.draft.removal.width,
  };
  const along = like.map(worksAlong).find(a => a !== undefined);
  // A show face stays up: then the saw swings. A tilted blade leans one way only: then the board is turned.
  const turnedOver = tilted || !like.some(i => i.show);
  const { words } = chooseNesting(ring, along, turnedOver, {
    change: first.draft.machine.change.tilt,
    hour: workshop.rates.hour,
    millimetre: priceOfLength(own, workshop),
  });
  return [words];
}

const bothEnds = (instance: Instance, angle: number, tilted: boolean): boolean =>
  (['end1', 'end2'] as const).every(end =>
    instance.cuts.some(
      c =>
        c.kind === 'end-cut' &&
        c.end === end &&
        Math.abs(slantOf(c) - angle) < 0.01 &&
        (c.bevel !== 0) === tilted,
    ),
  );

/** Minor units for a millimetre of the part's section, by volume at the cheapest supplier of its material. */
function priceOfLength(instance: Instance, workshop: Workshop): number {
  const prices = workshop.suppliers
    .flatMap(s => s.items)
    .filter(i => i.material === instance.material && i.length * i.width * i.thickness > 0)
    .map(i => i.price / (i.length * i.width * i.thickness));
  if (prices.length === 0) return 0;
  return Math.min(...prices) * trueSize(instance, 'y') * trueSize(instance, 'z');
}
