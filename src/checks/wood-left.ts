/** Wood that stays behind blind holes and mortises, and beside them. */
import type { Check, Severity } from '../results/checks.ts';
import type { Cut, HoleCut, PocketCut } from '../results/cuts.ts';
import { say } from '../results/message.ts';
import type { Instance } from '../results/piece.ts';
import { mm, text } from '../results/quantity.ts';
import type { Rule } from '../results/source.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { besideHole, besidePocket, isSolid, woodBehindHole, woodBehindPocket } from './solid.ts';
import { gather } from './view.ts';
import { capital, inMm, mid } from './words.ts';

export const CHK_5 = rule(
  'CHK-5',
  'Behind a blind hole, mortise, groove, housing or recess 3 mm of wood stay, or none where it is meant to go through.',
  'The point of a drill or a stroke of the chisel runs deeper than the figure, and thin wood shows or breaks.',
  'common practice',
  'common practice',
);

export const CHK_6 = rule(
  'CHK-6',
  'Beside a hole half its diameter of wood stays, and never less than 3 mm.',
  'The wall bursts when a dowel is driven or a screw drawn down.',
  'common practice',
  'common practice',
);

export const CHK_7 = rule(
  'CHK-7',
  'A screw stands one and a half of its diameters from the edge, drilled first, and five from the end of solid wood.',
  'Nearer, it splits the grain.',
  'edge 1.5 to 2 d drilled, end 5 to 7 d; remembered trade figures, unverified',
  'memory',
);

export const CHK_8 = rule(
  'CHK-8',
  'The cheeks of a mortise are 5 mm thick at least, and 10 mm of wood stay between it and the end.',
  'The wall breaks out while chopping or gives way to the tenon; near the end it splits.',
  'common practice',
  'common practice',
);

const BEHIND = 3;
const BESIDE = 3;
const CHEEK = 5;
const END = 10;
/** From here a horn left on until the glue is dry is all it takes, mm. */
const HORNED = 5;
const MORTISES: readonly PocketCut['kind'][] = ['mortise'];
const POCKETS: readonly PocketCut['kind'][] = ['mortise', 'housing', 'groove', 'recess'];

/** One measured place: what is left against what should be. */
interface Left {
  rule: Rule;
  instance: Instance;
  cut: Cut;
  what: string;
  /** Measured to an end, and not to an edge or a face. */
  end: boolean;
  left: number;
  least: number;
  remedy: string;
}

const isHole = (cut: Cut): cut is HoleCut => cut.kind === 'hole';
const isPocket = (cut: Cut): cut is PocketCut => 'box' in cut;
const cutName = (cut: Cut): string => (isHole(cut) ? holeName(cut) : cut.kind);
const holeName = (hole: HoleCut): string =>
  hole.role === 'plain' || hole.role === 'slot' ? 'hole' : `${hole.role} hole`;

function behind(instance: Instance, cut: Cut): Left[] {
  const blind = (isHole(cut) || (isPocket(cut) && POCKETS.includes(cut.kind))) && !cut.through;
  if (!blind) return [];
  const left = isHole(cut) ? woodBehindHole(instance, cut) : woodBehindPocket(instance, cut as PocketCut);
  return [
    {
      rule: CHK_5,
      instance,
      cut,
      what: 'behind',
      end: false,
      left,
      least: BEHIND,
      remedy: `Make the ${cutName(cut)} ${inMm(BEHIND - left)} shallower, or take it right through.`,
    },
  ];
}

/** Diameter of the screw a hole is for: the fastener's, else the hole's own. */
function screwDiameter({ piece }: CheckInput, hole: HoleCut): number {
  const joint = piece.joints.find(j => j.joint === hole.by || j.id === hole.by);
  return joint?.fasteners.find(f => f.kind === 'screw')?.diameter ?? hole.diameter;
}

const isScrewHole = (hole: HoleCut): boolean => ['pilot', 'clearance', 'slot'].includes(hole.role);

function besideScrew(input: CheckInput, instance: Instance, hole: HoleCut): Left[] {
  const d = screwDiameter(input, hole);
  const solid = instance.kind === 'timber';
  return besideHole(instance, hole).flatMap(({ face, distance }) => {
    const end = face === 'end1' || face === 'end2';
    const least = (end && solid ? 5 : 1.5) * d;
    return [
      {
        rule: CHK_7,
        instance,
        cut: hole,
        what: end ? 'from the end to' : 'from the edge to',
        end,
        left: distance,
        least,
        remedy: `Move the screw in by ${inMm(least - distance)}, or use a thinner one.`,
      },
    ];
  });
}

