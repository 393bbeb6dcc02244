import { CLAMP_PRESSURE_MPA } from '../../src/reference/adhesives.ts';
import { rimSpeed, routerSpeedLimit, rpmForRimSpeed } from '../../src/reference/cutting-speeds.ts';
import { finishProduct } from '../../src/reference/finishes.ts';
import { metal } from '../../src/reference/metals.ts';
import { timberSpecies } from '../../src/reference/timber-species.ts';
import { boardFeet, toBuy } from '../../src/timber/board-volume.ts';
import { clampCount, clampForce } from '../../src/timber/clamps.ts';
import { finishLitres, glueGrams, spreadForFilm } from '../../src/timber/coverage.ts';
import { massKg } from '../../src/timber/mass.ts';
import { movement } from '../../src/timber/movement.ts';
import { round } from '../../src/timber/sections.ts';
import { thermalGrowth } from '../../src/timber/thermal.ts';
import { type OutsideCheck, outside } from './check.ts';

const FT = 304.8;
const IN = 25.4;
/** Square feet a US gallon for one m2 a litre. */
const FT2_PER_GALLON = 3.785411784 / 0.3048 ** 2;

export const checks: OutsideCheck[] = [
  outside({
    id: 'bf-1x3x8ft',
    topic: 'volume',
    inputs: { thicknessMm: 1 * IN, widthMm: 3 * IN, lengthMm: 8 * FT },
    published: 2,
    unit: 'board foot',
    tolerance: 1e-9,
    source: 'https://www.furnituremaking.us/classic-american/ordering-lumber-by-the-board-foot.html',
    basis: 'printed answer',
    ours: ({ thicknessMm, widthMm, lengthMm }) => boardFeet(thicknessMm, widthMm, lengthMm),
  }),
  outside({
    id: 'bf-2x4x8ft',
    topic: 'volume',
    inputs: { thicknessMm: 2 * IN, widthMm: 4 * IN, lengthMm: 8 * FT },
    published: 5.3,
    unit: 'board foot',
    tolerance: 0.05,
    source: 'http://calculatoredge.com/math/advmath/advans27.htm',
    basis: 'printed answer',
    ours: ({ thicknessMm, widthMm, lengthMm }) => boardFeet(thicknessMm, widthMm, lengthMm),
  }),
  outside({
    id: 'bf-per-m3',
    topic: 'volume',
    inputs: {},
    published: { inOneM3: 423.776, m3InThousand: 2.3597 },
    unit: '-',
    tolerance: 0.0005,
    source: 'https://tradelink-group.com/?p=727 ; https://www.convertunits.com/info/board+foot',
    basis: 'printed answer',
    ours: () => ({ inOneM3: boardFeet(1000, 1000, 1000), m3InThousand: 1000 / boardFeet(1000, 1000, 1000) }),
  }),
  outside({
    id: 'waste-is-a-share-of-bought',
    topic: 'volume',
    inputs: { net: 100, share: 0.3 },
    published: 142.85,
    unit: 'board foot',
    tolerance: 0.01,
    source: 'https://www.woodweb.com/knowledge_base/Calculating_Waste_from_Rough_Lumber.html',
    basis: 'printed answer',
    ours: ({ net, share }) => toBuy(net, share),
  }),
  outside({
    id: 'steel-round-20',
    topic: 'mass',
    inputs: { diameterMm: 20, lengthMm: 1000 },
    published: 2.46,
    unit: 'kg',
    tolerance: 0.01,
    source: 'https://www.engineeringcivil.com/weight-calculator.html',
    basis: 'printed answer',
    ours: ({ diameterMm, lengthMm }) =>
      massKg(round(diameterMm).areaMm2 * lengthMm, metal('mild-steel')?.densityKgM3.low ?? Number.NaN),
  }),
  outside({
    id: 'oak-top-weight',
    topic: 'mass',
    inputs: { lengthMm: 1800, widthMm: 900, thicknessMm: 30, density: 720 },
    published: 34.99,
    unit: 'kg',
    tolerance: 0.01,
    source: 'density assumed',
    basis: 'arithmetic',
    ours: ({ lengthMm, widthMm, thicknessMm, density }) => massKg(lengthMm * widthMm * thicknessMm, density),
  }),
  outside({
    id: 'thermal-al-cold',
    topic: 'heat',
    inputs: { lengthM: 6, metal: 'aluminium', warmerK: -50 },
    published: 5.993,
    unit: 'm',
    tolerance: 0.0005,
    source: 'http://www.engineeringtoolbox.com/linear-thermal-expansion-d_1379.html',
    basis: 'printed answer',
    ours: input =>
      input.lengthM +
      thermalGrowth(input.lengthM, metal(input.metal)?.expansionPerK?.low ?? Number.NaN, input.warmerK),
  }),
  outside({
    id: 'thermal-brass-cw508',
    topic: 'heat',
    inputs: { lengthMm: 1200, warmerK: 25 },
    published: 0.615,
    unit: 'mm',
    tolerance: 0.001,
    source: 'expansion of CW508L sheet: https://azom.com/article.aspx?ArticleID=2820',
    basis: 'read values, arithmetic',
    ours: ({ lengthMm, warmerK }) =>
      thermalGrowth(lengthMm, metal('brass-cw508l')?.expansionPerK?.low ?? Number.NaN, warmerK),
  }),
  outside({
    id: 'metal-in-wood-thermal',
    topic: 'heat',
    inputs: { lengthMm: 1000, alongGrainPerK: 4.9e-6, warmerK: 20 },
    published: 0.262,
    unit: 'mm',
    tolerance: 0.001,
    source: 'freestudy.co.uk (brass 70/30); cfm-calculator.com (oak along the grain)',
    basis: 'read values, arithmetic',
    ours: ({ lengthMm, alongGrainPerK, warmerK }) =>
      thermalGrowth(lengthMm, metal('brass-70-30')?.expansionPerK?.low ?? Number.NaN, warmerK) -
      thermalGrowth(lengthMm, alongGrainPerK, warmerK),
  }),
  outside({
    id: 'moisture-beats-heat',
    topic: 'heat',
    inputs: { widthMm: 600, timber: 'white-oak-american', by: 4, steelPerK: 12e-6, warmerK: 20 },
    published: { timber: 8.76, steel: 0.144 },
    unit: 'mm',
    tolerance: 0.001,
    source: 'white oak C_T and the expansion of steel read',
    basis: 'read values, arithmetic',
    ours: ({ widthMm, timber, by, steelPerK, warmerK }) => ({
      timber: movement(widthMm, timberSpecies(timber)?.movementTangential?.low ?? Number.NaN, 8, 8 + by),
      steel: thermalGrowth(widthMm, steelPerK, warmerK),
    }),
  }),
  outside({
    id: 'film-100um',
    topic: 'coverage',
    inputs: { litres: 1, filmMm: 0.1 },
    published: 10,
    unit: 'm2',
    tolerance: 1e-9,
    source: 'http://www.astraleasing.com/doc/dv49o/1-liter-paint-cover-how-much-area-a287de',
    basis: 'printed answer',
    ours: ({ litres, filmMm }) => litres * spreadForFilm(filmMm),
  }),
  outside({
    id: 'solids-coverage',
    topic: 'coverage',
    inputs: { solids: 0.45, mils: [1, 2] },
    published: [722, 361],
    unit: 'ft2/gal',
    tolerance: 0.5,
    source: 'https://greatgreenwedding.com/how-do-i-calculate-how-much-varnish-i-need/',
    basis: 'printed answer',
    ours: ({ solids, mils }) => mils.map(mil => spreadForFilm(mil * 0.0254, solids) * FT2_PER_GALLON),
  }),
  outside({
    id: 'oil-two-coats-table',
    topic: 'coverage',
    inputs: { areaM2: 3.24 + 0.162, coats: 2, loss: 0.1 },
    published: 0.5988,
    unit: 'L',
    tolerance: 0.0005,
    source: 'spread of Danish oil read; loss assumed',
    basis: 'read values, arithmetic',
    ours: ({ areaM2, coats, loss }) =>
      finishLitres(areaM2, coats, finishProduct('danish-oil')?.spreadM2PerL?.low ?? Number.NaN, loss),
  }),
  outside({
    id: 'glue-mass',
    topic: 'coverage',
    inputs: { areaM2: 0.9, spread: 150 },
    published: 135,
    unit: 'g',
    tolerance: 1e-9,
    source: 'spread of 120-200 g/m2 remembered',
    basis: 'memory',
    ours: ({ areaM2, spread }) => glueGrams(areaM2, spread),
  }),
  outside({
    id: 'clamp-force',
    topic: 'clamps',
    inputs: { lengthMm: 1200, thicknessMm: 25 },
    published: 41400,
    unit: 'N',
    tolerance: 1,
    source:
      'hardwood 200-300 psi: https://blog.eroko.com/titebond-wood-glues-product-and-application-technical-guide/',
    basis: 'read values, arithmetic',
    ours: ({ lengthMm, thicknessMm }) => clampForce(lengthMm, thicknessMm, CLAMP_PRESSURE_MPA.hardwood.low),
  }),
  outside({
    id: 'clamp-count',
    topic: 'clamps',
    inputs: { lengthMm: 1200, endMm: 50, spacingMm: 250 },
    published: 6,
    unit: 'clamps',
    tolerance: 0,
    source:
      'clamps 38-50 mm from the ends, 200-300 apart: https://blog.eroko.com/titebond-wood-glues-product-and-application-technical-guide/',
    basis: 'read values, arithmetic',
    ours: ({ lengthMm, endMm, spacingMm }) => clampCount(lengthMm, endMm, spacingMm),
  }),
  outside({
    id: 'saw-rim-speed',
    topic: 'speeds',
    inputs: { diameterMm: 250, rpm: 4000 },
    published: 52.36,
    unit: 'm/s',
    tolerance: 0.01,
    source: 'v = pi D n/60000',
    basis: 'arithmetic',
    ours: ({ diameterMm, rpm }) => rimSpeed(diameterMm, rpm),
  }),
  outside({
    id: 'saw-rpm-at-40ms',
    topic: 'speeds',
    inputs: { diameters: [100, 200, 250, 300, 400, 500, 600], speed: 40 },
    published: [7600, 3800, 3100, 2500, 1900, 1500, 1300],
    unit: 'rpm',
    tolerance: 60,
    source: 'https://sealtool.com/en/company/technical-specifications-of-use (40 m/s column)',
    basis: 'printed answer, rounded to 100',
    ours: ({ diameters, speed }) => diameters.map(diameter => rpmForRimSpeed(diameter, speed)),
  }),
  outside({
    id: 'saw-rpm-at-80ms',
    topic: 'speeds',
    inputs: { diameterMm: 300, speed: 80 },
    published: 5093,
    unit: 'rpm',
    tolerance: 1,
    source: 'v = pi D n/60000; 80 m/s the standard speed read at sealtool.com',
    basis: 'read formula, arithmetic',
    ours: ({ diameterMm, speed }) => rpmForRimSpeed(diameterMm, speed),
  }),
  outside({
    id: 'router-rim-speed',
    topic: 'speeds',
    inputs: { diameters: [12, 25.4, 50.8, 88.9] },
    published: [15.08, 31.92, 47.88, 55.86],
    unit: 'm/s',
    tolerance: 0.01,
    source: 'speed ladder: http://woodworking.about.com/od/safetyfirst/a/RouterBitSpeeds.htm',
    basis: 'read values, arithmetic',
    ours: ({ diameters }) =>
      diameters.map(diameter => rimSpeed(diameter, routerSpeedLimit(diameter)?.low ?? Number.NaN)),
  }),
];
