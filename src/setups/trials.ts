import { type LengthUnit, parseLength, roundTo } from '../quantities/length.ts';
import { type Fault, fault } from '../results/fault.ts';
import type { Setting, SetUp, Trial } from '../results/setups.ts';
import { say1 } from './figures.ts';

/** Trial cuts as the job keeps them: by set-up, then by number; bare numbers are in the file's unit. */
export type TrialEntries = Record<
  string,
  Record<string, { set: number | string; measured: number | string }>
>;

/** Nearer than this the trial fits: no scale in the shop sets finer (mm). */
const FITS = 0.05;
/** A trial whose setting is this far from what the card now says was made for another figure (mm). */
const OLDER = 3;

/** The setting that a correction moves, and where a trial begins. */
export function correctedSetting(setUp: SetUp): Setting | undefined {
  const { correction, settings } = setUp;
  if (!correction || !setUp.wanted) return undefined;
  const name =
    correction.setting ??
    (correction.share === 'whole' && settings.some(s => s.name === 'last pass') ? 'last pass' : undefined);
  return name === undefined
    ? settings.find(s => s.to !== undefined && typeof s.value.value === 'number')
    : settings.find(s => s.name === name);
}

/**
 * What a measured trial asks of the setting: the measured error, halved where the work is turned (SET-6), against
 * the error: too big comes closer unless the card says that it goes up. Undefined where the card has no trial.
 */
export function correctionOf(
  setUp: SetUp,
  set: number,
  measured: number,
): Omit<Trial, 'id' | 'older'> | undefined {
  const setting = correctedSetting(setUp);
  const wanted = setUp.wanted?.value.value;
  const { correction } = setUp;
  if (!setting || !correction || typeof wanted !== 'number') return undefined;
  const off = roundTo(measured - wanted, 3);
  const fits = Math.abs(off) < FITS;
  const share = correction.share === 'half' ? 0.5 : 1;
  const direction = correction.bigger === 'up' ? 1 : -1;
  const move = fits ? 0 : roundTo(off * share * direction, 3);
  const now = roundTo(set + move, 3);
  return {
    setting: setting.name,
    set,
    measured,
    wanted,
    move,
    now,
    fits,
    words: fits
      ? `${say1(measured)} measured: it fits, leave the ${setting.name} at ${say1(set)}`
      : `${say1(measured)} measured, ${say1(Math.abs(off))} ${off > 0 ? 'over' : 'under'}: ${setting.name} ${wayWords(setting.name, move)} by ${say1(Math.abs(move))}, to ${say1(now)}`,
  };
}

const wayWords = (name: string, move: number): string =>
  name === 'depth' || name === 'height' ? (move > 0 ? 'up' : 'down') : move > 0 ? 'away' : 'closer';

/** The set-ups with the trials that were entered for them; the figures of the card stay as they were worked out. */
export function withTrials(
  setUps: readonly SetUp[],
  entries: TrialEntries | undefined,
  unit: LengthUnit,
): SetUp[] {
  if (!entries) return [...setUps];
  return setUps.map(setUp => {
    const own = entries[setUp.id];
    const setting = correctedSetting(setUp);
    if (!own || !setting) return setUp;
    const begins = setting.value.value as number;
    let expected = begins;
    const trials = Object.entries(own)
      .sort(([a], [b]) => Number(a) - Number(b))
      .flatMap(([id, entry]): Trial[] => {
        const [set, measured] = [read(entry.set, unit), read(entry.measured, unit)];
        if (set === undefined || measured === undefined) return [];
        const trial = correctionOf(setUp, set, measured);
        if (!trial) return [];
        const older = Math.abs(set - expected) > OLDER && Math.abs(set - begins) > OLDER;
        if (!older) expected = trial.now;
        return [{ id, ...trial, older }];
      });
    return trials.length === 0 ? setUp : { ...setUp, trials };
  });
}

/** Readings of trials that are no lengths: told, and not counted. */
export function trialFaults(entries: TrialEntries | undefined, unit: LengthUnit): Fault[] {
  return Object.entries(entries ?? {}).flatMap(([setUp, own]) =>
    Object.entries(own).flatMap(([id, entry]) =>
      (['set', 'measured'] as const).flatMap(field => {
        const parsed = parseLength(String(entry[field]), unit);
        return parsed.ok
          ? []
          : [fault(`trials.${setUp}.${id}.${field}`, parsed.fault, `write ${parsed.expected}`)];
      }),
    ),
  );
}

function read(value: number | string, unit: LengthUnit): number | undefined {
  const parsed = parseLength(String(value), unit);
  return parsed.ok ? parsed.value : undefined;
}

/** What the corrected setting reads now: after the last trial that counts, else as the card has it. */
export function readsNow(setUp: SetUp): number | undefined {
  const last = (setUp.trials ?? []).filter(t => !t.older).at(-1);
  if (last) return last.now;
  const value = correctedSetting(setUp)?.value.value;
  return typeof value === 'number' ? value : undefined;
}
