/** Does every solid width have the room it needs through the year? */
import type { Check, Mend } from '../results/checks.ts';
import { type Say, say } from '../results/message.ts';
import type { Instance, JointMade, MovementRoom } from '../results/piece.ts';
import { mm, q, text } from '../results/quantity.ts';
import type { Source } from '../results/source.ts';
import { type Coefficient, movementCoefficient, seasonalMovement } from '../timber/movement.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { setJointLength } from './mend.ts';
import { gather, speciesOf, type View } from './view.ts';
import { capital, inMm, mid } from './words.ts';

export const CHK_1 = rule(
  'CHK-1',
  'Every solid width has room for what it swells and shrinks between the driest and the dampest of its room.',
  'Timber is stronger than the joint that holds it back: a trapped width splits, or bursts its frame.',
  'dD = D C (M_F - M_I), Wood Handbook FPL-GTR-190 (2010) Eq 13-2; moisture of the room by FPL-GTR-282 (2021) Eq 4-5',
  'read',
);

export const CHK_2 = rule(
  'CHK-2',
  'A solid width of 150 mm or more tells what it moves through the year, even where nothing holds it.',
  'The client is told of it, and doors and drawers beside it are fitted for it.',
  'common practice; the movement by FPL-GTR-190 (2010) Eq 13-2',
  'common practice',
);

const WIDE = 150;
/** A rule could not read a slot closer than this, mm. */
const CLOSE = 0.05;

type Held = Exclude<MovementRoom['what'], 'glued' | 'free'>;

/** What to call the place, what holds it, and the words for too little room. */
const PLACE: Record<
  Held,
  {
    title: string;
    where: string;
    gives: string;
    remedy: (need: string) => string;
    mend: (d: Demand) => Mend | undefined;
  }
> = {
  'slotted screw': {
    title: 'slots are too short',
    where: 'at the outer screws',
    gives: 'the slot gives',
    remedy: need => `Make the slots give ${need} that way, or bring the outer screws nearer the fixed line.`,
    mend: d => setJointLength(d.joint, 'slot', 2 * d.needAtMost, 'up'),
  },
  'panel in groove': {
    title: 'has too little room in its groove',
    where: 'towards its groove',
    gives: 'there is room for',
    remedy: need => `Leave ${need} in the groove on each side.`,
    mend: d => (d.way === 'swells' ? setJointLength(d.joint, 'gap.side', d.needAtMost, 'up') : undefined),
  },
  button: {
    title: 'buttons give too little',
    where: 'at the buttons',
    gives: 'they give',
    remedy: need => `Let each button travel ${need} that way.`,
    mend: d => setJointLength(d.joint, 'travel', d.needAtMost, 'up'),
  },
};

/** One direction at one place: what the timber wants against what it gets, mm. */
interface Demand {
  joint: JointMade;
  room: MovementRoom;
  part: Instance;
  way: 'swells' | 'shrinks';
  /** At the usual coefficient, and at the greatest published one. */
  need: number;
  needAtMost: number;
  given: number;
  moisture: number;
  coefficient: Coefficient;
  made: Source;
  withinRange: boolean;
}

function demands(joint: JointMade, room: MovementRoom, part: Instance, view: View): Demand[] {
  const species = speciesOf(part);
  const coefficient = species && movementCoefficient(species, 'mixed');
  if (!coefficient || !view.room) return [];
  const made = view.made(part.id);
  const usual = seasonalMovement(room.width, coefficient.usual, made.percent, view.room);
  const most = seasonalMovement(room.width, coefficient.high, made.percent, view.room);
  const common = { joint, room, part, coefficient, made: made.source, withinRange: usual.withinRange };
  return [
    {
      ...common,
      way: 'swells',
      need: usual.swellMm,
      needAtMost: most.swellMm,
      given: room.swell,
      moisture: view.room.high,
    },
    {
      ...common,
      way: 'shrinks',
      need: usual.shrinkMm,
      needAtMost: most.shrinkMm,
      given: room.shrink,
      moisture: view.room.low,
    },
  ];
}

const lack = (d: Demand): number => d.need - d.given;

/** What is short at the usual coefficient goes before what is short only at the greatest. */
const worse = (a: Demand, b: Demand): Demand => {
  if (lack(a) > CLOSE || lack(b) > CLOSE) return lack(b) > lack(a) ? b : a;
  return b.needAtMost - b.given > a.needAtMost - a.given ? b : a;
};

