/** Does the glue hold these two, in this shop, in this room, and stay open long enough? */
import { type Adhesive, adhesive, type Bondable, bondsBoth, GLUE_CLASSES } from '../reference/adhesives.ts';
import { sourceOf } from '../reference/sourced.ts';
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import type { Assembly, GlueFace, Instance, JointMade } from '../results/piece.ts';
import { count, minutes, q, text } from '../results/quantity.ts';
import type { Workshop } from '../workshop/workshop.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { gather, type View } from './view.ts';
import { capital, listed, mid } from './words.ts';

export const CHK_13 = rule(
  'CHK-13',
  'A glue holds both materials of the joint.',
  'What it does not wet it does not hold: metal lifts from wood glue.',
  'what each glue bonds: common practice',
  'common practice',
);

export const CHK_14 = rule(
  'CHK-14',
  'The shop is no colder than the glue asks.',
  'Below it a wood glue turns to chalk and holds nothing.',
  'the bottle, else the table of adhesives',
  'read',
);

export const CHK_15 = rule(
  'CHK-15',
  'One glue-up is closed while the glue is open: about a minute for each joint.',
  'Glue that has skinned holds poorly, and a joint that grabs half way stays there.',
  'a minute a joint is common practice; time yourself at the dry fit',
  'common practice',
);

export const CHK_16 = rule(
  'CHK-16',
  'Plain wood glue and hide glue stand where timber stays under 15 % moisture.',
  'Above it they soften: a water-resistant class is needed.',
  `EN 204 class D1: ${GLUE_CLASSES.D1}; ${GLUE_CLASSES.source}`,
  'read',
);

const MINUTES_A_JOINT = 1;
const DRY_ONLY = 15;
const DRY_GLUES: readonly string[] = ['pva', 'hide-hot', 'hide-liquid'];

interface Glued {
  joint: JointMade;
  assembly: Assembly | undefined;
  /** As the maker wrote it. */
  key: string | undefined;
}

/** The table's row for a glue: of its key, or of the one the workshop says it is like. */
const rowOf = (key: string, workshop: Workshop): Adhesive | undefined =>
  adhesive(workshop.adhesives[key]?.like ?? key) ?? adhesive(key);

const nameOf = (key: string, workshop: Workshop): string =>
  workshop.adhesives[key]?.name ?? rowOf(key, workshop)?.name ?? key;

function bondable(part: Instance): Bondable | undefined {
  if (part.kind === 'timber' || part.kind === 'sheet') {
    return /brass|copper|steel|stainless|alumin|zinc|iron|bronze/.test(part.material) ? 'metal' : part.kind;
  }
  return part.kind === 'bar' || part.kind === 'tube' ? 'metal' : undefined;
}

function gluedJoints({ piece }: CheckInput): Glued[] {
  return piece.joints
    .filter(joint => !joint.dry && joint.glue.length > 0)
    .map(joint => {
      const assembly = piece.assemblies.find(a => a.joints.includes(joint.id));
      return { joint, assembly, key: joint.bond?.adhesive || assembly?.glue };
    });
}

function pairOf(face: GlueFace, view: View): [Bondable, Bondable] | undefined {
  const [a, b] = face.between.map(id => view.instance(id)).map(part => part && bondable(part));
  return a && b ? [a, b] : undefined;
}

function holds(glued: readonly Glued[], input: CheckInput, view: View): Check[] {
  const faces = glued.flatMap(g =>
    g.key === undefined
      ? []
      : g.joint.glue.flatMap(face => {
          const pair = pairOf(face, view);
          return pair ? [{ joint: g.joint, key: g.key!, pair }] : [];
        }),
  );
  return gather(faces, f => `${f.key} ${[...f.pair].sort().join(' ')}`).map(group => {
    const { key, pair, joint } = group[0]!;
    const row = rowOf(key, input.workshop);
    const good = row && bondsBoth(row, pair[0], pair[1]);
    const name = nameOf(key, input.workshop);
    return finding({
      check: 'adhesive',
      subject: joint.joint,
      severity: !row ? 'unknown' : good ? 'pass' : 'stop',
      rule: CHK_13,
      title: !row
        ? `What ${name} bonds`
        : good
          ? `${name} holds ${pair[0]} to ${pair[1]}`
          : `${name} does not hold ${pair[0]} to ${pair[1]}`,
      figure: null,
      limit: null,
      unit: 'text',
      remedy: !row
        ? 'Say in the workshop which kind of glue it is like.'
        : good
          ? ''
          : 'Take epoxy, metal abraded and degreased within the hour.',
      say: say('{glue} in {joints}: {one} to {other}.', {
        glue: text(name),
        joints: text(listed(group.map(f => mid(f.joint.title)))),
        one: text(pair[0]),
        other: text(pair[1]),
      }),
    });
  });
}

