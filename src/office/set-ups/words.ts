import { seedOf } from '../../drawings/seeded.ts';
import type { Run, Setting, SetUp } from '../../results/setups.ts';

const capital = (text: string): string => (text[0]?.toUpperCase() ?? '') + text.slice(1);
export const settingName = (setting: Setting): string => capital(setting.name);

/** Parts run in a set-up, each mark once. */
export const runWords = (setup: SetUp): string => [...new Set(setup.runs.map(r => r.mark))].join(', ');

export const passCount = (setup: SetUp): number =>
  setup.runs.reduce((n, r) => n + Math.max(1, r.passes.length), 0);

const ENDS = { end1: 'end 1', end2: 'end 2' } as const;
export const runName = (run: Run): string => (run.end ? `${run.mark}, ${ENDS[run.end]}` : run.mark);

/** What a tick was made from: changes when the settings or what is run change. */
export const cardHash = (setup: SetUp): string =>
  seedOf(JSON.stringify([setup.settings, setup.runs, setup.machine, setup.tool])).toString(16);

/** Passes in few words: which way round, and how often each. */
export function passWords(run: Run): string {
  const ways = new Map<string, number>();
  for (const pass of run.passes) {
    const way = pass.replace(/, pass \d+$/, '');
    ways.set(way, (ways.get(way) ?? 0) + 1);
  }
  const counts = new Set(ways.values());
  const names = [...ways.keys()].join(', ');
  const [each] = counts;
  if (counts.size > 1) return run.passes.join(', ');
  if (each === undefined || each === 1) return names;
  return `${names}, ${each} passes${ways.size > 1 ? ' each' : ''}`;
}
