import type { TenonCut } from '../../results/cuts.ts';
import { mm } from '../../results/quantity.ts';
import { CAUTIONS, twice } from '../cautions.ts';
import { say1 } from '../figures.ts';
import { type Draft, type Method, made, refuse, type Task } from '../method.ts';
import { slotMoves } from '../pocket.ts';
import { routerDraft } from '../router-draft.ts';
import { beyond, machineOf } from '../shop.ts';
import { FACE_WORDS, faceAxis, opposite, trueSize } from '../sizes.ts';
import { mitredTip } from './mitred-tip.ts';
import { likeSides, planTenon, reachHow } from './tenon-plan.ts';

/** Cheeks flat on the router table, tip to the fence, a square block behind: bit height leaves the tenon. */
export const tenonRouterTable: Method = {
  name: 'router table',
  makes: ['tenon'],
  attempt(task) {
    const cut = task.cut as TenonCut;
    const tenon: Task<TenonCut> = { ...task, cut };
    const machine = machineOf(task.workshop, 'router table');
    if (!machine) return refuse('the workshop has no router table');
    const plan = planTenon(tenon);
    const deepest = Math.max(...[plan.high, plan.low, ...plan.edges].map(s => s?.amount ?? 0));
    const cutter = task.workshop.cutters
      .filter(c => c.kind === 'straight' && c.depth >= deepest - 0.02)
      .sort((a, b) => b.diameter - a.diameter)[0];
    if (!cutter) return refuse(`no straight cutter reaches ${say1(deepest)} deep`);
    const limit = beyond(machine, {
      depth: deepest,
      fence: plan.length.value - cutter.diameter,
      piece: trueSize(task.instance, 'x'),
    });
    if (limit) return refuse(limit);
    const drafts: Draft[] = [];
    for (const sides of likeSides([plan.high, plan.low, ...plan.edges])) {
      const side = sides[0]!;
      const isCheek = faceAxis(side.face) === plan.axis;
      const draft = routerDraft({
        what: isCheek ? 'Tenon cheeks' : 'Tenon edges',
        method: 'flat on the router table',
        machine,
        cutter,
        part: task.instance,
        inTable: true,
        fenceName: 'fence',
        near: side.reach - cutter.diameter,
        reads: 'far',
        how: reachHow(plan, side),
        rule: 'kerf',
        depth: side.amount,
        depthHow: side.how,
        depthRule: isCheek && plan.centred ? 'flipped' : 'reference',
        moves: slotMoves(side.reach, cutter.diameter).map(m => -m),
        lays: sides.map((s, i) => ({
          label: i === 0 ? FACE_WORDS[s.face] : 'turned',
          down: s.face,
          against: cut.end,
          entry: s.face,
          end: opposite(s.face),
        })),
        work: {
          width: Math.min(trueSize(task.instance, 'x'), side.reach * 2 + 60),
          height: trueSize(task.instance, faceAxis(side.face)),
        },
        end: cut.end,
        ...(isCheek
          ? {
              wanted: { label: 'Tenon wanted', value: mm(plan.thickness.value), how: plan.thickness.how },
              correction: plan.centred
                ? {
                    share: 'half' as const,
                    tooBig: 'Too thick: raise the cutter by half the difference.',
                    tooSmall: 'Too thin: lower the cutter by half the difference.',
                    setting: 'depth',
                    bigger: 'up' as const,
                  }
                : {
                    share: 'whole' as const,
                    tooBig: 'Too thick: raise the cutter by the whole difference.',
                    tooSmall: 'Too thin: lower the cutter by the whole difference.',
                    setting: 'depth',
                    bigger: 'up' as const,
                  },
              trial: true,
            }
          : {}),
        cautions: [CAUTIONS.router, ...(isCheek && plan.centred ? [twice('tenon')] : [])],
        kerfSide: `in the tenon's waste, shoulder at ${say1(side.reach)} from the tip`,
      });
      if ('reason' in draft) return refuse(draft.reason);
      drafts.push(draft);
    }
    return made(...drafts, ...mitredTip(tenon, plan));
  },
};
