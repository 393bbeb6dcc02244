import type { Machine } from '../workshop/workshop.ts';
import { SAME, say1 } from './figures.ts';
import type { MachineState } from './method.ts';

export interface Change {
  minutes: number;
  /** `blade 4, fence 1`. */
  how: string;
}

const moved = (from: number | undefined, to: number | undefined): boolean =>
  to !== undefined && (from === undefined || Math.abs(from - to) > SAME);

/**
 * Minutes to bring a machine from one state to the next: each thing that differs costs its own minutes, as the
 * workshop file has them. From nothing (the machine as it stands at first) everything is set.
 */
export function changeOver(machine: Machine, from: MachineState | undefined, to: MachineState): Change {
  const parts = partsOf(machine, from, to);
  const paid = parts.filter(([, minutes]) => minutes > 0);
  return {
    minutes: paid.reduce((sum, [, minutes]) => sum + minutes, 0),
    how: paid.length === 0 ? 'nothing changes' : paid.map(([what, m]) => `${what} ${say1(m)}`).join(', '),
  };
}

/** The minutes alone, for the search. */
export const changeMinutesOf = (machine: Machine, from: MachineState | undefined, to: MachineState): number =>
  partsOf(machine, from, to).reduce((sum, [, minutes]) => sum + minutes, 0);

function partsOf(machine: Machine, from: MachineState | undefined, to: MachineState): [string, number][] {
  const { change } = machine;
  const parts: [string, number][] = [];
  if (from?.tool !== to.tool) parts.push(['tool', change.tool]);
  if ((from?.jig ?? '') !== (to.jig ?? '')) parts.push(['jig', change.jig]);
  if (moved(from?.fence, to.fence)) parts.push(['fence or stop', change.fence]);
  if (moved(from?.height, to.height)) parts.push(['height', change.height]);
  if (moved(from?.tilt ?? 0, to.tilt) || moved(from?.mitre ?? 0, to.mitre ?? 0))
    parts.push(['angle', change.tilt]);
  return parts;
}
