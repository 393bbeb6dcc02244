/**
 * What a solver may claim (design, section 7): `proved best`, `within` (gap known and given),
 * `stopped` at its limit, or `none` when nothing could be planned.
 */
export type SolverStatus = 'proved best' | 'within' | 'stopped' | 'none';

export interface Solved {
  status: SolverStatus;
  /** Value of the plan, in the unit the result names. */
  value: number;
  /** No plan can be better than this. */
  bound: number;
}

/** Limits are counts, not time, so that results are the same everywhere. */
export interface Effort {
  seed: number;
  iterations: number;
}

export type Progress = (done: number, of: number, best: number) => void;
