/** Colour and ground: stains, ink, filler; the sealing of end grain; finishes on metal. */
import { DAY, type FinishProduct, HOUR } from './finish-row.ts';
import { memory, read, trait } from './sourced.ts';

const INK = 'woodrio.com India ink drying (weak source)';
const STAIN = 'craftedwoodcreations.com (weak source)';
const COPPER_LACQUER = 'kraska.biz ?p=6903';
const ALKYD_METAL = 'coloramacoatings.com colux';
const RECALLED = 'remembered, unverified';

export const STAINS_AND_METAL: readonly FinishProduct[] = [
  {
    key: 'water-stain',
    name: 'Water stain',
    family: 'water stain',
    on: 'timber',
    spreadM2PerL: memory(10, 15),
    recoatMinutes: memory(4 * HOUR, 12 * HOUR, 'dry before coating'),
    hazards: [],
    remarks: [trait('Raise the grain first: wet, dry, P240', 'memory', RECALLED)],
  },
  {
    key: 'spirit-stain',
    name: 'Spirit stain',
    family: 'spirit dye',
    on: 'timber',
    also: ['spirit-dye', 'grey-spirit-stain', 'spirit-stain-grey'],
    recoatMinutes: memory(0.2 * HOUR, 0.5 * HOUR, 'dry'),
    hazards: ['flammable vapour'],
    remarks: [
      trait('Not brushed over with its own solvent: spray or seal the first coat', 'memory', RECALLED),
    ],
  },
  {
    key: 'oil-stain',
    name: 'Oil stain',
    family: 'oil stain',
    on: 'timber',
    wipeMinutes: read(3, 10, STAIN, '3-5 light, 8-10 dark'),
    recoatMinutes: read(8 * HOUR, 12 * HOUR, STAIN, '6-24 h remembered'),
    hazards: ['rags heat and take fire'],
    remarks: [],
  },
  {
    key: 'india-ink',
    name: 'India ink',
    family: 'ink',
    on: 'timber',
    also: ['ink'],
    touchDryMinutes: read(10, 30, INK, 'thin coat; porous timber faster'),
    recoatMinutes: read(24 * HOUR, 24 * HOUR, INK, 'full dry, before another layer or a topcoat'),
    hazards: [],
    remarks: [
      trait(
        'Raises the grain and sands through: raise and sand first, gloves on',
        'read',
        'zeugmatic.com finishes3',
      ),
      trait('Oil over it holds', 'read', 'zeugmatic.com; danshapiro.com 2005/04'),
      trait(
        'With a shellac binder it bleeds under water coats with ammonia; brushed shellac lifts it',
        'read',
        'justpaint.org waterproof-india-inks',
      ),
    ],
  },
  {
    key: 'ebonising-solution',
    name: 'Ebonising iron solution',
    family: 'water stain',
    on: 'timber',
    recoatMinutes: read(
      2 * HOUR,
      2 * HOUR,
      'woodworkingtalk.com (weak source)',
      'three coats about 7 h with tannin first; poor on pine',
    ),
    hazards: [],
    remarks: [],
  },
  {
    key: 'grain-filler',
    name: 'Grain filler, oil',
    family: 'filler',
    on: 'timber',
    recoatMinutes: memory(12 * HOUR, 48 * HOUR, 'before sanding; water type 2-4 h'),
    hazards: ['rags heat and take fire'],
    remarks: [],
  },
  {
    key: 'epoxy-seal',
    name: 'Epoxy sealing of end grain',
    family: 'epoxy',
    on: 'timber',
    also: ['epoxy-end-grain', 'epoxy-sealer'],
    recoatMinutes: memory(6 * HOUR, 24 * HOUR, '20 degC'),
    cureMinutes: memory(3 * DAY, 7 * DAY, '20 degC; the rate about halves for each 10 K less'),
    hazards: ['sensitiser'],
    remarks: [
      trait('Two thin coats, the second before the first is hard', 'common practice', 'trade practice'),
    ],
  },
  {
    key: 'metal-lacquer',
    name: 'Lacquer for brass and copper',
    family: 'metal lacquer',
    on: 'metal',
    also: ['brass-lacquer', 'copper-lacquer'],
    spreadM2PerL: memory(10, 14, 'two thin coats'),
    coats: memory(2, 2),
    touchDryMinutes: memory(0.5 * HOUR, 1 * HOUR),
    flashPointC: memory(0, 23),
    hazards: ['flammable vapour'],
    remarks: [
      trait(
        'Thin, at most 15 um, so that the look stays; an inhibitor (benzotriazole, about 0.4 %) holds off blackening',
        'read',
        COPPER_LACQUER,
      ),
      trait('On within 1 to 4 h of polishing; degrease with acetone, gloves on', 'memory', RECALLED),
    ],
  },
  {
    key: 'metal-enamel',
    name: 'Alkyd enamel on metal',
    family: 'oil varnish',
    on: 'metal',
    spreadM2PerL: read(6.4, 13.7, ALKYD_METAL, '75 and 35 um dry'),
    touchDryMinutes: read(2 * HOUR, 2 * HOUR, ALKYD_METAL, 'surface'),
    recoatMinutes: read(16 * HOUR, 24 * HOUR, `${ALKYD_METAL}; rust-proof enamel tech sheet`),
    flashPointC: read(38, 38, ALKYD_METAL),
    vocGPerL: read(387, 450, `${ALKYD_METAL}; rust-proof enamel tech sheet`),
    hazards: ['flammable vapour'],
    remarks: [],
  },
  {
    key: 'metal-wax',
    name: 'Wax on brass or steel',
    family: 'wax',
    on: 'metal',
    also: ['brass-wax'],
    hazards: [],
    remarks: [trait('On brass renew every 3 to 12 months', 'memory', RECALLED)],
  },
  {
    key: 'patina',
    name: 'Patina, liver of sulphur',
    family: 'patina',
    on: 'metal',
    recoatMinutes: memory(24 * HOUR, 24 * HOUR, 'dry, then wax or lacquer'),
    hazards: [],
    remarks: [
      trait(
        '5-20 g a litre, warm; rinse, neutralise with bicarbonate; off the timber until rinsed and dry',
        'memory',
        RECALLED,
      ),
    ],
  },
];
