import { type LengthUnit, parseLength } from '../quantities/length.ts';
import { type Fault, fault } from '../results/fault.ts';
import type { Workshop } from '../workshop/workshop.ts';
import type { MachineState } from './method.ts';

/** What stands on the machines now, as the job keeps it: by machine; bare lengths are in the file's unit, angles degrees. */
export type StandingEntries = Record<
  string,
  {
    tool?: string | undefined;
    jig?: string | undefined;
    fence?: number | string | undefined;
    height?: number | string | undefined;
    tilt?: number | undefined;
    mitre?: number | undefined;
  }
>;

/**
 * Where the order of set-ups starts: a machine that is named stands as it says, and what it leaves out is set anew;
 * of the others nothing is known. Machines that the shop has not, and lengths that cannot be read, are faults.
 */
export function readStanding(
  entries: StandingEntries | undefined,
  workshop: Workshop,
  unit: LengthUnit,
): { standing: Map<string, MachineState>; faults: Fault[] } {
  const standing = new Map<string, MachineState>();
  const faults: Fault[] = [];
  for (const [machine, entry] of Object.entries(entries ?? {})) {
    if (!workshop.machines.some(m => m.id === machine)) {
      const known = workshop.machines.map(m => m.id).slice(0, 6);
      faults.push(
        fault(
          `standing.${machine}`,
          `no machine is called ${machine}`,
          known.length > 0 ? `name one of ${known.join(', ')}` : 'the workshop file has no machines',
        ),
      );
      continue;
    }
    const length = (field: 'fence' | 'height'): Partial<MachineState> => {
      if (entry[field] === undefined) return {};
      const parsed = parseLength(String(entry[field]), unit);
      if (parsed.ok) return { [field]: parsed.value };
      faults.push(fault(`standing.${machine}.${field}`, parsed.fault, `write ${parsed.expected}`));
      return {};
    };
    standing.set(machine, {
      // No tool named is none that a set-up asks for.
      tool: entry.tool ?? '',
      jig: entry.jig ?? '',
      tilt: entry.tilt ?? 0,
      ...(entry.mitre === undefined ? {} : { mitre: entry.mitre }),
      ...length('fence'),
      ...length('height'),
    });
  }
  return { standing, faults };
}
