/**
 * What is let in loose at both ends goes in as they close: a reminder. Whether it can get in at all is tried on the
 * solids (src/proof/motions.ts).
 */
import { boxCentre, boxToLocal } from '../geometry/box.ts';
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import type { Assembly, Instance, JointMade } from '../results/piece.ts';
import { text } from '../results/quantity.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { members } from './rigid.ts';
import { gather, type View } from './view.ts';
import { capital, mid } from './words.ts';

/** Of the reminder here, and of the motions tried on the solids. */
export const CHK_37 = rule(
  'CHK-37',
  'A part let into two others goes in as those two close, not after.',
  'Once they are glued there is no way in.',
  'common practice; order of work: panel in the frame before the frame closes',
  'common practice',
);

interface LetIn {
  part: Instance;
  /** The parts at its two ends. */
  ends: [Instance, Instance];
  closing: Assembly;
}

/** Is the part let into the other: by a tenon or bar in a mortise or hole, or with all four edges in grooves? */
function letIn(part: Instance, joint: JointMade, view: View): Instance | undefined {
  const other = joint.instances.map(id => view.instance(id)).find(i => i && i.id !== part.id);
  const holds = other?.cuts.some(
    cut =>
      cut.by === joint.joint &&
      ((cut.kind === 'mortise' && !cut.through) ||
        (cut.kind === 'hole' && (cut.role === 'bar' || cut.role === 'dowel') && !cut.through) ||
        cut.kind === 'groove'),
  );
  return holds ? other : undefined;
}

const framed = ({ added }: Instance): boolean =>
  (['end1', 'end2', 'backEdge', 'faceEdge'] as const).every(face => (added[face] ?? 0) > 0);

/** The two parts that a part reaches into at its ends. A panel counts only when all four edges are held. */
function endsOf(part: Instance, view: View): { joints: JointMade[]; ends: [Instance, Instance] } | undefined {
  if (!((part.added.end1 ?? 0) > 0 && (part.added.end2 ?? 0) > 0)) return undefined;
  const held = view
    .jointsOf(part.id)
    .flatMap(joint => {
      const other = letIn(part, joint, view);
      return other ? [{ joint, other, x: boxCentre(boxToLocal(part.frame, joint.contact)).x }] : [];
    })
    .sort((a, b) => a.x - b.x);
  const [first, last] = [held[0], held.at(-1)];
  if (!first || !last || first.other.id === last.other.id || last.x - first.x < part.size.length / 2) {
    return undefined;
  }
  const grooved = first.other.cuts.some(c => c.by === first.joint.joint && c.kind === 'groove');
  if (grooved && !framed(part)) return undefined;
  return { joints: [first.joint, last.joint], ends: [first.other, last.other] };
}

/** Parts let in dry at both ends, whose ends are not one yet when they go in. */
function letInLoose({ piece }: CheckInput, view: View): LetIn[] {
  const within = new Map(piece.assemblies.map(a => [a.id, new Set(members(a, piece.assemblies))]));
  return piece.instances.flatMap(part => {
    const found = endsOf(part, view);
    if (!found?.joints.every(j => j.dry)) return [];
    const { ends, joints } = found;
    const closing = piece.assemblies.find(a => joints.some(j => a.joints.includes(j.id)));
    if (!closing) return [];
    const shut = piece.assemblies.some(
      a =>
        a.order < closing.order &&
        ends.every(e => within.get(a.id)?.has(e.id)) &&
        !within.get(a.id)?.has(part.id),
    );
    return shut ? [] : [{ part, ends, closing }];
  });
}

function remind(of: LetIn[]): Check {
  const { part, closing } = of[0]!;
  return finding({
    check: 'way in',
    subject: part.part,
    severity: 'attend',
    rule: CHK_37,
    title: `${capital(part.name)}: no later way in`,
    figure: null,
    limit: null,
    unit: 'text',
    remedy: `Have ${of.length === 1 ? 'it' : of.length === 2 ? 'both' : `all ${of.length}`} at hand when ${mid(closing.name)} closes.`,
    say: say('{part} goes in loose as {closing} closes on it.', {
      part: text(capital(part.name)),
      closing: text(mid(closing.name)),
    }),
  });
}

const judge = (input: CheckInput, view: View): Check[] =>
  gather(letInLoose(input, view), t => t.part.part).map(remind);

export const wayInCheck: CheckMaker = { name: 'way in', rules: [CHK_37], judge };
