import type { After } from '../results/operations.ts';
import type { Rule, Source } from '../results/source.ts';

/** A rule of the order of work: the first thing before the second. */
export interface OrderRule extends Rule {
  /** A hard rule spoils the work when broken; a soft one is a risk that a maker may take. */
  hard: boolean;
  /** Where it does not hold. */
  unless?: string;
}

const practice: Source = { text: 'common practice', basis: 'common practice' };
const read = (text: string): Source => ({ text, basis: 'read' });

const TIPS = read('woodworkingnetwork.com, four tips for mortise and tenon');
const ASSEMBLY = read('furnituremaking.us, part III, assembly');
const PREFINISH = read('woodmagazine.com, finish before assembly');
const BENCH = read('woodworkingarchive, garden bench');
const PREFIT = read('orepass, pre-fit and sand before glue');
const INK = read('zeugmatic.com, finishes 3');
const OAK = read('lfpdc.lsu.edu, factsheet 2');
const RAGS = read('kreidezeit.de, danger of self-ignition');

type Row = [number: number, says: string, hard: 'H' | 'S', reason: string, source?: Source, unless?: string];

/**
 * Rules that the derivation of operations applies. 1 to 67 are numbered as in the trade's list; those that
 * ask for what a job file does not hold (veneer, horns, scribing on site) are not here. 68 and
 * up are the plain necessities that the list takes for granted.
 */
// biome-ignore format: a table, one rule a line
const ROWS: Row[] = [
  [1, 'Hardware in hand before its openings are cut', 'H', 'sizes differ by batch; a front is made again'],
  [2, 'Timber seasoned in the shop before final planing', 'H', 'it moves after planing and twists', practice, 'sheet'],
  [3, 'Cut oversize and rest before the final size', 'S', 'freed stress bows the part', practice, 'thin, stable stock'],
  [4, 'Crosscut to rough length before ripping', 'S', 'short boards are handy and bow less', BENCH, 'full-length rails'],
  [5, 'Flat face, square edge, thickness, width, length: in this order', 'H', 'each is the datum of the next', BENCH],
  [6, 'Test pieces ready before the set-up', 'H', 'the same section cannot be had later'],
  [7, 'Match grain, mark face and edge before the joints', 'H', 'the wrong face shows', practice, 'hidden parts'],
  [8, 'All parts of one setting before the setting is changed', 'H', '0.1 to 0.2 mm lies between two settings', practice, 'one-off'],
  [10, 'Mortise before tenon', 'H', 'the chisel fixes the width, the tenon is trimmed to it', TIPS, 'jigs that size both'],
  [11, 'Joints before curves, tapers and shaped legs', 'H', 'the datum faces are lost', TIPS, 'templates with tabs'],
  [12, 'Mark the joint, then taper, then finish the inside', 'S', 'a shoulder on a slope'],
  [13, 'Groove and rebate before the mitre', 'H', 'the groove runs out wrong', practice, 'stopped grooves'],
  [14, 'Holes before the curve or round-over', 'H', 'no flat to sit on', practice, 'jig'],
  [15, 'Dowel hole in the mortise before the tenon hole', 'H', 'the pull goes the wrong way', practice, 'glue only'],
  [16, 'Shelf-pin and runner holes before the glue-up', 'S', 'the drill does not reach'],
  [17, 'Stopped housings before an edge is moulded', 'S', 'the cutter breaks out'],
  [18, 'Tails before pins, the second marked from the first', 'H', 'sizes from a list never match', practice, 'jig'],
  [20, 'The opening is final before the drawer is sized', 'H', 'a drawer made to a list jams', practice, 'metal runners still measure'],
  [21, 'The carcase square before the back is sized', 'H', 'a gap', practice, 'planted back'],
  [22, 'The door frame dry before its panel is sized', 'H', 'the panel is short or tight', practice, 'sheet panel'],
  [23, 'A ring of test mitres before show wood', 'H', 'the error counts twice at every corner'],
  [24, 'The sheet measured before its groove', 'H', '18 mm board is 17.1 to 18.7'],
  [25, 'Sheets ripped to strips before they are crosscut', 'S', 'one pair of hands can hold a strip', practice, 'grain needs otherwise'],
  [30, 'Metal drilled, tapped and filed before it is polished or patinated', 'H', 'heat and clamp marks'],
  [32, 'Metal fitted dry, wood finished, metal fixed for good', 'H', 'finish in the pocket makes it tight', practice, 'inlay flushed with the wood'],
  [34, 'Metal dust gone before stain or finish', 'H', 'black specks on tannin', OAK, 'no tannin'],
  [36, 'Metal degreased and abraded within the hour before bonding', 'H', 'it lifts'],
  [37, 'Brass lacquered before assembly', 'S', 'runs and missed edges', practice, 'waxed brass'],
  [38, 'Inside faces sanded before the glue-up', 'H', 'cannot be reached after', PREFIT, 'flushed after'],
  [39, 'Each grit over the whole before the next', 'H', 'swirls under the finish'],
  [41, 'Joints flushed before the final grit', 'H', 'a scratch across the joint'],
  [42, 'Grain raised and cut back before water stain or ink', 'H', 'fuzz; ink is sanded through', INK, 'solvent dye'],
  [43, 'Edges broken last, before the finish', 'S', 'finish rubs through on a sharp edge; joints are spoiled when it is done sooner'],
  [44, 'Panels and inside parts finished before the frame is glued', 'S', 'a pale line when the panel shrinks', PREFINISH, 'shops that spray the whole'],
  [45, 'Joints masked before finishing parts', 'H', 'glue does not stick to finish', PREFINISH],
  [46, 'Wood glue cured before it is flushed, sanded or worked', 'H', 'the joint sinks', practice, 'the maker of a fast glue says so'],
  [47, 'A dry run with clamps, timed, before glue', 'H', 'directions conflict; panic', ASSEMBLY, 'single joint'],
  [48, 'The panel in the frame before the frame is closed', 'H', 'it is shut out', practice, 'planted panel'],
  [49, 'Sub-frames before the long rails', 'S', 'too many joints for the open time', ASSEMBLY, 'slow glue'],
  [50, 'Check diagonals and twist before the glue grabs', 'H', 'the wind stays'],
  [51, 'Squeeze-out off while it is gel, before stain', 'H', 'pale patches', PREFINISH, 'pre-finished parts'],
  [53, 'Hardware fitted dry, taken off, finish, put on after it is hard', 'H', 'the chisel slips on finish; screws fill', practice, 'surface hardware'],
  [54, 'An inset door hung before its handle and catch', 'H', 'the catch misses'],
  [56, "The client's sample signed before the first coat", 'H', 'it is done again'],
  [57, 'Stain, then sealer, then top coat', 'H', 'patches; nothing holds', practice, 'oil systems'],
  [58, 'Hidden face first, show face the same day', 'S', 'it cups; runs', practice, 'small parts'],
  [59, 'The next coat inside the recoat window, else abrade', 'H', 'it peels', practice, 'the tin says otherwise'],
  [60, 'Rags into water or a closed metal tin before you leave the shop', 'H', 'they heat by themselves and take fire', RAGS],
  [61, 'Top and base finished before the top is fixed', 'H', 'no finish beneath; a glued top splits'],
  [62, 'Cured before wrapping, stacking and felt', 'H', 'the wrapping prints through', practice, 'hard lacquer'],
  [64, 'The whole put together before it is parted for transport', 'S', 'a screw is missing on site'],
  [68, 'Stock in hand before it is cut', 'H', 'nothing to cut'],
  [69, 'The rod drawn before parts are marked from it', 'S', 'marks from a list carry its errors'],
  [70, 'Parts cut to size before joints are cut, joints before the dry fit', 'H', 'nothing to fit'],
  [71, 'A held part is sized from its measurement', 'H', 'the list does not know the opening'],
  [72, 'A cut on a glued assembly after its glue-up', 'H', 'there is no assembly yet'],
  [73, 'Finish steps in the order of the recipe', 'H', 'the sample was made so'],
  [74, 'Fitted dry before parts are finished', 'S', 'fitting marks the finish'],
  [75, 'Everything made before packing', 'H', 'nothing to pack'],
  [76, 'Cleaning, clamps off, rests and hardening beside the work they belong to', 'H', 'else they do nothing'],
  [77, 'Welds cold, or the frame back from the welder, before they are dressed', 'H', 'hot metal burns and still moves'],
];

