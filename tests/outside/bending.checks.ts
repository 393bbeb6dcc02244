import { furnitureLoad } from '../../src/reference/furniture-loads.ts';
import { kdef } from '../../src/reference/load-duration.ts';
import { sheetFigures, sheetMaterial } from '../../src/reference/sheet-materials.ts';
import { middle } from '../../src/reference/sourced.ts';
import { timberSpecies } from '../../src/reference/timber-species.ts';
import { deflection, deflectionAfterCreep, type LoadCase } from '../../src/timber/deflection.ts';
import { massKg, weightN } from '../../src/timber/mass.ts';
import { rectangle, roundTube } from '../../src/timber/sections.ts';
import { type BeamLoad, simpleBeam } from '../../src/timber/simple-beam.ts';
import { bendingStress, shearStress, uniformLoadAtStress } from '../../src/timber/stress.ts';
import { type OutsideCheck, outside } from './check.ts';

const AMESWEB = 'http://www.amesweb.info/StructuralBeamDeflection/Timber_Beam_Deflection_Example.aspx';
const AMESWEB_STRENGTH =
  'http://www.amesweb.info/StructuralAnalysisBeams/Timber_Design_For_Strength_Example.aspx';
const CODINGACE = 'https://codingace.net/construction/timber_deflection.html';
const CALCULATORSWEB = 'https://calculatorsweb.site/construction/timber_deflection_c.html';
const SHELF = 'Eq 9-2 bending term read; 40 kg of books a metre assumed';

/** The 3 m beam of 100 x 200 under three loads and its own weight. */
const THREE_LOADS: readonly BeamLoad[] = [
  { kind: 'point', atMm: 500, forceN: 10000 },
  { kind: 'point', atMm: 1500, forceN: 5000 },
  { kind: 'point', atMm: 2500, forceN: 10000 },
  { kind: 'spread', fromMm: 0, toMm: 3000, forceNPerMm: 0.1177 },
];
const threeLoads = () =>
  simpleBeam({
    spanMm: 3000,
    stiffnessMPa: 8000,
    secondMomentMm4: rectangle(100, 200).secondMomentMm4,
    loads: THREE_LOADS,
  });

const boardStiffness = (key: string, thicknessMm: number): number => {
  const sheet = sheetMaterial(key);
  return sheet ? middle(sheetFigures(sheet, thicknessMm).stiffnessAlongMPa) : Number.NaN;
};

const shelf = (
  id: string,
  inputs: { stiffnessMPa: number; widthMm: number; thicknessMm: number; spanMm: number; loadN: number },
  published: number,
): OutsideCheck =>
  outside({
    id,
    topic: 'deflection',
    inputs,
    published,
    unit: 'mm',
    tolerance: 0.005,
    source: SHELF,
    basis: 'read formula, arithmetic',
    ours: ({ stiffnessMPa, widthMm, thicknessMm, spanMm, loadN }) =>
      deflection('uniform, simply supported', {
        loadN,
        spanMm,
        section: rectangle(widthMm, thicknessMm),
        stiffnessMPa,
      }).totalMm,
  });

const deflectionCheck = (
  id: string,
  loadCase: LoadCase,
  inputs: { widthMm: number; depthMm: number; stiffnessMPa: number; spanMm: number; loadN: number },
  published: number,
  source: string,
): OutsideCheck =>
  outside({
    id,
    topic: 'deflection',
    inputs,
    published,
    unit: 'mm',
    tolerance: 0.005,
    source,
    basis: 'printed answer',
    ours: ({ widthMm, depthMm, ...bar }) =>
      deflection(loadCase, { ...bar, section: rectangle(widthMm, depthMm) }).totalMm,
  });

