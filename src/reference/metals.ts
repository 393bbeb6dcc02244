/** Metals, and glass and acrylic beside them: density, stiffness, expansion, strength. */
import { type Keyed, table } from './keys.ts';
import { type Band, band, memory, read } from './sourced.ts';

export interface Metal extends Keyed {
  readonly name: string;
  readonly kind: 'metal' | 'glass' | 'plastic';
  readonly densityKgM3: Band;
  /** Young's modulus, MPa. */
  readonly stiffnessMPa?: Band;
  readonly poisson?: Band;
  /** Linear expansion as a fraction for 1 K. */
  readonly expansionPerK?: Band;
  readonly yieldMPa?: Band;
  readonly tensileMPa?: Band;
}

const FREESTUDY = 'http://www.freestudy.co.uk/solid%20properties.htm';
const GERE = 'http://ah-engr.com/som/tools/tables/table_3_density_thermal.htm (after Gere)';
const LIQUI =
  'https://liquisearch.com/thermal_expansion/thermal_expansion_coefficients_for_various_materials';
const CFM = 'http://cfm-calculator.com/hvac/Coefficients-of-Linear-Expansion.php';
const EN1993 = 'EN 1993 values of github pcachim/eurocodepy@90d3dec';
const AZOM = 'https://azom.com/article.aspx?ArticleID=2820';
const TIGERQUEST =
  'http://tigerquesttech.com/Mechanical/Thermodynamics/coefficients%20of%20linear%20thermal%20expansion.php';

