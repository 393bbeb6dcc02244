/**
 * A check against a figure that somebody outside has published. Add a file `NAME.checks.ts` here that exports
 * `checks: OutsideCheck[]`; the one test file runs them all and `report.ts` lists them.
 */

/** One figure, or several of one unit by name. */
export type Figures = number | readonly number[] | Readonly<Record<string, number>>;

export interface OutsideCheck {
  /** Unique over all files. */
  readonly id: string;
  readonly topic: string;
  readonly published: Figures;
  /** Runs the product's own function on the published inputs. */
  readonly ours: () => Figures;
  readonly unit: string;
  /** Greatest difference allowed, in the unit. */
  readonly tolerance: number;
  readonly source: string;
  /** What of it was published: `printed answer`, `read values, arithmetic`, `consistency of two sources`, `memory`. */
  readonly basis: string;
}

interface Specified<Inputs> extends Omit<OutsideCheck, 'ours'> {
  readonly inputs: Inputs;
  readonly ours: (inputs: Inputs) => Figures;
}

/** Keeps the published inputs beside the published answer. */
export function outside<const Inputs>({ inputs, ours, ...check }: Specified<Inputs>): OutsideCheck {
  return { ...check, ours: () => ours(inputs) };
}

/** The figures as a list of named values. */
export function named(figures: Figures): [name: string, value: number][] {
  if (typeof figures === 'number') return [['', figures]];
  if (Array.isArray(figures)) return figures.map((value: number, index) => [String(index + 1), value]);
  return Object.entries(figures);
}
