/**
 * Loads that furniture is tested with or meets in use. Remembered test loads say so; none is a claim of conformity,
 * and a piece that can hurt someone is judged by qualified people.
 */
import { type Keyed, table } from './keys.ts';
import { type Band, memory, read } from './sourced.ts';

export interface FurnitureLoad extends Keyed, Band {
  readonly what: string;
  readonly unit: 'N' | 'kg' | 'kg/m' | 'mm' | 'mm/m' | '% of span' | 'kN/m2' | 'days' | 'kg/m3';
}

const STABILITY =
  'EN 1022 as described at https://en.tentangkayu.com/2022/06/chair-stability-tests-based-on-en-1022.html';
const CPSC =
  '16 CFR 1261 (2022): https://www.cpsc.gov/Business--Manufacturing/Business-Education/FAQ?p=3019&tid%5B3026%5D=3026';
const ASTM =
  'ASTM F2057-23 scope: https://standards.iteh.ai/catalog/standards/astm/97081063-1d45-4135-aa09-d6b627ec143e/astm-f2057-23';
const STORAGE = 'EN 16122: https://freestandardsdownload.com/bs-en-16122-2012-pdf-download.html';
const SAG = 'Fine Woodworking, https://issuhub.com/view/index/5674?pageIndex=25';

const row = (key: string, what: string, unit: FurnitureLoad['unit'], value: Band): FurnitureLoad => ({
  key,
  what,
  unit,
  ...value,
});

export const FURNITURE_LOADS = table<FurnitureLoad>([
  row(
    'user-mass',
    'seating: mass of the user',
    'kg',
    read(110, 110, 'EN 12520:2015, https://online.standard.no/en/ns-en-12520-2015; EN 1022'),
  ),
  row(
    'seat-static',
    'domestic seat: static load',
    'N',
    memory(1300, 1300, 'EN 12520/1728, 10 times; a maker of test rigs prints 600'),
  ),
  row(
    'seat-durability',
    'domestic seat: repeated load',
    'N',
    memory(1000, 1000, 'EN 12520/1728, 25000 times'),
  ),
  row('back-static', 'domestic seat: back static', 'N', memory(450, 450, 'EN 12520/1728, 10 times')),
  row('back-durability', 'domestic seat: back repeated', 'N', memory(300, 300, 'EN 12520/1728, 25000 times')),
  row('arm-sideways', 'domestic seat: arm sideways', 'N', memory(300, 300, 'EN 12520/1728, low confidence')),
  row('arm-downward', 'domestic seat: arm downward', 'N', memory(700, 700, 'EN 12520/1728, low confidence')),
  row(
    'leg-forward',
    'domestic seat: legs forward, seat loaded 1000 N',
    'N',
    memory(400, 400, 'EN 12520/1728, low confidence'),
  ),
  row(
    'leg-sideways',
    'domestic seat: legs sideways, seat loaded 1000 N',
    'N',
    memory(300, 300, 'EN 12520/1728, low confidence'),
  ),
  row(
    'seat-tip-vertical',
    'seat stability: vertical load',
    'N',
    read(600, 600, STABILITY, '60 mm behind the front edge at the worst point'),
  ),
  row('seat-tip-horizontal', 'seat stability: horizontal force', 'N', read(20, 20, STABILITY, 'held 5 s')),
  row('seat-tip-distance', 'seat stability: load from the edge', 'mm', read(60, 60, STABILITY)),
  row(
    'table-static',
    'domestic table: vertical load on the top',
    'N',
    memory(1000, 1000, 'EN 12521/1730, 10 times'),
  ),
  row(
    'table-horizontal',
    'domestic table: horizontal load',
    'N',
    memory(400, 400, 'EN 12521/1730, low confidence'),
  ),
  row(
    'table-tip',
    'domestic table: load 50 mm from the edge',
    'N',
    memory(200, 200, 'EN 12521, low confidence'),
  ),
  row('storage-tip-distance', 'storage to 1 m high: load from the outer edge', 'mm', read(50, 50, STORAGE)),
  row('wall-storage-overload', 'wall-hung storage: loaded for', 'days', read(7, 7, STORAGE)),
  row('drawer-fill', 'clothes in drawers', 'kg/m3', read(136, 136, CPSC, '8.5 lb a cubic foot')),
  row(
    'tip-child-mass',
    'clothing storage: test weight',
    'kg',
    read(
      27.2,
      27.2,
      'ASTM F2057-23: https://sn.astm.org/update/clothing-storage-units-standard-ma23.html',
      '60 lb',
    ),
  ),
  row('tip-rule-height', 'clothing storage: tip rules from a height of', 'mm', read(686, 686, ASTM, '27 in')),
  row('tip-rule-mass', 'clothing storage: tip rules from a mass of', 'kg', read(13.6, 13.6, ASTM, '30 lb')),
  row(
    'books',
    'full bookshelf',
    'kg/m',
    read(30, 37, 'brezlin.com/design/shelvingguidelines (cabinetmaker)', '20 to 25 lb a foot'),
  ),
  row('books-heavy', 'full bookshelf, heavy books', 'kg/m', memory(30, 60)),
  row('books-area', 'bookshelf, by area', 'kN/m2', memory(1.5, 1.5, 'about 40 kg/m on a 250 mm shelf')),
  row('sag-at-once', 'shelf: sag to begin with, at most', 'mm/m', read(1.667, 1.667, SAG, '0.02 in a foot')),
  row(
    'sag-seen',
    'shelf: sag the eye sees',
    'mm/m',
    read(2.6, 2.6, `${SAG}; brezlin.com/design/shelvingguidelines`, '1/32 in a foot'),
  ),
  row('sag-standard', 'storage shelf: customary limit', '% of span', memory(0.5, 0.5, 'EN 14749/ISO 7170')),
]);

/** The load of that key. */
export const furnitureLoad = (key: string): FurnitureLoad | undefined => FURNITURE_LOADS.find(key);
