/** Mortises and holes of different joints that run into one another inside a part. */
import { type Box, boxSize, intersectBoxes } from '../geometry/box.ts';
import type { Check } from '../results/checks.ts';
import type { Cut, HoleCut, PocketCut, TenonCut } from '../results/cuts.ts';
import { say } from '../results/message.ts';
import type { Instance } from '../results/piece.ts';
import { mm, text } from '../results/quantity.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { centreLine, distanceBetween, extent, faceAxis, holeBox, isSolid } from './solid.ts';
import { gather, type View } from './view.ts';
import { capital, inMm, mid } from './words.ts';

export const CHK_9 = rule(
  'CHK-9',
  'Mortises and holes of different joints do not run into one another, unless the tenon tips are mitred to meet.',
  'The second tenon stops on the first, and the wood between is gone.',
  'common practice',
  'common practice',
);

/** Wood that should stay between two that pass each other, mm. */
const BETWEEN = 1;

type Deep = (PocketCut & { kind: 'mortise' }) | HoleCut;

const isDeep = (cut: Cut): cut is Deep => cut.kind === 'mortise' || cut.kind === 'hole';

/** Drilled or cut after a glue-up, a cut goes through a joint on purpose: a peg, a draw-bore. */
const onPurpose = (a: Deep, b: Deep): boolean =>
  a.by === b.by || a.stage.when === 'after' || b.stage.when === 'after';

const bodyOf = (cut: Deep, instance: Instance): Box =>
  cut.kind === 'hole' ? holeBox(cut, instance.size) : cut.box;

interface Meeting {
  instance: Instance;
  a: Deep;
  b: Deep;
  /** How far they run into each other, the least of the three ways, mm. */
  by: number;
  mitred: boolean;
  /** Depth at which the first stops short of the second, mm; undefined where it starts beside it. */
  plain: number | undefined;
}

function tenonOf(cut: Deep, view: View): TenonCut | undefined {
  const mate = cut.mate && view.instance(cut.mate.instance)?.cuts.find(c => c.id === cut.mate?.cut);
  return mate?.kind === 'tenon' ? mate : undefined;
}

function plainDepth(instance: Instance, a: Deep, other: Box): number | undefined {
  if (a.kind !== 'mortise') return undefined;
  const { axis, high } = faceAxis(a.face);
  const depth = high ? extent(instance.size, axis) - other.max[axis] : other.min[axis];
  return depth > BETWEEN ? depth - BETWEEN : undefined;
}

/** Two round holes whose boxes share a corner may still pass each other: their centre lines tell. */
function passBy(a: Deep, b: Deep, instance: Instance): boolean {
  if (a.kind !== 'hole' || b.kind !== 'hole') return false;
  const apart = distanceBetween(centreLine(a, instance.size), centreLine(b, instance.size));
  return apart >= (a.diameter + b.diameter) / 2 - 1e-6;
}

function meetings(instance: Instance, view: View): Meeting[] {
  const deep = instance.cuts.filter(isDeep);
  return deep.flatMap((a, i) =>
    deep.slice(i + 1).flatMap(b => {
      if (onPurpose(a, b)) return [];
      const boxB = bodyOf(b, instance);
      const shared = intersectBoxes(bodyOf(a, instance), boxB);
      if (!shared) return [];
      const size = boxSize(shared);
      const by = Math.min(size.x, size.y, size.z);
      if (by < 1e-6 || passBy(a, b, instance)) return [];
      const [tenonA, tenonB] = [tenonOf(a, view), tenonOf(b, view)];
      const mitred = tenonA?.mitredTip !== undefined && tenonB?.mitredTip !== undefined;
      return [{ instance, a, b, by, mitred, plain: plainDepth(instance, a, boxB) }];
    }),
  );
}

const word = (cut: Deep): string => (cut.kind === 'mortise' ? 'mortise' : `${cut.role} hole`);

function judgeMeeting(m: Meeting): Check {
  const both = m.a.kind === 'mortise' && m.b.kind === 'mortise';
  const remedy = m.mitred
    ? 'Cut the mortises to one depth, and the tips as the cards say.'
    : both
      ? `Mitre the tenon tips${m.plain === undefined ? '' : `, or keep plain mortises to ${inMm(m.plain)} deep`}.`
      : 'Move one of the two along, or make it shallower.';
  return finding({
    check: 'cuts meet',
    subject: `${m.instance.id}.${m.a.id}+${m.b.id}`,
    severity: m.mitred ? 'note' : 'stop',
    rule: CHK_9,
    title: m.mitred
      ? `Mitred tenons meet in ${mid(m.instance.name)}`
      : `A ${word(m.a)} runs into a ${word(m.b)} in ${mid(m.instance.name)}`,
    figure: m.by,
    limit: 0,
    unit: 'length',
    remedy,
    say: say(
      m.mitred
        ? 'In {part} the two meet by {by}; their tips are mitred for it.'
        : both
          ? 'In {part} the two meet by {by}; a plain tenon stops on the other.'
          : 'In {part} the two meet by {by}; what goes in second stops on the first.',
      { part: text(mid(m.instance.name)), by: mm(m.by) },
    ),
  });
}

function judge({ piece }: CheckInput, view: View): Check[] {
  const all = piece.instances.filter(isSolid);
  const found = all.flatMap(i => meetings(i, view));
  if (found.length === 0) {
    const deep = all.reduce((n, i) => n + i.cuts.filter(isDeep).length, 0);
    return deep === 0 ? [] : [clear(deep)];
  }
  return gather(found, m => [m.instance.part, ...[m.a.by, m.b.by].sort()].join(' ')).map(of =>
    judgeMeeting(of.reduce((worst, m) => (m.by > worst.by ? m : worst))),
  );
}

const clear = (deep: number): Check =>
  finding({
    check: 'cuts meet',
    subject: 'parts',
    severity: 'pass',
    rule: CHK_9,
    title: 'No mortise or hole runs into another',
    figure: deep,
    limit: null,
    unit: 'count',
    remedy: '',
    say: say(capital('{count} mortises and holes, each in its own wood.'), {
      count: { kind: 'count', value: deep },
    }),
  });

export const cutsMeetCheck: CheckMaker = { name: 'cuts meet', rules: [CHK_9], judge };
