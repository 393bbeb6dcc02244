import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import type { Instance, JointMade } from '../results/piece.ts';
import { count, q, text } from '../results/quantity.ts';
import type { Fit } from './fits.ts';
import type { Proved } from './prove.ts';

/** Finer than a rule can tell and far below any fit of the trade, mm. */
const TOLD = 0.02;

/** Mates that stand wider apart than their stated play, as checks; one pass when none do. */
export function fitChecks(
  proved: Proved | undefined,
  instances: readonly Instance[],
  joints: readonly JointMade[],
): Check[] {
  if (!proved?.complete || proved.fits.length === 0) return [];
  const base = {
    check: 'fit',
    unit: 'length' as const,
    source: 'walls that face each other on the solids, against the fit of the joint',
    basis: 'computed' as const,
  };
  const loose = new Map<string, Fit>();
  for (const fit of proved.fits) {
    if (fit.found !== null && fit.found <= fit.wanted + TOLD) continue;
    const kept = loose.get(fit.joint);
    if (!kept || (kept.found ?? Number.POSITIVE_INFINITY) < (fit.found ?? Number.POSITIVE_INFINITY))
      loose.set(fit.joint, fit);
  }
  if (loose.size === 0)
    return [
      {
        ...base,
        subject: 'piece',
        severity: 'pass',
        title: 'Every joint closes within its fit',
        figure: null,
        limit: null,
        remedy: '',
        say: say('{mates} pairs of mating cuts measured on the solids.', {
          mates: count(proved.fits.length),
        }),
      },
    ];
  const name = (id: string): string => instances.find(i => i.id === id)?.name ?? id;
  const title = (joint: string): string => joints.find(j => j.joint === joint)?.title ?? joint;
  return [...loose.values()].map(fit => ({
    ...base,
    subject: fit.joint,
    severity: 'attend' as const,
    title:
      fit.found === null
        ? `${name(fit.a)} does not meet ${name(fit.b).toLowerCase()}`
        : `${name(fit.a)} is loose in ${name(fit.b).toLowerCase()}`,
    figure: fit.found,
    limit: fit.wanted,
    remedy:
      fit.found === null
        ? 'Move one of the two until the joint closes, or take the joint out.'
        : 'Give tenon and mortise one thickness, or enter the gap as the fit of the joint.',
    say:
      fit.found === null
        ? say('{joint}, {a} in {b}: no wall of the one faces the other.', {
            joint: text(title(fit.joint)),
            a: text(fit.a),
            b: text(fit.b),
          })
        : say('{joint}, {a} in {b}: a gap of {gap} where the fit is {wanted}.', {
            joint: text(title(fit.joint)),
            a: text(fit.a),
            b: text(fit.b),
            gap: q('length', fit.found),
            wanted: q('length', fit.wanted),
          }),
  }));
}
