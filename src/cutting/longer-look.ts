/** What a longer search finds beyond the layouts of a first look, to be kept by the maker or not. */
import type { CuttingPlan, MaterialPlan, StockUse } from '../results/cutting.ts';
import type { Operation } from '../results/operations.ts';
import type { Piece } from '../results/piece.ts';
import type { Effort } from '../results/solver.ts';
import type { CuttingDocument } from '../setting-out/cutting-schema.ts';
import type { Workshop } from '../workshop/workshop.ts';
import { PLATE_EFFORT, planCutting } from './plan-cutting.ts';

/** Some seconds for sheets, on one thread. */
export const LONGER_LOOK: Effort = { seed: 1, iterations: PLATE_EFFORT };

export interface LongerLook {
  /** Minor units: what the layouts cost now, what they would cost, and what no layouts can be below. */
  now: number;
  cost: number;
  bound: number;
  /** Layouts to keep in place of those of now; none when nothing cheaper was found. */
  uses: StockUse[];
}

/** Layouts that were kept before stay as they are in both. */
export function lookLonger(
  job: { piece: Piece; operations: readonly Operation[]; cutting: CuttingPlan },
  workshop: Workshop,
  wishes: CuttingDocument | undefined,
  effort: Effort = LONGER_LOOK,
): LongerLook {
  const now = job.cutting;
  const longer = planCutting(job.piece, job.operations, workshop, effort, wishes);
  const unplaced = (plan: CuttingPlan): number =>
    plan.materials.reduce((sum, material) => sum + material.unplaced.length, 0);
  const bound = longer.materials.reduce((sum, material) => sum + material.bound, 0);
  if (longer.cost >= now.cost || unplaced(longer) > unplaced(now))
    return { now: now.cost, cost: now.cost, bound: Math.min(bound, now.cost), uses: [] };
  const before = new Map(now.materials.map(plan => [nameOf(plan), plan.cost]));
  const uses = longer.materials
    .filter(plan => before.get(nameOf(plan)) !== plan.cost)
    .flatMap(plan => plan.uses.filter(use => !use.kept));
  return { now: now.cost, cost: longer.cost, bound, uses };
}

const nameOf = ({ material, kind, section }: MaterialPlan): string => `${material} ${kind} ${section}`;
