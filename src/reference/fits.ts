/** Fits of joints, kerfs of saws, and how true machines and stock are. What the maker measures wins. */
import { type Keyed, table } from './keys.ts';
import type { Band } from './sourced.ts';

/** `low` and `high` in the unit named: a clearance is hole less piece, a negative one is a tight fit. */
export interface Fit extends Keyed, Band {
  readonly what: string;
  readonly unit: string;
}

// biome-ignore format: a table, one fit a line
const JOINT_FITS: readonly Fit[] = [
  { key: 'open-full-width-mortise-and-tenon-pvac-type-joint', what: 'fit glued: open full-width mortise and tenon, PVAc type joint', low: 0.1, high: 0.1, unit: 'mm tight fit', note: 'strongest category; glue both faces; sign (interference or gap) not visible in the abstract', source: 'Elek et al. 2020 doi 10.1007/s00107-020-01509-w', basis: 'read' },
  { key: 'tenon-thickness', what: 'fit glued: tenon in mortise, hand push fit', low: 0.05, high: 0.15, unit: 'mm total gap', note: 'slides by hand, holds its own weight', source: 'remembered, unverified', basis: 'memory' },
  { key: 'tenon-width', what: 'fit glued: tenon width (edge to edge of mortise, no glue strength)', low: 0.2, high: 0.5, unit: 'mm total gap', note: '0.5-1 for rounded slot ends', source: 'remembered, unverified', basis: 'memory' },
  { key: 'mortise-deeper', what: 'fit glued: mortise deeper than tenon', low: 1.5, high: 3, unit: 'mm', source: 'woodmagazine.com', basis: 'read' },
  { key: 'tenon-too-tight', what: 'fit glued: tenon too tight: hammer fit', low: -0.1, high: 0, unit: 'mm', note: 'splits thin mortise cheeks and wipes glue off', source: 'remembered, unverified', basis: 'memory' },
  { key: 'dovetail', what: 'fit glued: dovetail socket and tail', low: 0, high: 0.1, unit: 'mm', note: 'compression of softwood allows -0.1', source: 'remembered, unverified', basis: 'memory' },
  { key: 'housing', what: 'fit glued: housing (dado) for shelf', low: 0.05, high: 0.15, unit: 'mm', note: 'measure the sheet, not the nominal', source: 'remembered, unverified', basis: 'memory' },
  { key: 'finger-joint', what: 'fit glued: finger (box) joint', low: 0.05, high: 0.1, unit: 'mm per finger', note: '0.1 too tight over 10 fingers = 1 mm', source: 'remembered, unverified', basis: 'memory' },
  { key: 'hole-over-dowel-several-dowels-in-one-joint', what: 'dowel: hole over dowel, several dowels in one joint (9.53 dowel)', low: 0.05, high: 0.18, unit: 'mm', note: '9.6 and 9.7 mm drill offered for 3/8 in; 9.7 sloppy dry, tighter once glue swells it', source: 'finewoodworking.com forum dowel-hole-tightness', basis: 'read' },
  { key: 'hole-equal-to-dowel', what: 'dowel: hole equal to dowel (9.53)', low: 0, high: 0, unit: 'mm', note: 'hand-push dry, very tight with glue; hard to close 5 at once', source: 'finewoodworking.com forum dowel-hole-tightness', basis: 'read' },
  { key: 'dowel-in-hole', what: 'dowel: recommended dowel in hole, PVAc', low: -0.1, high: 0.1, unit: 'mm (hole minus dowel)', note: 'fluted; glue in the hole', source: 'remembered, unverified', basis: 'memory' },
  { key: 'dowel-hole-deeper', what: 'dowel: hole deeper than dowel', low: 1, high: 2, unit: 'mm each side', note: 'air and glue space', source: 'remembered, unverified', basis: 'memory' },
  { key: 'dowel-position', what: 'dowel: position between mating holes', low: 0.1, high: 0.2, unit: 'mm', note: 'beyond this the joint will not close', source: 'remembered, unverified', basis: 'memory' },
  { key: 'panel-in-groove-side', what: 'movement gap: loose panel in groove, each side', low: 1.5, high: 3, unit: 'mm at mid season', note: 'by calculation of movement', source: 'remembered, unverified', basis: 'memory' },
  { key: 'inset-reveal', what: 'movement gap: inset door or drawer front reveal', low: 1, high: 2, unit: 'mm', note: 'dry season 2-2.5', source: 'remembered, unverified', basis: 'memory' },
  { key: 'drawer-side-total', what: 'drawer wooden: side clearance total', low: 0.3, high: 1, unit: 'mm', note: '0.3 dry, 1.0 wide movement', source: 'remembered, unverified', basis: 'memory' },
  { key: 'bar-in-hole', what: 'stainless bright bar in drilled hole: 8 bar +0/-0.036', low: 0, high: 0.1, unit: 'mm hole over bar', note: 'a visible pin fit of 0 to 0.1 holds with h9 bar', source: 'rightonblackburns (bar)', basis: 'computed' },
  { key: 'bar-hidden', what: 'hidden bar in drilled hole', low: 0.2, high: 0.5, unit: 'mm hole over bar', note: 'with an air vent', source: 'remembered, unverified', basis: 'memory' },
];

