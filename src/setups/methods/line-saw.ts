import type { ProfileCut } from '../../results/cuts.ts';
import { MACHINE_FILES } from '../../workshop/machines/index.ts';
import { lengthSetting, say1 } from '../figures.ts';
import { type Method, made, refuse, type Task } from '../method.ts';
import { outlineOf, tightest } from '../outline.ts';
import { outlineDraft } from '../outline-draft.ts';
import { beyond, machineOf } from '../shop.ts';
import { cutName, trueSize } from '../sizes.ts';
import { isMetal } from '../speeds.ts';
import { handBench } from './hand-bench.ts';

const asProfile = (task: Task): Task<ProfileCut> => ({ ...task, cut: task.cut as ProfileCut });

/** Radius that a band of a width turns, mm (SET-28): the next wider band of the chart. */
const TURNS: readonly [band: number, radius: number][] = [
  [3.2, 5],
  [6.4, 16],
  [9.6, 37],
  [12.7, 64],
  [19.1, 138],
];
export const bandRadius = (width: number): number => TURNS.find(([band]) => width <= band + 0.01)?.[1] ?? 184;

/** Band width where the maker gave none: the usual one for curves (common practice), mm. */
const USUAL_BAND = 6;

const CLEAN: Partial<Record<ProfileCut['kind'], string>> = {
  curve: 'spokeshave, downhill from both ends',
  scribe: 'block plane, held a little under so that the front edge touches first',
  bevel: 'jack plane to the line',
  slant: 'plane or chisel to the line',
};

/** Sawn just outside the line at the band saw, then worked down to it. */
export const bandSawLine: Method = {
  name: 'band saw, then spokeshave',
  makes: ['curve', 'scribe', 'bevel', 'slant'],
  attempt(plain) {
    const task = asProfile(plain);
    const { cut, instance, workshop } = task;
    if (isMetal(instance)) return refuse('the band is for timber');
    const machine = machineOf(workshop, 'band saw');
    if (!machine) return refuse('the workshop has no band saw');
    const view = outlineOf(instance, cut);
    if (!view.whole) return refuse(`the ${cutName(cut)} does not go right through; a band cuts through`);
    if (view.closed) return refuse(`the ${cutName(cut)} is closed all round; a band cannot enter`);
    const limit = beyond(machine, { depth: view.thick, piece: trueSize(instance, 'x') });
    if (limit) return refuse(limit);
    const own = workshop.blades.filter(b => b.machine === machine.id);
    const radius = tightest(view.points);
    const blade = [...own]
      .sort((a, b) => Number(b.use === 'curve') - Number(a.use === 'curve'))
      .find(b => bandRadius(b.width ?? USUAL_BAND) <= radius + 0.5);
    if (!blade && own.length > 0)
      return refuse(
        `the line turns to a radius of ${say1(radius)}, the narrowest band turns ${Math.min(
          ...own.map(b => bandRadius(b.width ?? USUAL_BAND)),
        )}`,
      );
    const guides = Math.ceil(view.thick + 3);
    return made(
      outlineDraft(task, view, {
        method: `sawn outside the line, then ${CLEAN[cut.kind] ?? 'to the line'}`,
        machine,
        tool: blade ? `${blade.name}, kerf ${say1(blade.kerf)}` : 'band for curves',
        toolId: blade?.id ?? 'band',
        kerf: blade?.kerf ?? 0.8,
        hand: false,
        extra: [lengthSetting('guides', guides, `${say1(view.thick)} of wood and 3 over it`, 'band')],
        before: ['The line is drawn on the face side from the template, waste hatched'],
        after: ['A square across the edge shows no light; the line is just gone'],
        cautions: [...MACHINE_FILES['band saw'].cautions],
        passes: 2,
      }),
    );
  },
};

const HAND: Record<ProfileCut['kind'], { timber: string; method: string }> = {
  dovetail: { timber: 'dovetail saw, chisel', method: 'sawn on the waste side, pared to the gauge line' },
  curve: { timber: 'bow saw or coping saw, spokeshave', method: 'sawn outside the line, spokeshaved to it' },
  'cut-out': {
    timber: 'drill, coping saw, rasp, file',
    method: 'drilled in the waste, sawn inside the line, filed to it',
  },
  bevel: { timber: 'jack plane, bevel', method: 'planed to two lines' },
  slant: { timber: 'back saw, chisel, bevel', method: 'sawn and pared to the lines' },
  scribe: { timber: 'coping saw, block plane', method: 'sawn outside the scribed line, planed to it' },
};

/** To marked lines with hand tools: always possible, never quick. */
export const lineByHand: Method = {
  name: 'by hand to the line',
  makes: ['dovetail', 'curve', 'cut-out', 'bevel', 'slant', 'scribe'],
  attempt(plain) {
    const task = asProfile(plain);
    const machine = handBench(task.workshop);
    if (!machine) return refuse('no hand tools are in the workshop file');
    const view = outlineOf(task.instance, task.cut);
    const metal = isMetal(task.instance);
    const { timber, method } = HAND[task.cut.kind];
    const tool = metal ? 'scriber, piercing saw, files' : timber;
    const dovetail = task.cut.kind === 'dovetail';
    return made(
      outlineDraft(task, view, {
        method: metal ? 'sawn outside the scribed line, filed to it' : method,
        machine,
        tool,
        toolId: tool,
        kerf: dovetail ? 0.4 : 0.8,
        hand: true,
        before: dovetail
          ? [
              'Gauge line all round, set a shaving over the mate; the second half is marked with a knife from the first',
            ]
          : ['Line marked with knife or scriber on both faces'],
        after: dovetail ? ['Closes by light taps of the mallet; no light at the gauge line'] : [],
        cautions: [...MACHINE_FILES['hand tools'].cautions],
        passes: dovetail ? 3 : 2,
      }),
    );
  },
};
