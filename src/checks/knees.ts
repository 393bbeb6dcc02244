/** Room for thighs between a seat and what hangs under a table's top. */
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import { mm, text } from '../results/quantity.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { purposeOf } from './purpose.ts';
import type { View } from './view.ts';
import { capital } from './words.ts';

export const CHK_27 = rule(
  'CHK-27',
  'Between a seat 450 high and the rail of a table 165 mm stay for the thighs.',
  'Less, and the knees meet the rail.',
  'about 165 to 200 clear for thighs, knees 600 to 620 high: remembered, unverified',
  'memory',
);

const SEAT = 450;
const THIGHS = 165;
/** What hangs lower than this is a stretcher for the feet, not a rail over the knees. */
const STRETCHER = 400;

function judge(input: CheckInput, view: View): Check[] {
  if (purposeOf(input) !== 'table') return [];
  const over = input.piece.instances
    .filter(part => !part.loose)
    .map(part => ({ part, box: view.bounds(part) }))
    .filter(({ box }) => box.min.z > STRETCHER);
  if (over.length === 0) return [];
  const lowest = over.reduce((w, o) => (o.box.min.z < w.box.min.z ? o : w));
  const clear = lowest.box.min.z - SEAT;
  const good = clear >= THIGHS;
  return [
    finding({
      check: 'knees',
      subject: lowest.part.id,
      severity: good ? 'pass' : 'attend',
      rule: CHK_27,
      title: good ? 'Knees go under' : `Knees meet the ${lowest.part.name.toLowerCase()}`,
      figure: clear,
      limit: THIGHS,
      unit: 'length',
      remedy: good
        ? ''
        : `Raise the table or lessen what hangs under the top by ${Math.ceil(THIGHS - clear)} mm.`,
      say: say('{part} is {knee} above the floor; a seat at {seat} leaves {clear}.', {
        part: text(capital(lowest.part.name)),
        knee: mm(lowest.box.min.z),
        seat: mm(SEAT),
        clear: mm(clear),
      }),
    }),
  ];
}

export const kneesCheck: CheckMaker = { name: 'knees', rules: [CHK_27], judge };
