/** A screw may not come through, and must hold in the second part. */
import { directionToLocal, directionToWorld, toLocal, toWorld } from '../geometry/frame.ts';
import type { Check } from '../results/checks.ts';
import type { HoleCut } from '../results/cuts.ts';
import { say } from '../results/message.ts';
import type { Instance, JointMade } from '../results/piece.ts';
import { mm, text } from '../results/quantity.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { wayThrough } from './solid.ts';
import { gather, type View } from './view.ts';
import { inMm, mid } from './words.ts';

export const CHK_10 = rule(
  'CHK-10',
  'A screw ends at least 3 mm short of the far side of the second part.',
  'The point comes through a show face, or bruises it from behind.',
  'common practice',
  'common practice',
);

const COVER = 3;

interface Screwed {
  joint: JointMade;
  through: Instance;
  into: Instance;
  length: number;
  throughMm: number;
  intoMm: number;
  left: number;
}

/** How deep a counterbore on the same line sets the head, mm. */
function sunk(instance: Instance, hole: HoleCut): number {
  const bores = instance.cuts.filter(
    cut =>
      cut.kind === 'hole' &&
      cut.role === 'plain' &&
      cut.by === hole.by &&
      cut.face === hole.face &&
      Math.hypot(cut.at.x - hole.at.x, cut.at.y - hole.at.y, cut.at.z - hole.at.z) < 0.01,
  );
  return Math.max(0, ...bores.map(cut => (cut.kind === 'hole' ? cut.depth : 0)));
}

const mouth = (instance: Instance, hole: HoleCut): number =>
  wayThrough(instance.size, hole.at, hole.direction);

/** The second part on the screw's line, and its way through it. */
function second(
  joint: JointMade,
  first: Instance,
  hole: HoleCut,
  view: View,
): { into: Instance; intoMm: number } | undefined {
  const way = mouth(first, hole);
  const from = toWorld(first.frame, {
    x: hole.at.x + hole.direction.x * way,
    y: hole.at.y + hole.direction.y * way,
    z: hole.at.z + hole.direction.z * way,
  });
  const direction = directionToWorld(first.frame, hole.direction);
  for (const id of joint.instances) {
    const into = view.instance(id);
    if (!into || into.id === first.id) continue;
    const intoMm = wayThrough(into.size, toLocal(into.frame, from), directionToLocal(into.frame, direction));
    if (Number.isFinite(intoMm) && intoMm > 0) return { into, intoMm };
  }
  return undefined;
}

function screwed(joint: JointMade, view: View): Screwed[] {
  const screw = joint.fasteners.find(f => f.kind === 'screw');
  if (!screw) return [];
  return joint.instances.flatMap(id => {
    const through = view.instance(id);
    if (!through) return [];
    return through.cuts.flatMap(cut => {
      if (cut.kind !== 'hole' || (cut.role !== 'clearance' && cut.role !== 'slot')) return [];
      if (cut.by !== joint.joint && cut.by !== joint.id) return [];
      const met = second(joint, through, cut, view);
      if (!met) return [];
      const throughMm = mouth(through, cut) - sunk(through, cut);
      return [
        {
          joint,
          through,
          into: met.into,
          length: screw.length,
          throughMm,
          intoMm: met.intoMm,
          left: throughMm + met.intoMm - screw.length,
        },
      ];
    });
  });
}

function judgeScrew(s: Screwed): Check {
  const severity = s.left <= 0 ? 'stop' : s.left < COVER ? 'attend' : 'pass';
  const longest = s.throughMm + s.intoMm - COVER;
  return finding({
    check: 'screw length',
    subject: s.joint.joint,
    severity,
    rule: CHK_10,
    title:
      severity === 'stop'
        ? `Screws come through ${mid(s.into.name)}`
        : severity === 'attend'
          ? `Screws end close under ${mid(s.into.name)}`
          : 'No screw comes through',
    figure: s.length,
    limit: longest,
    unit: 'length',
    remedy: severity === 'pass' ? '' : `Take screws of ${inMm(longest)} at most.`,
    say: say('{length} through {first} and {second}; the longest that stays inside is {longest}.', {
      length: mm(s.length),
      first: text(mid(s.through.name)),
      second: text(mid(s.into.name)),
      longest: mm(longest),
    }),
  });
}

function judge({ piece }: CheckInput, view: View): Check[] {
  const all = piece.joints.flatMap(j => screwed(j, view));
  if (all.length === 0) return [];
  const tightest = (of: Screwed[]) => of.reduce((worst, s) => (s.left < worst.left ? s : worst));
  const bad = gather(
    all.filter(s => s.left < COVER),
    s => s.joint.joint,
  );
  return (bad.length > 0 ? bad : [all]).map(of => judgeScrew(tightest(of)));
}

export const screwsCheck: CheckMaker = { name: 'screw length', rules: [CHK_10], judge };
