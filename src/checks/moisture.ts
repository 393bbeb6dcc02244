/** Is the timber as dry as the room will make it, and has anybody measured? */
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import { q, text } from '../results/quantity.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { gather, type View } from './view.ts';
import { capital, inPercent, listed, mid } from './words.ts';

export const CHK_35 = rule(
  'CHK-35',
  'Solid timber is measured before it is made up, and lies then between the driest and the dampest of its room, within 1 %.',
  'Made up too damp it opens in the first winter; too dry, it swells out of its frames.',
  'moisture of the room by FPL-GTR-282 (2021) Eq 4-5; the 1 % is common practice',
  'common practice',
);

const WITHIN = 1;

function judge({ piece }: CheckInput, view: View): Check[] {
  const solid = piece.instances.filter(i => i.kind === 'timber');
  const kept = gather(
    solid.map(part => ({ part, made: view.made(part.id) })),
    ({ part, made }) => `${made.read} ${made.percent} ${made.source.text} ${made.read ? '' : part.material}`,
  );
  return kept.map(of => {
    const { part, made } = of[0]!;
    const names = listed(of.map(o => mid(o.part.name)));
    if (!made.read) {
      return finding({
        check: 'moisture',
        subject: part.material,
        severity: 'unknown',
        rule: CHK_35,
        title: 'Moisture of the timber',
        figure: null,
        limit: null,
        unit: 'moisture',
        remedy: 'Measure it and enter the reading.',
        say: say("{parts} not measured; the shop's air would bring {shop}.", {
          parts: text(capital(names)),
          shop: q('moisture', made.percent),
        }),
      });
    }
    if (!view.room) {
      return finding({
        check: 'moisture',
        subject: part.id,
        severity: 'unknown',
        rule: CHK_35,
        title: 'Moisture of the room',
        figure: made.percent,
        limit: null,
        unit: 'moisture',
        remedy: 'Enter the least and greatest humidity of the room through the year.',
        say: say('Timber stands at {made}; the room is not known.', { made: q('moisture', made.percent) }),
      });
    }
    const { low, high } = view.room;
    const off = Math.max(made.percent - high, low - made.percent, 0);
    const good = off <= WITHIN;
    const damp = made.percent > high;
    return finding({
      check: 'moisture',
      subject: part.id,
      severity: good ? 'pass' : 'attend',
      rule: CHK_35,
      title: good
        ? 'Timber is as dry as its room'
        : damp
          ? 'Timber is too damp for its room'
          : 'Timber is too dry for its room',
      figure: made.percent,
      limit: damp ? high : low,
      unit: 'moisture',
      remedy: good
        ? ''
        : `Let it rest in stick where the air is like the room's, until it reads ${inPercent(low)} to ${inPercent(high)}.`,
      say: say('{parts} at {made}; the room swings from {low} to {high}.', {
        parts: text(capital(names)),
        made: q('moisture', made.percent),
        low: q('moisture', low),
        high: q('moisture', high),
      }),
      sources: [made.source],
    });
  });
}

export const moistureCheck: CheckMaker = { name: 'moisture', rules: [CHK_35], judge };
