/** Sheet materials: density, stiffness, movement with moisture, true thickness against nominal. */
import { type Keyed, table } from './keys.ts';
import type { TimeMaterial } from './load-duration.ts';
import { type Band, band, computed, memory, read, type Sourced } from './sourced.ts';

/** A thickness sold under a nominal figure; the sheet in hand lies between nominal - minus and nominal + plus. */
export interface SheetThickness extends Sourced {
  readonly nominalMm: number;
  readonly minusMm: number;
  readonly plusMm: number;
  readonly plies?: number;
}

/** Figures that hold for part of the thickness range only. */
export interface ThicknessFigures {
  readonly fromMm: number;
  readonly toMm: number;
  readonly densityKgM3?: Band;
  readonly stiffnessAlongMPa?: Band;
  readonly bendingStrengthMPa?: Band;
}

export interface SheetMaterial extends Keyed {
  readonly name: string;
  readonly kind: 'plywood' | 'fibreboard' | 'chipboard';
  readonly densityKgM3: Band;
  /** Bending stiffness along the face grain or the length of the sheet, MPa. */
  readonly stiffnessAlongMPa: Band;
  /** The same across; absent where the board has no direction. */
  readonly stiffnessAcrossMPa?: Band;
  readonly bendingStrengthMPa?: Band;
  /** Change of length and width for 1 % change of moisture, as a fraction. */
  readonly movementInPlane: Band;
  /** Change of thickness for 1 % change of moisture, as a fraction. */
  readonly movementInThickness?: Band;
  /** Tolerance on thickness where it does not depend on the nominal figure. */
  readonly thicknessTolerance?: Omit<SheetThickness, 'nominalMm'>;
  readonly thicknesses: readonly SheetThickness[];
  readonly byThickness: readonly ThicknessFigures[];
  /** Screw holding, N, of the maker's sheet. */
  readonly screwFaceN?: Band;
  readonly screwEdgeN?: Band;
  /** Its row in the tables of load over time. */
  readonly creep: TimeMaterial;
}

const PLYTERRA = 'plyterra.com and nestplywood.com size tables';
const FIBRE_SHEET = 'fibreboard maker sheet, https://scribd.com/document/675071407/TECH-SPECT-converted';
const SWISSKRONO = 'http://www.en.mdm.swisskrono.pl/Particle-Boards/Technical-data (EN 312 P2)';
const ETC = 'https://www.etcsupply1.com/technical-specification/ (P2)';
const MDF_INFO = 'http://mdf-info.eu/using-mdf/handling-and-storing/controlling-moisture-content';
const EWPAA =
  'https://www.yumpu.com/en/document/view/39274817/facts-about-particleboard-and-mdf-engineered-wood-products-/37';

const birch = (nominalMm: number, plusMm: number, minusMm: number, plies: number): SheetThickness => ({
  nominalMm,
  plusMm,
  minusMm,
  plies,
  source: PLYTERRA,
  basis: 'read',
  note: 'sanded; unsanded runs 0.5-0.6 thicker',
});

/**
 * Thickness tolerance of sanded plywood, mm: +(0.2 + 0.03 t) and -(0.4 + 0.03 t).
 * Source: EN 315, remembered; within 0.07 mm of the read birch table, save its 6.5 and 9 mm rows, which allow 0.1 and
 * 0.17 less under the nominal.
 */
export function sandedPlywoodTolerance(nominalMm: number): SheetThickness {
  return {
    nominalMm,
    plusMm: 0.2 + 0.03 * nominalMm,
    minusMm: 0.4 + 0.03 * nominalMm,
    source: 'EN 315 sanded, remembered formula, checked against the read birch table',
    basis: 'memory',
  };
}

