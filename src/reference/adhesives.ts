/** Adhesives: what they bond, how long they stay open, when the clamps come off. The bottle wins over all of it. */
import { type Keyed, table } from './keys.ts';
import { type Band, band, memory, read } from './sourced.ts';

export type Bondable = 'timber' | 'sheet' | 'metal' | 'glass' | 'laminate';

export interface Adhesive extends Keyed {
  readonly name: string;
  /** What it holds to each other: common practice, so tried on an offcut where it matters. */
  readonly bonds: readonly Bondable[];
  /** Spread to closing, at 20 degC and 50 % humidity unless the note says otherwise. */
  readonly openMinutes?: Band;
  /** Closing to full pressure. */
  readonly closedMinutes?: Band;
  /** Time to dry before closing (contact adhesive only). */
  readonly dryMinutes?: Band;
  /** Least time under clamps for a joint that is not under stress. */
  readonly clampMinutes?: Band;
  /** The same for a joint that wants to spring open (a bent lamination). */
  readonly clampStressedMinutes?: Band;
  /** Until it may be planed, sanded or loaded in full. */
  readonly fullStrengthMinutes?: Band;
  readonly minTemperatureC?: Band;
  readonly heatLimitC?: Band;
  readonly timberMoisturePct?: Band;
  /** Thickness of glue line within which it keeps its strength; `high` is the gap it may fill. */
  readonly glueLineMm?: Band;
  /** One face. */
  readonly spreadGPerM2?: Band;
  readonly coverageM2PerL?: Band;
  /** Shear strength of the bond. */
  readonly shearMPa?: Band;
  /** Needs clamping pressure, or contact only. */
  readonly pressure: 'clamped' | 'contact' | 'struck';
  readonly cautions: readonly string[];
}

const GLUING_GUIDE = 'https://studylib.net/doc/18296895/new-tech-gluing-guide-f';
const COLD_SHOP = 'https://www.renovateyourworld.com/2017/01/01/glue-temperature/';
const WOOD_GLUE_LABEL = `http://www.shoprite.com/pd/Elmers/Carpenters-Wood-Glue/4-fl-oz/026000070003/; ${COLD_SHOP}`;
const STRUCTURAL_REPAIR = 'http://kraska.biz/adhesives-in-civil-engineering/working-characteristics/';
const CLAMP_REMOVAL =
  'https://startwoodworkingnow.com/wood-glue-drying-time-before-clamp-removal/ (weak source)';
const HOT_HIDE =
  'https://askvity.info/hide-glue/how-to-use-hot-hide-glue ; https://www.shellac.net/product3121.html';
const DAY = 24 * 60;

const PVA = {
  bonds: ['timber', 'sheet'],
  openMinutes: memory(5, 10),
  closedMinutes: memory(10, 15),
  clampMinutes: read(30, 60, GLUING_GUIDE, 'at least; longer when cold or wet'),
  clampStressedMinutes: read(DAY, DAY, GLUING_GUIDE),
  fullStrengthMinutes: read(DAY, DAY, GLUING_GUIDE, 'at least'),
  timberMoisturePct: read(
    6,
    8,
    GLUING_GUIDE,
    'American guide; 8-12 % is usual for UK interiors (remembered)',
  ),
  glueLineMm: memory(0.02, 0.1, 'working range'),
  spreadGPerM2: memory(120, 200, 'one side'),
  pressure: 'clamped',
} as const;

