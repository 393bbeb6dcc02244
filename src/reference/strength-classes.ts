/** Strength classes of structural timber, characteristic values: EN 338 figures as open engineering libraries carry them. */
import { type Keyed, table } from './keys.ts';
import type { Sourced } from './sourced.ts';

export interface StrengthClass extends Keyed, Sourced {
  /** MPa: bending, tension and compression along, compression across, shear. */
  readonly bending: number;
  readonly tension: number;
  readonly crushing: number;
  readonly crushingAcross: number;
  readonly shear: number;
  /** Modulus of elasticity along the grain, mean and 5 % value; shear modulus: MPa. */
  readonly stiffness: number;
  readonly stiffness5: number;
  readonly shearModulus: number;
  /** kg/m3, 5 % value and mean. */
  readonly density5: number;
  readonly density: number;
}

const MATERIALCLASSES = 'EN 338 by github egilmonsas/materialclasses';
const EUROCODEPY = 'EN 338 by github pcachim/eurocodepy@90d3dec';
const BOTH = `${MATERIALCLASSES} and pcachim/eurocodepy@90d3dec, which agree`;

type Figures = [number, number, number, number, number, number, number, number, number, number];

const strengthClassRow = (key: string, f: Figures, source: string, note?: string): StrengthClass => ({
  key,
  bending: f[0],
  tension: f[1],
  crushing: f[2],
  crushingAcross: f[3],
  shear: f[4],
  stiffness: f[5],
  stiffness5: f[6],
  shearModulus: f[7],
  density5: f[8],
  density: f[9],
  source,
  basis: 'read',
  ...(note ? { note } : {}),
});

export const STRENGTH_CLASSES = table<StrengthClass>([
  strengthClassRow('c14', [14, 7.2, 16, 2.0, 3.0, 7000, 4700, 440, 290, 350], MATERIALCLASSES),
  strengthClassRow('c16', [16, 8.5, 17, 2.2, 3.2, 8000, 5400, 500, 310, 370], BOTH),
  strengthClassRow('c18', [18, 10, 18, 2.2, 3.4, 9000, 6000, 560, 320, 380], MATERIALCLASSES),
  strengthClassRow('c20', [20, 11.5, 19, 2.3, 3.6, 9500, 6400, 590, 330, 400], MATERIALCLASSES),
  strengthClassRow('c22', [22, 13, 20, 2.4, 3.8, 10000, 6700, 630, 340, 410], MATERIALCLASSES),
  strengthClassRow('c24', [24, 14.5, 21, 2.5, 4.0, 11000, 7400, 690, 350, 420], BOTH),
  strengthClassRow('c27', [27, 16.5, 22, 2.5, 4.0, 11500, 7700, 720, 360, 430], MATERIALCLASSES),
  strengthClassRow(
    'c30',
    [30, 19, 24, 2.7, 4.0, 12000, 8000, 750, 380, 460],
    MATERIALCLASSES,
    'a second library prints the C27 stiffness here',
  ),
  strengthClassRow('c35', [35, 22.5, 25, 2.7, 4.0, 13000, 8700, 810, 390, 470], MATERIALCLASSES),
  strengthClassRow('c40', [40, 26, 27, 2.8, 4.0, 14000, 9400, 880, 400, 480], MATERIALCLASSES),
  strengthClassRow('d24', [24, 14, 21, 4.9, 3.7, 10000, 8400, 630, 485, 580], EUROCODEPY),
  strengthClassRow('d30', [30, 18, 24, 5.3, 3.9, 11000, 9200, 690, 530, 640], EUROCODEPY),
  strengthClassRow(
    'd40',
    [40, 24, 27, 5.5, 4.2, 13000, 10900, 810, 550, 660],
    EUROCODEPY,
    'stiffness 13000 remembered: the 13600 printed breaks the ratio all other D classes keep',
  ),
  strengthClassRow('d50', [50, 30, 30, 6.2, 4.5, 14000, 11800, 880, 620, 740], EUROCODEPY),
  strengthClassRow('d60', [60, 36, 33, 10.5, 4.8, 17000, 14300, 1060, 700, 840], EUROCODEPY),
  strengthClassRow('d70', [70, 42, 36, 12, 5.0, 20000, 16800, 1250, 800, 960], EUROCODEPY),
]);

/** A strength class by name: `C24`, `D30`. */
export const strengthClass = (name: string): StrengthClass | undefined => STRENGTH_CLASSES.find(name);
