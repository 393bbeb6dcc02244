import type { ProfileCut } from '../../results/cuts.ts';
import { MACHINE_FILES } from '../../workshop/machines/index.ts';
import type { Cutter, MachineKind } from '../../workshop/workshop.ts';
import { lengthSetting, otherSetting, say1 } from '../figures.ts';
import { type Method, made, refuse, type Task } from '../method.ts';
import { outlineOf, tightest } from '../outline.ts';
import { outlineDraft } from '../outline-draft.ts';
import { beyond, machineOf } from '../shop.ts';
import { cutName, trueSize } from '../sizes.ts';
import { depthSteps, isMetal, routerTurns } from '../speeds.ts';

/** What the saw leaves for the cutter: mm (common practice). */
const LEFT = 2;

const asProfile = (task: Task): Task<ProfileCut> => ({ ...task, cut: task.cut as ProfileCut });

/**
 * A template held under or on the work guides a bearing on the cutter, so that a set comes out alike. The work is
 * sawn 2 mm outside the line first.
 */
const templated = (kind: MachineKind, name: string): Method => ({
  name,
  makes: ['curve', 'cut-out'],
  attempt(plain) {
    const task = asProfile(plain);
    const { cut, instance, workshop } = task;
    if (isMetal(instance)) return refuse('router cutters are not for this metal');
    const machine = machineOf(workshop, kind);
    if (!machine) return refuse(`the workshop has no ${kind}`);
    const view = outlineOf(instance, cut);
    if (!view.whole) return refuse(`the ${cutName(cut)} stops in the wood; a bearing needs an edge`);
    const guided = workshop.cutters.filter(c => c.kind === 'straight' && c.bearing);
    if (guided.length === 0) return refuse('the workshop has no straight cutter with a bearing');
    const found = reaching(guided, view.thick, tightest(view.points, true));
    if (typeof found === 'string') return refuse(found);
    const speed = routerTurns(found);
    if ('reason' in speed) return refuse(speed.reason);
    const length = trueSize(instance, 'x');
    const limit = beyond(machine, {
      depth: view.thick,
      ...(kind === 'router table' ? { piece: length } : {}),
    });
    if (limit) return refuse(limit);
    if (kind === 'router table' && length * trueSize(instance, 'y') > 0.35e6)
      return refuse(`${say1(length)} by ${say1(trueSize(instance, 'y'))} is unwieldy on the router table`);
    const sharp = cut.kind === 'cut-out' && view.points.length <= 4;
    return made(
      outlineDraft(task, view, {
        method: 'bearing against a template',
        machine,
        tool: found.name,
        toolId: found.id,
        kerf: LEFT,
        hand: false,
        extra: [
          otherSetting(
            'passes',
            'count',
            depthSteps(found, view.thick, instance),
            `${say1(view.thick)} in equal depths`,
            'depthPass',
          ),
          otherSetting('speed', 'number', speed.turns, `turns a minute at most; ${speed.how}`, 'speed'),
          lengthSetting('left', LEFT, 'sawn outside the line, for the cutter', 'outline'),
        ],
        before: [
          'Template of 9 mm sheet, filed fair, reaches past the work at both ends of the cut',
          cut.kind === 'cut-out'
            ? 'A hole is drilled in the waste, and the waste sawn out'
            : 'The waste is sawn off',
        ],
        after: sharp ? ['Corners squared with a chisel'] : [],
        cautions: [
          ...MACHINE_FILES[kind].cautions,
          ...(kind === 'router table'
            ? ['Start against a pin: without a fence the cutter grabs at the entry.']
            : []),
          'From the high of the curve down to the low, then turn the work: end grain and rising grain tear.',
        ],
        passes: depthSteps(found, view.thick, instance),
      }),
    );
  },
});

/** The widest guided cutter that reaches through and gets into the tightest hollow, or why there is none. */
function reaching(guided: readonly Cutter[], thick: number, radius: number): Cutter | string {
  const long = guided.filter(c => c.depth >= thick - 0.02);
  if (long.length === 0)
    return `the longest cutter with a bearing reaches ${say1(Math.max(...guided.map(c => c.depth)))}, the work is ${say1(thick)}`;
  const fit = long.filter(c => c.diameter / 2 <= radius + 0.02).sort((a, b) => b.diameter - a.diameter)[0];
  return (
    fit ??
    `the line turns to a radius of ${say1(radius)}, the smallest cutter with a bearing has ${say1(Math.min(...long.map(c => c.diameter)) / 2)}`
  );
}

export const routerTableTemplate = templated('router table', 'router table, template and bearing');
export const handRouterTemplate = templated('hand router', 'hand router, template and bearing');
