import type { Check } from './checks.ts';
import type { CuttingPlan } from './cutting.ts';
import type { DayPlan } from './days.ts';
import type { Fault } from './fault.ts';
import type { Operation } from './operations.ts';
import type { Piece } from './piece.ts';
import type { Price } from './price.ts';
import type { Quantity } from './quantity.ts';
import type { SetUpPlan } from './setups.ts';

/** Everything that follows from a job and a workshop; plain data, crosses worker boundaries as it is. */
export interface Derived {
  title: string;
  parameters: ParameterValue[];
  piece: Piece;
  operations: Operation[];
  cutting: CuttingPlan;
  setups: SetUpPlan;
  days: DayPlan;
  checks: Check[];
  price: Price;
  faults: Fault[];
}

export interface ParameterValue {
  id: string;
  label: string;
  value: Quantity | undefined;
  /** As the maker wrote it. */
  text: string;
  /** A number or a choice that may be typed over; false for one that is worked out. */
  entered: boolean;
  choices?: string[];
  min?: number;
  max?: number;
}
