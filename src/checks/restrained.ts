/** Solid timber held across its grain cannot move: over a small width the joint stands it, over a wide one it splits. */
import { boxSize, boxToLocal } from '../geometry/box.ts';
import { toLocal, toWorld } from '../geometry/frame.ts';
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import type { GlueFace, Instance, JointMade } from '../results/piece.ts';
import { mm, text } from '../results/quantity.ts';
import { movementCoefficient, seasonalMovement } from '../timber/movement.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { gather, type Panel, parallel, speciesOf, type View } from './view.ts';
import { capital, inMm, listed, mid } from './words.ts';

export const CHK_3 = rule(
  'CHK-3',
  'Solid timber is glued, or screwed tight, across its grain over 100 mm at most; over 200 mm it splits.',
  'The width wants to move and what holds it does not: wide tenons are divided, ends of tops slide.',
  'common practice',
  'common practice',
);

const MOST = 100;
const SPLITS = 200;

interface Restraint {
  joint: JointMade;
  part: Instance;
  /** What holds it. */
  holder: string;
  how: 'glued' | 'screwed tight';
  width: number;
}

/** Does `other` stay put along the way in which `part` moves? Timber does along its grain; sheet and metal always. */
const staysPut = (part: Instance, other: Instance): boolean =>
  other.kind === 'timber'
    ? parallel(other.frame.x, part.frame.y)
    : other.kind === 'sheet' || other.kind === 'bar' || other.kind === 'tube';

function glued(joint: JointMade, face: GlueFace, view: View): Restraint[] {
  const [a, b] = [view.instance(face.between[0]), view.instance(face.between[1])];
  if (!a || !b) return [];
  const ways: [Instance, Instance][] = [
    [a, b],
    [b, a],
  ];
  return ways
    .filter(([part, other]) => part.kind === 'timber' && !part.round && staysPut(part, other))
    .map(([part, other]) => ({
      joint,
      part,
      holder: other.name,
      how: 'glued' as const,
      width: gluedWidth(joint, part),
    }));
}

/** How much of the part's width the joint holds: of a tenon its own width, else where the parts meet. */
function gluedWidth(joint: JointMade, part: Instance): number {
  if (joint.room?.what === 'glued' && joint.room.instance === part.id) return joint.room.width;
  const tenons = part.cuts.flatMap(cut => (cut.kind === 'tenon' && cut.by === joint.joint ? [cut] : []));
  const widest = tenons.map(t => part.size.width - t.y.low - t.y.high);
  if (widest.length > 0) return Math.max(...widest);
  return Math.min(part.size.width, boxSize(boxToLocal(part.frame, joint.contact)).y);
}

/** Joints without glue whose screws leave the width no play. */
const isTight = (joint: JointMade): boolean =>
  joint.glue.length === 0 && joint.room?.what === 'glued' && joint.fasteners.some(f => f.kind === 'screw');

/** Screws without slots fix a panel from the first to the last of them, whichever joint they belong to. */
function screwedTight(panel: Panel, view: View): Restraint[] {
  const first = panel.instances[0]!;
  const held = panel.instances.flatMap(board =>
    view
      .jointsOf(board.id)
      .filter(joint => isTight(joint) && joint.room?.instance === board.id)
      .flatMap(joint =>
        board.cuts.flatMap(cut =>
          cut.kind === 'hole' && cut.role === 'pilot' && cut.by === joint.joint
            ? [{ joint, y: toLocal(first.frame, toWorld(board.frame, cut.at)).y }]
            : [],
        ),
      ),
  );
  if (held.length < 2) return [];
  const ys = held.map(h => h.y);
  return [
    {
      joint: held[0]!.joint,
      part: first,
      holder: listed(held.map(h => holderOf(h.joint, panel, view))),
      how: 'screwed tight',
      width: Math.max(...ys) - Math.min(...ys),
    },
  ];
}

function holderOf(joint: JointMade, panel: Panel, view: View): string {
  const id = joint.instances.find(i => !panel.instances.some(b => b.id === i));
  return id === undefined ? joint.title : mid(view.name(id));
}

function yearly(r: Restraint, view: View): number | undefined {
  const species = speciesOf(r.part);
  const coefficient = species && movementCoefficient(species, 'mixed');
  return coefficient && view.room
    ? seasonalMovement(r.width, coefficient.usual, view.room.low, view.room).travelMm
    : undefined;
}

function remedyOf(r: Restraint): string {
  return r.how === 'glued'
    ? `Glue ${inMm(MOST, 0)} in the middle at most and let the rest slide, or divide the joint.`
    : 'Fix the middle only, and slot the holes of the outer screws.';
}

function judgeRestraint(r: Restraint, view: View): Check {
  const move = yearly(r, view);
  const severity = r.width > SPLITS ? 'stop' : r.width > MOST ? 'attend' : 'pass';
  const values = { part: text(capital(r.part.name)), holder: text(mid(r.holder)), width: mm(r.width) };
  const held = `{part} is ${r.how} to {holder} over {width} of its width`;
  return finding({
    check: 'restrained',
    subject: r.joint.joint,
    severity,
    rule: CHK_3,
    title:
      severity === 'pass'
        ? 'Nothing wide is held across its grain'
        : `${capital(r.part.name)} is ${r.how} across its grain`,
    figure: r.width,
    limit: severity === 'stop' ? SPLITS : MOST,
    unit: 'length',
    remedy: severity === 'pass' ? '' : remedyOf(r),
    say:
      move === undefined
        ? say(`${held}.`, values)
        : say(`${held}, which moves {move} a year.`, { ...values, move: mm(move) }),
  });
}

function judge({ piece }: CheckInput, view: View): Check[] {
  const all = [
    ...piece.joints
      .filter(joint => !joint.dry)
      .flatMap(joint => joint.glue.flatMap(face => glued(joint, face, view))),
    ...view.panels.flatMap(panel => screwedTight(panel, view)),
  ];
  if (all.length === 0) return [];
  const widest = (of: Restraint[]) => of.reduce((w, r) => (r.width > w.width ? r : w));
  const over = gather(
    all.filter(r => r.width > MOST),
    r => r.joint.joint,
  );
  return (over.length > 0 ? over : [all]).map(of => judgeRestraint(widest(of), view));
}

export const restrainedCheck: CheckMaker = { name: 'restrained', rules: [CHK_3], judge };
