/** Does it pass the doors of the place, end first? */
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import { mm, text } from '../results/quantity.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { type Rigid, rigids, sidesOf } from './rigid.ts';
import type { View } from './view.ts';
import { capital, mid } from './words.ts';

export const CHK_28 = rule(
  'CHK-28',
  'The widest rigid part passes every opening end first with 10 mm to spare on each side.',
  'A piece that does not go in goes home again. Turns of stairs and corridors are measured on the spot.',
  'common practice',
  'common practice',
);

const SPARE = 20;

interface Opening {
  name: string;
  width: number;
  height: number;
}

/** What stays of the opening, mm, in the direction that is tightest, carried the better way up. Negative: it does not pass. */
export function spareInOpening(sides: readonly [number, number, number], opening: Opening): number {
  const [, middle, least] = sides;
  const upright = Math.min(opening.width - least, opening.height - middle);
  const flat = Math.min(opening.width - middle, opening.height - least);
  return Math.max(upright, flat);
}

function judgeDoor(piece: Rigid, opening: Opening): Check {
  const [long, middle, least] = sidesOf(piece.bounds);
  const spare = spareInOpening([long, middle, least], opening);
  const severity = spare < 0 ? 'stop' : spare < SPARE ? 'attend' : 'pass';
  return finding({
    check: 'doors',
    subject: opening.name,
    severity,
    rule: CHK_28,
    title:
      severity === 'stop'
        ? `${capital(piece.name)} does not pass ${mid(opening.name)}`
        : severity === 'attend'
          ? `${capital(piece.name)} passes ${mid(opening.name)} barely`
          : `It passes ${mid(opening.name)}`,
    figure: spare,
    limit: SPARE,
    unit: 'length',
    remedy:
      severity === 'pass'
        ? ''
        : 'Make it to be taken apart and put together in the room, or measure another way in.',
    say: say(
      spare < 0
        ? '{piece} is {middle} by {least} end first; {door} is {width} by {height}.'
        : '{piece}, {middle} by {least} end first, has {spare} to spare in {door}.',
      {
        piece: text(capital(piece.name)),
        middle: mm(middle),
        least: mm(least),
        door: text(mid(opening.name)),
        width: mm(opening.width),
        height: mm(opening.height),
        spare: mm(spare),
      },
    ),
  });
}

function judge(input: CheckInput, view: View): Check[] {
  const carried = rigids(input, view);
  if (carried.length === 0) return [];
  const doors = input.commission.site?.doors ?? [];
  if (doors.length === 0) {
    return [
      finding({
        check: 'doors',
        subject: 'site',
        severity: 'unknown',
        rule: CHK_28,
        title: 'Whether it passes the doors',
        figure: null,
        limit: null,
        unit: 'length',
        remedy: 'Enter the clear width and height of each opening on the way in.',
        say: say('No door on the way in has been measured.'),
      }),
    ];
  }
  return doors.map(door => {
    const widest = carried.reduce((w, r) =>
      spareInOpening(sidesOf(r.bounds), door) < spareInOpening(sidesOf(w.bounds), door) ? r : w,
    );
    return judgeDoor(widest, door);
  });
}

export const doorsCheck: CheckMaker = { name: 'doors', rules: [CHK_28], judge };
