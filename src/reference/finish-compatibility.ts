/** Which finish may go over which. A sample on an offcut of the job decides where the tables are silent. */
import type { FinishFamily } from './finish-row.ts';
import { type Band, band, type Trait, trait } from './sourced.ts';

export interface Compatibility {
  readonly over: FinishFamily;
  readonly under: FinishFamily | 'bare timber';
  readonly verdict: 'yes' | 'with care' | 'no';
  /** Value: what holds or what goes wrong, and the way round it. */
  readonly say: Trait;
  /** Least wait over the coat below, minutes, where one is stated. */
  readonly waitMinutes?: Band;
}

const RECALLED = 'remembered, unverified';
const DAY = 24 * 60;
const recalled = (text: string): Trait => trait(text, 'memory', RECALLED);
const yes = (over: FinishFamily, under: Compatibility['under'], say: Trait): Compatibility => ({
  over,
  under,
  verdict: 'yes',
  say,
});
const care = (
  over: FinishFamily,
  under: Compatibility['under'],
  say: Trait,
  waitMinutes?: Band,
): Compatibility =>
  waitMinutes
    ? { over, under, verdict: 'with care', say, waitMinutes }
    : { over, under, verdict: 'with care', say };
const no = (over: FinishFamily, under: Compatibility['under'], say: Trait): Compatibility => ({
  over,
  under,
  verdict: 'no',
  say,
});

const WASH_OFF_WAX = recalled('No film holds on wax: wash with spirit, then dewaxed shellac');
const OIL_ON_FILM = recalled('Oil cannot enter through a film: strip, or stay with the film finish');
const INK_WATER = trait(
  'Ink with a shellac binder bleeds under water coats with ammonia: try on an offcut',
  'read',
  'justpaint.org waterproof-india-inks',
);
const INK_SHELLAC = trait(
  'Brushed shellac lifts ink with a shellac binder: spray, or seal with oil',
  'read',
  'justpaint.org waterproof-india-inks',
);
const OIL_ON_INK = trait('Oil over dry ink holds', 'read', 'zeugmatic.com; danshapiro.com 2005/04');
const SHELLAC_UNDER_PU = trait(
  'Only dewaxed shellac under polyurethane',
  'read',
  'docslib.org/doc/13551322; woodworkingarchive.biz shellac',
);

export const COMPATIBILITIES: readonly Compatibility[] = [
  yes('oil', 'bare timber', recalled('Oil wants bare timber')),
  yes('oil', 'oil', recalled('Oil over oil, when dry')),
  yes('oil', 'water stain', recalled('When the stain is dry')),
  yes('oil', 'spirit dye', recalled('When the dye is dry')),
  yes('oil', 'ink', OIL_ON_INK),
  no('oil', 'oil varnish', OIL_ON_FILM),
  no('oil', 'water-based', OIL_ON_FILM),
  no('oil', 'shellac', OIL_ON_FILM),
  yes('hardwax oil', 'bare timber', recalled('Hardwax oil wants bare timber')),
  yes('hardwax oil', 'oil', recalled('Over dry oil')),
  yes('hardwax oil', 'hardwax oil', recalled('Within its window, or lightly abraded')),
  care('hardwax oil', 'spirit dye', recalled("Its own maker's stain is sure; another dye on a sample first")),
  care(
    'hardwax oil',
    'water stain',
    recalled("Its own maker's stain is sure; another stain on a sample first"),
  ),
  yes('hardwax oil', 'ink', OIL_ON_INK),
  no('hardwax oil', 'wax', recalled('Not over wax or sealer')),
  no('hardwax oil', 'shellac', recalled('Not over wax or sealer')),
  no('hardwax oil', 'water-based', OIL_ON_FILM),
  no('hardwax oil', 'oil varnish', OIL_ON_FILM),
  yes('wax', 'oil', recalled('Wax goes last, over dry oil')),
  yes('wax', 'shellac', recalled('Wax goes last, over hard shellac')),
  yes('wax', 'oil varnish', recalled('Wax goes last')),
  yes('wax', 'water-based', recalled('Wax goes last')),
  yes('wax', 'patina', recalled('Wax fixes a dry patina')),
  yes('shellac', 'bare timber', recalled('Seals bare timber')),
  yes('shellac', 'shellac', trait('Each coat melts into the last', 'common practice', 'trade practice')),
  care('shellac', 'oil', recalled('Oil cured a week first'), band(7 * DAY, 7 * DAY, 'memory', RECALLED)),
  yes('shellac', 'water stain', recalled('Dewaxed, when the stain is dry')),
  care(
    'shellac',
    'spirit dye',
    recalled('Alcohol moves the dye: first coat sprayed or laid on without rubbing'),
  ),
  care('shellac', 'ink', INK_SHELLAC),
  no('shellac', 'wax', WASH_OFF_WAX),
  care(
    'shellac',
    'water-based',
    trait(
      'A contributor warns not to return to shellac over another coating',
      'read',
      'woodweb.com Shellac_as_a_Sealer',
    ),
  ),
  yes('oil varnish', 'bare timber', trait('First coat thinned: 1:1 seals', 'read', 'home.howstuffworks.com')),
  yes('oil varnish', 'oil varnish', recalled('Within the window, else sanded')),
  yes('oil varnish', 'water-based', recalled('When dry')),
  yes('oil varnish', 'oil', recalled('When the oil is dry')),
  care('oil varnish', 'shellac', SHELLAC_UNDER_PU),
  no('oil varnish', 'wax', WASH_OFF_WAX),
  yes('water-based', 'bare timber', trait('Raise the grain first', 'common practice', 'trade practice')),
  yes('water-based', 'water-based', recalled('Within the window, else sanded')),
  care(
    'water-based',
    'oil',
    recalled('After 7 to 14 days, or over dewaxed shellac'),
    band(7 * DAY, 14 * DAY, 'memory', RECALLED),
  ),
  care(
    'water-based',
    'hardwax oil',
    recalled('After 7 to 14 days, or over dewaxed shellac'),
    band(7 * DAY, 14 * DAY, 'memory', RECALLED),
  ),
  care('water-based', 'shellac', SHELLAC_UNDER_PU),
  care('water-based', 'water stain', recalled('It may lift a water stain: dewaxed shellac between')),
  yes('water-based', 'spirit dye', recalled('When the dye is dry')),
  care('water-based', 'ink', INK_WATER),
  no('water-based', 'wax', WASH_OFF_WAX),
  yes('nitrocellulose', 'bare timber', recalled('Its own sealer first')),
  yes('nitrocellulose', 'shellac', recalled('Over dewaxed shellac')),
  no('nitrocellulose', 'oil varnish', recalled('Its solvent lifts oil varnish: dewaxed shellac between')),
  no('nitrocellulose', 'wax', WASH_OFF_WAX),
  no('two-pack polyurethane', 'nitrocellulose', recalled('It lifts or cracks: strip, or its own sealer')),
  no('two-pack polyurethane', 'wax', WASH_OFF_WAX),
  care('acid-catalysed', 'nitrocellulose', recalled('Over a thin sealer only: a thick film crazes')),
  no('acid-catalysed', 'wax', WASH_OFF_WAX),
  yes('metal lacquer', 'patina', recalled('When the patina is rinsed and dry a day')),
];

/** The verdict on one finish over another; undefined where the tables are silent: a sample decides. */
export function compatibility(over: FinishFamily, under: Compatibility['under']): Compatibility | undefined {
  return COMPATIBILITIES.find(row => row.over === over && row.under === under);
}