export const METALS = table<Metal>([
  {
    key: 'mild-steel',
    name: 'Mild steel',
    kind: 'metal',
    also: ['steel', 'steel-s235'],
    densityKgM3: read(7850, 7850, GERE),
    stiffnessMPa: read(210000, 210000, EN1993),
    expansionPerK: read(11e-6, 13e-6, LIQUI),
    yieldMPa: read(235, 235, `${EN1993}, S235`),
    tensileMPa: read(360, 360, `${EN1993}, S235`),
  },
  {
    key: 'steel-s275',
    name: 'Steel S275',
    kind: 'metal',
    densityKgM3: read(7850, 7850, GERE),
    stiffnessMPa: read(210000, 210000, EN1993),
    expansionPerK: read(11e-6, 13e-6, LIQUI),
    yieldMPa: read(275, 275, EN1993),
    tensileMPa: read(430, 430, EN1993, 'design value; the product standard guarantees 410'),
  },
  {
    key: 'steel-s355',
    name: 'Steel S355',
    kind: 'metal',
    densityKgM3: read(7850, 7850, GERE),
    stiffnessMPa: read(210000, 210000, EN1993),
    expansionPerK: read(11e-6, 13e-6, LIQUI),
    yieldMPa: read(355, 355, EN1993),
    tensileMPa: read(490, 490, EN1993, 'design value; the product standard guarantees 470'),
  },
  {
    key: 'stainless-304',
    name: 'Stainless steel 304',
    kind: 'metal',
    also: ['stainless', 'stainless-steel', 'stainless-steel-304'],
    densityKgM3: memory(8000, 8000),
    stiffnessMPa: memory(200000, 200000),
    poisson: memory(0.29, 0.29),
    expansionPerK: read(17.3e-6, 17.3e-6, LIQUI),
    yieldMPa: memory(210, 210),
    tensileMPa: memory(520, 520),
  },
  {
    key: 'brass',
    name: 'Brass, alloy not named',
    kind: 'metal',
    densityKgM3: read(8400, 8600, GERE),
    stiffnessMPa: read(100000, 103400, `${FREESTUDY}; ${AZOM}`),
    expansionPerK: read(18e-6, 21.2e-6, `${FREESTUDY}; ${GERE}`),
  },
  {
    key: 'brass-70-30',
    name: 'Brass 70/30',
    kind: 'metal',
    densityKgM3: read(8500, 8500, FREESTUDY),
    stiffnessMPa: read(100000, 100000, FREESTUDY),
    poisson: read(0.35, 0.35, FREESTUDY),
    expansionPerK: read(18e-6, 18e-6, FREESTUDY),
    yieldMPa: read(450, 450, FREESTUDY),
    tensileMPa: read(550, 550, FREESTUDY),
  },
  {
    key: 'brass-cw508l',
    name: 'Brass sheet CW508L (CZ108)',
    kind: 'metal',
    also: ['brass-cz108', 'brass-sheet'],
    densityKgM3: read(8440, 8440, AZOM),
    stiffnessMPa: read(103400, 103400, AZOM),
    expansionPerK: read(20.5e-6, 20.5e-6, AZOM),
  },
  {
    key: 'bronze',
    name: 'Bronze 90/10',
    kind: 'metal',
    densityKgM3: read(8800, 8800, FREESTUDY),
    expansionPerK: read(17e-6, 17e-6, FREESTUDY),
    yieldMPa: read(140, 140, FREESTUDY),
    tensileMPa: read(260, 260, FREESTUDY),
  },
  {
    key: 'copper',
    name: 'Copper',
    kind: 'metal',
    densityKgM3: read(8900, 8930, `${FREESTUDY}; ${GERE}`),
    stiffnessMPa: read(117000, 117000, FREESTUDY),
    poisson: read(0.35, 0.35, FREESTUDY),
    expansionPerK: read(16.5e-6, 17e-6, `${FREESTUDY}; ${CFM}`),
    yieldMPa: read(75, 75, FREESTUDY),
    tensileMPa: read(150, 150, FREESTUDY),
  },
  {
    key: 'aluminium',
    name: 'Aluminium',
    kind: 'metal',
    also: ['aluminum'],
    densityKgM3: read(2700, 2710, `${FREESTUDY}; ${GERE}`),
    stiffnessMPa: read(71000, 71000, FREESTUDY),
    poisson: read(0.34, 0.34, FREESTUDY),
    expansionPerK: read(23e-6, 23e-6, FREESTUDY),
    yieldMPa: read(50, 50, FREESTUDY),
    tensileMPa: read(80, 80, FREESTUDY),
  },
  {
    key: 'zinc',
    name: 'Zinc',
    kind: 'metal',
    densityKgM3: memory(7140, 7140),
    stiffnessMPa: memory(100000, 100000),
    poisson: memory(0.25, 0.25),
    expansionPerK: read(29.7e-6, 29.7e-6, CFM),
    tensileMPa: memory(130, 130),
  },
  {
    key: 'cast-iron',
    name: 'Cast iron, grey',
    kind: 'metal',
    densityKgM3: read(7156, 7156, FREESTUDY),
    stiffnessMPa: read(110000, 110000, FREESTUDY),
    expansionPerK: read(11e-6, 11e-6, FREESTUDY),
    tensileMPa: read(100, 100, FREESTUDY),
  },
  {
    key: 'glass-float',
    name: 'Float glass',
    kind: 'glass',
    also: ['glass'],
    densityKgM3: band(2500, 2500, 'memory', 'EN 572, remembered; 2400-2800 read for soda-lime glass (Gere)'),
    stiffnessMPa: memory(70000, 70000, 'EN 572'),
    poisson: memory(0.22, 0.22),
    expansionPerK: read(8.5e-6, 9e-6, `${LIQUI}; ${CFM}`),
    tensileMPa: memory(45, 45, 'annealed, characteristic bending strength'),
  },
  {
    key: 'acrylic',
    name: 'Acrylic sheet',
    kind: 'plastic',
    also: ['pmma'],
    densityKgM3: memory(1190, 1190),
    stiffnessMPa: memory(3200, 3200),
    poisson: memory(0.35, 0.35),
    expansionPerK: read(75e-6, 75e-6, TIGERQUEST),
    tensileMPa: memory(70, 70),
  },
]);

/** The metal (or glass, or acrylic) of that key, of another name for it, or of its words in another order. */
export const metal = (key: string): Metal | undefined => METALS.find(key);
