/** What a price is made from. */
import type { Commission } from '../results/commission.ts';
import type { CuttingPlan } from '../results/cutting.ts';
import type { DayPlan } from '../results/days.ts';
import type { Operation } from '../results/operations.ts';
import type { Piece } from '../results/piece.ts';
import type { BoughtIn } from '../results/price.ts';
import type { SetUpPlan } from '../results/setups.ts';
import type { Workshop } from '../workshop/workshop.ts';

export interface PriceInput {
  piece: Piece;
  operations: Operation[];
  cutting: CuttingPlan;
  setups: SetUpPlan;
  days: DayPlan;
  commission: Commission;
  workshop: Workshop;
  /** Bought-in parts with the price the setting-out gives them. */
  boughtIn?: BoughtIn[];
}
