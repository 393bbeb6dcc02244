import { adhesive } from '../reference/adhesives.ts';
import { workTime } from '../reference/work-times.ts';
import type { Spell } from '../results/operations.ts';
import type { Basis } from '../results/source.ts';
import type { Workshop } from '../workshop/workshop.ts';

/** So many units of the work that a row of the time table speaks of. */
export interface Work {
  key: string;
  /** Units, as the row's `per` says: pieces, metres, square metres. May be negative to take a part out. */
  times: number;
}

interface OwnTime {
  what: string;
  low: number;
  high: number;
  per: string;
}

/**
 * Minutes for work of which the tables have no row: remembered, to be replaced by the workshop's own.
 * The waits of this table are minutes too.
 */
export const REMEMBERED_TIMES: Readonly<Record<string, OwnTime>> = {
  'order-stock': { what: 'choose and order stock', low: 5, high: 15, per: 'order' },
  'measure-part': {
    what: 'measure an opening or a sheet and write it down',
    low: 1,
    high: 4,
    per: 'measurement',
  },
  'mask-joint': { what: 'mask the glue faces of one joint', low: 1, high: 3, per: 'joint' },
  'degrease-metal': { what: 'abrade and degrease metal for bonding', low: 10, high: 20, per: 'm2' },
  'take-outwork': { what: 'pack, take out and fetch back', low: 40, high: 120, per: 'errand' },
  'weld-joint': { what: 'tack, check and weld a joint', low: 5, high: 15, per: 'joint' },
  'dress-weld': { what: 'grind and file a weld flush', low: 20, high: 60, per: 'm of weld' },
  'cut-recess': { what: 'recess or notch by router, corners by chisel', low: 5, high: 15, per: 'recess' },
  'fit-catch': { what: 'fit a catch or small fitting', low: 4, high: 10, per: 'piece' },
};

/** Days that timber rests. Common practice gives a range; the least of it is planned. */
export const RESTS = {
  'season-timber': { days: 7, text: 'common practice: 7 to 14 days in stick in the shop (blog.eroko.com)' },
  'rest-rough': { days: 2, text: 'common practice: 2 to 14 days after rough cutting' },
} as const;

/** Everything a workshop may time for itself, with the unit its minutes are for. */
export function timeUnit(key: string): string | undefined {
  return workTime(key)?.per ?? REMEMBERED_TIMES[key]?.per;
}

/** From best known to least known. */
const TRUST: readonly Basis[] = [
  'measured',
  'workshop',
  'maker',
  'read',
  'computed',
  'common practice',
  'memory',
];

/**
 * Hands-on minutes of some work: the workshop's own figure for a row where it has one, else the table's, else
 * the remembered one; added up. Likely is halfway unless the workshop says. The basis is that of the least
 * known figure in it.
 * @throws Error when a key is in no table: a slip in the program.
 */
export function spellOf(workshop: Workshop, works: readonly Work[]): Spell {
  let [low, likely, high] = [0, 0, 0];
  const words: string[] = [];
  let basis: Basis = works.length === 0 ? 'computed' : 'measured';
  for (const { key, times } of works) {
    if (times === 0) continue;
    const row = rowOf(workshop, key);
    low += row.low * times;
    likely += row.likely * times;
    high += row.high * times;
    words.push(`${row.what}, ${figure(row.low)}-${figure(row.high)} min a ${row.per} x ${figure(times)}`);
    if (TRUST.indexOf(row.basis) > TRUST.indexOf(basis)) basis = row.basis;
  }
  const least = Math.max(0, Math.min(low, high));
  return {
    low: least,
    likely: Math.max(least, likely),
    high: Math.max(least, likely, high),
    source: { text: words.join('; ') || 'no hands needed', basis },
  };
}

function rowOf(workshop: Workshop, key: string): OwnTime & { likely: number; basis: Basis } {
  const table = workTime(key) ?? REMEMBERED_TIMES[key];
  if (!table) throw new Error(`no time for ${key}`);
  const own = workshop.times[key];
  if (own)
    return {
      what: table.what,
      per: table.per,
      low: own.low,
      likely: own.likely,
      high: own.high,
      basis: own.source.basis === 'measured' ? 'measured' : 'workshop',
    };
  const { what, per, low, high } = table;
  return { what, per, low, high, likely: (low + high) / 2, basis: 'basis' in table ? table.basis : 'memory' };
}

const figure = (value: number): string => String(Math.round(value * 100) / 100);

export interface Wait {
  minutes: number;
  text: string;
  basis: Basis;
}

/** How long timber rests: the workshop's own time under that key, else the least of common practice. */
export function restOf(workshop: Workshop, key: keyof typeof RESTS): Wait {
  const own = workshop.times[key];
  if (own) return { minutes: own.likely, text: `workshop: ${own.source.text}`, basis: 'workshop' };
  return { minutes: RESTS[key].days * 1440, text: RESTS[key].text, basis: 'common practice' };
}

export interface GlueTimes {
  name: string;
  open?: Wait;
  clamp?: Wait;
  /** From closing to full strength. */
  cure?: Wait;
  cautions: readonly string[];
  /** Degrees C below which it does not set well. */
  least?: number;
}

/** The glue a maker takes when none is named: common practice for interior work. */
export const USUAL_GLUE = 'pva';

/**
 * Times of an adhesive: the workshop's own figures first, then the tables. Clamp time is the longest that a
 * source gives, full strength the least ("at least") of them: rule 46. Undefined for an unknown name.
 */
export function glueTimes(workshop: Workshop, named: string | undefined): GlueTimes | undefined {
  const key = named ?? USUAL_GLUE;
  const own = workshop.adhesives[key];
  const table = adhesive(own?.like ?? key);
  if (!own && !table) return undefined;
  const wait = (
    mine: number | undefined,
    row: { source: string; basis: Basis } | undefined,
    minutes: number | undefined,
  ): Wait | undefined =>
    mine !== undefined
      ? { minutes: mine, text: `workshop: ${own?.name ?? key}`, basis: 'workshop' }
      : row && minutes !== undefined
        ? { minutes, text: row.source, basis: row.basis }
        : undefined;
  const open = wait(own?.openMinutes, table?.openMinutes, table?.openMinutes?.low);
  const clamp = wait(own?.clampMinutes, table?.clampMinutes, table?.clampMinutes?.high);
  const cure = wait(own?.cureMinutes, table?.fullStrengthMinutes, table?.fullStrengthMinutes?.low);
  return {
    name: own?.name ?? table?.name ?? key,
    ...(open ? { open } : {}),
    ...(clamp ? { clamp } : {}),
    ...(cure ? { cure } : {}),
    cautions: table?.cautions ?? [],
    ...(table?.minTemperatureC ? { least: table.minTemperatureC.low } : {}),
  };
}
