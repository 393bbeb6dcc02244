import type { LocalFace } from './cuts.ts';
import type { Quantity } from './quantity.ts';
import type { Solved } from './solver.ts';

/** The part of the tool that a figure is measured to, seen from the fence or stop. */
export type ToolSide = 'near teeth' | 'far teeth' | 'near edge' | 'far edge' | 'centre';

/** A machine setting with the arithmetic that made it. */
export interface Setting {
  /**
   * `fence`, `stop`, `blade height`, `depth`, `height` (a cutter's centre over the table), `tilt`, `mitre`,
   * `bit`, `speed`, `passes`, `angle`, `offset`, `gauge`, `gauge 2`, `from`, `to`.
   */
  name: string;
  value: Quantity;
  /** `jig 18.2 + 21.5`. */
  how: string;
  /** Number of the rule that made it, e.g. `SET-3`. */
  rule?: string;
  /** What a fence or stop figure is measured to. */
  to?: ToolSide;
}

/** How the work is laid for one pass. Fence or stop figures are measured from `against`, depths from `entry`. */
export interface Lay {
  /** `face`, `turned`: the words over the box to tick. */
  label: string;
  down: LocalFace;
  /** Meets the fence, the jig or the stop from which `fence` or `stop` is measured. */
  against: LocalFace;
  /** The face the tool enters. */
  entry: LocalFace;
  /** The face from which stations along the cut are measured, where there are any. */
  end?: LocalFace;
  /** Of an angled end: the faces on which it stays long. */
  long?: LocalFace[];
  /** Of a leaning hole: the faces it runs towards, each with its slope in degrees from square. */
  lean?: { towards: LocalFace; angle: number }[];
}

export interface Run {
  instance: string;
  mark: string;
  cut: string;
  end?: 'end1' | 'end2';
  /** What lies on the table and what meets the fence, at the first pass. */
  down: LocalFace;
  against: LocalFace;
  /** One box to tick for each pass: `face`, `turned`. */
  passes: string[];
  lays?: Lay[];
  /** Stations along the cut from the lay's `end`: centres of holes, or none. */
  stations?: number[];
  /** Where a marked-out cut begins and ends along its run, from the lay's `end`; stops are settings instead. */
  along?: { from: number; to: number };
  /** The bores of one slot: what stands between them is sawn or pared out. */
  joined?: true;
}

/** What the tool takes away, in the card's own figures: enough to repeat the cut on paper. */
export interface Removal {
  /**
   * `slot` a rectangular way, `bore` a round hole, `cone` a countersink, `end` a sawn end, `wedge` a taper,
   * `edge` a chamfer or round-over, `size` all beyond the figure read from the lay's `against`, `datum` a face or
   * edge made true from which sizes are measured, `outline` a line marked or templated and worked through,
   * `nothing` where no wood is cut (clamps, sanding), `bevel` all beyond a leaning blade, `undercut` the way of a dovetail cutter, `turned` all outside a turned line,
   * `by eye` where the card sets nothing that could be repeated.
   */
  shape:
    | 'slot'
    | 'bore'
    | 'cone'
    | 'end'
    | 'wedge'
    | 'edge'
    | 'size'
    | 'datum'
    | 'outline'
    | 'bevel'
    | 'undercut'
    | 'turned'
    | 'nothing'
    | 'by eye';
  /** Kerf, cutter or drill, mm. */
  width: number;
  /** The fence (or stop) again, as moves from its setting: the first is 0. */
  moves: number[];
  /** For stopped cuts: the tool's edges along the cut, from the lay's `end`. */
  along?: { from: number; to: number };
  /** Included angle of a cone; profile of an edge. */
  angle?: number;
  profile?: 'chamfer' | 'round-over';
  /** Corners of a marked line, mm on from the gauge (away from `against`) and from the station (from `end`). */
  outline?: [number, number][];
  /** Turned line: stations from the lay's `end`, and how much less than the greatest diameter it is there. */
  turned?: { at: number; less: number }[];
}

export interface Correction {
  share: 'half' | 'whole';
  tooBig: string;
  tooSmall: string;
  /** The setting that is corrected; the first that is measured to the tool when absent. */
  setting?: string;
  /** Which way its figure goes when the trial came out too big; down (closer) when absent. */
  bigger?: 'up' | 'down';
}

