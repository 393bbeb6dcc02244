import type { LocalFace } from './cuts.ts';
import type { Quantity } from './quantity.ts';
import type { Solved } from './solver.ts';

/** A machine setting with the arithmetic that made it. */
export interface Setting {
  /** `fence`, `blade height`, `stop`, `tilt`, `depth`, `bit`, `speed`. */
  name: string;
  value: Quantity;
  /** `jig 18.2 + 21.5`. */
  how: string;
}

export interface Run {
  instance: string;
  mark: string;
  cut: string;
  end?: 'end1' | 'end2';
  /** What lies on the table and what meets the fence. */
  down: LocalFace;
  against: LocalFace;
  /** One box to tick for each pass: `face`, `turned`. */
  passes: string[];
}

/** A machine made ready in one state, and everything that is run in it. */
export interface SetUp {
  id: string;
  number: number;
  title: string;
  machine: string;
  /** Blade, cutter or drill and jig as the workshop names them. */
  tool: string;
  method: string;
  settings: Setting[];
  /** Which side of the line the kerf falls. */
  kerfSide?: string;
  wanted?: { label: string; value: Quantity; how: string };
  runs: Run[];
  operations: string[];
  testPiece?: { mark: string; length: number; width: number; thickness: number; material: string };
  /** How a measured error on the trial cut moves the fence: `half` when both cheeks shift. */
  correction?: { share: 'half' | 'whole'; tooBig: string; tooSmall: string };
  before: string[];
  after: string[];
  cautions: string[];
  /** Minutes to change to this from the one before. */
  changeOver: number;
  /** Minutes of running. */
  minutes: number;
  /** What the card draws, in fence coordinates (0 at the fence, away from it positive), mm. */
  drawing: CardDrawing;
}

export interface CardDrawing {
  view: 'end-on jig' | 'flat rip' | 'cross-cut' | 'drill' | 'router' | 'hand';
  stations: { at: number; label: string; strong: boolean }[];
  /** Section of the work seen by the operator. */
  work: { width: number; height: number; offset: number };
  blade: { at: number; kerf: number; height: number; tilt: number };
  jig?: number;
  keep?: { from: number; to: number; label: string };
}

export interface SetUpPlan extends Solved {
  setups: SetUp[];
  /** Change-over minutes when parts are made one after another, for comparison. */
  partByPart: number;
  /** Cuts no machine of the workshop can make, with reason and another way. */
  unmade: { instance: string; cut: string; reason: string; mend: string }[];
}
