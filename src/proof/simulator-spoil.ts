/** Moves one figure of one card by one kerf, to see whether the simulator finds it out. */
import { mm } from '../results/quantity.ts';
import type { SetUp } from '../results/setups.ts';

/** Figures that place the tool, the first that a card has is moved. */
const PLACING = ['fence', 'stop', 'from', 'height', 'gauge', 'offset', 'depth'];

/** A taper is spoilt by its offset, an edge by its depth, a turning by its calipers: their other figures say where they begin. */
const BY_SHAPE: Partial<Record<NonNullable<SetUp['removal']>['shape'], string[]>> = {
  wedge: ['offset'],
  edge: ['depth'],
  turned: ['gauge'],
  outline: ['gauge'],
};

/**
 * The same cards with one placing figure of one of them moved by its own kerf, bit or cutter. Undefined for a card
 * that sets none.
 */
export function spoilt(setUps: readonly SetUp[], id: string, sign: 1 | -1): SetUp[] | undefined {
  const card = setUps.find(s => s.id === id);
  const removal = card?.removal;
  if (!card || !removal) return undefined;
  const names = BY_SHAPE[removal.shape] ?? PLACING;
  const name = names.find(n => card.settings.some(s => s.name === n && typeof s.value.value === 'number'));
  if (name === undefined) return undefined;
  const by = sign * Math.max(1, removal.width);
  return setUps.map(s =>
    s === card
      ? {
          ...s,
          settings: s.settings.map(x =>
            x.name === name ? { ...x, value: mm((x.value.value as number) + by) } : x,
          ),
        }
      : s,
  );
}
