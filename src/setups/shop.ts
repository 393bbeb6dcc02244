import type { Blade, Cutter, Drill, Jig, Machine, MachineKind, Workshop } from '../workshop/workshop.ts';
import { say1 } from './figures.ts';

/** The first machine of a kind, as the maker listed them: the first is preferred. */
export const machineOf = (workshop: Workshop, kind: MachineKind): Machine | undefined =>
  workshop.machines.find(m => m.kind === kind);

/** May it be run: is the mark on the blade no slower than the spindle? EN 847-1 marks; makers' manuals. */
export const withinMark = (machine: Machine, blade: Blade): boolean =>
  blade.maxSpeed === undefined || machine.speed === undefined || blade.maxSpeed >= machine.speed;

/** Why a machine has no blade for a cut: none at all, or only ones that it would outrun. */
export function noBlade(workshop: Workshop, machine: Machine): string {
  const slow = workshop.blades.find(b => b.machine === machine.id && !withinMark(machine, b));
  return slow
    ? `the ${slow.name} is marked ${slow.maxSpeed} turns at most, the ${machine.name} turns ${machine.speed}`
    : `the ${machine.kind} has no blade for it`;
}

/** Blades of a machine by use, in the order of preference given; never one that the spindle outruns. */
export function bladeOf(
  workshop: Workshop,
  machine: Machine,
  uses: readonly Blade['use'][],
): Blade | undefined {
  for (const use of uses) {
    const blade = workshop.blades.find(
      b => b.machine === machine.id && b.use === use && withinMark(machine, b),
    );
    if (blade) return blade;
  }
  return undefined;
}

export const jigOf = (workshop: Workshop, machine: Machine, kind: Jig['kind']): Jig | undefined =>
  workshop.jigs.find(j => j.machine === machine.id && j.kind === kind);

/**
 * The widest straight cutter that is no wider than the way it cuts and reaches its depth. A slot cutter (a disc, its
 * `diameter` the width of its slot) serves only where the way runs along an edge: `inEdge`.
 */
export function straightCutter(
  workshop: Workshop,
  width: number,
  depth: number,
  inEdge = false,
): Cutter | undefined {
  return workshop.cutters
    .filter(
      c =>
        (c.kind === 'straight' || (inEdge && c.kind === 'groove')) &&
        c.diameter <= width + 0.02 &&
        c.depth >= depth - 0.02,
    )
    .sort((a, b) => b.diameter - a.diameter)[0];
}

/** Why no straight cutter serves: too wide, or too short. */
export function noStraightCutter(workshop: Workshop, width: number, depth: number): string {
  const straight = workshop.cutters.filter(c => c.kind === 'straight');
  const narrow = straight.filter(c => c.diameter <= width + 0.02);
  if (straight.length === 0) return 'the workshop has no straight cutter';
  if (narrow.length === 0) {
    const least = Math.min(...straight.map(c => c.diameter));
    return `the smallest straight cutter, ${say1(least)}, is larger than the ${say1(width)} way`;
  }
  return `no cutter under ${say1(width)} reaches ${say1(depth)} deep; the longest reaches ${say1(
    Math.max(...narrow.map(c => c.depth)),
  )}`;
}

export const drillsOf = (workshop: Workshop, kinds: readonly Drill['kind'][]): Drill[] =>
  workshop.drills.filter(d => kinds.includes(d.kind));

/** Limits of a machine, as a reason for refusing, or nothing. */
export function beyond(
  machine: Machine,
  asked: { depth?: number; fence?: number; tilt?: number; piece?: number },
): string | undefined {
  if (asked.depth !== undefined && machine.maxDepth !== undefined && asked.depth > machine.maxDepth + 0.01)
    return `${say1(asked.depth)} deep, the ${machine.name} reaches ${say1(machine.maxDepth)}`;
  if (asked.fence !== undefined && machine.fence !== undefined && asked.fence > machine.fence + 0.01)
    return `the fence would stand at ${say1(asked.fence)}, the table of the ${machine.name} ends at ${say1(machine.fence)}`;
  if (asked.tilt !== undefined && machine.maxTilt !== undefined && asked.tilt > machine.maxTilt + 0.01)
    return `tilted ${say1(asked.tilt)}, the ${machine.name} tilts to ${say1(machine.maxTilt)}`;
  if (asked.piece !== undefined && machine.shortest !== undefined && asked.piece < machine.shortest - 0.01)
    return `the piece is ${say1(asked.piece)} long, shorter than the ${say1(machine.shortest)} the ${machine.name} may run`;
  return undefined;
}