export const checks: OutsideCheck[] = [
  outside({
    id: 'section-120x240-I',
    topic: 'sections',
    inputs: { widthMm: 120, depthMm: 240 },
    published: 138e6,
    unit: 'mm4',
    tolerance: 5e5,
    source: 'https://structuralbasics.kit.com/posts/timber-beam-design',
    basis: 'printed answer',
    ours: ({ widthMm, depthMm }) => rectangle(widthMm, depthMm).secondMomentMm4,
  }),
  outside({
    id: 'section-100x200',
    topic: 'sections',
    inputs: { widthMm: 100, depthMm: 200 },
    published: { I: 66666668, S: 666666.688, A: 20000 },
    unit: 'mm4, mm3, mm2',
    tolerance: 2,
    source: AMESWEB,
    basis: 'printed answer',
    ours: ({ widthMm, depthMm }) => {
      const section = rectangle(widthMm, depthMm);
      return { I: section.secondMomentMm4, S: section.modulusMm3, A: section.areaMm2 };
    },
  }),
  outside({
    id: 'tube-I',
    topic: 'sections',
    inputs: { outerMm: 40, wallMm: 2 },
    published: 43220,
    unit: 'mm4',
    tolerance: 5,
    source: 'Gere, Mechanics of Materials, problem 11.4-2, https://www.coursehero.com/file/6641211/',
    basis: 'printed answer',
    ours: ({ outerMm, wallMm }) => roundTube(outerMm, wallMm).secondMomentMm4,
  }),
  outside({
    id: 'beam-self-weight',
    topic: 'bending',
    inputs: { widthMm: 100, depthMm: 200, spanMm: 3000, density: 600 },
    published: { mass: 36, weightPerM: 117.7 },
    unit: 'kg, N/m',
    tolerance: 0.05,
    source: AMESWEB,
    basis: 'printed answer',
    ours: ({ widthMm, depthMm, spanMm, density }) => {
      const mass = massKg(widthMm * depthMm * spanMm, density);
      return { mass, weightPerM: weightN(mass) / (spanMm / 1000) };
    },
  }),
  outside({
    id: 'beam-three-loads',
    topic: 'bending',
    inputs: {},
    published: { leftN: 12676.5, rightN: 12676.5, moment500: 6323, moment1500: 8882.4, greatest: 8882.4 },
    unit: 'N, N m',
    tolerance: 0.7,
    source: `${AMESWEB} ; ${AMESWEB_STRENGTH}`,
    basis: 'printed answer',
    ours: () => {
      const beam = threeLoads();
      return {
        leftN: beam.leftN,
        rightN: beam.rightN,
        moment500: beam.momentAt(500) / 1000,
        moment1500: beam.momentAt(1500) / 1000,
        greatest: beam.greatestMoment.value / 1000,
      };
    },
  }),
  outside({
    id: 'beam-end-slope',
    topic: 'bending',
    inputs: {},
    published: { left: 0.988, middle: 0, right: -0.988 },
    unit: 'degree',
    tolerance: 0.001,
    source: AMESWEB,
    basis: 'printed answer',
    ours: () => {
      const slope = (x: number) => (threeLoads().slopeAt(x) * 180) / Math.PI;
      return { left: slope(0), middle: slope(1500), right: slope(3000) };
    },
  }),
  outside({
    id: 'beam-stress',
    topic: 'bending',
    inputs: { widthMm: 100, depthMm: 200, momentNm: 6323, shearN: 12676.5 },
    published: { bending: 9.484, shear: 0.951 },
    unit: 'MPa',
    tolerance: 0.001,
    source: AMESWEB_STRENGTH,
    basis: 'printed answer',
    ours: ({ widthMm, depthMm, momentNm, shearN }) => {
      const section = rectangle(widthMm, depthMm);
      return { bending: bendingStress(momentNm * 1000, section), shear: shearStress(shearN, section) };
    },
  }),
  outside({
    id: 'beam-udl-capacity',
    topic: 'bending',
    inputs: { widthMm: 150, depthMm: 300, spanMm: 8000, stressMPa: 8 },
    published: 2250,
    unit: 'N/m',
    tolerance: 0.5,
    source:
      'https://askfilo.com/user-question-answers-smart-solutions/a-timber-beam-with-a-cross-section-of-150-mm-width-and-300-3431343931353438',
    basis: 'printed answer',
    ours: ({ widthMm, depthMm, spanMm, stressMPa }) =>
      1000 * uniformLoadAtStress(stressMPa, rectangle(widthMm, depthMm), spanMm),
  }),
  deflectionCheck(
    'deflection-spread',
    'uniform, simply supported',
    { widthMm: 50, depthMm: 200, stiffnessMPa: 11000, spanMm: 4000, loadN: 2500 * 4 },
    22.73,
    CODINGACE,
  ),
  deflectionCheck(
    'deflection-point',
    'point at middle, simply supported',
    { widthMm: 50, depthMm: 200, stiffnessMPa: 11000, spanMm: 4000, loadN: 10000 },
    36.36,
    CODINGACE,
  ),
  deflectionCheck(
    'deflection-cantilever-spread',
    'uniform, cantilever',
    { widthMm: 75, depthMm: 225, stiffnessMPa: 10000, spanMm: 2500, loadN: 1500 * 2.5 },
    10.29,
    CODINGACE,
  ),
  deflectionCheck(
    'deflection-cantilever-point',
    'point at end, cantilever',
    { widthMm: 75, depthMm: 225, stiffnessMPa: 11500, spanMm: 2000, loadN: 1200 },
    3.91,
    CALCULATORSWEB,
  ),
  deflectionCheck(
    'deflection-spread-2',
    'uniform, simply supported',
    { widthMm: 63, depthMm: 225, stiffnessMPa: 11000, spanMm: 3600, loadN: 2500 * 3.6 },
    8.31,
    CALCULATORSWEB,
  ),
  outside({
    id: 'shelf-red-oak',
    topic: 'deflection',
    inputs: { shearModulusMPa: 1012.5, widthMm: 250, thicknessMm: 20, spanMm: 900, loadKNPerM2: 1.5 },
    published: { load: 337.5, bending: 1.538, shear: 0.009, atOnce: 1.547, final: 2.475 },
    unit: 'N, mm',
    tolerance: 0.005,
    source: 'Wood Handbook Eq 9-2 with Table 9-1 constants and E of northern red oak; load assumed',
    basis: 'read formula, arithmetic',
    ours: ({ shearModulusMPa, widthMm, thicknessMm, spanMm, loadKNPerM2 }) => {
      const loadN = (loadKNPerM2 * widthMm * spanMm) / 1000;
      const sag = deflection('uniform, simply supported', {
        loadN,
        spanMm,
        section: rectangle(widthMm, thicknessMm),
        stiffnessMPa: timberSpecies('red-oak-american')?.stiffnessMPa?.low ?? Number.NaN,
        shearModulusMPa,
      });
      const creep = kdef('timber')?.low ?? Number.NaN;
      return {
        load: loadN,
        bending: sag.bendingMm,
        shear: sag.shearMm,
        atOnce: sag.totalMm,
        final: deflectionAfterCreep(sag.totalMm, creep),
      };
    },
  }),
  shelf(
    'shelf-mdf-18x300x800',
    {
      stiffnessMPa: boardStiffness('mdf', 18),
      widthMm: 300,
      thicknessMm: 18,
      spanMm: 800,
      loadN: 313.92,
    },
    6.525,
  ),
  shelf(
    'shelf-oak-22x250x900',
    { stiffnessMPa: 12500, widthMm: 250, thicknessMm: 22, spanMm: 900, loadN: 353.16 },
    1.209,
  ),
  shelf(
    'shelf-birch-ply-18x300x1000',
    {
      stiffnessMPa: boardStiffness('birch-plywood', 18),
      widthMm: 300,
      thicknessMm: 18,
      spanMm: 1000,
      loadN: 294.3,
    },
    2.767,
  ),
  outside({
    id: 'sag-limit-3ft',
    topic: 'deflection',
    inputs: { spanM: 3 * 0.3048 },
    published: 0.06,
    unit: 'in',
    tolerance: 1e-4,
    source: 'limit 0.02 in a foot: Fine Woodworking, https://issuhub.com/view/index/5674?pageIndex=25',
    basis: 'read values, arithmetic',
    ours: ({ spanM }) => ((furnitureLoad('sag-at-once')?.low ?? Number.NaN) * spanM) / 25.4,
  }),
  outside({
    id: 'ec5-creep',
    topic: 'creep',
    inputs: { atOnceMm: 3 },
    published: [4.8, 5.4, 9.75],
    unit: 'mm',
    tolerance: 1e-6,
    source: 'EN 1995-1-1: u_fin = u_inst (1 + kdef); timber class 1, plywood class 1, chipboard (memory)',
    basis: 'read formula, arithmetic',
    ours: ({ atOnceMm }) =>
      [kdef('timber', 1), kdef('plywood', 1), kdef('chipboard', 1)].map(factor =>
        deflectionAfterCreep(atOnceMm, factor?.low ?? Number.NaN),
      ),
  }),
];
