import type { JointCatalogue, JointType } from '../setting-out/joint-type.ts';
import { barInHole } from './bar-in-hole.ts';
import { button } from './button.ts';
import { cornerBridle } from './corner-bridle.ts';
import { cornerNotch } from './corner-notch.ts';
import { dowelled } from './dowelled.ts';
import { edgeGlued } from './edge-glued.ts';
import { groovedPanel } from './grooved-panel.ts';
import { halving } from './halving.ts';
import { housing } from './housing.ts';
import { looseTenon } from './loose-tenon.ts';
import { mitredFrame } from './mitred-frame.ts';
import { mortiseAndTenon } from './mortise-and-tenon.ts';
import { peggedTenon } from './pegged-tenon.ts';
import { roundTenon } from './round-tenon.ts';
import { screwed } from './screwed.ts';
import { sheetBonded } from './sheet-bonded.ts';
import { sheetLetIn } from './sheet-let-in.ts';
import { stoppedHousing } from './stopped-housing.ts';
import { tBridle } from './t-bridle.ts';
import { taperedHousing } from './tapered-housing.ts';
import { tongueAndGroove } from './tongue-and-groove.ts';
import { tuskTenon } from './tusk-tenon.ts';
import { twinTenon } from './twin-tenon.ts';
import { wedgedTenon } from './wedged-tenon.ts';

/** Every joint the product knows: a new one is one file and one line here. */
export const JOINTS: readonly JointType[] = [
  mortiseAndTenon,
  peggedTenon,
  twinTenon,
  wedgedTenon,
  roundTenon,
  tuskTenon,
  looseTenon,
  cornerBridle,
  tBridle,
  housing,
  stoppedHousing,
  taperedHousing,
  halving,
  cornerNotch,
  groovedPanel,
  tongueAndGroove,
  mitredFrame,
  dowelled,
  barInHole,
  screwed,
  button,
  edgeGlued,
  sheetBonded,
  sheetLetIn,
];

export const JOINT_CATALOGUE: JointCatalogue = new Map(JOINTS.map(j => [j.type, j]));
