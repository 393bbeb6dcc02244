import { CHK_37 } from '../checks/way-in.ts';
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import { text } from '../results/quantity.ts';
import type { Member, Trapped } from './motions.ts';

/** What cannot be put together by straight motions, as checks; one pass when all can. Not yet tried it is pending. */
export function wayInChecks(trapped: readonly Trapped[] | undefined): Check[] {
  const base = {
    check: 'way in',
    rule: CHK_37,
    figure: null,
    limit: null,
    unit: 'text' as const,
    source: `${CHK_37.number}: straight motions tried on the solids, glue-up by glue-up`,
    basis: 'computed' as const,
    remedy: '',
  };
  if (!trapped)
    return [
      {
        ...base,
        subject: 'piece',
        severity: 'pending',
        title: 'A way in for every part',
        remedy: 'Wait until the motions are tried.',
        say: say('The order of the glue-ups is not tried yet.'),
      },
    ];
  if (trapped.length === 0)
    return [
      {
        ...base,
        subject: 'piece',
        severity: 'pass',
        title: 'Every part has a straight way in',
        say: say('Each glue-up comes apart by straight motions, what was glued before it staying whole.'),
      },
    ];
  return trapped.map(({ closing, member, blockers }) => {
    const shut = blockers.filter(b => b.glued);
    const names = text(inARow(blockers));
    return {
      ...base,
      subject: member.glued ? member.id : member.parts[0]!.part,
      severity: 'stop' as const,
      title:
        shut.length > 0 ? `${capital(member.name)} is shut out` : `${capital(member.name)} cannot get in`,
      remedy:
        shut.length > 0
          ? `Put it into ${inARow(shut)}, or glue that up later.`
          : 'Let one of its joints open the other way, or glue up in another order.',
      say: say('{part} goes into {closing} by no straight motion: {blockers} in the way.', {
        part: text(capital(member.name)),
        closing: text(closing?.name ?? 'the piece'),
        blockers: names,
      }),
    };
  });
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function inARow(members: readonly Member[]): string {
  const names = [...new Set(members.map(m => m.name))];
  return names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
