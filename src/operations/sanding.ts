import type { FinishRecipe } from '../results/commission.ts';
import type { Instance } from '../results/piece.ts';
import type { Work } from './times.ts';
import { surfaceM2 } from './view.ts';

/** Below this width a part is sanded by hand as a leg or edge, above it as a flat. Common practice. */
const FLAT_FROM_MM = 80;

/** Two grits where a recipe names none: common practice under oil and varnish. */
const USUAL_GRITS = [120, 180];

export function usualGrits(recipe: FinishRecipe | undefined): number[] {
  const named = recipe?.steps.flatMap(step =>
    step.kind === 'prepare' && step.grit !== undefined ? [step.grit] : [],
  );
  return named && named.length > 0 ? named : USUAL_GRITS;
}

/** Sanding of some share of the surface; several grits are that many shares. */
export function sandWork(copies: readonly Instance[], share: number): Work[] {
  const flat = copies.filter(copy => copy.size.width >= FLAT_FROM_MM);
  const narrow = copies.filter(copy => copy.size.width < FLAT_FROM_MM);
  return [
    { key: 'sand-flat', times: surfaceM2(flat) * share },
    { key: 'sand-hand', times: surfaceM2(narrow) * share },
  ];
}
