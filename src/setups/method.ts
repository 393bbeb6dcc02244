import type { Cut, CutKind, EndName } from '../results/cuts.ts';
import type { Instance } from '../results/piece.ts';
import type { CardDrawing, Lay, Removal, Setting, SetUp } from '../results/setups.ts';
import type { Jig, Machine, Workshop } from '../workshop/workshop.ts';

/** One cut of one instance, with everything its settings may depend on. */
export interface Task<C extends Cut = Cut> {
  instance: Instance;
  cut: C;
  /** `C1`, `A L`: how the part is called on the card. */
  mark: string;
  mate?: { instance: Instance; cut?: Cut };
  workshop: Workshop;
}

/** What has to be changed to come from one set-up to the next. Undefined: this set-up does not care. */
export interface MachineState {
  tool: string;
  jig?: string;
  /** Fence or stop, mm. */
  fence?: number;
  /** Blade height, cutter height or depth stop, mm. */
  height?: number;
  /** Degrees; 0 is square. */
  tilt: number;
  /** Turntable or mitre fence, degrees from square. */
  mitre?: number;
}

/** What one cut asks of one set-up. Drafts with the same machine, tool and settings become one set-up. */
export interface Draft {
  /** `Tenon cheeks`. */
  what: string;
  /** The whole title, where it does not name parts. */
  title?: string;
  method: string;
  machine: Machine;
  tool: string;
  jig?: Jig;
  state: MachineState;
  settings: Setting[];
  lays: Lay[];
  removal: Removal;
  /** Drawn only for the first of a set-up. */
  drawing: () => CardDrawing;
  end?: EndName;
  stations?: number[];
  /** Marks along the run, where no stop is set. */
  along?: { from: number; to: number };
  /** Bores of one slot. */
  joined?: true;
  kerfSide?: string;
  wanted?: SetUp['wanted'];
  correction?: SetUp['correction'];
  /** Worth a trial cut on a test piece. */
  trial: boolean;
  before: string[];
  after: string[];
  cautions: string[];
  /** Passes of the tool for one piece, depth steps counted. */
  passes: number;
}

export type Attempt = { ok: true; drafts: Draft[] } | { ok: false; reason: string };

/** A way of making some kinds of cut. It refuses with a reason what it cannot do. */
export interface Method {
  name: string;
  makes: readonly CutKind[];
  attempt(task: Task): Attempt;
}

export const refuse = (reason: string): Attempt => ({ ok: false, reason });
export const made = (...drafts: Draft[]): Attempt => ({ ok: true, drafts });
