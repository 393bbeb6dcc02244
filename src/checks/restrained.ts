/** Solid timber glued across its grain cannot move: over a small width the joint stands it, over a wide one it splits. */
import { boxSize, boxToLocal } from '../geometry/box.ts';
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import type { GlueFace, Instance, JointMade } from '../results/piece.ts';
import { mm, text } from '../results/quantity.ts';
import { movementCoefficient, seasonalMovement } from '../timber/movement.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { gather, parallel, speciesOf, type View } from './view.ts';
import { capital, inMm, mid } from './words.ts';

export const CHK_3 = rule(
  'CHK-3',
  'Solid timber is glued across its grain over 100 mm at most; over 200 mm it splits.',
  'The width wants to move and the part it is glued to does not: wide tenons are divided, ends of tops slide.',
  'common practice',
  'common practice',
);

const MOST = 100;
const SPLITS = 200;

interface Restraint {
  joint: JointMade;
  part: Instance;
  other: Instance;
  width: number;
}

/** Does `other` stay put along the way in which `part` moves? Timber does along its grain; sheet and metal always. */
const staysPut = (part: Instance, other: Instance): boolean =>
  other.kind === 'timber'
    ? parallel(other.frame.x, part.frame.y)
    : other.kind !== 'bought-in' && part.kind === 'timber';

function restraints(joint: JointMade, face: GlueFace, view: View): Restraint[] {
  const [a, b] = [view.instance(face.between[0]), view.instance(face.between[1])];
  if (!a || !b) return [];
  return [[a, b] as const, [b, a] as const].flatMap(([part, other]) =>
    part.kind === 'timber' && !part.round && staysPut(part, other)
      ? [{ joint, part, other, width: gluedWidth(joint, part) }]
      : [],
  );
}

/** How much of the part's width the joint holds: the joint's own word, else the place where the parts meet. */
function gluedWidth(joint: JointMade, part: Instance): number {
  if (joint.room?.what === 'glued' && joint.room.instance === part.id) return joint.room.width;
  return Math.min(part.size.width, boxSize(boxToLocal(part.frame, joint.contact)).y);
}

const yearly = (r: Restraint, view: View): number | undefined => {
  const species = speciesOf(r.part);
  const coefficient = species && movementCoefficient(species, 'mixed');
  return coefficient && view.room
    ? seasonalMovement(r.width, coefficient.usual, view.room.low, view.room).travelMm
    : undefined;
};

function judgeRestraint(r: Restraint, view: View): Check {
  const move = yearly(r, view);
  const severity = r.width > SPLITS ? 'stop' : r.width > MOST ? 'attend' : 'pass';
  const values = { part: text(capital(r.part.name)), other: text(mid(r.other.name)), width: mm(r.width) };
  return finding({
    check: 'restrained',
    subject: r.joint.joint,
    severity,
    rule: CHK_3,
    title:
      severity === 'pass'
        ? 'Nothing wide is glued across its grain'
        : `${capital(r.part.name)} is glued across its grain`,
    figure: r.width,
    limit: severity === 'stop' ? SPLITS : MOST,
    unit: 'length',
    remedy:
      severity === 'pass'
        ? ''
        : `Glue ${inMm(MOST, 0)} in the middle at most and let the rest slide, or divide the joint.`,
    say:
      move === undefined
        ? say('{part} is glued to {other} over {width} of its width.', values)
        : say('{part} is glued to {other} over {width} of its width, which moves {move} a year.', {
            ...values,
            move: mm(move),
          }),
  });
}

function judge({ piece }: CheckInput, view: View): Check[] {
  const all = piece.joints
    .filter(joint => !joint.dry)
    .flatMap(joint => joint.glue.flatMap(face => restraints(joint, face, view)));
  if (all.length === 0) return [];
  const widest = (of: Restraint[]) => of.reduce((w, r) => (r.width > w.width ? r : w));
  const over = gather(
    all.filter(r => r.width > MOST),
    r => `${r.joint.joint} ${r.part.part}`,
  );
  return (over.length > 0 ? over : [all]).map(of => judgeRestraint(widest(of), view));
}

export const restrainedCheck: CheckMaker = { name: 'restrained', rules: [CHK_3], judge };