function judgeDemand(d: Demand): Check {
  const place = PLACE[d.room.what as Held];
  const tooLittle = lack(d) > CLOSE;
  const close = !tooLittle && d.needAtMost - d.given > CLOSE;
  const name = capital(d.part.name);
  const sources = [d.coefficient.source, d.made];
  if (!d.withinRange) {
    sources.push({ text: 'outside 6 to 14 % the straight line is an extension', basis: 'computed' });
  }
  return finding({
    check: 'movement',
    subject: d.joint.joint,
    severity: tooLittle ? 'stop' : close ? 'attend' : 'pass',
    rule: CHK_1,
    title: tooLittle
      ? `${name} ${place.title}`
      : close
        ? `${name}: room to move, with nothing in hand`
        : `${name} has room to move`,
    figure: d.need,
    limit: d.given,
    unit: 'length',
    remedy: tooLittle || close ? place.remedy(inMm(Math.ceil(d.needAtMost * 10) / 10)) : '',
    mend: tooLittle || close ? place.mend(d) : undefined,
    say: demandSay(d, place, close),
    sources,
  });
}

function demandSay(d: Demand, place: { where: string; gives: string }, close: boolean): Say {
  const values = {
    part: text(capital(d.part.name)),
    move: mm(d.need),
    room: mm(d.given),
    moisture: q('moisture', d.moisture),
    most: mm(d.needAtMost),
  };
  const most = close ? ' The greatest published coefficient asks {most}.' : '';
  const moves = `{part} ${d.way} {move} ${place.where} on its way to {moisture}`;
  return say(`${moves}; ${place.gives} {room}.${most}`, values);
}

/** Without a room or a coefficient nothing can be said. */
function notKnown(part: Instance, joint: JointMade, view: View): Check {
  const why = view.room ? 'species' : 'room';
  return finding({
    check: 'movement',
    subject: joint.joint,
    severity: 'unknown',
    rule: CHK_1,
    title: `How far ${mid(part.name)} moves`,
    figure: null,
    limit: null,
    unit: 'length',
    remedy:
      why === 'room'
        ? 'Enter the least and greatest humidity of the room through the year.'
        : `Enter a timber the tables hold a movement for; ${part.material} has none.`,
    say:
      why === 'room'
        ? say('{part} moves with the air of its room, and the room is not known.', {
            part: text(capital(part.name)),
          })
        : say('No movement is published for {material}.', { material: text(part.material) }),
  });
}

function rooms({ piece }: CheckInput, view: View): Check[] {
  const held = piece.joints.flatMap(joint => {
    const part = joint.room && view.instance(joint.room.instance);
    return joint.room && part && joint.room.what !== 'glued' && joint.room.what !== 'free'
      ? [{ joint, room: joint.room, part }]
      : [];
  });
  return gather(held, h => `${h.joint.joint} ${h.part.part}`).map(places => {
    const all = places.flatMap(p => demands(p.joint, p.room, p.part, view));
    const first = places[0]!;
    if (all.length === 0) return notKnown(first.part, first.joint, view);
    return judgeDemand(all.reduce(worse));
  });
}

/** Wide panels that no joint gives room: what they move is told, so that nothing is fitted tight to them. */
function told({ piece }: CheckInput, view: View): Check[] {
  const spoken = new Set(piece.joints.flatMap(j => (j.room ? [j.room.instance] : [])));
  const silent = view.panels.filter(p => p.width >= WIDE && !p.instances.some(i => spoken.has(i.id)));
  return gather(silent, p => p.instances[0]!.part).flatMap(group => {
    const panel = group.reduce((widest, p) => (p.width > widest.width ? p : widest));
    const part = panel.instances[0]!;
    const species = speciesOf(part);
    const coefficient = species && movementCoefficient(species, 'mixed');
    if (!coefficient || !view.room) {
      return [
        finding({
          check: 'movement',
          subject: `parts.${part.part}`,
          severity: 'unknown',
          rule: CHK_2,
          title: `How far ${mid(part.name)} moves`,
          figure: null,
          limit: null,
          unit: 'length',
          remedy: view.room
            ? `Enter a timber the tables hold a movement for; ${part.material} has none.`
            : 'Enter the least and greatest humidity of the room through the year.',
          say: say('{part} is {width} across its grain, and what it moves is not known.', {
            part: text(capital(part.name)),
            width: mm(panel.width),
          }),
        }),
      ];
    }
    const { travelMm } = seasonalMovement(panel.width, coefficient.usual, view.room.low, view.room);
    return [
      finding({
        check: 'movement',
        subject: `parts.${part.part}`,
        severity: 'note',
        rule: CHK_2,
        title: `${capital(part.name)} moves ${inMm(travelMm)} through the year`,
        figure: travelMm,
        limit: null,
        unit: 'length',
        remedy: 'Fit nothing tight to its long edges, and tell the client.',
        say: say(
          '{width} across the grain moves {move} between {dry} and {damp}; no joint of it gives room.',
          {
            width: mm(panel.width),
            move: mm(travelMm),
            dry: q('moisture', view.room.low),
            damp: q('moisture', view.room.high),
          },
        ),
        sources: [coefficient.source],
      }),
    ];
  });
}

export const movementCheck: CheckMaker = {
  name: 'movement',
  rules: [CHK_1, CHK_2],
  judge: (input, view) => [...rooms(input, view), ...told(input, view)],
};