export const ADHESIVES = table<Adhesive>([
  {
    ...PVA,
    key: 'pva',
    name: 'PVA, white',
    also: ['pva-white', 'white-glue'],
    minTemperatureC: read(13, 13, WOOD_GLUE_LABEL, '55 F, glue and wood'),
    cautions: ['Not for damp places. Creeps under lasting stress. Squeeze-out shows under stain.'],
  },
  {
    ...PVA,
    key: 'pva-yellow',
    name: 'Aliphatic (yellow) wood glue',
    also: ['aliphatic', 'yellow-glue'],
    minTemperatureC: read(4, 4, COLD_SHOP, 'about 40 F'),
    cautions: ['Creeps under lasting stress. Squeeze-out shows under stain.'],
  },
  {
    ...PVA,
    key: 'pva-d3',
    name: 'PVA, water-resistant D3',
    also: ['d3', 'pvac-d3'],
    openMinutes: memory(6, 10, 'D3 grades'),
    minTemperatureC: memory(5, 10),
    cautions: ['For short exposure to water, not for weather. Squeeze-out shows under stain.'],
  },
  {
    ...PVA,
    key: 'pva-d4',
    name: 'PVA, weather-resistant D4',
    also: ['d4', 'pvac-d4'],
    minTemperatureC: memory(5, 10, 'chalks below'),
    cautions: ['Outdoors only under a surface coating. Squeeze-out shows under stain.'],
  },
  {
    key: 'polyurethane',
    name: 'Polyurethane, one part',
    also: ['pur', 'polyurethane-glue'],
    bonds: ['timber', 'sheet', 'metal'],
    openMinutes: memory(10, 30, 'by grade'),
    clampMinutes: read(45, 240, GLUING_GUIDE, 'two editions conflict (0.75 h and 4 h): the bottle wins'),
    fullStrengthMinutes: read(DAY, 2 * DAY, CLAMP_REMOVAL, '13-24 degC'),
    minTemperatureC: memory(5, 10),
    timberMoisturePct: memory(8, 12, 'or mist the faces'),
    glueLineMm: memory(0.05, 0.2, 'the foam that fills a wider gap carries nothing'),
    spreadGPerM2: memory(100, 200),
    pressure: 'clamped',
    cautions: ['Gloves: it stains skin and sensitises. Foams out of the joint.'],
  },
  {
    key: 'epoxy',
    name: 'Epoxy, slow',
    also: ['epoxy-slow', 'epoxy-resin'],
    bonds: ['timber', 'sheet', 'metal', 'glass', 'laminate'],
    openMinutes: band(
      20,
      60,
      'memory',
      `remembered pot life of 100 g at 20 degC; ${STRUCTURAL_REPAIR} asks 20 min open`,
    ),
    clampMinutes: memory(6 * 60, DAY, '20 degC, contact pressure only'),
    fullStrengthMinutes: memory(3 * DAY, 7 * DAY, '20 degC; the rate about halves for each 10 K less'),
    glueLineMm: memory(0.1, 0.5, 'best on metal about 0.1 mm (read: discovery.researcher.life)'),
    shearMPa: read(
      5.516,
      5.516,
      'filled epoxy, 800 psi: https://epoxyworks.com/more-on-hardware-bonding',
      'thickened it bridges up to twice the bar',
    ),
    pressure: 'contact',
    cautions: [
      'Gloves and air: resin and hardener sensitise. A thick pour heats and may smoke. Mix by weight.',
    ],
  },
  {
    key: 'contact',
    name: 'Contact adhesive, solvent',
    also: ['contact-adhesive', 'contact-cement'],
    bonds: ['sheet', 'metal', 'laminate'],
    dryMinutes: read(
      15,
      30,
      'https://www.perryspowerhouse.com/blog/how-long-does-contact-cement-take-to-dry- (weak source)',
      'both faces; water-based 60-120',
    ),
    fullStrengthMinutes: memory(DAY, 3 * DAY),
    heatLimitC: read(
      70,
      80,
      'https://studylib.net/doc/18432608/technical-data-sheet ; https://zh.scribd.com/document/293951218/Alcolin-Contact-Adhesive-TDS-pdf',
    ),
    glueLineMm: memory(0.1, 0.2, 'both films together'),
    coverageM2PerL: memory(2.5, 4, 'bonded area, both faces coated'),
    pressure: 'struck',
    cautions: [
      'Flammable vapour: no flame, no sparks, open the doors. Cannot be shifted once closed.',
      'Stays soft: not for a solid timber face or a stressed joint.',
    ],
  },
  {
    key: 'hide-hot',
    name: 'Hide glue, hot',
    also: ['hide-glue', 'animal-glue'],
    bonds: ['timber'],
    openMinutes: read(
      1,
      1,
      'https://w00dworking.com/finishes-glues/glues/hide-glue/',
      'about a minute; urea lengthens it',
    ),
    heatLimitC: read(66, 66, HOT_HIDE, 'work at 57-63 degC; over 66 it is spoiled'),
    glueLineMm: memory(0.02, 0.08, 'working range'),
    pressure: 'clamped',
    cautions: ['Comes apart with heat and water: repairable, not for damp places.'],
  },
  {
    key: 'hide-liquid',
    name: 'Hide glue, liquid',
    bonds: ['timber'],
    clampMinutes: memory(12 * 60, DAY),
    glueLineMm: memory(0.02, 0.08, 'working range'),
    pressure: 'clamped',
    cautions: ['Comes apart with heat and water: repairable, not for damp places.'],
  },
  {
    key: 'cyanoacrylate',
    name: 'Cyanoacrylate',
    also: ['ca', 'superglue'],
    bonds: ['timber', 'metal', 'glass'],
    clampMinutes: read(0.33, 0.5, CLAMP_REMOVAL, 'sets in 20-30 s'),
    fullStrengthMinutes: read(8 * 60, DAY, CLAMP_REMOVAL),
    pressure: 'contact',
    cautions: ['Bonds skin at once; the vapour stings the eyes. Brittle: for small repairs and positioning.'],
  },
]);

/** The adhesive of that key, of another name for it, or of the same words in another order. */
export const adhesive = (key: string): Adhesive | undefined => ADHESIVES.find(key);

/** Whether the adhesive holds both kinds of material. */
export function bondsBoth(glue: Adhesive, one: Bondable, other: Bondable): boolean {
  return glue.bonds.includes(one) && glue.bonds.includes(other);
}

export type Hardness = 'softwood' | 'medium hardwood' | 'hardwood';

/** Clamping pressure for wood glues, MPa. Medium: cherry, soft maple; hard: oak, birch. */
export const CLAMP_PRESSURE_MPA: Readonly<Record<Hardness, Band>> = {
  softwood: read(0.69, 1.03, GLUING_GUIDE, '100-150 psi'),
  'medium hardwood': read(1.03, 1.38, GLUING_GUIDE, '150-200 psi; cherry, soft maple'),
  hardwood: read(1.38, 2.07, GLUING_GUIDE, '200-300 psi; oak, birch'),
};

/** Clamps along an edge: distance from each other, and of the first from the end. */
export const CLAMP_SPACING_MM = read(200, 300, GLUING_GUIDE, '8-12 in');
export const CLAMP_FROM_END_MM = read(38, 50, GLUING_GUIDE);

/** In a cold shop a PVA glue-up may take this many times as long. */
export const COLD_SHOP_FACTOR = read(2, 2, COLD_SHOP);

/** What the durability classes of wood glue are for: EN 204. */
export const GLUE_CLASSES = {
  D1: 'interior, moisture up to 15 %; over 50 degC only briefly and seldom',
  D2: 'interior with short occasional running or condensed water; moisture up to 18 %',
  D3: 'interior with frequent short water or high humidity; outdoors not exposed to weather',
  D4: 'interior with frequent long water; outdoors exposed to weather under a surface coating',
  source:
    'EN 204 as quoted at https://www.gluegunsdirect.com/service-and-advice/what-are-d2-d3-d4-pvac-adhesives/',
  basis: 'read',
} as const;
