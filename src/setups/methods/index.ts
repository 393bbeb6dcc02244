import type { Cut, CutKind } from '../../results/cuts.ts';
import type { Draft, Method, Task } from '../method.ts';
import { bendInVice } from './bend.ts';
import { bevelTableSaw } from './bevel-saw.ts';
import { bradawl } from './bradawl.ts';
import { chiselMortiser } from './chisel-mortiser.ts';
import { dovetailRouter } from './dovetail-router.ts';
import { handRouterEdge, planeEdge, routerTableEdge } from './edge.ts';
import { handEnd, metalSawEnd, mitreSawEnd, sledEnd } from './end-cut.ts';
import { dowelJig, drillPress, handDrill } from './hole.ts';
import { latheTurning, roundByHand } from './lathe.ts';
import { handRouterTemplate, routerTableTemplate } from './line-router.ts';
import { bandSawLine, lineByHand } from './line-saw.ts';
import { openMortiseJig } from './open-mortise.ts';
import { pocketHand } from './pocket-hand.ts';
import { rebateTwoCuts } from './rebate-two-cuts.ts';
import { handRouterPocket, routerTablePocket } from './router-pocket.ts';
import { sawPocket } from './saw-pocket.ts';
import { slotMortiser } from './slot-mortiser.ts';
import { taperBandSaw, taperPlane, taperSled } from './taper.ts';
import { tenonHand } from './tenon-hand.ts';
import { tenonRouterTable } from './tenon-router.ts';
import { tenonUprightJig } from './tenon-upright-jig.ts';

/** Methods in the order they are tried: by machine first, by hand last. */
export const METHODS: readonly Method[] = [
  tenonUprightJig,
  tenonRouterTable,
  tenonHand,
  chiselMortiser,
  slotMortiser,
  openMortiseJig,
  rebateTwoCuts,
  sawPocket,
  routerTablePocket,
  handRouterPocket,
  pocketHand,
  sledEnd,
  mitreSawEnd,
  metalSawEnd,
  handEnd,
  drillPress,
  dowelJig,
  handDrill,
  bradawl,
  routerTableEdge,
  handRouterEdge,
  planeEdge,
  taperSled,
  taperBandSaw,
  taperPlane,
  bevelTableSaw,
  dovetailRouter,
  routerTableTemplate,
  handRouterTemplate,
  bandSawLine,
  lineByHand,
  latheTurning,
  roundByHand,
  bendInVice,
];

const BY_KIND = new Map<CutKind, Method[]>();
for (const method of METHODS)
  for (const kind of method.makes) BY_KIND.set(kind, [...(BY_KIND.get(kind) ?? []), method]);

export const methodsFor = (cut: Cut): readonly Method[] => {
  const all = BY_KIND.get(cut.kind) ?? [];
  // Round ends want the slot mortiser first; a recess is the hand router's own work.
  if (cut.kind === 'mortise' && cut.corner === 'round')
    return [...all].sort((a, b) => Number(b === slotMortiser) - Number(a === slotMortiser));
  if (cut.kind === 'recess')
    return [...all].sort((a, b) => Number(b === handRouterPocket) - Number(a === handRouterPocket));
  if (cut.kind === 'hole' && (cut.face === 'end1' || cut.face === 'end2'))
    return [...all].sort((a, b) => Number(b === dowelJig) - Number(a === dowelJig));
  return all;
};

export type Choice =
  | { ok: true; drafts: Draft[]; method: string; refused: { method: string; reason: string }[] }
  | { ok: false; refused: { method: string; reason: string }[] };

/** The first method that can make the cut, with the reasons of those before it. */
export function chooseMethod(task: Task): Choice {
  const refused: { method: string; reason: string }[] = [];
  for (const method of methodsFor(task.cut)) {
    const attempt = method.attempt(task);
    if (attempt.ok) return { ok: true, drafts: attempt.drafts, method: method.name, refused };
    refused.push({ method: method.name, reason: attempt.reason });
  }
  return { ok: false, refused };
}
