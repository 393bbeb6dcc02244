import { type SawRun, sawRun } from '../cutting/saw-run.ts';
import { formatLength } from '../quantities/length.ts';
import type { MaterialPlan } from '../results/cutting.ts';
import type { ShowOptions } from '../results/show.ts';

/** Beyond this the order over all stock is left out: nobody saws it in one go. */
const MOST_CUTS = 400;

/** One line of the order over all stock: what, the figure to set, and the stock it serves. */
export interface SawRunLine {
  verb: string;
  figure: string;
  on: string;
}

/** The order over all stock of a material in words; undefined where one piece is sawn by itself, or too many. */
export function sawRunLines(
  plan: MaterialPlan,
  show: ShowOptions,
): { lines: SawRunLine[]; settings: number; apart: number } | undefined {
  const uses = plan.uses.filter(use => use.kept?.done === undefined);
  const cuts = uses.reduce((sum, use) => sum + use.cuts.length, 0);
  if (uses.length < 2 || cuts > MOST_CUTS) return undefined;
  const run: SawRun = sawRun(uses);
  const name = new Map(uses.map((use, i) => [use.id, `${i + 1}`]));
  return {
    settings: run.settings,
    apart: run.apart,
    lines: run.steps.map(step => ({
      verb: verb(step),
      figure: formatLength(step.setting, show),
      on: step.on
        .map(
          ({ use, orders }) => `${name.get(use) ?? ''}${orders.length > 1 ? ` (${orders.length} cuts)` : ''}`,
        )
        .join(', '),
    })),
  };
}

const verb = ({ kind, trim }: SawRun['steps'][number]): string =>
  trim ? (kind === 'cross' ? 'Square the end' : 'Trim the edge') : kind === 'rip' ? 'Rip' : 'Cross-cut';
