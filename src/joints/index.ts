import type { JointCatalogue, JointType } from '../setting-out/joint-type.ts';
import { barInHole } from './bar-in-hole.ts';
import { barrelNut } from './barrel-nut.ts';
import { bedConnector } from './bed-connector.ts';
import { boxMitre } from './box-mitre.ts';
import { breadboardEnd } from './breadboard-end.ts';
import { button } from './button.ts';
import { cleat } from './cleat.ts';
import { cornerBridle } from './corner-bridle.ts';
import { cornerNotch } from './corner-notch.ts';
import { dowelled } from './dowelled.ts';
import { edgeGlued } from './edge-glued.ts';
import { fingerJoint } from './finger-joint.ts';
import { glueBlock } from './glue-block.ts';
import { groovedPanel } from './grooved-panel.ts';
import { halving } from './halving.ts';
import { hingeRecess } from './hinge-recess.ts';
import { housing } from './housing.ts';
import { lappedDovetail } from './lapped-dovetail.ts';
import { lipped } from './lipped.ts';
import { lockRecess } from './lock-recess.ts';
import { looseTenon } from './loose-tenon.ts';
import { mitreDowels } from './mitre-dowels.ts';
import { mitreKeys } from './mitre-keys.ts';
import { mitreSpline } from './mitre-spline.ts';
import { mitredFrame } from './mitred-frame.ts';
import { mortiseAndTenon } from './mortise-and-tenon.ts';
import { nailed } from './nailed.ts';
import { peggedTenon } from './pegged-tenon.ts';
import { pocketScrew } from './pocket-screw.ts';
import { roundTenon } from './round-tenon.ts';
import { runnerGroove } from './runner-groove.ts';
import { scarf } from './scarf.ts';
import { screwed } from './screwed.ts';
import { sheetBonded } from './sheet-bonded.ts';
import { sheetLetIn } from './sheet-let-in.ts';
import { shelfPins } from './shelf-pins.ts';
import { slidingDovetail } from './sliding-dovetail.ts';
import { slottedScrew } from './slotted-screw.ts';
import { splayedRail } from './splayed-rail.ts';
import { stoppedHousing } from './stopped-housing.ts';
import { tBridle } from './t-bridle.ts';
import { tablePlate } from './table-plate.ts';
import { taperedHousing } from './tapered-housing.ts';
import { tapped } from './tapped.ts';
import { threadedInsert } from './threaded-insert.ts';
import { throughDovetail } from './through-dovetail.ts';
import { tongueAndGroove } from './tongue-and-groove.ts';
import { tuskTenon } from './tusk-tenon.ts';
import { twinTenon } from './twin-tenon.ts';
import { wedgedTenon } from './wedged-tenon.ts';
import { welded } from './welded.ts';
import { weldedMitre } from './welded-mitre.ts';

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
  throughDovetail,
  lappedDovetail,
  slidingDovetail,
  fingerJoint,
  groovedPanel,
  tongueAndGroove,
  mitredFrame,
  mitreSpline,
  mitreKeys,
  mitreDowels,
  boxMitre,
  scarf,
  breadboardEnd,
  dowelled,
  splayedRail,
  barInHole,
  screwed,
  pocketScrew,
  nailed,
  cleat,
  glueBlock,
  threadedInsert,
  tapped,
  welded,
  weldedMitre,
  barrelNut,
  bedConnector,
  button,
  slottedScrew,
  tablePlate,
  shelfPins,
  hingeRecess,
  lockRecess,
  runnerGroove,
  edgeGlued,
  lipped,
  sheetBonded,
  sheetLetIn,
];

export const JOINT_CATALOGUE: JointCatalogue = new Map(JOINTS.map(j => [j.type, j]));
