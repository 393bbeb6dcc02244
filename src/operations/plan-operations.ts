import { ADHESIVES } from '../reference/adhesives.ts';
import type { Commission } from '../results/commission.ts';
import { type Fault, fault } from '../results/fault.ts';
import type { Operation } from '../results/operations.ts';
import type { Piece } from '../results/piece.ts';
import type { Workshop } from '../workshop/workshop.ts';
import { addAssemblies } from './assemblies.ts';
import { addCuts } from './cuts.ts';
import { addFinishes } from './finishing.ts';
import { addFitting } from './fitting.ts';
import { addFurtherRules } from './further-rules.ts';
import { OrderOfWork } from './order-of-work.ts';
import { readOrderJudged } from './set-aside.ts';
import { addStock } from './stock.ts';
import { glueTimes } from './times.ts';
import { type View, viewOf } from './view.ts';

/**
 * Everything that has to be done to make the piece, and what must come before what, by the numbered rules
 * of the order of work (order-rules.ts). Reads cut kinds, assemblies, glue and finish recipes; never asks
 * which joint a cut came from. Minutes are the workshop's own where it has them, else the tables'.
 * A ring in the order is a fault and is opened, so that the rest can be planned. `overruled` may set rules aside
 * by keys such as `order.ORD-10`; other keys are passed over.
 */
export function planOperations(
  piece: Piece,
  commission: Commission,
  workshop: Workshop,
  overruled: Readonly<Record<string, { reason: string }>> = {},
): { operations: Operation[]; faults: Fault[] } {
  const view = viewOf(piece, commission, workshop);
  const work = new OrderOfWork();
  if (piece.instances.length === 0) return { operations: [], faults: [] };
  const prepared = addStock(view, work);
  const groups = addCuts(view, work, prepared);
  const made = addAssemblies(view, work, prepared, groups);
  const { finished, faults } = addFinishes(view, work, made, groups);
  addFurtherRules(view, work, groups);
  addFitting(view, work, made, groups, finished);
  const { judged, faults: unfit } = readOrderJudged(overruled);
  const done = work.done(judged);
  return {
    operations: done.operations,
    faults: [...unknownGlues(view), ...faults, ...unfit, ...done.faults],
  };
}

function unknownGlues(view: View): Fault[] {
  return view.assemblies.flatMap(({ assembly }) =>
    assembly.glue === undefined || glueTimes(view.workshop, assembly.glue)
      ? []
      : [
          fault(
            `assemblies.${assembly.id}.glue`,
            `no glue is called "${assembly.glue}"`,
            `nearest: ${[...Object.keys(view.workshop.adhesives), ...ADHESIVES.nearest(assembly.glue)].slice(0, 4).join(', ')}`,
            "an adhesive of the tables or of the workshop's own",
          ),
        ],
  );
}