// biome-ignore format: a table, one saw a line
const KERFS: readonly Fit[] = [
  { key: 'kerf-table-saw-full-kerf', what: 'table saw full kerf', low: 3.18, high: 3.18, unit: 'mm', note: '1/8 in', source: 'saw.coach ?p=3245; sawhubs.com', basis: 'read' },
  { key: 'kerf-table-saw-thin-kerf', what: 'table saw thin kerf', low: 2.38, high: 2.38, unit: 'mm', note: '3/32 in', source: 'saw.coach ?p=3245; sawhubs.com', basis: 'read' },
  { key: 'kerf-table-saw-heavy-duty', what: 'table saw heavy duty', low: 3.6, high: 4, unit: 'mm', note: '0.142-0.156 in', source: 'mugong.pages.dev kerf table', basis: 'read' },
  { key: 'kerf-bandsaw-3-8-in-blade', what: 'bandsaw 3/8 in blade', low: 0.5, high: 0.9, unit: 'mm', note: '0.020-0.035 in', source: 'mugong.pages.dev kerf table', basis: 'read' },
  { key: 'kerf-circular-saw-hand-held', what: 'circular saw hand held', low: 3.2, high: 3.2, unit: 'mm', note: '1/8 in', source: 'mugong.pages.dev kerf table', basis: 'read' },
  { key: 'kerf-track-saw-thin', what: 'track saw, thin', low: 1.6, high: 1.6, unit: 'mm', note: '1/16 in', source: 'mugong.pages.dev kerf table', basis: 'read' },
  { key: 'kerf-japanese-pull-saw-blade-thickness', what: 'Japanese pull saw blade thickness', low: 0.5, high: 0.5, unit: 'mm', note: '0.02 in; about half of Western', source: 'thisoldhouse.com photos', basis: 'read' },
  { key: 'kerf-eu-table-saw-250-315-mm', what: 'EU table saw 250-315 mm', low: 2.8, high: 3.2, unit: 'mm', source: 'remembered, unverified', basis: 'memory' },
  { key: 'kerf-panel-saw-with-scoring', what: 'panel saw with scoring', low: 3.2, high: 4.4, unit: 'mm', source: 'remembered, unverified', basis: 'memory' },
  { key: 'kerf-track-saw-common', what: 'track saw common', low: 1.6, high: 2.2, unit: 'mm', source: 'remembered, unverified', basis: 'memory' },
  { key: 'kerf-bandsaw-resaw-carbide', what: 'bandsaw resaw carbide', low: 0.9, high: 1.4, unit: 'mm', source: 'remembered, unverified', basis: 'memory' },
  { key: 'kerf-jigsaw', what: 'jigsaw', low: 1, high: 1.5, unit: 'mm', source: 'remembered, unverified', basis: 'memory' },
  { key: 'kerf-dozuki', what: 'dozuki (back saw)', low: 0.3, high: 0.5, unit: 'mm', source: 'remembered, unverified', basis: 'memory' },
  { key: 'kerf-western-tenon-saw', what: 'Western tenon saw', low: 0.8, high: 1.1, unit: 'mm', source: 'remembered, unverified', basis: 'memory' },
  { key: 'kerf-coping-or-fret-saw', what: 'coping or fret saw', low: 0.3, high: 0.6, unit: 'mm', source: 'remembered, unverified', basis: 'memory' },
  { key: 'kerf-grooving-set', what: 'grooving set', low: 6, high: 20, unit: 'mm', source: 'remembered, unverified', basis: 'memory' },
];

