import type { Keyed } from './keys.ts';
import type { Band, Trait } from './sourced.ts';

/** What is published of one timber. A figure nobody published, or that could not be read, is absent. */
export interface TimberSpecies extends Keyed {
  readonly name: string;
  readonly latin: string;
  readonly kind: 'hardwood' | 'softwood';
  /** kg/m3 at 12 % moisture. */
  readonly densityKgM3: Band;
  /** Oven-dry mass over the volume at 12 % moisture: what the handbook's fastener equations take. */
  readonly specificGravity12?: Band;
  /** C_R: change of size in the radial direction for 1 % change of moisture, as a fraction (0.0015 = 0.15 %). */
  readonly movementRadial?: Band;
  /** C_T: the same in the tangential direction. */
  readonly movementTangential?: Band;
  /** % of the green size, from green to oven dry. */
  readonly shrinkageRadialPct?: Band;
  readonly shrinkageTangentialPct?: Band;
  /** Bending modulus of elasticity at 12 %, MPa. */
  readonly stiffnessMPa?: Band;
  /** Modulus of rupture of small clear specimens at 12 %, MPa: a mean, not a design value. */
  readonly bendingStrengthMPa?: Band;
  /** Compression parallel to the grain at 12 %, MPa. */
  readonly crushingMPa?: Band;
  /** Shear parallel to the grain at 12 %, MPa. */
  readonly shearMPa?: Band;
  /** Side hardness by the 11.3 mm ball pressed half in, N. */
  readonly sideHardnessN?: Band;
  /** Hardness by ball impression across the grain, N/mm2. */
  readonly brinellMPa?: Band;
  /** small, medium or large movement in use. */
  readonly movementClass?: Trait;
  /** Natural durability of heartwood, class 1 (best) to 5. */
  readonly durability?: Trait;
  /** How readily the timber blackens with damp iron. */
  readonly ironStain?: Trait;
  readonly gluing?: Trait;
}
