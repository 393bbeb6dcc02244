/** Oils, hardwax oils, waxes and soap. */
import { DAY, type FinishProduct, HOUR } from './finish-row.ts';
import { memory, read, trait } from './sourced.ts';

const HARDWAX = 'https://hausjournal.net/hartwachsoel-trockenzeit';
const COFFIN = 'casketbuildersupply.com pure-tung-oil';
const ARMANI = 'armanifinewoodworking.com tung-oil-half-half';
const DANISH = 'https://pinocchiopedia.com/wiki/Danish_oil (cites Collins manual)';
const LINSEED = 'https://askvity.info/wood-finishing/how-is-linseed-oil-applied';
const WATERLOX = 'waterlox.com ?p=421';

const RAGS = trait(
  'Rags, pads and sanding dust heat by themselves: from one hour in summer to days',
  'read',
  'kreidezeit.de danger-of-self-ignition; clou.netzton.de selbstentzuendungsgefahr',
  'soak in water, dry spread flat outdoors, or close in a metal tin under water',
);
const EN_71_3 = trait(
  'Ask the maker for the EN 71-3 report of the product',
  'memory',
  'remembered, unverified',
);

export const OIL_FINISHES: readonly FinishProduct[] = [
  {
    key: 'hardwax-oil',
    name: 'Hardwax oil',
    family: 'hardwax oil',
    on: 'timber',
    also: ['hard-wax-oil', 'hardwax-oil-clear', 'hardwax-oil-white'],
    spreadM2PerL: memory(20, 30, 'a coat on smooth timber'),
    coats: memory(2, 2),
    touchDryMinutes: read(6 * HOUR, 12 * HOUR, HARDWAX, 'dust dry'),
    recoatMinutes: read(8 * HOUR, 24 * HOUR, HARDWAX, 'the page prints 80-10 for 8-10'),
    recoatWithinMinutes: memory(2 * DAY, 2 * DAY, 'lightly abraded after 48 h it takes a coat at any time'),
    useMinutes: read(1 * DAY, 2 * DAY, HARDWAX, 'light use'),
    cureMinutes: read(7 * DAY, 7 * DAY, HARDWAX, 'about a week'),
    minTemperatureC: read(16, 16, HARDWAX, 'some makers'),
    vocGPerL: memory(300, 500, 'solvent type'),
    lastGrit: read(
      120,
      150,
      'https://engineerfix.com/how-to-apply-hard-wax-oil-for-a-durable-finish',
      'floors and coloured oils',
    ),
    hazards: ['rags heat and take fire'],
    remarks: [
      RAGS,
      EN_71_3,
      trait('Too thick, or not wiped while wet: white water spots', 'read', 'sn-home.de hartwachsoel 57398'),
    ],
  },
  {
    key: 'hardwax-oil-2k',
    name: 'Hardwax oil with hardener',
    family: 'hardwax oil',
    on: 'timber',
    also: ['hardwax-oil-two-part'],
    spreadM2PerL: memory(30, 50, 'one coat'),
    coats: memory(1, 1),
    touchDryMinutes: read(2 * HOUR, 2 * HOUR, HARDWAX, 'about'),
    cureMinutes: memory(5 * DAY, 7 * DAY, 'water after 5 days'),
    vocGPerL: memory(0, 50),
    hazards: ['rags heat and take fire', 'sensitiser'],
    remarks: [RAGS, EN_71_3],
  },
  {
    key: 'danish-oil',
    name: 'Danish oil',
    family: 'oil',
    on: 'timber',
    also: ['teak-oil'],
    spreadM2PerL: read(12.5, 12.5, DANISH),
    coats: read(3, 3, DANISH, 'usually'),
    recoatMinutes: read(4 * HOUR, 24 * HOUR, DANISH),
    flashPointC: memory(38, 65, 'white-spirit type'),
    hazards: ['rags heat and take fire'],
    remarks: [RAGS],
  },
  {
    key: 'linseed-oil-boiled',
    name: 'Boiled linseed oil',
    family: 'oil',
    on: 'timber',
    also: ['linseed-oil'],
    spreadM2PerL: memory(12, 20, 'wiped'),
    wipeMinutes: read(0.5 * HOUR, 0.5 * HOUR, LINSEED),
    recoatMinutes: read(24 * HOUR, 48 * HOUR, LINSEED),
    hazards: ['rags heat and take fire'],
    remarks: [
      RAGS,
      trait(
        'Dries 3 to 5 times as slowly as Danish oil',
        'read',
        'https://docslib.org/doc/12747891/watco-danish-oil-finish',
      ),
    ],
  },
  {
    key: 'linseed-oil-raw',
    name: 'Raw linseed oil',
    family: 'oil',
    on: 'timber',
    recoatMinutes: memory(3 * DAY, 7 * DAY, 'a thin coat'),
    hazards: ['rags heat and take fire'],
    remarks: [RAGS],
  },
  {
    key: 'tung-oil',
    name: 'Tung oil, pure',
    family: 'oil',
    on: 'timber',
    spreadM2PerL: read(9.8, 9.8, `${COFFIN}; ${ARMANI}`, '400 sq ft a US gallon, undiluted'),
    coats: read(3, 5, ARMANI, 'thinned 1:1; undiluted at least five'),
    recoatMinutes: read(3 * DAY, 3 * DAY, 'pinetarworld.com tung-oil; woodwaker.com'),
    useMinutes: read(7 * DAY, 10 * DAY, `${ARMANI}; ${COFFIN}`, 'sheds water'),
    cureMinutes: read(15 * DAY, 30 * DAY, `${COFFIN}; ${ARMANI}`),
    hazards: ['rags heat and take fire', 'sensitiser'],
    remarks: [
      RAGS,
      trait(
        'Pressed from a nut: ask the client about allergies',
        'read',
        'toutelachirurgieesthetique.fr tung (weak source)',
      ),
    ],
  },
  {
    key: 'wax-paste',
    name: 'Paste wax',
    family: 'wax',
    on: 'timber',
    also: ['wax', 'beeswax'],
    spreadM2PerL: memory(15, 25, 'beeswax paste'),
    spreadM2PerKg: memory(20, 40),
    wipeMinutes: memory(10, 30, 'haze, then buff'),
    hazards: ['flammable vapour'],
    remarks: [trait('Goes last: nothing with a film holds over it', 'memory', 'remembered, unverified')],
  },
  {
    key: 'soap',
    name: 'Soap flakes',
    family: 'soap',
    on: 'timber',
    also: ['soap-finish'],
    coats: memory(3, 4, '60-100 g a litre; pale timbers'),
    recoatMinutes: memory(24 * HOUR, 24 * HOUR),
    hazards: [],
    remarks: [],
  },
  {
    key: 'tung-oil-varnish',
    name: 'Wiping varnish on tung oil, low VOC',
    family: 'oil varnish',
    on: 'timber',
    also: ['wiping-varnish'],
    spreadM2PerL: read(12.3, 12.3, WATERLOX, '500 sq ft a US gallon'),
    recoatMinutes: read(
      24 * HOUR,
      24 * HOUR,
      WATERLOX,
      'before sanding; 18-24 h more after sanding, in moving air',
    ),
    hazards: ['rags heat and take fire', 'flammable vapour'],
    remarks: [RAGS],
  },
];
