import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import type { Instance } from '../results/piece.ts';
import { count, q, text } from '../results/quantity.ts';
import type { Proved } from './prove.ts';

const SOURCE = 'solids cut by the joints and features of the setting-out';

/** Parts that share room, worst first, as checks; one pass when none do. Stopped early it is pending, never a pass. */
export function overlapChecks(proved: Proved | undefined, instances: readonly Instance[]): Check[] {
  const base = { check: 'overlap', unit: 'volume' as const, source: SOURCE, basis: 'computed' as const };
  if (!proved?.complete)
    return [
      {
        ...base,
        subject: 'piece',
        severity: 'pending',
        title: 'Overlap of parts',
        figure: null,
        limit: 0,
        remedy: 'Wait until the shapes are done.',
        say: say('The shapes are not all compared yet.'),
      },
    ];
  if (proved.overlaps.length === 0)
    return [
      {
        ...base,
        subject: 'piece',
        severity: 'pass',
        title: 'No two parts share room',
        figure: 0,
        limit: 0,
        remedy: '',
        say: say('{pairs} meetings looked at; every one closes.', { pairs: count(proved.pairs) }),
      },
    ];
  const name = new Map(instances.map(i => [i.id, i.name]));
  return [...proved.overlaps]
    .sort((a, b) => b.volume - a.volume)
    .map(o => ({
      ...base,
      subject: `${o.a}+${o.b}`,
      severity: 'stop' as const,
      title: `${name.get(o.a) ?? o.a} and ${(name.get(o.b) ?? o.b).toLowerCase()} share room`,
      figure: o.volume,
      limit: 0,
      remedy: 'Give them a joint where they meet, or move one of the two.',
      say: say('{a} and {b} overlap by {volume}.', {
        a: text(o.a),
        b: text(o.b),
        volume: q('volume', o.volume),
      }),
    }));
}
