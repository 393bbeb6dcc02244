import { bodyBox } from '../setting-out/bodies.ts';
import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { axisAlong, faceOf, type Refusal, type RoleCut, refused, runOf } from './fixing.ts';
import { housing } from './housing.ts';
import { halfMm, limit, longAxis, rule, withSpan } from './shape.ts';

const SH1 = rule(
  'SH-1',
  'A stopped housing ends 10 mm before the front edge, a tenth of the board where that is more, 20 at most.',
  'The trench does not show; the corner in front stays whole.',
);
const SH2 = rule(
  'SH-2',
  'No less than 5 mm of wood stays in front of the stop.',
  'It crumbles when the end is chopped.',
);
const SH3 = rule(
  'SH-3',
  'The corner of the board that goes in is notched as far as the stop, and 1 mm more.',
  'The notch must clear the stop, or the edges do not come flush.',
);

export const stoppedHousing: JointType = {
  ...housing,
  type: 'stopped-housing',
  title: 'Stopped housing',
  says: 'The end of a board let into a trench that stops short of the edge that shows; its corner is notched.',
  needs: [...housing.needs, 'a chisel for the stopped end'],
  rules: [SH1, SH2, SH3],
  figures: [
    ...housing.figures,
    {
      name: 'stop',
      label: 'stops short of the edge by',
      kind: 'length',
      rule: SH1,
      formula: 'a tenth of the board, 10 to 20 mm',
      value: r => Math.min(20, Math.max(10, Math.round(width(r) / 10))),
    },
    {
      name: 'stopped.at',
      label: 'stopped at the',
      kind: 'text',
      rule: SH1,
      formula: 'front unless said',
      choices: ['front', 'back', 'both'],
      value: () => 'front',
    },
    {
      name: 'notch.room',
      label: 'notch beyond the stop by',
      kind: 'length',
      rule: SH3,
      formula: '1 mm',
      value: () => 1,
    },
  ],
  make,
};

const width = (r: JointReader): number => runOf(r.contact).long;

function make(c: MakeContext) {
  const made = housing.make(c);
  const trench = made.cuts[0]?.cut;
  if (made.impossible || trench?.kind !== 'housing') return made;
  const { contact, from } = c;
  const along = longAxis(contact.inFrom, contact.fromFace);
  const stop = c.figure('stop');
  const room = c.figure('notch.room');
  const depth = c.figure('depth');
  let [low, high] = [contact.inFrom.min[along], contact.inFrom.max[along]];
  const whole = bodyBox(from.body);
  const cuts: RoleCut[] = [];
  for (const atHigh of stoppedSides(c, along)) {
    const edge = atHigh ? contact.inFrom.max[along] : contact.inFrom.min[along];
    if (atHigh) high = edge - stop;
    else low = edge + stop;
    const at = contact.fromFace === 'end2' ? from.body.length : 0;
    const ear = withSpan(
      withSpan(whole, 'x', at, contact.fromFace === 'end2' ? at + depth : -depth),
      along,
      atHigh ? edge - stop - room : whole.min[along],
      atHigh ? whole.max[along] : edge + stop + room,
    );
    cuts.push({
      role: 'from',
      cut: {
        kind: 'notch',
        face: faceOf(along, atHigh),
        box: ear,
        run: along === 'y' ? 'z' : 'y',
        through: true,
        corner: 'square',
      },
    });
  }
  // The trench runs as far along the other board as the shortened end.
  const other = axisAlong(c.into.frame, c.from.frame[along])!;
  const place = (v: number): number => {
    const from0 = contact.inFrom.min[along];
    const into0 = other.sign > 0 ? contact.inInto.min[other.axis] : contact.inInto.max[other.axis];
    return into0 + other.sign * (v - from0);
  };
  const box = withSpan(trench.box, other.axis, place(low), place(high));
  return {
    ...made,
    cuts: [{ role: 'into' as const, cut: { ...trench, box } }, ...made.cuts.slice(1), ...cuts],
    limits: [...made.limits, limit(SH2, 'stop', stop, { min: 5 }, 'attend', 'Stop it 10 mm short.')],
    ...refused(refusals(c, high - low)),
  };
}

/** Which ends of the run, in `from`, are stopped: those that look to the front, or the back, or both. */
function stoppedSides(c: MakeContext, along: 'x' | 'y' | 'z'): boolean[] {
  const word = c.word('stopped.at');
  if (word === 'both') return [false, true];
  const v = c.from.frame[along];
  // A run that is not front to back counts its front as the left or the top.
  const back = Math.abs(v.y) > 0.7 ? v.y > 0 : Math.abs(v.x) > 0.7 ? v.x > 0 : v.z < 0;
  return [word === 'front' ? !back : back];
}

function refusals(c: MakeContext, left: number): Refusal[] {
  const stop = c.figure('stop');
  if (stop <= 0)
    return [
      {
        figure: 'stop',
        fault: `a stop of ${stop} mm is none`,
        mend: 'give 10 mm, or use a housing right through',
      },
    ];
  return left <= c.figure('notch.room') + 1
    ? [
        {
          figure: 'stop',
          fault: `stopped by ${stop} mm nothing is left of the housing`,
          mend: `give ${halfMm(Math.max(5, runOf(c.contact).long / 10))} mm`,
        },
      ]
    : [];
}
