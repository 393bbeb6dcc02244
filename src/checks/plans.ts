/** What the plans could not do: blanks without stock, cuts without a machine, windows and dates not kept. */
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import { count, mm, q, text } from '../results/quantity.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { gather, type View } from './view.ts';
import { capital, inMm, listed, mid } from './words.ts';

export const CHK_30 = rule(
  'CHK-30',
  'Every blank lies in stock that is on the rack or can be bought.',
  'A second trip to the yard, and timber of another tree.',
  'the cutting plan',
  'computed',
);

export const CHK_31 = rule(
  'CHK-31',
  'Every cut can be made with a machine and tool of the workshop.',
  'Found at the bench, it costs a day.',
  'the set-up plan',
  'computed',
);

export const CHK_32 = rule(
  'CHK-32',
  'The piece is ready by the day that was promised.',
  'The client is told before, not after.',
  'the day plan',
  'computed',
);

export const CHK_33 = rule(
  'CHK-33',
  'Every coat and every glued step falls within its window.',
  'Missed, the coat is sanded back or the step done again.',
  'the day plan',
  'computed',
);

export const CHK_34 = rule(
  'CHK-34',
  'Whatever is used has a price: stock on the rack is not free.',
  'What is not priced is given away.',
  'common practice',
  'common practice',
);

/** A sentence of another plan, to stand within one of ours. */
const unended = (words: string): string => words.replace(/\.+$/, '');

function unplaced({ cutting }: CheckInput): Check[] {
  const all = cutting.materials.flatMap(m => m.unplaced);
  return gather(all, u => u.demand.mark).map(of => {
    const { demand, reason, mend } = of[0]!;
    return finding({
      check: 'stock',
      subject: demand.purpose === 'part' ? demand.instance : demand.mark,
      severity: 'stop',
      rule: CHK_30,
      title: `No stock for ${mid(demand.name)}`,
      figure: of.length,
      limit: 0,
      unit: 'count',
      remedy: mend,
      say: say('{mark} {name}, {count} of {length} by {width} by {thickness}: {reason}.', {
        mark: text(demand.mark),
        name: text(mid(demand.name)),
        count: count(of.length),
        length: mm(demand.length),
        width: mm(demand.width),
        thickness: mm(demand.thickness),
        reason: text(unended(reason)),
      }),
    });
  });
}

/** Cuts that one and the same tool would make are told together. */
function unmade({ setups }: CheckInput, view: View): Check[] {
  return gather(setups.unmade, u => u.mend).map(of => {
    const { instance, cut, reason, mend } = of[0]!;
    const names = [...new Set(of.map(u => mid(view.name(u.instance))))];
    return finding({
      check: 'machines',
      subject: `${instance}.${cut}`,
      severity: 'stop',
      rule: CHK_31,
      title: names.length === 1 ? `No way to cut ${names[0]}` : `No way to cut ${names.length} parts`,
      figure: of.length,
      limit: 0,
      unit: 'count',
      remedy: mend,
      say: say('{parts}: {reason}.', {
        parts: text(capital(listed(names))),
        reason: text(unended(reason)),
      }),
    });
  });
}

function deadline({ days }: CheckInput): Check[] {
  const { deadline, finish } = days;
  if (!deadline) return [];
  const tight = deadline.kept && finish.high > deadline.date;
  return [
    finding({
      check: 'deadline',
      subject: 'deadline',
      severity: !deadline.kept ? 'stop' : tight ? 'attend' : 'pass',
      rule: CHK_32,
      title: !deadline.kept
        ? `${deadline.daysLate} ${deadline.daysLate === 1 ? 'day' : 'days'} late`
        : tight
          ? 'In time if the work goes as it should'
          : 'Ready in time',
      figure: deadline.daysLate,
      limit: 0,
      unit: 'count',
      remedy: !deadline.kept
        ? 'Begin sooner, work longer days, or tell the client the new day now.'
        : tight
          ? 'Keep a day or two in hand, or promise the later day.'
          : '',
      say: say(
        tight
          ? 'Ready {finish} as likely as not, {late} at the latest; promised {date}.'
          : 'Ready {finish}; promised {date}.',
        {
          finish: q('date', finish.likely),
          late: q('date', finish.high),
          date: q('date', deadline.date),
        },
      ),
    }),
  ];
}

function windows({ days, operations }: CheckInput): Check[] {
  const titles = new Map(operations.map(o => [o.id, o.title]));
  const first = gather(days.trouble, t => t.operation).map(of => of[0]!);
  return first.map(t =>
    finding({
      check: 'window',
      subject: t.operation,
      severity: 'attend',
      rule: CHK_33,
      title: `${capital(titles.get(t.operation) ?? t.operation)}: its window is missed`,
      figure: null,
      limit: null,
      unit: 'text',
      remedy: t.mend,
      say: say('{what}.', { what: text(unended(t.what)) }),
    }),
  );
}

function unpriced({ cutting }: CheckInput): Check[] {
  const used = cutting.materials.flatMap(m => m.uses).filter(u => u.placed.length > 0);
  if (used.length === 0) return [];
  const free = used.filter(u => !(u.price > 0));
  if (free.length === 0) {
    return [
      finding({
        check: 'unpriced',
        subject: 'stock',
        severity: 'pass',
        rule: CHK_34,
        title: 'All stock has a price',
        figure: 0,
        limit: 0,
        unit: 'count',
        remedy: '',
        say: say(
          used.length === 1
            ? 'The one length or sheet used has its price.'
            : '{count} lengths and sheets, each with its price.',
          { count: count(used.length) },
        ),
      }),
    ];
  }
  return gather(free, u => u.label).map(of => {
    const use = of[0]!;
    return finding({
      check: 'unpriced',
      subject: use.id,
      severity: 'attend',
      rule: CHK_34,
      title: `${capital(use.label)} has no price`,
      figure: of.length,
      limit: 0,
      unit: 'count',
      remedy: use.from === 'rack' ? 'Enter what it stands in the books for.' : "Enter the supplier's price.",
      say: say('{count} of {label}, {length} long, counted at nothing.', {
        count: count(of.length),
        label: text(use.label),
        length: text(inMm(use.length)),
      }),
    });
  });
}

export const plansCheck: CheckMaker = {
  name: 'plans',
  rules: [CHK_30, CHK_31, CHK_32, CHK_33, CHK_34],
  judge: (input, view) => [
    ...unplaced(input),
    ...unmade(input, view),
    ...deadline(input),
    ...windows(input),
    ...unpriced(input),
  ],
};
