/** Timbers of which only part is published in what could be read; the rest is remembered and says so. */
import { band, computed, memory, read } from './sourced.ts';
import type { TimberSpecies } from './timber-row.ts';

const PAINTING_PANELS =
  'Conservation proceedings on painting panels, Table 1, p. 15; https://issuhub.com/view/index?id=5505&pageIndex=35 (genus averages, green to oven-dry)';
const TABLE_4_4 =
  'FPL-GTR-190 (2010) Table 4-4; https://fliphtml5.com/kbpub/hdrb/Wood_Handbook/87 (columns were interleaved, pairing reconstructed)';
const TABLE_5_5B = 'FPL-GTR-190 (2010) Table 5-5b, inch-pound, converted; Wood Handbook p. 5-25 area';
const TABLE_5_5A = 'remembered FPL Table 5-5a';
const DENSITY_FROM_GREEN =
  'green specific gravity of FPL Table 5-5; FPL-GTR-282 Eq 4-13 and 4-14 (G12 = Gb/(1 - 0.265 Gb (1 - 12/30)))';

export const OTHER_TIMBERS: readonly TimberSpecies[] = [
  {
    key: 'lime-european',
    name: 'Lime, European',
    latin: 'Tilia spp.',
    kind: 'hardwood',
    densityKgM3: memory(530, 560),
    shrinkageRadialPct: read(6.8, 6.8, PAINTING_PANELS),
    shrinkageTangentialPct: read(9.5, 9.5, PAINTING_PANELS),
  },
  {
    key: 'poplar-european',
    name: 'Poplar, European',
    latin: 'Populus spp.',
    kind: 'hardwood',
    densityKgM3: memory(430, 460),
    shrinkageRadialPct: read(3.4, 3.4, PAINTING_PANELS),
    shrinkageTangentialPct: read(8.5, 8.5, PAINTING_PANELS),
  },
  {
    key: 'fir-european',
    name: 'Fir, European',
    latin: 'Abies spp.',
    kind: 'softwood',
    densityKgM3: memory(430, 470),
    shrinkageRadialPct: read(3.8, 3.8, PAINTING_PANELS),
    shrinkageTangentialPct: read(7.6, 7.6, PAINTING_PANELS),
  },
  {
    key: 'mahogany-american',
    name: 'Mahogany, true',
    latin: 'Swietenia macrophylla',
    kind: 'hardwood',
    also: ['mahogany-true', 'mahogany-central-american'],
    densityKgM3: band(543, 543, 'memory', `${DENSITY_FROM_GREEN}; the specific gravity 0.45 is remembered`),
    shrinkageRadialPct: read(3.0, 3.2, `${TABLE_4_4}; ${PAINTING_PANELS}`),
    shrinkageTangentialPct: read(4.1, 5.1, `${TABLE_4_4}; ${PAINTING_PANELS}`),
    stiffnessMPa: band(10300, 10300, 'memory', TABLE_5_5A),
    bendingStrengthMPa: band(79.3, 79.3, 'memory', TABLE_5_5A),
    crushingMPa: band(46.7, 46.7, 'memory', TABLE_5_5A),
    shearMPa: band(8.5, 8.5, 'memory', TABLE_5_5A),
    sideHardnessN: band(3600, 3600, 'memory', TABLE_5_5A),
  },
  {
    key: 'mahogany-african',
    name: 'Mahogany, African',
    latin: 'Khaya spp.',
    kind: 'hardwood',
    also: ['khaya'],
    densityKgM3: band(504, 504, 'memory', `${DENSITY_FROM_GREEN}; the specific gravity 0.42 is remembered`),
    shrinkageRadialPct: read(2.5, 2.5, TABLE_4_4),
    shrinkageTangentialPct: read(4.5, 4.5, TABLE_4_4),
    stiffnessMPa: band(9700, 9700, 'memory', TABLE_5_5A),
    bendingStrengthMPa: band(73.8, 73.8, 'memory', TABLE_5_5A),
    crushingMPa: band(44.5, 44.5, 'memory', TABLE_5_5A),
    shearMPa: band(10.3, 10.3, 'memory', TABLE_5_5A),
    sideHardnessN: band(3700, 3700, 'memory', TABLE_5_5A),
  },
  {
    key: 'meranti-dark-red',
    name: 'Meranti, dark red',
    latin: 'Shorea spp.',
    kind: 'hardwood',
    densityKgM3: computed(556, 556, `${DENSITY_FROM_GREEN}, 0.46`),
    stiffnessMPa: read(12200, 12200, TABLE_5_5B),
    bendingStrengthMPa: read(87.6, 87.6, TABLE_5_5B),
    crushingMPa: read(50.7, 50.7, TABLE_5_5B),
    shearMPa: read(10.0, 10.0, TABLE_5_5B),
    sideHardnessN: read(3470, 3470, TABLE_5_5B),
  },
  {
    key: 'spanish-cedar',
    name: 'Spanish-cedar',
    latin: 'Cedrela spp.',
    kind: 'hardwood',
    also: ['cedrela'],
    densityKgM3: computed(491, 491, `${DENSITY_FROM_GREEN}, 0.41`),
    stiffnessMPa: read(9900, 9900, TABLE_5_5B),
    bendingStrengthMPa: read(79.3, 79.3, TABLE_5_5B),
    crushingMPa: read(42.8, 42.8, TABLE_5_5B),
    shearMPa: read(7.6, 7.6, TABLE_5_5B),
    sideHardnessN: read(2670, 2670, TABLE_5_5B),
  },
];