// biome-ignore format: a table, one figure a line
const ACCURACIES: readonly Fit[] = [
  { key: 'cut-rough', what: 'cut tolerance: rough', low: -1.6, high: 1.6, unit: 'mm', note: '1/16, 1/32, 1/64, 0.005 in; weak source', source: 'mugong.pages.dev tolerance levels (weak)', basis: 'read' },
  { key: 'cut-general-cabinet', what: 'cut tolerance: general cabinet', low: -0.8, high: 0.8, unit: 'mm', note: '1/16, 1/32, 1/64, 0.005 in; weak source', source: 'mugong.pages.dev tolerance levels (weak)', basis: 'read' },
  { key: 'cut-fine-furniture', what: 'cut tolerance: fine furniture', low: -0.4, high: 0.4, unit: 'mm', note: '1/16, 1/32, 1/64, 0.005 in; weak source', source: 'mugong.pages.dev tolerance levels (weak)', basis: 'read' },
  { key: 'cut-instrument', what: 'cut tolerance: instrument', low: -0.13, high: 0.13, unit: 'mm', note: '1/16, 1/32, 1/64, 0.005 in; weak source', source: 'mugong.pages.dev tolerance levels (weak)', basis: 'read' },
  { key: 'thickness-birch-plywood-18-sanded', what: 'thickness: birch plywood 18 sanded', low: -0.9, high: 0.7, unit: 'mm', note: 'so 17.1-18.7: groove to the sheet in hand', source: 'plyterra.com', basis: 'read' },
  { key: 'thickness-mdf', what: 'thickness: MDF', low: -0.2, high: 0.2, unit: 'mm', source: 'scribd 675071407', basis: 'read' },
  { key: 'thickness-melamine-faced-chipboard', what: 'thickness: melamine-faced chipboard', low: -0.3, high: 0.5, unit: 'mm', source: 'etcsupply1.com', basis: 'read' },
  { key: 'thickness-bed-slats-production-planed', what: 'thickness: bed slats, production planed', low: 0, high: 0.5, unit: 'mm', note: 'length +-1, width +-0.5', source: 'mfrbee.com bed slat', basis: 'read' },
  { key: 'thickness-workshop-thicknesser-board-to-board', what: 'thickness: workshop thicknesser, board to board', low: -0.1, high: 0.1, unit: 'mm', note: 'same setting, same day', source: 'remembered, unverified', basis: 'memory' },
  { key: 'thickness-merchant-par', what: 'thickness: merchant PAR', low: -0.5, high: 0.5, unit: 'mm', source: 'remembered, unverified', basis: 'memory' },
  { key: 'thickness-hand-planed', what: 'thickness: hand planed', low: -0.1, high: 0.1, unit: 'mm', source: 'remembered, unverified', basis: 'memory' },
  { key: 'thickness-panel-swelling-in-thickness-damp-store', what: 'thickness: panel swelling in thickness, damp store', low: 0, high: 0.4, unit: 'mm on 18', source: 'remembered, unverified', basis: 'memory' },
  { key: 'diameter-of-a-new-straight-cutter', what: 'cutter: diameter of a new straight cutter', low: -0.1, high: 0.05, unit: 'mm', note: 'resharpened 0.1-0.5 under: cut a test slot', source: 'remembered, unverified', basis: 'memory' },
  { key: 'accuracy-mitre-saw-detents-good', what: 'machine accuracy: mitre saw detents, good', low: -0.1, high: 0.1, unit: 'deg', source: 'remembered, unverified', basis: 'memory' },
  { key: 'accuracy-mitre-saw-site-grade', what: 'machine accuracy: mitre saw, site grade', low: -0.3, high: 0.3, unit: 'deg', source: 'remembered, unverified', basis: 'memory' },
  { key: 'accuracy-mitre-sled-checked-by-five-cuts', what: 'machine accuracy: mitre sled, checked by five cuts', low: -0.02, high: 0.02, unit: 'deg', source: 'remembered, unverified', basis: 'memory' },
  { key: 'accuracy-saw-tilt-by-scale', what: 'machine accuracy: saw tilt by scale', low: -0.5, high: 0.5, unit: 'deg', source: 'remembered, unverified', basis: 'memory' },
  { key: 'accuracy-saw-tilt-by-digital-gauge', what: 'machine accuracy: saw tilt by digital gauge', low: -0.1, high: 0.1, unit: 'deg', source: 'remembered, unverified', basis: 'memory' },
  { key: 'accuracy-table-saw-blade-to-slot', what: 'machine accuracy: table saw blade to slot', low: 0, high: 0.1, unit: 'mm over blade', source: 'remembered, unverified', basis: 'memory' },
  { key: 'accuracy-fence-to-slot-toe-out', what: 'machine accuracy: fence to slot, toe-out', low: 0, high: 0.1, unit: 'mm over length', source: 'remembered, unverified', basis: 'memory' },
  { key: 'accuracy-fence-scale-repeat', what: 'machine accuracy: fence scale repeat', low: -0.2, high: 0.2, unit: 'mm', source: 'remembered, unverified', basis: 'memory' },
  { key: 'accuracy-stop-block-repeat', what: 'machine accuracy: stop block repeat', low: -0.1, high: 0.1, unit: 'mm', source: 'remembered, unverified', basis: 'memory' },
  { key: 'accuracy-planer-fence-square', what: 'machine accuracy: planer fence square', low: -0.05, high: 0.05, unit: 'mm per 50', source: 'remembered, unverified', basis: 'memory' },
  { key: 'accuracy-drill-press-table-square', what: 'machine accuracy: drill press table square', low: -0.1, high: 0.1, unit: 'mm per 100', source: 'remembered, unverified', basis: 'memory' },
];

export const FITS = table<Fit>([...JOINT_FITS, ...KERFS, ...ACCURACIES]);

/** The fit, kerf or accuracy of that key: `tenon-thickness`, `kerf-table-saw-full-kerf`, `accuracy-stop-block-repeat`. */
export const fitOf = (key: string): Fit | undefined => FITS.find(key);