function noGlueSaid(glued: readonly Glued[]): Check[] {
  const silent = glued.filter(g => g.key === undefined);
  if (silent.length === 0) return [];
  return [
    finding({
      check: 'adhesive',
      subject: silent[0]!.joint.joint,
      severity: 'unknown',
      rule: CHK_13,
      title: 'Which glue',
      figure: null,
      limit: null,
      unit: 'text',
      remedy: 'Name the glue of each glue-up.',
      say: say('{joints}: no glue is named.', {
        joints: text(capital(listed(silent.map(g => mid(g.joint.title))))),
      }),
    }),
  ];
}

function warmEnough(glued: readonly Glued[], { workshop }: CheckInput): Check[] {
  const keys = [...new Set(glued.flatMap(g => (g.key ? [g.key] : [])))];
  return keys.flatMap(key => {
    const least = rowOf(key, workshop)?.minTemperatureC;
    if (!least) return [];
    const shop = workshop.climate.temperature;
    const severity = shop < least.low ? 'stop' : shop < least.high ? 'attend' : 'pass';
    return [
      finding({
        check: 'glue temperature',
        subject: key,
        severity,
        rule: CHK_14,
        title:
          severity === 'pass'
            ? `The shop is warm enough for ${nameOf(key, workshop)}`
            : 'The shop is cold for glue',
        figure: shop,
        limit: least.high,
        unit: 'temperature',
        remedy:
          severity === 'pass'
            ? ''
            : 'Warm timber, glue and shop, and keep them so until the clamps come off.',
        say: say('{glue} asks {least}; the shop stands at {shop}.', {
          glue: text(nameOf(key, workshop)),
          least: q('temperature', least.high),
          shop: q('temperature', shop),
        }),
        sources: [sourceOf(least)],
      }),
    ];
  });
}

const timing = (joints: number): string =>
  joints === 1
    ? 'One joint takes about {needed}; {glue} stays open {open}.'
    : '{joints} joints at about {each} each is {needed}; {glue} stays open {open}.';

function openLongEnough(glued: readonly Glued[], { workshop }: CheckInput): Check[] {
  const ups = gather(
    glued.filter(g => g.assembly && g.key !== undefined),
    g => g.assembly!.id,
  );
  return ups.flatMap(of => {
    const { assembly, key } = of[0]!;
    const row = rowOf(key!, workshop);
    const own = workshop.adhesives[key!]?.openMinutes;
    const table = row?.openMinutes;
    const open = own ?? table?.high;
    if (open === undefined || !assembly) return [];
    const needed = of.length * MINUTES_A_JOINT;
    const long = needed > open;
    return [
      finding({
        check: 'open time',
        subject: assembly.id,
        severity: long ? 'attend' : 'pass',
        rule: CHK_15,
        title: long
          ? `${assembly.name}: more joints than the glue waits for`
          : `${assembly.name}: closed in time`,
        figure: needed,
        limit: open,
        unit: 'time',
        remedy: long ? 'Split the glue-up, get a second pair of hands, or take a slower glue.' : '',
        say: say(timing(of.length), {
          joints: count(of.length),
          each: minutes(MINUTES_A_JOINT),
          needed: minutes(needed),
          glue: text(nameOf(key!, workshop)),
          open: minutes(open),
        }),
        sources: [
          own === undefined && table
            ? sourceOf(table)
            : { text: 'open time by the workshop', basis: 'workshop' },
        ],
      }),
    ];
  });
}

function dryEnough(glued: readonly Glued[], { workshop }: CheckInput, view: View): Check[] {
  const keys = [...new Set(glued.flatMap(g => (g.key ? [g.key] : [])))];
  const damp = view.room?.high;
  if (damp === undefined) return [];
  return keys.flatMap(key => {
    const row = rowOf(key, workshop);
    if (!row || !DRY_GLUES.includes(row.key) || damp <= DRY_ONLY) return [];
    return [
      finding({
        check: 'glue and damp',
        subject: key,
        severity: 'attend',
        rule: CHK_16,
        title: `${nameOf(key, workshop)} in a damp place`,
        figure: damp,
        limit: DRY_ONLY,
        unit: 'moisture',
        remedy: 'Take a water-resistant wood glue (D3 or D4), or epoxy.',
        say: say('Timber there reaches {damp}; this glue is for {limit}.', {
          damp: q('moisture', damp),
          limit: q('moisture', DRY_ONLY),
        }),
      }),
    ];
  });
}

export const adhesivesCheck: CheckMaker = {
  name: 'adhesive',
  rules: [CHK_13, CHK_14, CHK_15, CHK_16],
  judge: (input, view) => {
    const glued = gluedJoints(input);
    return [
      ...holds(glued, input, view),
      ...noGlueSaid(glued),
      ...warmEnough(glued, input),
      ...openLongEnough(glued, input),
      ...dryEnough(glued, input, view),
    ];
  },
};
