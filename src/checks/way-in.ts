/** Can every part still get in when its turn comes? What is let in at both ends goes in as they close. */
import { boxCentre, boxToLocal } from '../geometry/box.ts';
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import type { Assembly, Instance, JointMade } from '../results/piece.ts';
import { text } from '../results/quantity.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { members } from './rigid.ts';
import { gather, type View } from './view.ts';
import { capital, listed, mid } from './words.ts';

export const CHK_37 = rule(
  'CHK-37',
  'A part let into two others goes in as those two close, not after.',
  'Once they are glued there is no way in.',
  'common practice; order of work: panel in the frame before the frame closes',
  'common practice',
);

interface Trapped {
  part: Instance;
  /** The parts at its two ends. */
  ends: [Instance, Instance];
  loose: boolean;
  closing: Assembly;
  /** The earlier glue-up that already holds both ends, if any. */
  shut: Assembly | undefined;
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

function trapped({ piece }: CheckInput, view: View): Trapped[] {
  const within = new Map(piece.assemblies.map(a => [a.id, new Set(members(a, piece.assemblies))]));
  return piece.instances.flatMap(part => {
    const found = endsOf(part, view);
    if (!found) return [];
    const { ends, joints } = found;
    const closing = piece.assemblies.find(a => joints.some(j => a.joints.includes(j.id)));
    if (!closing) return [];
    const holdsEnds = (a: Assembly): boolean => ends.every(e => within.get(a.id)?.has(e.id));
    const shut = piece.assemblies.find(
      a => a.order < closing.order && holdsEnds(a) && !within.get(a.id)?.has(part.id),
    );
    return [{ part, ends, loose: joints.every(j => j.dry), closing, shut }];
  });
}

function judgeTrapped(of: Trapped[]): Check[] {
  const { part, ends, closing, shut, loose } = of[0]!;
  const values = {
    part: text(capital(part.name)),
    ends: text(listed(ends.map(e => mid(e.name)))),
    closing: text(mid(closing.name)),
  };
  if (!shut && !loose) return [];
  return [
    finding({
      check: 'way in',
      subject: part.part,
      severity: shut ? 'stop' : 'attend',
      rule: CHK_37,
      title: shut ? `${capital(part.name)} is shut out` : `${capital(part.name)}: no later way in`,
      figure: null,
      limit: null,
      unit: 'text',
      remedy: shut
        ? `Put it into ${shut.name}, or glue that up later.`
        : `Have ${of.length === 1 ? 'it' : of.length === 2 ? 'both' : `all ${of.length}`} at hand when ${mid(closing.name)} closes.`,
      say: shut
        ? say('{ends} are one already in {shut}; {part} cannot be let in after.', {
            ...values,
            ends: text(capital(listed(ends.map(e => mid(e.name))))),
            part: text(mid(part.name)),
            shut: text(shut.name),
          })
        : say('{part} goes in loose as {closing} closes on it.', values),
    }),
  ];
}

function judge(input: CheckInput, view: View): Check[] {
  return gather(trapped(input, view), t => t.part.part).flatMap(of => {
    const shut = of.filter(t => t.shut);
    return judgeTrapped(shut.length > 0 ? shut : of);
  });
}

export const wayInCheck: CheckMaker = { name: 'way in', rules: [CHK_37], judge };
