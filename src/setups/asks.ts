import type { MachineQuestion } from '../results/setups.ts';
import { type Limit, MACHINE_FILES } from '../workshop/machines/index.ts';
import type { Machine, MachineKind, Workshop } from '../workshop/workshop.ts';

interface Used {
  machine: Machine;
  title: string;
}

interface Missed {
  title: string;
  refused: readonly { reason: string }[];
}

const LIMITS: readonly Limit[] = ['maxDepth', 'fence', 'maxTilt', 'shortest', 'widest', 'longest'];

const isKind = (text: string): text is MachineKind => text in MACHINE_FILES;

/**
 * What the workshop file leaves open, asked only of machines that a set-up uses, and of machines that a cut nobody
 * can make would want. Each question once, with what needs it.
 */
export function questions(
  workshop: Workshop,
  used: readonly Used[],
  missed: readonly Missed[],
): MachineQuestion[] {
  const asked = new Map<string, MachineQuestion>();
  const ask = (machine: string, asks: string, because: string): void => {
    if (!asked.has(`${machine}|${asks}`)) asked.set(`${machine}|${asks}`, { machine, asks, because });
  };
  for (const { machine, title } of used) {
    const file = MACHINE_FILES[machine.kind];
    for (const limit of LIMITS) {
      const question = file.limits[limit];
      if (question && machine[limit] === undefined)
        ask(machine.name, `${question.asks} (usually ${question.usual.join(' to ')})`, title);
    }
    if (!machine.change.measured) ask(machine.name, 'minutes of a change: remembered ones stand in', title);
  }
  for (const { title, refused } of missed)
    for (const { reason } of refused) {
      const kind =
        /^the workshop has no (.+)$/.exec(reason)?.[1] ??
        (reason.startsWith('no hand tools') ? 'hand tools' : '');
      if (isKind(kind) && !workshop.machines.some(m => m.kind === kind)) ask(kind, 'is there one', title);
    }
  return [...asked.values()];
}

/** `stop repeats within 0.1 mm`: remembered figures of the kind, shown as such. */
export function accuracyWords(kind: MachineKind): string | undefined {
  const { mm, degrees } = MACHINE_FILES[kind].accuracy;
  if (mm === undefined && degrees === undefined) return undefined;
  const parts = [
    mm === undefined ? '' : `${mm} mm`,
    degrees === undefined ? '' : `${degrees} degrees`,
  ].filter(p => p !== '');
  return `A setting repeats within ${parts.join(' and ')} (remembered)`;
}
