/** Who can lift it. */
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import { q, text } from '../results/quantity.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { rigids } from './rigid.ts';
import type { View } from './view.ts';
import { capital, inKg } from './words.ts';

export const CHK_29 = rule(
  'CHK-29',
  'One person lifts 16 to 25 kg close to the waist; two lift two thirds of what each could, three half.',
  'Backs and door frames. A guide for a good grip and a clear way, not a limit of law.',
  'appliedtruck.co.uk (HSE filter: 25 kg man, 16 kg woman); Network Rail team lifting (two thirds, a half)',
  'read',
);

const MAN = 25;
const WOMAN = 16;

/** What a team may lift, kg: one the whole, two two thirds of the sum, three half of it. */
export function teamLift(eachKg: number, people: 1 | 2 | 3): number {
  return eachKg * people * (people === 1 ? 1 : people === 2 ? 2 / 3 : 1 / 2);
}

/** How many must lift a mass, kg, whole; undefined when three may not. */
export function liftersFor(massKg: number): 1 | 2 | 3 | undefined {
  return ([1, 2, 3] as const).find(people => massKg <= teamLift(MAN, people));
}

const TITLE = { 1: 'One lifts it', 2: 'Two lift it', 3: 'Three lift it, or it comes apart' };

function judge(input: CheckInput, view: View): Check[] {
  const carried = rigids(input, view);
  const heaviest = carried
    .filter(r => r.mass !== undefined)
    .reduce<(typeof carried)[number] | undefined>((w, r) => (w && w.mass! >= r.mass! ? w : r), undefined);
  const unknown = carried.find(r => r.mass === undefined);
  if (!heaviest || unknown) {
    return carried.length === 0
      ? []
      : [
          finding({
            check: 'lifting',
            subject: unknown?.name ?? 'piece',
            severity: 'unknown',
            rule: CHK_29,
            title: 'What it weighs',
            figure: null,
            limit: MAN,
            unit: 'mass',
            remedy: 'Give every part a material of known density, or bought-in parts their mass.',
            say: say('The mass of {piece} is not known.', { piece: text(unknown?.name ?? 'the piece') }),
          }),
        ];
  }
  const mass = heaviest.mass!;
  const two = teamLift(MAN, 2);
  const people = liftersFor(mass);
  const severity = mass <= WOMAN ? 'pass' : mass <= MAN ? 'note' : 'attend';
  return [
    finding({
      check: 'lifting',
      subject: heaviest.name,
      severity,
      rule: CHK_29,
      title: people ? TITLE[people] : 'Too heavy to lift whole',
      figure: mass,
      limit: severity === 'pass' ? WOMAN : teamLift(MAN, people ?? 3),
      unit: 'mass',
      remedy:
        people === undefined
          ? `Let it come apart under ${inKg(teamLift(MAN, 3))}, or move it on wheels or a hoist.`
          : severity === 'attend'
            ? `Bring ${people === 2 ? 'a second pair' : 'two more pairs'} of hands, or let it come apart under ${inKg(MAN)}.`
            : severity === 'note'
              ? 'Ask for help where the way is long.'
              : '',
      say: say('{piece} is {mass}; one strong person lifts {one}, two {two}.', {
        piece: text(capital(heaviest.name)),
        mass: q('mass', mass),
        one: q('mass', MAN),
        two: q('mass', two),
      }),
    }),
  ];
}

export const liftingCheck: CheckMaker = { name: 'lifting', rules: [CHK_29], judge };
