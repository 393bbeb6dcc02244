import type { Grade, ToAvoid } from '../results/cutting.ts';
import type { Spell } from '../results/operations.ts';
import type { OpenSection } from '../results/piece.ts';

/**
 * The workshop as the maker has it: millimetres, minutes, minor units of money.
 * Read from a workshop file by `readWorkshop` (schema.ts); bare numbers there are mm.
 */
export interface Workshop {
  name: string;
  currency: string;
  machines: Machine[];
  blades: Blade[];
  cutters: Cutter[];
  drills: Drill[];
  jigs: Jig[];
  clamps: ClampSet[];
  rack: RackItem[];
  suppliers: Supplier[];
  calendar: Calendar;
  rates: Rates;
  /** Place of the neutral line in a bend, share of the thickness; the usual one where absent. */
  kFactor?: number;
  allowances: { timber: Allowance; sheet: Allowance; bar: Allowance; tube: Allowance };
  adhesives: Record<string, OwnAdhesive>;
  finishes: Record<string, OwnFinish>;
  /** The maker's own minutes by operation key; they win over the tables. */
  times: Record<string, Spell>;
  leastOffcut: { length: number; width: number };
  /** Climate of the shop, for moisture and waits. */
  climate: { temperature: number; humidity: number };
}

export type MachineKind =
  | 'table saw'
  | 'mitre saw'
  | 'band saw'
  | 'planer'
  | 'thicknesser'
  | 'router table'
  | 'hand router'
  | 'drill press'
  | 'hand drill'
  | 'slot mortiser'
  | 'chisel mortiser'
  | 'lathe'
  | 'disc sander'
  | 'belt sander'
  | 'metal saw'
  | 'polisher'
  | 'hand tools'
  | 'bench'
  | 'clamps';

export interface Machine {
  id: string;
  kind: MachineKind;
  name: string;
  /** Greatest blade height or plunge; of planer and thicknesser the deepest cut at one pass, mm. */
  maxDepth?: number;
  /** Furthest fence setting, mm. */
  fence?: number;
  maxTilt?: number;
  /** Shortest piece that may be run, mm. */
  shortest?: number;
  /** Widest work: knives, jaws or swing, mm. */
  widest?: number;
  /** Longest work: a lathe between its centres, mm. */
  longest?: number;
  /** Fastest the spindle turns, turns a minute: no tool marked slower is run on it. */
  speed?: number;
  /** Minutes per change; remembered defaults where the maker gave none (`measured: false`). */
  change: { tool: number; fence: number; height: number; tilt: number; jig: number; measured: boolean };
}

export interface Blade {
  id: string;
  machine: string;
  name: string;
  kerf: number;
  diameter: number;
  /** Width of a band, mm: it sets how tight a curve it turns. */
  width?: number;
  /** Marked on the blade, turns a minute at most. */
  maxSpeed?: number;
  use: 'rip' | 'cross' | 'combination' | 'groove' | 'curve' | 'metal';
}

export interface Cutter {
  id: string;
  name: string;
  kind: 'straight' | 'rebate' | 'chamfer' | 'round-over' | 'groove' | 'dovetail';
  diameter: number;
  depth: number;
  /** Of a dovetail cutter: slope of its sides from upright, degrees; `diameter` is its widest. */
  angle?: number;
  shank: number;
  bearing: boolean;
  maxSpeed?: number;
}

export interface Drill {
  id: string;
  name: string;
  kind: 'twist' | 'brad point' | 'forstner' | 'countersink' | 'mortise chisel';
  diameter: number;
  depth: number;
}

export interface Jig {
  id: string;
  name: string;
  kind: 'upright tenon jig' | 'cross-cut sled' | 'mitre sled' | 'taper sled' | 'dowel jig' | 'other';
  machine: string;
  /** Thickness of the jig between fence and work, mm. */
  offset: number;
}

export interface ClampSet {
  length: number;
  quantity: number;
}

export interface RackItem {
  id: string;
  kind: 'board' | 'planed length' | 'sheet' | 'bar' | 'tube' | 'offcut';
  material: string;
  label: string;
  length: number;
  width: number;
  thickness: number;
  round: boolean;
  wall?: number;
  section?: OpenSection;
  quantity: number;
  /** Calipers' word on thickness or diameter, where taken. */
  measuredThickness?: number;
  /** Sawn boards measured one by one: width at the far end, mm; `width` is that of the near end. */
  widthFar?: number;
  /** Defects and sapwood to keep out of. */
  avoid?: ToAvoid[];
  grade?: Grade;
  /** Name of a picture of it. */
  photo?: string;
  moisture?: number;
  /** What it stands in the books for, minor units each; used stock is not free. */
  value: number;
}

export interface SupplierItem {
  id: string;
  kind: 'planed length' | 'board' | 'sheet' | 'bar' | 'tube';
  material: string;
  label: string;
  length: number;
  width: number;
  thickness: number;
  round: boolean;
  wall?: number;
  section?: OpenSection;
  grade?: Grade;
  price: number;
}

export interface Supplier {
  id: string;
  name: string;
  delivery: number;
  /** Least order in goods, minor units. */
  minimum?: number;
  leadDays: number;
  items: SupplierItem[];
}

export interface Calendar {
  /** By weekday, 1 Monday to 7 Sunday: spans as minutes from midnight. */
  week: Record<number, { from: number; to: number }[]>;
  /** ISO dates without work. */
  daysOff: string[];
}

export interface Rates {
  /** Per hour, minor units. */
  hour: number;
  /** Shares, 0 to 1. */
  contingency: number;
  margin: number;
  tax: { registered: boolean; rate: number };
  /** Consumables (abrasives, glue, rags) as a share of material cost. */
  consumables: number;
}

export interface Allowance {
  length: number;
  width: number;
  thickness: number;
}

export interface OwnAdhesive {
  /** Key of the reference table it belongs to, if any. */
  like?: string;
  name: string;
  openMinutes?: number;
  clampMinutes?: number;
  cureMinutes?: number;
  pricePerKg?: number;
}

export interface OwnFinish {
  like?: string;
  name: string;
  recoatMinutes?: number;
  recoatWithinMinutes?: number;
  cureMinutes?: number;
  /** m2 a litre, one coat. */
  spread?: number;
  pricePerLitre?: number;
}
