import { box } from '../../src/geometry/box.ts';
import { CUTTING_SPEEDS, rimSpeed } from '../../src/reference/cutting-speeds.ts';
import { compoundMitre, otherScale, polygonMitre, ringError } from '../../src/setups/angles.ts';
import { countersinkDepth } from '../../src/setups/methods/hole.ts';
import { planSetUps } from '../../src/setups/plan-set-ups.ts';
import { slotMoves } from '../../src/setups/pocket.ts';
import { drillTurns, routerTurns } from '../../src/setups/speeds.ts';
import { part, pieceOf, pocket, shop, tenon, without, workedRail } from '../setups/fixtures.ts';
import { type OutsideCheck, outside } from './check.ts';

const MANUAL =
  'saw manual chart, https://manualsdump.com/en/manuals/craftsman-315.21212/276873/24 (same chart https://esmanual.top/manual/109885/Ryobi-Tss121.html?page=32)';
const EFFORT = { seed: 1, iterations: 120 };

/** Sides and slope from flat, with the printed mitre and bevel. */
const CHART: readonly [sides: number, slope: number, mitre: number, bevel: number][] = [
  [4, 5, 44.89, 3.53],
  [4, 30, 40.89, 20.7],
  [4, 45, 35.26, 30],
  [5, 15, 35.06, 8.75],
  [5, 25, 33.36, 14.38],
  [6, 30, 26.57, 14.48],
  [8, 20, 21.27, 7.52],
  [9, 40, 15.58, 12.7],
];

const settingOf = (title: string, name: string, plan: ReturnType<typeof planSetUps>): number =>
  plan.setups.find(s => s.title.startsWith(title))?.settings.find(s => s.name === name)?.value
    .value as number;

/** A tenon of 7.4 in stock of 22 on the router table, as the arithmetic is published. */
const flipped = (stock: number, thickness: number) =>
  planSetUps(
    pieceOf([
      part(
        'rail',
        [400, 60, stock],
        [
          tenon('t', {
            length: 30,
            through: false,
            z: { low: (stock - thickness) / 2, high: (stock - thickness) / 2 },
          }),
        ],
      ),
    ]),
    [],
    without(shop(), 'table saw'),
    EFFORT,
  );