export const SHEETS = table<SheetMaterial>([
  {
    key: 'birch-plywood',
    name: 'Birch plywood',
    kind: 'plywood',
    densityKgM3: memory(680, 680, 'typical maker figure'),
    stiffnessAlongMPa: memory(9000, 10000, 'typical maker figure, many plies'),
    stiffnessAcrossMPa: memory(7500, 7500, 'typical maker figure'),
    bendingStrengthMPa: memory(60, 60, 'mean along the face grain; 50 across'),
    movementInPlane: memory(0.00015, 0.0002, '0.015-0.02 % for 1 % moisture'),
    thicknesses: [
      birch(4, 0.3, 0.5, 3),
      birch(6.5, 0.4, 0.5, 5),
      birch(9, 0.4, 0.5, 7),
      birch(12, 0.5, 0.7, 9),
      birch(15, 0.6, 0.8, 11),
      birch(18, 0.7, 0.9, 13),
      birch(21, 0.8, 1.0, 15),
      birch(24, 0.9, 1.1, 17),
      birch(27, 1.0, 1.2, 19),
      birch(30, 1.1, 1.3, 21),
    ],
    byThickness: [],
    creep: 'plywood',
  },
  {
    key: 'softwood-plywood',
    name: 'Softwood plywood',
    kind: 'plywood',
    densityKgM3: memory(520, 520, 'typical figure'),
    stiffnessAlongMPa: memory(8000, 8000, 'typical figure'),
    stiffnessAcrossMPa: memory(4000, 4000, 'typical figure'),
    bendingStrengthMPa: memory(30, 30, 'along; 15 across'),
    movementInPlane: memory(0.00015, 0.0002, '0.015-0.02 % for 1 % moisture'),
    thicknesses: [],
    byThickness: [],
    creep: 'plywood',
  },
  {
    key: 'mdf',
    name: 'MDF',
    kind: 'fibreboard',
    also: ['medium-density-fibreboard'],
    densityKgM3: read(740, 760, FIBRE_SHEET),
    stiffnessAlongMPa: memory(2100, 2500, 'EN 622-5 general purpose: least values'),
    bendingStrengthMPa: memory(18, 22, 'EN 622-5 general purpose: least values'),
    movementInPlane: read(0.0005, 0.0005, MDF_INFO, 'about 0.05 % for 1 % moisture'),
    movementInThickness: read(0.0035, 0.0035, MDF_INFO, '0.35 % for 1 % moisture'),
    thicknessTolerance: { minusMm: 0.2, plusMm: 0.2, source: FIBRE_SHEET, basis: 'read' },
    thicknesses: [],
    byThickness: [
      { fromMm: 0, toMm: 9, densityKgM3: read(840, 840, FIBRE_SHEET, 'row over 6 to 9 mm') },
      {
        fromMm: 9,
        toMm: 12,
        stiffnessAlongMPa: memory(2500, 2500, 'EN 622-5'),
        bendingStrengthMPa: memory(22, 22, 'EN 622-5'),
      },
      {
        fromMm: 12,
        toMm: 19,
        densityKgM3: read(760, 760, FIBRE_SHEET, 'row over 15 to 19 mm'),
        stiffnessAlongMPa: memory(2200, 2200, 'EN 622-5'),
        bendingStrengthMPa: memory(20, 20, 'EN 622-5'),
      },
      {
        fromMm: 19,
        toMm: 30,
        densityKgM3: read(740, 740, FIBRE_SHEET),
        stiffnessAlongMPa: memory(2100, 2100, 'EN 622-5'),
        bendingStrengthMPa: memory(18, 18, 'EN 622-5'),
      },
    ],
    screwFaceN: read(1050, 1050, FIBRE_SHEET, 'over 15 mm'),
    screwEdgeN: read(850, 850, FIBRE_SHEET, 'over 15 mm'),
    creep: 'mdf',
  },
  {
    key: 'chipboard',
    name: 'Chipboard P2',
    kind: 'chipboard',
    also: ['particleboard'],
    densityKgM3: read(600, 700, SWISSKRONO),
    stiffnessAlongMPa: read(1350, 1800, ETC),
    bendingStrengthMPa: read(8.5, 13, `${SWISSKRONO}; ${ETC}`),
    movementInPlane: computed(0.00025, 0.00033, EWPAA, '9 to 12 % gives 1 mm a metre, 12 to 16 % another'),
    thicknessTolerance: {
      minusMm: 0.3,
      plusMm: 0.3,
      source: 'EN 312 / EN 14323, remembered',
      basis: 'memory',
    },
    thicknesses: [],
    byThickness: [
      {
        fromMm: 9,
        toMm: 12,
        densityKgM3: read(690, 700, SWISSKRONO),
        stiffnessAlongMPa: read(1800, 1800, ETC),
      },
      {
        fromMm: 12,
        toMm: 19,
        densityKgM3: read(650, 670, SWISSKRONO),
        stiffnessAlongMPa: read(1600, 1600, ETC),
      },
      {
        fromMm: 19,
        toMm: 25,
        densityKgM3: read(640, 640, SWISSKRONO),
        stiffnessAlongMPa: read(1500, 1500, ETC),
      },
      {
        fromMm: 25,
        toMm: 28,
        densityKgM3: read(620, 620, SWISSKRONO),
        stiffnessAlongMPa: read(1350, 1350, ETC, 'row of 30 mm'),
      },
      {
        fromMm: 28,
        toMm: 38,
        densityKgM3: read(600, 610, SWISSKRONO),
        stiffnessAlongMPa: read(1350, 1350, ETC, 'row of 30 mm'),
      },
    ],
    creep: 'chipboard',
  },
  {
    key: 'chipboard-melamine',
    name: 'Chipboard, melamine faced',
    kind: 'chipboard',
    also: ['melamine-faced-chipboard', 'mfc'],
    densityKgM3: read(600, 700, SWISSKRONO, 'core board'),
    stiffnessAlongMPa: read(1350, 1800, ETC, 'core board'),
    movementInPlane: computed(0.00025, 0.00033, EWPAA, 'core board'),
    thicknessTolerance: { minusMm: 0.3, plusMm: 0.5, source: 'etcsupply1.com', basis: 'read' },
    thicknesses: [],
    byThickness: [
      {
        fromMm: 12,
        toMm: 19,
        densityKgM3: read(650, 670, SWISSKRONO),
        stiffnessAlongMPa: read(1600, 1600, ETC),
      },
      {
        fromMm: 19,
        toMm: 25,
        densityKgM3: read(640, 640, SWISSKRONO),
        stiffnessAlongMPa: read(1500, 1500, ETC),
      },
    ],
    creep: 'chipboard',
  },
  {
    key: 'hardboard',
    name: 'Hardboard',
    kind: 'fibreboard',
    densityKgM3: memory(900, 900, 'EN 622-2'),
    stiffnessAlongMPa: memory(2500, 5000, 'a wide range between makes'),
    bendingStrengthMPa: memory(30, 30, 'EN 622-2, 3.5 to 5.5 mm'),
    movementInPlane: memory(0.0003, 0.0006),
    thicknesses: [],
    byThickness: [],
    creep: 'hardboard',
  },
]);