/** One trial cut: what the setting read, what came out, and where the setting goes. mm. */
export interface Trial {
  id: string;
  setting: string;
  set: number;
  measured: number;
  wanted: number;
  /** Change of the setting, with its sign. */
  move: number;
  now: number;
  /** `10.7 measured, 0.2 under: fence away by 0.1, to 39.8`. */
  words: string;
  fits: boolean;
  /** Made when the card said another figure: kept, and not counted. */
  older: boolean;
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
  testPiece?: {
    mark: string;
    length: number;
    width: number;
    thickness: number;
    material: string;
    /** Trials it serves: each is sawn off its end before the next. */
    serves?: number;
  };
  /** How a measured error on the trial cut moves the fence: `half` when both cheeks shift. */
  correction?: Correction;
  /** Trial cuts as entered, in their order, each with what it asks of the setting. */
  trials?: Trial[];
  before: string[];
  after: string[];
  cautions: string[];
  /** Minutes to change to this from the one before on the same machine. */
  changeOver: number;
  /** Minutes of running. */
  minutes: number;
  /** What the card draws, in fence coordinates (0 at the fence, away from it positive), mm. */
  drawing: CardDrawing;
  /** Workshop id of the machine. */
  machineId?: string;
  removal?: Removal;
  /** Methods that were refused for this cut, with the reason, when a later one was taken. */
  refused?: { method: string; reason: string }[];
  /** How true the machine repeats a setting; remembered. */
  accuracy?: string;
  /** What each part of the change costs, minutes: `blade 4, fence 1`. */
  changeHow?: string;
  /** What stands on the machine once it is made ready: mm and degrees, tool and jig by their ids. */
  state?: { tool: string; jig?: string; fence?: number; height?: number; tilt: number; mitre?: number };
}

/** A rectangle of the card: `a` away from the fence or stop, `h` above the table (or along the work in plan). */
export interface CardRegion {
  what: 'work' | 'keep' | 'waste' | 'second waste' | 'fence' | 'jig' | 'table' | 'tool' | 'backing' | 'stop';
  a: { from: number; to: number };
  h: { from: number; to: number };
  label?: string;
}

/** A measure drawn on the card between two points (a, h). */
export interface CardMeasure {
  from: { a: number; h: number };
  to: { a: number; h: number };
  value: number;
}

export interface CardDrawing {
  view: 'end-on jig' | 'flat rip' | 'cross-cut' | 'drill' | 'router' | 'hand';
  stations: { at: number; label: string; strong: boolean }[];
  /** Section of the work seen by the operator. */
  work: { width: number; height: number; offset: number };
  blade: { at: number; kerf: number; height: number; tilt: number };
  jig?: number;
  keep?: { from: number; to: number; label: string };
  /** Where the operator stands: `along the feed, fence on the right`. */
  seen?: string;
  /** What stands at 0. */
  zero?: 'fence' | 'stop' | 'face';
  /** Does `h` run up from the table (section) or along the work (plan)? */
  plane?: 'section' | 'plan';
  regions?: CardRegion[];
  measures?: CardMeasure[];
  /** Reference mark: on the side of the work at `a`, at height `h`. */
  mark?: { what: 'face side' | 'face edge'; a: number; h: number };
  /** The line that is marked on the work, closed; in the card's own (a, h). */
  line?: { a: number; h: number }[];
  /** Work, on end; which timber grain runs up the card. */
  grain?: 'up' | 'across' | 'end-on';
}

export interface SetUpPlan extends Solved {
  setups: SetUp[];
  /** Change-over minutes when parts are made one after another, for comparison. */
  partByPart: number;
  /** Cuts no machine of the workshop can make, with reason and another way. */
  unmade: { instance: string; cut: string; reason: string; mend: string }[];
  /** What the workshop file leaves open about machines that these set-ups need. */
  asks?: MachineQuestion[];
}

/** A question about a machine, asked only because a set-up needs it. */
export interface MachineQuestion {
  machine: string;
  asks: string;
  /** The set-up or cut that needs it. */
  because: string;
}
