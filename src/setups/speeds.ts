/**
 * Turning speeds. v = pi D n / 60000 (v m/s, D mm, n 1/min; standard kinematics), so n = 60000 v / (pi D).
 */
import { metal } from '../reference/metals.ts';
import type { Instance } from '../results/piece.ts';
import type { Cutter, Drill } from '../workshop/workshop.ts';

export const rimSpeed = (diameter: number, turns: number): number => (Math.PI * diameter * turns) / 60000;
export const turnsFor = (diameter: number, speed: number): number => (60000 * speed) / (Math.PI * diameter);

/** Greatest router speed by cutter diameter (mm): read, woodworking.about.com RouterBitSpeeds. */
const LADDER: readonly { to: number; turns: number }[] = [
  { to: 25.4, turns: 24000 },
  { to: 50.8, turns: 18000 },
  { to: 63.5, turns: 16000 },
  { to: 88.9, turns: 12000 },
];

/** Turns a minute for a router cutter, never over the mark on it (SET-14). Undefined: too large to be run. */
export function routerTurns(cutter: Cutter): { turns: number; how: string } | undefined {
  const rung = LADDER.find(r => cutter.diameter <= r.to + 1e-9);
  if (!rung) return undefined;
  return cutter.maxSpeed !== undefined && cutter.maxSpeed < rung.turns
    ? { turns: cutter.maxSpeed, how: `marked ${cutter.maxSpeed} at most` }
    : { turns: rung.turns, how: `${cutter.diameter} cutter: to ${rung.to} dia ${rung.turns}` };
}

/** A speed that somebody set, against the mark on the tool. */
export const overMark = (turns: number, cutter: Cutter): string | undefined =>
  cutter.maxSpeed !== undefined && turns > cutter.maxSpeed
    ? `${turns} turns is over the ${cutter.maxSpeed} marked on ${cutter.name}`
    : undefined;

/** Middle of the remembered bands of cutting speed, m/s. */
const DRILLING: Record<Drill['kind'], number> = {
  twist: 2.4,
  'brad point': 2.4,
  forstner: 1.2,
  countersink: 0.6,
  'mortise chisel': 2.4,
};
const IN_METAL: readonly { keys: RegExp; speed: number; name: string }[] = [
  { keys: /stainless/, speed: 0.2, name: 'stainless steel' },
  { keys: /steel|iron/, speed: 0.45, name: 'steel' },
  { keys: /brass/, speed: 1, name: 'brass' },
  { keys: /bronze|copper/, speed: 0.65, name: 'copper' },
  { keys: /alumin/, speed: 1.35, name: 'aluminium' },
];

export const isMetal = (instance: Instance): boolean => {
  const row = metal(instance.material);
  return row !== undefined && row.kind === 'metal';
};

/** Drill speed, rounded to what a belt or a dial gives; 3000 at most (SET-15). */
export function drillTurns(drill: Drill, instance: Instance): { turns: number; how: string } {
  const inMetal = isMetal(instance)
    ? (IN_METAL.find(m => m.keys.test(instance.material)) ?? { speed: 0.4, name: 'metal' })
    : undefined;
  const speed = inMetal?.speed ?? DRILLING[drill.kind];
  const raw = turnsFor(drill.diameter, speed);
  const turns = Math.min(
    3000,
    raw >= 1000 ? Math.round(raw / 100) * 100 : Math.max(50, Math.round(raw / 50) * 50),
  );
  return { turns, how: `${speed} m/s at ${drill.diameter} dia in ${inMetal?.name ?? 'wood'}` };
}
