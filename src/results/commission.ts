import type { Outwork } from './piece.ts';

/** What the job says beyond the piece itself, evaluated: who, where, when, finished how, priced how. */

export interface Band {
  low: number;
  high: number;
}

export interface Site {
  name: string;
  /** Relative humidity, %, least and greatest through the year; absent while nobody has said. */
  humidity?: Band;
  /** Degrees C, least and greatest through the year; absent while nobody has said. */
  temperature?: Band;
  /** Openings the piece must pass, mm. */
  doors: { name: string; width: number; height: number }[];
}

export type FinishStepKind =
  | 'prepare'
  | 'raise grain'
  | 'stain'
  | 'ink'
  | 'sand back'
  | 'coat'
  | 'seal'
  | 'wait'
  | 'polish';

export interface FinishStep {
  kind: FinishStepKind;
  name: string;
  /** Key into the finish tables or the workshop's own. */
  product?: string;
  grit?: number;
  /** The maker's own figures; absent ones come from workshop, then tables. */
  minutesPerM2?: number;
  waitMinutes?: number;
  withinMinutes?: number;
}

export interface FinishRecipe {
  id: string;
  name: string;
  steps: FinishStep[];
  /** Instances it covers. */
  instances: string[];
  /** Before assembly (inside faces, panels) or after the glue-up of the whole. */
  when: 'before glue-up' | 'after glue-up';
  /** Done by somebody else, in place of the steps: powder coat, galvanising, plating, polishing. */
  outwork?: Outwork;
  /** Client's sample: recipe may not start until agreed, if one is asked for. */
  sample?: { asked: boolean; agreed?: string };
}

export interface PriceInputs {
  /** Shares 0 to 1; the workshop's where absent. */
  margin?: number;
  contingency?: number;
  /** Extra lines the maker states: delivery, hardware, outwork. Minor units. */
  extras: { id: string; label: string; amount: number }[];
  /** Hours the derivation cannot know: visits, design. */
  extraHours: { id: string; label: string; hours: number }[];
}

export interface Commission {
  /** Figures that must agree, mm, with the maker's own words for them; undefined where one cannot be worked out. */
  agreements?: {
    id: string;
    label: string;
    figure: number | undefined;
    other: number | undefined;
    written: [string, string];
  }[];
  title: string;
  number: string;
  /** Id of the client's own record; never the data themselves. */
  client?: string;
  brief: string;
  site?: Site;
  /** ISO dates. */
  start?: string;
  deadline?: string;
  finishes: FinishRecipe[];
  price: PriceInputs;
  /** Moisture of the timber when it was made up, % (measured), where known. */
  moistureAtMaking?: number;
}