/** The sheet material of that key, of another name for it, or of the same words in another order. */
export const sheetMaterial = (key: string): SheetMaterial | undefined => SHEETS.find(key);

/**
 * What a sheet sold as `nominalMm` may measure, mm. Undefined where no tolerance is known.
 * A groove is cut to the sheet in hand; this band says how far it may lie from the nominal.
 */
export function sheetThickness(material: SheetMaterial, nominalMm: number): Band | undefined {
  const listed = material.thicknesses.find(row => row.nominalMm === nominalMm);
  const tolerance =
    listed ??
    material.thicknessTolerance ??
    (material.kind === 'plywood' ? sandedPlywoodTolerance(nominalMm) : undefined);
  if (!tolerance) return undefined;
  return band(
    nominalMm - tolerance.minusMm,
    nominalMm + tolerance.plusMm,
    tolerance.basis,
    tolerance.source,
    tolerance.note,
  );
}

/** The figures of a board of this thickness: those of its thickness row where there is one, else the general ones. */
export function sheetFigures(
  material: SheetMaterial,
  thicknessMm: number,
): { densityKgM3: Band; stiffnessAlongMPa: Band; stiffnessAcrossMPa: Band; bendingStrengthMPa?: Band } {
  const row = material.byThickness.find(
    figures => thicknessMm > figures.fromMm && thicknessMm <= figures.toMm,
  );
  const stiffnessAlongMPa = row?.stiffnessAlongMPa ?? material.stiffnessAlongMPa;
  const bendingStrengthMPa = row?.bendingStrengthMPa ?? material.bendingStrengthMPa;
  return {
    densityKgM3: row?.densityKgM3 ?? material.densityKgM3,
    stiffnessAlongMPa,
    stiffnessAcrossMPa: material.stiffnessAcrossMPa ?? stiffnessAlongMPa,
    ...(bendingStrengthMPa ? { bendingStrengthMPa } : {}),
  };
}
