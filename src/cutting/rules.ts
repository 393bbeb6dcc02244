/** What a layout takes for granted about saws, factory edges and offcuts. Each figure says whose word it is. */
import type { StockUse } from '../results/cutting.ts';
import type { Rule } from '../results/source.ts';

export const CUTTING_RULES: readonly Rule[] = [
  {
    number: 'CUT-1',
    says: 'The kerf is that of the workshop’s own blade: the widest of those that meet the material. Without one, 3.2 mm for wood and 1.5 mm for metal.',
    reason: 'A kerf forgotten or guessed too thin makes the last part short.',
    source: {
      text: 'full-kerf table saw blade 3.18 mm: saw.coach, sawhubs.com; metal cutting band from memory',
      basis: 'read',
    },
  },
  {
    number: 'CUT-2',
    says: 'Off each factory end and edge comes: sheet 5 mm all round, sawn board 25 mm an end and 5 mm an edge, planed length 10 mm an end, bar and tube 3 mm an end, an offcut nothing.',
    reason: 'Factory edges are bruised and not square; ends of timber are checked and painted.',
    source: { text: 'common practice; sheet edges 5 to 10 mm', basis: 'memory' },
  },
  {
    number: 'CUT-3',
    says: 'Stock serves a timber blank when the blank’s section lies within it, either way round, at the thickness measured on the rack where it is known.',
    reason: 'Planing only takes away.',
    source: { text: 'common practice', basis: 'common practice' },
  },
  {
    number: 'CUT-4',
    says: 'Timber more than half as thick again as the blank plus 6 mm is left alone while thinner stock serves.',
    reason: 'Beyond that the saving is planed into shavings; such stock is worth re-sawing.',
    source: { text: 'common practice', basis: 'memory' },
  },
  {
    number: 'CUT-5',
    says: 'Sheets, bars and tubes match in section: within 3 % or 0.05 mm of the nominal figure, or of the one measured.',
    reason: 'They are not planed to size.',
    source: { text: 'common practice', basis: 'memory' },
  },
  {
    number: 'CUT-6',
    says: 'Timber up to 6 mm wider than the blank is not ripped: the rest is planed off.',
    reason: 'A strip thinner than two kerfs does not come off the saw safely.',
    source: { text: 'common practice: 5 to 6 mm planing allowance', basis: 'memory' },
  },
  {
    number: 'CUT-7',
    says: 'Timber is cross-cut to rough length first and then ripped; sheets are broken down by cuts from edge to edge.',
    reason: 'Short boards bow less and are handled by one person; a saw cannot stop in mid-sheet.',
    source: { text: 'order of work 4 and 25', basis: 'common practice' },
  },
  {
    number: 'CUT-8',
    says: 'What is left goes back to the rack when it reaches the workshop’s least offcut: along the grain in timber, either way in a sheet, by length alone in lengths used at full width, bars and tubes.',
    reason: 'Offcuts below a useful size cost more to keep than they save.',
    source: { text: 'the workshop’s own figure', basis: 'workshop' },
  },
  {
    number: 'CUT-9',
    says: 'Rack stock is used when the whole costs no more so, at the value it stands for in the books.',
    reason: 'Used stock is not free, and stock that ties up the rack is not worth more than new.',
    source: { text: 'the workshop’s own figure', basis: 'workshop' },
  },
  {
    number: 'CUT-10',
    says: 'A test piece is the section of its part’s blank, so that both go through the thicknesser in one pass.',
    reason: 'A trial cut on another section says nothing about the fit.',
    source: { text: 'order of work 6', basis: 'common practice' },
  },
  {
    number: 'CUT-11',
    says: 'On a board measured one by one no blank lies on a defect, on sapwood marked to be left out, or over its slanting edge; the straighter edge is the one measured and ripped from.',
    reason:
      'A knot in a rail or sapwood in a show face is found when it is too late to choose another board.',
    source: { text: 'common practice', basis: 'common practice' },
  },
  {
    number: 'CUT-12',
    says: 'Timber of a grade serves blanks of that grade and below: clear, then sound knots, then rough for hidden work; timber without a grade serves all.',
    reason: 'The best faces go where they are seen.',
    source: {
      text: 'common practice; the grades of timber standards are by species',
      basis: 'common practice',
    },
  },
  {
    number: 'CUT-13',
    says: 'Blanks that are to match in colour come from one board, when one holds them all.',
    reason: 'Two boards of one timber rarely finish alike.',
    source: { text: 'common practice', basis: 'common practice' },
  },
  {
    number: 'CUT-14',
    says: 'What is bought costs its price, one carriage for each supplier, and what is missing to a least order; a supplier is left out when the whole then costs less.',
    reason: 'A second carriage eats the saving on a sheet.',
    source: { text: 'the workshop’s own figures', basis: 'workshop' },
  },
  {
    number: 'CUT-15',
    says: 'A piece under 300 mm long is not ripped along the fence by hand: it goes in a sled, or to the band saw.',
    reason: 'The last 300 mm of a cut are fed with a push stick; a shorter piece leaves nothing to hold.',
    source: { text: 'HSE, circular saw benches: push stick for the last 300 mm', basis: 'read' },
  },
  {
    number: 'CUT-16',
    says: 'Sheet parts whose grain is to run on are cut from one blank in their order, end to end along the grain or side by side across it, a kerf apart.',
    reason: 'Figure that breaks at a joint is seen at once on a row of drawers or a pair of doors.',
    source: { text: 'common practice', basis: 'common practice' },
  },
];

export const DEFAULT_KERF = { wood: 3.2, metal: 1.5 } as const;

/** Millimetres off each factory end and edge (CUT-2). */
export const FACTORY_TRIM: Record<StockUse['kind'], { end: number; edge: number }> = {
  sheet: { end: 5, edge: 5 },
  board: { end: 25, edge: 5 },
  'planed length': { end: 10, edge: 0 },
  bar: { end: 3, edge: 0 },
  tube: { end: 3, edge: 0 },
  offcut: { end: 0, edge: 0 },
};

/** Greatest sensible stock thickness for a timber blank, mm (CUT-4). */
export const sensibleThickness = (blank: number): number => 1.5 * blank + 6;

/** Do two section figures of stock that is not planed agree (CUT-5)? mm. */
export const sameSection = (a: number, b: number): boolean =>
  Math.abs(a - b) <= Math.max(0.05, 0.03 * Math.min(a, b)) + 1e-9;

/** Widest strip that is planed off rather than ripped, mm (CUT-6). */
export const PLANED_OFF = 6;
