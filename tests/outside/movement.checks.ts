import { timberSpecies } from '../../src/reference/timber-species.ts';
import {
  coefficientFromShrinkage,
  movement,
  movementCoefficient,
  movementFromShrinkage,
  seasonalMovement,
} from '../../src/timber/movement.ts';
import { type OutsideCheck, outside } from './check.ts';

/** The coefficient our table holds for a flat-sawn board. */
function tangential(key: string): number {
  const species = timberSpecies(key);
  const coefficient = species && movementCoefficient(species, 'flat-sawn');
  if (!coefficient) throw new Error(`no tangential coefficient for ${key}`);
  return coefficient.usual;
}

const coefficientCheck = (id: string, key: string, published: number, source: string): OutsideCheck =>
  outside({
    id,
    topic: 'movement',
    inputs: { key },
    published,
    unit: '1/% MC',
    tolerance: 1e-5,
    source,
    basis: 'consistency of two sources: shrinkage FPL-GTR-190 Table 4-3, coefficient as quoted',
    ours: input =>
      coefficientFromShrinkage(timberSpecies(input.key)?.shrinkageTangentialPct?.low ?? Number.NaN),
  });

const FLOORING = 'https://flooringartists.com/dimensional-change';

export const checks: OutsideCheck[] = [
  outside({
    id: 'movement-fir-board',
    topic: 'movement',
    inputs: { widthMm: 232, coefficient: 0.00245, from: 8, to: 11 },
    published: { movement: 1.7, final: 233.7 },
    unit: 'mm',
    tolerance: 0.05,
    source: 'FPL-GTR-190 ch. 13 p. 13-18, https://issuhub.com/view/index/5801?pageIndex=308',
    basis: 'printed answer; start moisture and C_T remembered (white fir)',
    ours: ({ widthMm, coefficient, from, to }) => {
      const change = movement(widthMm, coefficient, from, to);
      return { movement: change, final: widthMm + change };
    },
  }),
  outside({
    id: 'movement-mesquite-floor',
    topic: 'movement',
    inputs: { widthIn: 5, coefficient: 0.00129, by: 3 },
    published: 0.019,
    unit: 'in',
    tolerance: 0.0005,
    source: FLOORING,
    basis: 'printed answer',
    ours: ({ widthIn, coefficient, by }) => movement(widthIn, coefficient, 0, by),
  }),
  outside({
    id: 'movement-white-oak-floor',
    topic: 'movement',
    inputs: { widthIn: 5, timber: 'white-oak-american', from: 6, to: 9 },
    published: 0.055,
    unit: 'in',
    tolerance: 0.0005,
    source: 'http://www.sullivanhardwood.com/wood-flooring-stabibility/',
    basis: 'printed answer',
    ours: ({ widthIn, timber, from, to }) => movement(widthIn, tangential(timber), from, to),
  }),
  outside({
    id: 'movement-red-alder',
    topic: 'movement',
    inputs: { widthIn: 8, coefficient: 0.0026, by: 6 },
    published: 0.1248,
    unit: 'in',
    tolerance: 0.0001,
    source: 'https://www.pressreader.com/usa/wood-usa-9KXH/20210901/281938840870684',
    basis: 'printed answer',
    ours: ({ widthIn, coefficient, by }) => movement(widthIn, coefficient, 0, by),
  }),
  outside({
    id: 'movement-cherry-top-mm',
    topic: 'movement',
    inputs: { widthMm: 914.4, coefficient: 0.00248, from: 8, to: 11 },
    published: 6.8,
    unit: 'mm',
    tolerance: 0.05,
    source: 'https://flooringartists.com/dimensional-change, converted',
    basis: 'read values, arithmetic',
    ours: ({ widthMm, coefficient, from, to }) => movement(widthMm, coefficient, from, to),
  }),
  outside({
    id: 'shrinkage-beam-two-ways',
    topic: 'movement',
    inputs: { depthIn: 13.25, perPct: 0.002, from: 19, to: 10 },
    published: { shrink: 0.2385, depth: 13.01 },
    unit: 'in',
    tolerance: 0.005,
    source: 'https://web.mst.edu/jthomas/classes/5260/problem/04/034/index.html, method a',
    basis: 'printed answer',
    ours: ({ depthIn, perPct, from, to }) => {
      const change = movement(depthIn, perPct, from, to);
      return { shrink: -change, depth: depthIn + change };
    },
  }),
  outside({
    id: 'beech-movement-90-60',
    topic: 'movement',
    inputs: { timber: 'beech-european', from: 20, to: 12 },
    published: 31.2,
    unit: 'mm per m',
    tolerance: 2.5,
    source:
      'UK 90/60 % RH movement test, https://msd.com.ua/the-technique-of-furniture-making/shrinkage-factors, against shrinkage of the painting-panel table',
    basis: 'consistency of two sources',
    ours: ({ timber, from, to }) =>
      -movementFromShrinkage(
        1000,
        timberSpecies(timber)?.shrinkageTangentialPct?.high ?? Number.NaN,
        from,
        to,
      ),
  }),
  outside({
    id: 'chestnut-movement-90-60',
    topic: 'movement',
    inputs: { timber: 'chestnut-sweet', from: 17.5, to: 12.5 },
    published: { tangential: 13.0, radial: 6.5 },
    unit: 'mm per m',
    tolerance: 1.5,
    source:
      'UK 90/60 % RH movement test (steps of 1.3 mm per m), https://msd.com.ua/the-technique-of-furniture-making/shrinkage-factors, against shrinkage of the painting-panel table',
    basis: 'consistency of two sources',
    ours: ({ timber, from, to }) => {
      const species = timberSpecies(timber);
      const change = (shrinkage: number | undefined) =>
        -movementFromShrinkage(1000, shrinkage ?? Number.NaN, from, to);
      return {
        tangential: change(species?.shrinkageTangentialPct?.high),
        radial: change(species?.shrinkageRadialPct?.high),
      };
    },
  }),
  outside({
    id: 'dcc-formula',
    topic: 'movement',
    inputs: { timber: 'walnut-american' },
    published: 0.00274,
    unit: '1/% MC',
    tolerance: 3e-5,
    source: 'black walnut: FPL-GTR-190 Table 13-5, shrinkage of Table 4-3',
    basis: 'consistency of two sources',
    ours: ({ timber }) =>
      coefficientFromShrinkage(timberSpecies(timber)?.shrinkageTangentialPct?.low ?? Number.NaN),
  }),
  coefficientCheck('dcc-cherry', 'cherry-american', 0.00248, FLOORING),
  coefficientCheck('dcc-sugar-maple', 'hard-maple-american', 0.00353, FLOORING),
  coefficientCheck('dcc-yellow-birch', 'yellow-birch-american', 0.00338, FLOORING),
  coefficientCheck('dcc-white-ash', 'white-ash-american', 0.00274, FLOORING),
  outside({
    id: 'panel-groove-gap',
    topic: 'movement',
    inputs: { widthMm: 400, timber: 'red-oak-american', now: 8, low: 6, high: 12 },
    published: { shrink: 2.952, swell: 5.904 },
    unit: 'mm',
    tolerance: 0.001,
    source: 'C_T of red oak 0.00369 read at https://flooringartists.com/dimensional-change; Eq 13-2',
    basis: 'read values, arithmetic',
    ours: ({ widthMm, timber, now, low, high }) => {
      const { shrinkMm, swellMm } = seasonalMovement(widthMm, tangential(timber), now, { low, high });
      return { shrink: shrinkMm, swell: swellMm };
    },
  }),
];
