/** Do the chains of figures that the maker wants to close come to the same? */
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import { mm, text } from '../results/quantity.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';

export const CHK_45 = rule(
  'CHK-45',
  'Figures that must agree come to the same within 0.1 mm.',
  'A chain that does not close is found on the rod, not at the glue-up.',
  'common practice',
  'common practice',
);

const WITHIN = 0.1;

function judge({ commission }: CheckInput): Check[] {
  return (commission.agreements ?? []).map(({ id, label, figure, other, written }) => {
    const known = figure !== undefined && other !== undefined;
    const apart = known ? figure - other : null;
    const good = apart !== null && Math.abs(apart) <= WITHIN;
    return finding({
      check: 'agreement',
      subject: id,
      severity: apart === null ? 'unknown' : good ? 'pass' : 'attend',
      rule: CHK_45,
      title: good ? `${label} agrees` : `${label} does not agree`,
      figure: apart === null ? null : Math.abs(apart),
      limit: apart === null ? null : WITHIN,
      unit: 'length',
      remedy: good ? '' : 'Mend the figure that is wrong, or set the check aside with the reason.',
      say:
        apart === null
          ? say('{label}: one of the two cannot be worked out.', { label: text(label) })
          : say('{label}: {one} is {figure}, {two} is {other}; {apart} apart.', {
              label: text(label),
              one: text(written[0]),
              figure: mm(figure!),
              two: text(written[1]),
              other: mm(other!),
              apart: mm(Math.abs(apart)),
            }),
    });
  });
}

export const agreementCheck: CheckMaker = { name: 'agreement', rules: [CHK_45], judge };
