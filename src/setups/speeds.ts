/** Turning speeds for the tools of a set-up, from the tables of rim speeds; never over the mark on the tool. */
import { CUTTING_SPEEDS, routerSpeedLimit, rpmForRimSpeed } from '../reference/cutting-speeds.ts';
import { materialDensity } from '../reference/materials.ts';
import { metal } from '../reference/metals.ts';
import { middle } from '../reference/sourced.ts';
import type { Instance } from '../results/piece.ts';
import type { Cutter, Drill } from '../workshop/workshop.ts';

const SLOT_DISC = 40;

/** Slowest a router is turned down to, turns a minute (common practice). */
const SLOWEST_ROUTER = 8000;

/**
 * Turns a minute for a router cutter, never over the mark on it (SET-14). A reason when it cannot be run: too large
 * for the ladder, or marked below what a router can be turned down to.
 */
export function routerTurns(cutter: Cutter): { turns: number; how: string } | { reason: string } {
  // The workshop gives a slot cutter's width; its disc is some 40 mm (common practice).
  const across = cutter.kind === 'groove' ? Math.max(SLOT_DISC, cutter.diameter) : cutter.diameter;
  const limit = routerSpeedLimit(across);
  if (!limit) return { reason: `${cutter.name}, ${across} across, is too large for a router` };
  const marked = cutter.maxSpeed ?? Number.POSITIVE_INFINITY;
  if (marked < SLOWEST_ROUTER)
    return {
      reason: `${cutter.name} is marked ${marked} at most, a router turns ${SLOWEST_ROUTER} at the least`,
    };
  return marked < limit.high
    ? { turns: marked, how: `marked ${marked} at most` }
    : {
        turns: limit.high,
        how: `${limit.high} for a ${across} ${cutter.kind === 'groove' ? 'disc' : 'cutter'}`,
      };
}

const IN_METAL: readonly { name: RegExp; row: string }[] = [
  { name: /steel|iron/, row: 'drill-steel' },
  { name: /brass/, row: 'drill-brass' },
  { name: /bronze|copper/, row: 'drill-copper' },
  { name: /alumin/, row: 'drill-aluminium' },
];

const METALS_MET = new Map<string, boolean>();

/** Is the part of metal? Answers are kept by material: the question comes with every cut. */
export function isMetal(instance: Instance): boolean {
  const known = METALS_MET.get(instance.material);
  if (known !== undefined) return known;
  const answer = metal(instance.material)?.kind === 'metal';
  METALS_MET.set(instance.material, answer);
  return answer;
}

/** From this density on a timber counts as hard to rout, kg/m3 (common practice). */
const HARD = 650;

/** Deepest step of a straight cutter: half its diameter, 6 mm at most, 4 in hard timber (SET-13). */
export function deepestStep(cutter: Cutter, instance: Instance): number {
  const density = materialDensity(instance.material)?.densityKgM3 ?? 0;
  const hard =
    instance.kind === 'timber' && (typeof density === 'number' ? density : middle(density)) >= HARD;
  return Math.min(hard ? 4 : 6, cutter.diameter / 2);
}

/** Equal steps of a straight cutter down to a depth, none deeper than it may go. */
export const depthSteps = (cutter: Cutter, depth: number, instance: Instance): number =>
  Math.max(1, Math.ceil(depth / deepestStep(cutter, instance) - 1e-9));

const SPEEDS = new Map(CUTTING_SPEEDS.rows.map(row => [row.key, middle(row)]));

/** A countersink turns slowly so that it does not chatter: m/s, common practice. */
const COUNTERSINK_SPEED = 0.6;
/** Fastest a bench drill press is run, turns a minute (common practice). */
const FASTEST = 3000;

/** Drill speed, rounded to what a belt or a dial gives (SET-15). */
export function drillTurns(drill: Drill, instance: Instance): { turns: number; how: string } {
  const inMetal = isMetal(instance);
  const row = inMetal
    ? (IN_METAL.find(m => m.name.test(instance.material))?.row ?? 'drill-steel')
    : drill.kind === 'forstner'
      ? 'forstner'
      : 'drill-timber';
  const speed = drill.kind === 'countersink' ? COUNTERSINK_SPEED : (SPEEDS.get(row) ?? COUNTERSINK_SPEED);
  const raw = rpmForRimSpeed(drill.diameter, speed);
  const rounded = raw >= 1000 ? Math.round(raw / 100) * 100 : Math.max(50, Math.round(raw / 50) * 50);
  const turns = Math.min(FASTEST, rounded);
  return {
    turns,
    how: `${speed.toFixed(2)} m/s at ${drill.diameter} dia in ${inMetal ? 'metal' : 'timber'}${rounded > FASTEST ? `, ${FASTEST} at most` : ''}`,
  };
}
