/** Parts that have no size: nothing can be said of them until they have. */
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import type { Instance } from '../results/piece.ts';
import { text } from '../results/quantity.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { gather, type View } from './view.ts';
import { capital, mid } from './words.ts';

export const CHK_38 = rule(
  'CHK-38',
  'A part is judged when it has a size; one that waits for its measurement, or whose figure is faulty, is not known.',
  'A check that looks away is no pass.',
  'the setting-out',
  'computed',
);

function judgeUnsized(of: Instance[]): Check {
  const part = of[0]!;
  const waits = part.measureFirst;
  return finding({
    check: 'size',
    subject: part.part,
    severity: 'unknown',
    rule: CHK_38,
    title: `Size of ${mid(part.name)}`,
    figure: null,
    limit: null,
    unit: 'length',
    remedy: waits ? 'Measure it then, and enter the figure.' : 'Mend what is faulty in its sizes.',
    say: waits
      ? say('{part} is measured at the {when}; until then nothing here speaks of it.', {
          part: text(capital(part.name)),
          when: text(waits.when),
        })
      : say('{part} has no size, and nothing here speaks of it.', { part: text(capital(part.name)) }),
  });
}

export const unsizedCheck: CheckMaker = {
  name: 'size',
  rules: [CHK_38],
  judge: (_: CheckInput, view: View) => gather(view.unsized, i => i.part).map(judgeUnsized),
};
