/**
 * Parts whose grain runs on from one to the next: laid as one blank with the kerfs between them, and cut apart
 * in their order (CUT-16).
 */
import type { Demand } from '../results/cutting.ts';
import { toMm, unitsUp } from './problem.ts';

/** Demands with those of each run put into one; a run of parts that cannot lie together stays apart. */
export function withRuns(demands: readonly Demand[], kerfOf: (demand: Demand) => number): Demand[] {
  const runs = new Map<string, Demand[]>();
  for (const demand of demands)
    if (demand.run) runs.set(demand.run.word, [...(runs.get(demand.run.word) ?? []), demand]);
  const joined = new Map([...runs].map(([word, members]) => [word, joinedBlank(members, kerfOf)]));
  const seen = new Set<string>();
  return demands.flatMap(demand => {
    const whole = demand.run && joined.get(demand.run.word);
    if (!whole) return [demand];
    if (seen.has(demand.run!.word)) return [];
    seen.add(demand.run!.word);
    return [whole];
  });
}

/** One blank for the run; undefined when its parts differ in material, thickness or grain. */
function joinedBlank(members: readonly Demand[], kerfOf: (demand: Demand) => number): Demand | undefined {
  const [first] = members;
  if (!first || members.length < 2 || first.kind !== 'sheet') return undefined;
  const alike = members.every(
    one =>
      one.material === first.material &&
      one.kind === first.kind &&
      one.thickness === first.thickness &&
      one.across === first.across,
  );
  if (!alike) return undefined;
  const ordered = [...members].sort((a, b) => a.run!.at - b.run!.at);
  const kerfs = unitsUp(kerfOf(first)) * (members.length - 1);
  const sum = (side: 'length' | 'width'): number =>
    toMm(ordered.reduce((total, one) => total + unitsUp(one[side]), kerfs));
  const most = (side: 'length' | 'width'): number => Math.max(...ordered.map(one => one[side]));
  const along = first.run!.lie === 'end to end';
  return {
    ...first,
    name: `${ordered.map(one => one.mark).join(', ')}, one run`,
    length: along ? sum('length') : most('length'),
    width: along ? most('width') : sum('width'),
    turn: false,
    members: ordered,
  };
}