function besideDrilled(instance: Instance, hole: HoleCut): Left[] {
  const least = Math.max(BESIDE, hole.diameter / 2);
  return besideHole(instance, hole).map(({ face, distance }) => ({
    rule: CHK_6,
    instance,
    cut: hole,
    what: 'beside',
    end: face === 'end1' || face === 'end2',
    left: distance - hole.diameter / 2,
    least,
    remedy: `Move the hole in by ${inMm(least - (distance - hole.diameter / 2))}, or drill it smaller.`,
  }));
}

function besideMortise(instance: Instance, pocket: PocketCut): Left[] {
  return besidePocket(instance, pocket).map(({ face, distance }) => {
    const end = face === 'end1' || face === 'end2';
    const least = end ? END : CHEEK;
    return {
      rule: CHK_8,
      instance,
      cut: pocket,
      what: end ? 'between the end and' : 'beside',
      end,
      left: distance,
      least,
      remedy: end
        ? 'Leave a horn until the glue is dry, or haunch the tenon.'
        : `Move the mortise in by ${inMm(least - distance)}, or make it narrower.`,
    };
  });
}

function places(input: CheckInput, instance: Instance): Left[] {
  if (!isSolid(instance)) return [];
  return instance.cuts.flatMap(cut => {
    const sides =
      isHole(cut) && isScrewHole(cut)
        ? besideScrew(input, instance, cut)
        : isHole(cut)
          ? besideDrilled(instance, cut)
          : isPocket(cut) && MORTISES.includes(cut.kind)
            ? besideMortise(instance, cut)
            : [];
    return [...behind(instance, cut), ...sides];
  });
}

const NAME = new Map([
  [CHK_5, 'wood behind'],
  [CHK_6, 'wood beside'],
  [CHK_7, 'screw edge'],
  [CHK_8, 'mortise walls'],
]);

const PASSED = new Map([
  [CHK_5, 'Wood enough behind every cut'],
  [CHK_6, 'Wood enough beside every hole'],
  [CHK_7, 'Screws keep their distance'],
  [CHK_8, 'Mortises keep their walls'],
]);

const short = (left: Left): number => left.least - left.left;
const TIGHT = 1e-6;

function severityOf(left: Left): Severity {
  if (short(left) <= TIGHT) return 'pass';
  if (left.rule === CHK_8 && left.end && left.left >= HORNED) return 'note';
  return left.left <= TIGHT && left.rule !== CHK_7 ? 'stop' : 'attend';
}

function judgeLeft(left: Left): Check {
  const severity = severityOf(left);
  const thing = cutName(left.cut);
  const part = mid(left.instance.name);
  const gone = left.left <= TIGHT;
  return finding({
    check: NAME.get(left.rule)!,
    subject: `${left.instance.id}.${left.cut.id}${left.end ? '.end' : ''}`,
    severity,
    rule: left.rule,
    title:
      severity === 'pass'
        ? PASSED.get(left.rule)!
        : gone
          ? `${capital(thing)} comes through in ${part}`
          : `Little wood by the ${thing} in ${part}`,
    figure: left.left,
    limit: left.least,
    unit: 'length',
    remedy: severity === 'pass' ? '' : left.remedy,
    say: say(
      gone
        ? '{part} has no wood left {where} the {thing}; {least} should stay.'
        : severity === 'pass'
          ? 'Least of all, {left} {where} the {thing} in {part}; {least} would do.'
          : '{part} has {left} {where} the {thing}; {least} should stay.',
      {
        part: text(severity === 'pass' ? part : capital(part)),
        where: text(left.what),
        thing: text(thing),
        left: mm(left.left),
        least: mm(left.least),
      },
    ),
  });
}

function judge(input: CheckInput): Check[] {
  const all = input.piece.instances.flatMap(i => places(input, i));
  return gather(all, l => l.rule.number).flatMap(of => {
    const worst = (some: Left[]) => some.reduce((w, l) => (short(l) > short(w) ? l : w));
    const bad = gather(
      of.filter(l => short(l) > TIGHT),
      l => `${l.instance.part} ${l.cut.by} ${l.end}`,
    );
    return (bad.length > 0 ? bad : [of]).map(some => judgeLeft(worst(some)));
  });
}

export const woodLeftCheck: CheckMaker = {
  name: 'wood left',
  rules: [CHK_5, CHK_6, CHK_7, CHK_8],
  judge,
};
