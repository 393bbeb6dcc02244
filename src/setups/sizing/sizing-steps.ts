import { type Cut, ON_PART } from '../../results/cuts.ts';
import type { Operation, Sizing } from '../../results/operations.ts';
import type { Piece } from '../../results/piece.ts';
import type { Workshop } from '../../workshop/workshop.ts';
import type { Step } from '../batches.ts';
import { say1 } from '../figures.ts';
import { marksOf } from '../tasks.ts';
import { acrossByHand, acrossMetalSaw, acrossMitreSaw, acrossSled } from './across.ts';
import { alongBandSaw, alongByHand, alongTableSaw } from './along.ts';
import { planeDatum, planerDatum, thicknessByHand, thicknesserPasses } from './planing.ts';
import { sheetMetalByHand } from './sheet-metal.ts';
import { endsMadeByMitre, type Sized, type SizingMethod } from './sized.ts';

/** In the order they are tried; rough widths of timber go to the band saw first. */
const METHODS: readonly SizingMethod[] = [
  alongBandSaw,
  alongTableSaw,
  alongByHand,
  acrossMitreSaw,
  acrossSled,
  acrossMetalSaw,
  acrossByHand,
  planerDatum,
  planeDatum,
  thicknesserPasses,
  thicknessByHand,
  sheetMetalByHand,
];

const SLUG: Record<Sizing, string> = {
  'rough length': 'rough-length',
  'rough width': 'rough-width',
  face: 'face',
  edge: 'edge',
  thickness: 'thickness',
  width: 'width',
  length: 'length',
  'sheet metal': 'sheet',
};

/** What a sizing step stands for in a run: `size.width`. It is no cut of the part, so nothing else looks it up. */
export const sizingCut = (to: Sizing): Pick<Cut, 'id' | 'by' | 'stage'> => ({
  id: `size.${SLUG[to]}`,
  by: `size-${SLUG[to]}`,
  stage: ON_PART,
});

interface SizingPlan {
  steps: Step[];
  refused: { step: Step; reasons: { method: string; reason: string }[] }[];
  unmade: { instance: string; cut: string; refused: { method: string; reason: string }[] }[];
}

/** Steps that bring every part to size, from the operations that ask for it (SET-25). */
export function sizingSteps(piece: Piece, operations: readonly Operation[], workshop: Workshop): SizingPlan {
  const plan: SizingPlan = { steps: [], refused: [], unmade: [] };
  const instances = new Map(piece.instances.map(i => [i.id, i]));
  const blanks = new Map(piece.groups.flatMap(g => g.instances.map(id => [id, g.blank] as const)));
  const marks = marksOf(piece);
  const tests = testPieces(operations);
  for (const operation of operations) {
    const to = operation.sizing;
    if (to === undefined) continue;
    for (const id of operation.instances) {
      const instance = instances.get(id);
      if (!instance || (to === 'length' && endsMadeByMitre(instance))) continue;
      const mark = marks.get(id) ?? instance.name;
      const sized: Sized = { instance, mark, blank: blanks.get(id) ?? instance.size, to, workshop };
      const reasons: { method: string; reason: string }[] = [];
      let drafts: ReturnType<SizingMethod['attempt']> | undefined;
      for (const method of METHODS.filter(m => m.brings.includes(to))) {
        const attempt = method.attempt(sized);
        if (attempt.ok) {
          drafts = attempt;
          break;
        }
        reasons.push({ method: method.name, reason: attempt.reason });
      }
      if (!drafts?.ok) {
        plan.unmade.push({ instance: id, cut: sizingCut(to).id, refused: reasons });
        continue;
      }
      drafts.drafts.forEach((draft, index) => {
        const withTests = to === 'thickness' ? [...draft.before, ...(tests.get(id) ?? [])] : draft.before;
        const step: Step = {
          task: { instance, mark, cut: sizingCut(to) },
          draft: { ...draft, before: withTests },
          operations: [operation],
          index,
        };
        plan.steps.push(step);
        if (reasons.length > 0) plan.refused.push({ step, reasons });
      });
    }
  }
  return plan;
}

/** Test pieces by the part they stand for: they are planed with it, in the same pass (SET-25). */
function testPieces(operations: readonly Operation[]): Map<string, string[]> {
  const words = new Map<string, string[]>();
  for (const { testPiece, title } of operations)
    if (testPiece)
      words.set(testPiece.of, [
        ...(words.get(testPiece.of) ?? []),
        `In the same pass: test piece ${say1(testPiece.length)} long, ${title.charAt(0).toLowerCase()}${title.slice(1)}`,
      ]);
  return words;
}