export const ORDER_RULES: readonly OrderRule[] = ROWS.map(([number, says, hard, reason, source, unless]) => ({
  number: `ORD-${number}`,
  says,
  reason,
  source: source ?? practice,
  hard: hard === 'H',
  ...(unless === undefined ? {} : { unless }),
}));

/** Without these nothing can be made at all, or the recipe says it: no maker sets them aside. */
export const NECESSARY: ReadonlySet<string> = new Set(
  [68, 70, 71, 72, 73, 75, 76, 77].map(number => `ORD-${number}`),
);

/** Rules whose setting aside gives up a time or a care, while the order stays by another rule: 59 within, 73 after. */
const ORDER_STAYS: ReadonlyMap<string, number> = new Map([
  ['ORD-36', 76],
  ['ORD-51', 76],
  ['ORD-39', 73],
  ['ORD-42', 73],
  ['ORD-57', 73],
  ['ORD-59', 73],
]);

/** The rule by which a link stays when its own is set aside; a wait stays with its work. Undefined: it goes. */
export const staysBy = (number: string, isWait: boolean): number | undefined =>
  ORDER_STAYS.get(number) ?? (isWait ? 76 : undefined);

const byNumber = new Map(ORDER_RULES.map(rule => [rule.number, rule]));

/** @throws Error when no rule has that number: a slip in the program, not in a job. */
export function orderRule(number: number): OrderRule {
  const rule = byNumber.get(`ORD-${number}`);
  if (!rule) throw new Error(`no order rule ${number}`);
  return rule;
}

export function afterBy(operation: string, number: number): After {
  const { hard, unless: _unless, ...rule } = orderRule(number);
  return { operation, rule, hard };
}

/** The rule as a caution: `Check diagonals and twist before the glue grabs: the wind stays`. */
export function cautionBy(number: number): string {
  const { says, reason } = orderRule(number);
  return `${says}: ${reason}`;
}