export const checks: OutsideCheck[] = [
  ...CHART.map(([sides, slope, mitre, bevel]) =>
    outside({
      id: `compound-mitre-${sides}-sides-${slope}`,
      topic: 'angles',
      inputs: { sides, slope },
      published: { mitre, bevel },
      unit: 'degree',
      tolerance: 0.006,
      source: MANUAL,
      basis: 'printed answer',
      ours: i => compoundMitre(i.sides, i.slope),
    }),
  ),
  outside({
    id: 'compound-mitre-other-convention',
    topic: 'angles',
    inputs: { sides: 4, slope: 30 },
    published: 49.1074,
    unit: 'degree',
    tolerance: 0.001,
    source:
      'Popular Woodworking 2000-12 p. 46, http://zhurnalko.net/=woodworking/popular-woodworking/2000-12-No-119--num46',
    basis: 'printed answer',
    ours: ({ sides, slope }) => otherScale(compoundMitre(sides, slope).mitre),
  }),
  outside({
    id: 'polygon-mitre',
    topic: 'angles',
    inputs: { sides: [4, 6, 8] },
    published: [45, 30, 22.5],
    unit: 'degree',
    tolerance: 1e-9,
    source:
      'https://pdfslide.net/documents/table-saw-joinery-woodworking-tools-table-saw-joinery-wood-joinery.html (8 sides printed)',
    basis: 'printed answer',
    ours: ({ sides }) => sides.map(polygonMitre),
  }),
  outside({
    id: 'mitre-ring-error',
    topic: 'angles',
    inputs: { sides: [3, 4, 5, 6, 8], error: 0.1 },
    published: [0.6, 0.8, 1, 1.2, 1.6],
    unit: 'degree',
    tolerance: 1e-9,
    source: 'closing error of a ring, error x 2N',
    basis: 'arithmetic',
    ours: ({ sides, error }) => sides.map(n => ringError(n, error)),
  }),
  outside({
    id: 'kerf-spacer-notch',
    topic: 'set-up',
    inputs: { slotMm: 8, kerfMm: 3.2 },
    published: 4.8,
    unit: 'mm',
    tolerance: 1e-9,
    source: 'two-cut slot: fence moves by slot width minus kerf',
    basis: 'arithmetic',
    ours: ({ slotMm, kerfMm }) => slotMoves(slotMm, kerfMm).at(-1) ?? Number.NaN,
  }),
  outside({
    id: 'tenon-by-flipping',
    topic: 'set-up',
    inputs: { stockMm: 22, tenonMm: 7.4 },
    published: { height: 7.3, tenonIfHigh: 7.2 },
    unit: 'mm',
    tolerance: 1e-9,
    source: 'centred tenon cut from both faces: height (stock - tenon) / 2, an error e changes it by 2 e',
    basis: 'arithmetic',
    ours: ({ stockMm, tenonMm }) => {
      const height = settingOf('Tenon cheeks', 'depth', flipped(stockMm, tenonMm));
      return { height, tenonIfHigh: stockMm - 2 * (height + 0.1) };
    },
  }),
  outside({
    id: 'tenon-glued-fit',
    topic: 'fits',
    inputs: { slotMm: 11, lowMm: 0.05, highMm: 0.15 },
    published: { inBand: 1 },
    unit: '-',
    tolerance: 0,
    source: 'trade fit of a tenon pushed in by hand, 0.05 to 0.15 mm in all',
    basis: 'memory',
    ours: ({ slotMm, lowMm, highMm }) => {
      const wanted = planSetUps(workedRail(), [], shop(), EFFORT).setups.find(
        s => s.wanted?.label === 'Tenon wanted',
      );
      const gap = slotMm - (wanted?.wanted?.value.value as number);
      return { inBand: gap >= lowMm - 1e-9 && gap <= highMm + 1e-9 ? 1 : 0 };
    },
  }),
  outside({
    id: 'plywood-18-groove-to-the-sheet',
    topic: 'fits',
    inputs: { measured: [17.1, 18.7] },
    published: [17.1, 18.7],
    unit: 'mm',
    tolerance: 0.15,
    source: 'plyterra.com: 18 mm birch plywood, sanded, 17.1 to 18.7; housing 0.05 to 0.15 over the sheet',
    basis: 'read values, arithmetic',
    ours: ({ measured }) =>
      measured.map(thickness => {
        const shelf = part('shelf', [435, 251, 18], [], {
          kind: 'sheet',
          material: 'plywood-birch',
          measured: { thickness },
          frame: {
            origin: { x: 0, y: 0, z: 0 },
            x: { x: 0, y: 0, z: 1 },
            y: { x: 0, y: 1, z: 0 },
            z: { x: -1, y: 0, z: 0 },
          },
        });
        const side = part(
          'side',
          [720, 278, 18],
          [
            pocket('housing', 'h.1', box(300, 0, 12, 318, 278, 18), {
              run: 'y',
              clearance: 0.1,
              mate: { instance: 'shelf', cut: '' },
            }),
          ],
        );
        const plan = planSetUps(pieceOf([side, shelf]), [], shop(), EFFORT);
        return plan.setups[0]?.wanted?.value.value as number;
      }),
  }),
  outside({
    id: 'router-speed-ladder',
    topic: 'machining',
    inputs: { inches: [1, 2, 2.5, 3.5] },
    published: [24000, 18000, 16000, 12000],
    unit: 'rpm',
    tolerance: 0,
    source: 'http://woodworking.about.com/od/safetyfirst/a/RouterBitSpeeds.htm',
    basis: 'printed answer',
    ours: ({ inches }) =>
      inches.map(d => {
        const found = routerTurns({
          id: 'c',
          name: 'c',
          kind: 'straight',
          diameter: d * 25.4,
          depth: 20,
          shank: 12,
          bearing: false,
        });
        return 'turns' in found ? found.turns : Number.NaN;
      }),
  }),
  outside({
    id: 'drill-speed-in-steel',
    topic: 'machining',
    inputs: { diameters: [4, 6, 8, 10] },
    published: { inBand: 4 },
    unit: 'drills',
    tolerance: 0,
    source: 'HSS drill in mild steel 25 to 30 m a minute',
    basis: 'memory',
    ours: ({ diameters }) => {
      const bar = part('bar', [300, 20, 5], [], { kind: 'bar', material: 'mild-steel' });
      const band = CUTTING_SPEEDS.find('drill-steel')!;
      const within = diameters.filter(diameter => {
        const { turns } = drillTurns({ id: 'd', name: 'd', kind: 'twist', diameter, depth: 60 }, bar);
        const speed = rimSpeed(diameter, turns);
        return speed >= band.low && speed <= band.high;
      });
      return { inBand: within.length };
    },
  }),
  outside({
    id: 'countersink-head-twice-nominal',
    topic: 'set-up',
    inputs: { screws: [3.5, 4, 5, 6] },
    published: [1.75, 2, 2.5, 3],
    unit: 'mm',
    tolerance: 1e-9,
    source: 'countersunk head about 2.0 x nominal, 90 degrees: from head to shank over the nominal half',
    basis: 'memory',
    ours: ({ screws }) => screws.map(d => countersinkDepth(2 * d, d, 90)),
  }),
];
