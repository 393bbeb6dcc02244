import { equilibriumMoisture, humidityForMoisture } from '../../src/timber/moisture.ts';
import { type OutsideCheck, outside } from './check.ts';

const REPRINT =
  'Wood Handbook EMC table as reprinted at https://woodworkerssource.com/wood-moisture-content.html';
const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;
const emc = ({ fahrenheit, rh }: { fahrenheit: number; rh: number }): number =>
  equilibriumMoisture(celsius(fahrenheit), rh);

const single = (id: string, fahrenheit: number, rh: number, published: number): OutsideCheck =>
  outside({
    id,
    topic: 'moisture',
    inputs: { fahrenheit, rh },
    published,
    unit: '%',
    tolerance: 0.06,
    source: REPRINT,
    basis: 'printed answer',
    ours: emc,
  });

/** Rows are humidities, columns temperatures. */
const GRID = {
  fahrenheit: [30, 40, 50, 60, 70, 80, 90, 100, 110, 120, 130],
  rows: [
    [5, [1.4, 1.4, 1.4, 1.3, 1.3, 1.3, 1.2, 1.2, 1.1, 1.1, 1.0]],
    [10, [2.6, 2.6, 2.6, 2.5, 2.5, 2.4, 2.3, 2.3, 2.2, 2.1, 2.0]],
    [15, [3.7, 3.7, 3.6, 3.6, 3.5, 3.5, 3.4, 3.3, 3.2, 3.0, 2.9]],
    [25, [5.5, 5.5, 5.5, 5.4, 5.4, 5.3, 5.1, 5.0, 4.9, 4.7, 4.5]],
    [30, [6.3, 6.3, 6.3, 6.2, 6.2, 6.1, 5.9, 5.8, 5.6, 5.4, 5.2]],
    [40, [7.9, 7.9, 7.9, 7.8, 7.7, 7.6, 7.4, 7.2, 7.0, 6.8, 6.6]],
    [50, [9.5, 9.5, 9.5, 9.4, 9.2, 9.1, 8.9, 8.7, 8.4, 8.2, 7.9]],
    [60, [11.3, 11.3, 11.2, 11.1, 11.0, 10.8, 10.5, 10.3, 10.0, 9.7, 9.4]],
    [65, [12.4, 12.3, 12.3, 12.1, 12.0, 11.7, 11.5, 11.2, 11.0, 10.6, 10.3]],
    [75, [14.9, 14.9, 14.8, 14.6, 14.4, 14.2, 13.9, 13.6, 13.2, 12.9, 12.5]],
    [85, [18.5, 18.5, 18.4, 18.2, 17.9, 17.7, 17.3, 17.0, 16.6, 16.2, 15.8]],
  ],
} as const;

/** The 70 F row of the handbook, RH and EMC. */
const ROW_70F = [
  [5, 1.3],
  [10, 2.5],
  [15, 3.5],
  [20, 4.5],
  [25, 5.4],
  [30, 6.2],
  [35, 6.9],
  [40, 7.7],
  [45, 8.5],
  [50, 9.2],
  [55, 10.1],
  [60, 11.0],
  [65, 12.0],
  [70, 13.1],
  [75, 14.4],
  [80, 16.0],
  [85, 17.9],
  [90, 20.5],
] as const;

export const checks: OutsideCheck[] = [
  single('emc-table-30F-20', 30, 20, 4.6),
  single('emc-table-40F-50', 40, 50, 9.5),
  single('emc-table-50F-65', 50, 65, 12.3),
  single('emc-table-80F-70', 80, 70, 12.9),
  outside({
    id: 'emc-table-grid',
    topic: 'moisture',
    inputs: GRID,
    published: GRID.rows.flatMap(([, values]) => values),
    unit: '%',
    tolerance: 0.06,
    source: REPRINT,
    basis: 'printed answer',
    ours: ({ rows, fahrenheit }) => rows.flatMap(([rh]) => fahrenheit.map(f => emc({ fahrenheit: f, rh }))),
  }),
  outside({
    id: 'emc-table-70F-row',
    topic: 'moisture',
    inputs: { temperatureC: 21.1, rh: ROW_70F.map(([rh]) => rh) },
    published: ROW_70F.map(([, value]) => value),
    unit: '%',
    tolerance: 0.06,
    source: REPRINT,
    basis: 'printed answer',
    ours: ({ temperatureC, rh }) => rh.map(h => equilibriumMoisture(temperatureC, h)),
  }),
  outside({
    id: 'emc-hot',
    topic: 'moisture',
    inputs: { temperatureC: 60, rh: 55 },
    published: 8.4,
    unit: '%',
    tolerance: 0.1,
    source: 'http://www.liquisearch.com/equilibrium_moisture_content',
    basis: 'printed answer',
    ours: ({ temperatureC, rh }) => equilibriumMoisture(temperatureC, rh),
  }),
  outside({
    id: 'emc-room-ladder',
    topic: 'moisture',
    inputs: { temperatureC: 21.1, rh: [30, 50, 65, 80] },
    published: [6, 9, 12, 16],
    unit: '%',
    tolerance: 0.3,
    source: 'http://www.woodweb.com/knowledge_base/EMCRH_ratios.html',
    basis: 'printed answer, rounded',
    ours: ({ temperatureC, rh }) => rh.map(h => equilibriumMoisture(temperatureC, h)),
  }),
  outside({
    id: 'emc-room-ladder-2',
    topic: 'moisture',
    inputs: { temperatureC: 21.1, rh: [30, 37, 44, 50] },
    published: [6, 7, 8, 9],
    unit: '%',
    tolerance: 0.35,
    source: 'https://www.woodworkingnetwork.com/knowledge-center/wood-dr/best-way-store-lumber',
    basis: 'printed answer, rounded',
    ours: ({ temperatureC, rh }) => rh.map(h => equilibriumMoisture(temperatureC, h)),
  }),
  outside({
    id: 'emc-60rh',
    topic: 'moisture',
    inputs: { temperatureC: 21.1, rh: [25, 60, 84, 87] },
    published: [5.3, 11.1, 17.6, 19.0],
    unit: '%',
    tolerance: 0.2,
    source: 'https://stoves.bioenergylists.org/emccalc (its RH is rounded)',
    basis: 'printed answer',
    ours: ({ temperatureC, rh }) => rh.map(h => equilibriumMoisture(temperatureC, h)),
  }),
  outside({
    id: 'rh-for-moisture-ladder',
    topic: 'moisture',
    inputs: { temperatureC: 21.1, moisturePct: [6, 9, 12, 16] },
    published: [30, 50, 65, 80],
    unit: '% RH',
    // The printed moistures are whole numbers: half a per cent is about 2.5 % RH.
    tolerance: 2.5,
    source: 'http://www.woodweb.com/knowledge_base/EMCRH_ratios.html, read backwards',
    basis: 'printed answer, rounded',
    ours: ({ temperatureC, moisturePct }) => moisturePct.map(m => humidityForMoisture(temperatureC, m)),
  }),
];
