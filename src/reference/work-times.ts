/**
 * How long the work takes a practised hand, low and high. Nearly all is remembered: a start until the workshop's
 * own log replaces it.
 */
import { type Keyed, table } from './keys.ts';
import type { Band } from './sourced.ts';
import { REPORTED_TIMES } from './work-times-reported.ts';

/** `low` and `high` in the unit that `per` says: minutes for one of what it names, unless it reads %, x time. */
export interface WorkTime extends Keyed, Band {
  readonly what: string;
  readonly per: string;
}

const RECALLED = {
  source: "remembered workshop practice; the workshop's own log replaces it",
  basis: 'memory',
} as const;

// biome-ignore format: a table, one operation a line
const PRIORS: readonly WorkTime[] = [
  { key: 'change-saw-blade', what: 'blade change, table saw (10 or 12 in)', low: 3, high: 6, per: 'change', note: 'unplug, arbor, insert, riving knife check', ...RECALLED },
  { key: 'change-grooving-set', what: 'grooving (dado) set fitted and shimmed', low: 8, high: 15, per: 'change', note: 'plus 2 test cuts', ...RECALLED },
  { key: 'set-saw-fence', what: 'saw fence to a new width', low: 0.5, high: 1.5, per: 'setting', note: 'scale; 2-4 with test cut and calliper', ...RECALLED },
  { key: 'set-blade-height', what: 'saw blade height', low: 0.3, high: 1, per: 'setting', ...RECALLED },
  { key: 'set-saw-tilt', what: 'saw tilt to an angle and back to 90', low: 3, high: 8, per: 'setting', note: 'check with square on return', ...RECALLED },
  { key: 'set-mitre-gauge', what: 'mitre gauge or crosscut fence to an angle', low: 2, high: 5, per: 'setting', note: 'test piece; 5-10 for a five-part ring test', ...RECALLED },
  { key: 'set-crosscut-stop', what: 'crosscut stop set', low: 0.5, high: 2, per: 'setting', ...RECALLED },
  { key: 'change-router-cutter', what: 'router bit change, hand router', low: 1.5, high: 3, per: 'change', ...RECALLED },
  { key: 'set-router-table', what: 'router table bit, height and fence', low: 5, high: 12, per: 'setting', note: 'with test pieces', ...RECALLED },
  { key: 'change-spindle-block', what: 'spindle moulder block change and set-up', low: 15, high: 40, per: 'change', note: 'guards and feed included', ...RECALLED },
  { key: 'set-thicknesser-height', what: 'thicknesser height change', low: 0.3, high: 1, per: 'setting', note: 'creep in 1-2 mm passes', ...RECALLED },
  { key: 'change-planer-knives', what: 'planer knives change', low: 20, high: 60, per: 'change', note: 'insert heads: 15-30', ...RECALLED },
  { key: 'set-planer-fence', what: 'planer fence to an angle', low: 2, high: 5, per: 'setting', ...RECALLED },
  { key: 'set-chisel-mortiser', what: 'hollow chisel mortiser: chisel and bit fitted, squared, depth and fence', low: 8, high: 15, per: 'change', note: 'next same-size set-up 2-4', ...RECALLED },
  { key: 'change-bandsaw-blade', what: 'bandsaw blade change, guides and tension', low: 5, high: 12, per: 'change', note: 'workshop bandsaw', ...RECALLED },
  { key: 'set-drill', what: 'drill press bit and depth stop', low: 1, high: 3, per: 'change', ...RECALLED },
  { key: 'set-drill-table', what: 'drill press table, fence and stop for a row', low: 3, high: 8, per: 'setting', ...RECALLED },
  { key: 'set-tenon-jig', what: 'tenon jig or sled on saw: two-face set', low: 8, high: 15, per: 'setting', note: 'with fit test against the mortise', ...RECALLED },
  { key: 'set-dovetail-jig', what: 'dovetail jig set-up, router', low: 20, high: 45, per: 'setting', note: 'once per thickness', ...RECALLED },
  { key: 'change-sanding-disc', what: 'sanding disc change', low: 0.3, high: 0.5, per: 'change', note: '60-100 per change-set of 3 grits negligible', ...RECALLED },
  { key: 'spray-gun-session', what: 'spray gun load, tune and clean', low: 20, high: 35, per: 'session', note: 'water-based; 25-45 solvent', ...RECALLED },
  { key: 'prepare-glue-up', what: 'glue-up preparation: cauls, clamps, dry run', low: 15, high: 40, per: 'glue-up', note: 'frame 15, carcase 30-40', ...RECALLED },
  { key: 'shoot-edge-joint', what: 'edge joint shot by machine', low: 3, high: 6, per: 'm of joint', note: 'rip, plane, match', ...RECALLED },
  { key: 'glue-panel', what: 'panel glue-up of 4 boards', low: 15, high: 25, per: 'panel', note: 'plus 30-60 clamp wait', ...RECALLED },
  { key: 'rip', what: 'rip to width', low: 0.5, high: 1, per: 'm of cut', note: 'hardwood 25-40 mm', ...RECALLED },
  { key: 'crosscut', what: 'crosscut, stop', low: 0.3, high: 0.7, per: 'cut', ...RECALLED },
  { key: 'plane-face-edge', what: 'plane face and edge of a rough board', low: 2, high: 5, per: 'm of board', note: '150-200 mm wide', ...RECALLED },
  { key: 'thickness', what: 'thickness to size', low: 1, high: 3, per: 'm of board', note: '3-5 passes', ...RECALLED },
  { key: 'mortise-machine', what: 'mortise, hollow chisel, 10 x 50 x 40', low: 2, high: 4, per: 'mortise', note: 'after set-up', ...RECALLED },
  { key: 'mortise-hand', what: 'mortise by hand, 10 x 50 x 35', low: 15, high: 30, per: 'mortise', note: 'oak', ...RECALLED },
  { key: 'tenon-machine', what: 'tenon by machine, four cheeks and shoulders', low: 3, high: 6, per: 'tenon', note: 'after set-up; +2-4 to fit', ...RECALLED },
  { key: 'tenon-hand', what: 'tenon by hand', low: 12, high: 25, per: 'tenon', ...RECALLED },
  { key: 'bridle-machine', what: 'bridle or corner halving by machine', low: 5, high: 10, per: 'joint', note: 'incl. fitting', ...RECALLED },
  { key: 'dowel-joint', what: 'dowel joint, jig, 2 dowels', low: 4, high: 8, per: 'joint', ...RECALLED },
  { key: 'biscuit-joint', what: 'biscuit joint', low: 1, high: 2, per: 'joint', note: 'pair of slots', ...RECALLED },
  { key: 'loose-tenon', what: 'loose tenon by slot machine', low: 2, high: 4, per: 'joint', ...RECALLED },
  { key: 'pocket-screw', what: 'pocket screw joint', low: 1.5, high: 3, per: 'joint', ...RECALLED },
  { key: 'housing-router', what: 'housing (dado) by router and guide', low: 3, high: 8, per: 'm', ...RECALLED },
  { key: 'dovetail-hand', what: 'through dovetail by hand', low: 40, high: 75, per: 'corner', note: '100-150 mm wide, hardwood, furniture quality', ...RECALLED },
  { key: 'dovetail-router', what: 'dovetail by router jig', low: 6, high: 12, per: 'corner', note: 'after set-up', ...RECALLED },
  { key: 'mitre-frame-splined', what: 'mitre with spline, four corners', low: 20, high: 40, per: 'frame', ...RECALLED },
  { key: 'butt-hinges-pair', what: 'pair of butt hinges let in by hand', low: 25, high: 45, per: 'pair', note: 'router 12-20', ...RECALLED },
  { key: 'cup-hinges-pair', what: 'concealed cup hinge, pair with plates', low: 6, high: 12, per: 'door', ...RECALLED },
  { key: 'fit-inset-door', what: 'fit and adjust an inset door', low: 30, high: 60, per: 'door', ...RECALLED },
  { key: 'fit-drawer-wooden', what: 'fit a drawer on runners of wood', low: 30, high: 75, per: 'drawer', note: 'traditional', ...RECALLED },
  { key: 'fit-metal-runners', what: 'metal runners, pair', low: 12, high: 25, per: 'drawer', note: 'plus front 10-15', ...RECALLED },
  { key: 'fit-lock', what: 'drawer lock or cut escutcheon', low: 45, high: 90, per: 'piece', ...RECALLED },
  { key: 'fit-handle', what: 'fit handle or knob', low: 4, high: 10, per: 'piece', note: 'with template', ...RECALLED },
  { key: 'sand-flat', what: 'sand flat, random orbit, each grit', low: 4, high: 8, per: 'm2', note: 'P120-P180; P80 first grit 8-12', ...RECALLED },
  { key: 'sand-hand', what: 'sand mouldings, legs and edges by hand, each grit', low: 15, high: 30, per: 'm2', ...RECALLED },
  { key: 'raise-grain', what: 'raise grain and denib', low: 4, high: 6, per: 'm2', ...RECALLED },
  { key: 'coat-oil', what: 'oil: apply and wipe off', low: 6, high: 12, per: 'm2 per coat', note: 'two visits 15-20 min apart', ...RECALLED },
  { key: 'coat-hardwax-oil', what: 'hardwax oil by cloth or pad', low: 5, high: 10, per: 'm2 per coat', ...RECALLED },
  { key: 'coat-varnish', what: 'varnish by brush', low: 8, high: 14, per: 'm2 per coat', ...RECALLED },
  { key: 'coat-spray', what: 'lacquer by spray gun', low: 2, high: 4, per: 'm2 per coat', note: 'plus gun session', ...RECALLED },
  { key: 'coat-shellac', what: 'shellac, brushed', low: 6, high: 10, per: 'm2 per coat', ...RECALLED },
  { key: 'french-polish', what: 'French polish, full grain', low: 180, high: 360, per: 'm2', note: 'many sessions', ...RECALLED },
  { key: 'coat-wax', what: 'wax and buff', low: 10, high: 20, per: 'm2', ...RECALLED },
  { key: 'coat-stain', what: 'stain, apply and wipe', low: 5, high: 10, per: 'm2', ...RECALLED },
  { key: 'denib', what: 'denib between coats', low: 2, high: 4, per: 'm2', ...RECALLED },
  { key: 'veneer-face', what: 'veneer: joint, tape and press one face', low: 45, high: 90, per: 'm2', note: 'caul or vacuum, first m2', ...RECALLED },
  { key: 'lip-edge', what: 'lip a panel edge, glue and flush', low: 8, high: 15, per: 'm', ...RECALLED },
  { key: 'bond-metal-sheet', what: 'bond brass or copper sheet to a panel', low: 60, high: 120, per: 'm2', note: 'abrade, degrease, bond, trim', ...RECALLED },
  { key: 'finish-bar-end', what: 'saw, file and polish brass bar end', low: 10, high: 20, per: 'piece', ...RECALLED },
  { key: 'draw-file-bar', what: 'draw-file and finish brass to 600 grit', low: 15, high: 30, per: 'm of flat 20 mm', ...RECALLED },
  { key: 'pack', what: 'pack and wrap', low: 15, high: 40, per: 'piece', note: 'table or cabinet', ...RECALLED },
  { key: 'load', what: 'load and unload', low: 20, high: 40, per: 'trip', note: 'two people', ...RECALLED },
  { key: 'rod-drawing', what: 'mark out and rod drawing', low: 30, high: 90, per: 'piece', note: 'first of its kind', ...RECALLED },
  { key: 'mark-out-part', what: 'mark face and edge, mark out one part', low: 1, high: 3, per: 'part', ...RECALLED },
  { key: 'mark-out-joint', what: 'mark out one joint with knife and gauge', low: 2, high: 5, per: 'joint', ...RECALLED },
  { key: 'test-piece', what: 'trial cut on a test piece and correction', low: 2, high: 6, per: 'test', ...RECALLED },
  { key: 'break-down-board', what: 'crosscut and rip a board to rough blanks', low: 2, high: 5, per: 'blank', ...RECALLED },
  { key: 'cut-sheet-part', what: 'cut one part from a sheet, sheet handling included', low: 3, high: 6, per: 'part', ...RECALLED },
  { key: 'groove-machine', what: 'groove or rebate by machine', low: 0.5, high: 1.5, per: 'm', note: 'after set-up', ...RECALLED },
  { key: 'mitre-cut', what: 'mitre on the sled, one end', low: 0.5, high: 1.5, per: 'cut', note: 'after set-up', ...RECALLED },
  { key: 'taper-cut', what: 'taper one face on the sled', low: 1, high: 3, per: 'face', note: 'after set-up; planing the saw marks 1-2 more', ...RECALLED },
  { key: 'curve-cut', what: 'saw to a curved line and clean it up', low: 4, high: 10, per: 'm', note: 'band saw, then spokeshave or template and cutter', ...RECALLED },
  { key: 'bend-bar', what: 'bend flat bar over a former in the vice, checked', low: 3, high: 8, per: 'bend', ...RECALLED },
  { key: 'turning', what: 'turn between centres, sanded', low: 30, high: 75, per: 'm', note: 'spindle of some beads and coves', ...RECALLED },
  { key: 'edge-mould', what: 'chamfer or round over an edge by router', low: 0.5, high: 1.5, per: 'm', note: 'after set-up', ...RECALLED },
  { key: 'break-edges', what: 'break sharp edges by hand', low: 0.5, high: 1, per: 'm', ...RECALLED },
  { key: 'drill-hole', what: 'drill one hole to a stop', low: 0.3, high: 1, per: 'hole', note: 'after set-up', ...RECALLED },
  { key: 'screw-joint', what: 'clearance, pilot, countersink and drive one screw', low: 1.5, high: 3, per: 'screw', ...RECALLED },
  { key: 'saw-bar', what: 'saw a metal bar to length and deburr', low: 3, high: 8, per: 'cut', ...RECALLED },
  { key: 'saw-metal-sheet', what: 'cut thin metal sheet to size and deburr', low: 5, high: 15, per: 'piece', ...RECALLED },
  { key: 'fit-joint', what: 'fit one tenon or bridle to its mate by plane', low: 2, high: 6, per: 'joint', ...RECALLED },
  { key: 'dry-fit', what: 'put a sub-assembly together dry, check square and wind', low: 10, high: 25, per: 'assembly', ...RECALLED },
  { key: 'glue-up', what: 'spread, close, clamp and check a sub-assembly', low: 10, high: 30, per: 'assembly', note: 'open time sets the upper end', ...RECALLED },
  { key: 'clean-up', what: 'take off clamps and squeeze-out', low: 5, high: 15, per: 'assembly', ...RECALLED },
  { key: 'flush-joints', what: 'flush joints by plane and scraper', low: 1, high: 3, per: 'joint', ...RECALLED },
  { key: 'flush-panel', what: 'plane or sand a glued panel flat, both faces', low: 15, high: 30, per: 'm2', ...RECALLED },
  { key: 'coat-ink', what: 'ink by brush or pad', low: 5, high: 10, per: 'm2 per coat', ...RECALLED },
  { key: 'coat-soap', what: 'soap, wash on and wipe', low: 4, high: 8, per: 'm2 per coat', ...RECALLED },
  { key: 'coat-metal', what: 'degrease and lacquer metal', low: 10, high: 25, per: 'm2 per coat', ...RECALLED },
  { key: 'seal-end-grain', what: 'seal end grain with epoxy', low: 0.5, high: 1.5, per: 'end', ...RECALLED },
  { key: 'fit-top', what: 'fix a top with buttons or slotted screws', low: 15, high: 40, per: 'top', ...RECALLED },
  { key: 'finish-sample', what: 'make one finish sample for the client', low: 20, high: 45, per: 'sample', note: 'waits apart', ...RECALLED },
];

export const WORK_TIMES = table<WorkTime>([...PRIORS, ...REPORTED_TIMES]);

/** The minutes of that operation. */
export const workTime = (key: string): WorkTime | undefined => WORK_TIMES.find(key);
