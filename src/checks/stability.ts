/** Does it tip? Balance about the line of the feet under the loads the furniture standards publish. */
import { type Box, boundsOf, corners } from '../geometry/box.ts';
import { toWorld } from '../geometry/frame.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { furnitureLoad } from '../reference/furniture-loads.ts';
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import type { Instance } from '../results/piece.ts';
import { mm, q, text } from '../results/quantity.ts';
import { weightN } from '../timber/mass.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { isSeat, isTop, purposeOf } from './purpose.ts';
import type { View } from './view.ts';

export const CHK_24 = rule(
  'CHK-24',
  'A seat loaded with 600 N 60 mm inside its edge stands a push of 20 N outward at seat height.',
  'Someone sits on the edge and leans.',
  'loads of EN 1022 as read at https://en.tentangkayu.com/2022/06/chair-stability-tests-based-on-en-1022.html; balance by statics. No conformity is claimed',
  'read',
);

export const CHK_25 = rule(
  'CHK-25',
  'A table stands 200 N pressed down 50 mm inside its edge.',
  'Someone leans on the edge, or a child hangs on it.',
  'remembered from EN 12521, low confidence; balance by statics. No conformity is claimed',
  'memory',
);

export const CHK_26 = rule(
  'CHK-26',
  'Storage 686 mm high or more stands a pull of 44.5 N at its top, or is fixed to the wall.',
  'A child climbs the drawers.',
  'scope 686 mm read, force 10 lbf remembered, ASTM F2057-23; open drawers and doors are not counted. No conformity is claimed',
  'memory',
);

const SEAT_LOAD = furnitureLoad('seat-tip-vertical')!;
const SEAT_PUSH = furnitureLoad('seat-tip-horizontal')!;
const SEAT_INSIDE = furnitureLoad('seat-tip-distance')!;
const TABLE_LOAD = furnitureLoad('table-tip')!;
const TIP_HEIGHT = furnitureLoad('tip-rule-height')!;
/** Where the load of EN 12521 stands inside the edge, mm, remembered with it. */
const TABLE_INSIDE = 50;
/** 10 lbf at the top, remembered. */
const STORAGE_PULL = 44.5;

export interface Weighed {
  /** kg */
  mass: number;
  /** World, mm. */
  centre: Vec3;
}

/** Mass and centre of gravity of all that has a place; undefined when some part's mass is not known. */
export function weigh({ piece }: CheckInput, view: View): Weighed | undefined {
  let mass = 0;
  const moment = { x: 0, y: 0, z: 0 };
  for (const part of piece.instances.filter(p => !p.loose)) {
    const group = view.group(part.id);
    if (!group || group.mass === null) return undefined;
    const at = toWorld(part.frame, group.centre);
    mass += group.mass;
    moment.x += group.mass * at.x;
    moment.y += group.mass * at.y;
    moment.z += group.mass * at.z;
  }
  return mass > 0
    ? { mass, centre: { x: moment.x / mass, y: moment.y / mass, z: moment.z / mass } }
    : undefined;
}

/** Bounds of all that touches the floor; undefined for a piece that hangs. */
function feet(parts: readonly Instance[], view: View): Box | undefined {
  const standing = parts.filter(p => !p.loose && view.bounds(p).min.z < 1);
  return standing.length === 0 ? undefined : boundsOf(standing.flatMap(p => corners(view.bounds(p))));
}

/** One side it could tip over: distances inward from the line of the feet, mm. */
interface Side {
  name: string;
  centre: number;
  /** How far the loaded surface overhangs the feet. */
  overhang: number;
}

function sides(foot: Box, loaded: Box, centre: Vec3): Side[] {
  return [
    { name: 'front', centre: centre.y - foot.min.y, overhang: foot.min.y - loaded.min.y },
    { name: 'back', centre: foot.max.y - centre.y, overhang: loaded.max.y - foot.max.y },
    { name: 'left', centre: centre.x - foot.min.x, overhang: foot.min.x - loaded.min.x },
    { name: 'right', centre: foot.max.x - centre.x, overhang: loaded.max.x - foot.max.x },
  ];
}

/** Push at seat height (N) that tips a seat with `loadN` down `inside` mm from its edge. */
export const tippingPush = (
  massKg: number,
  side: Pick<Side, 'centre' | 'overhang'>,
  loadN: number,
  inside: number,
  heightMm: number,
): number => (weightN(massKg) * side.centre + loadN * (inside - side.overhang)) / heightMm;

/** Load (N) pressed down `inside` mm from the edge that tips a table; infinite where the feet stand further out. */
export const tippingLoad = (
  massKg: number,
  side: Pick<Side, 'centre' | 'overhang'>,
  inside: number,
): number =>
  side.overhang > inside
    ? (weightN(massKg) * side.centre) / (side.overhang - inside)
    : Number.POSITIVE_INFINITY;

/** Horizontal pull (N) at a height that brings a piece over: weight times its arm about the feet, over the height. */
export const tippingPull = (massKg: number, armMm: number, heightMm: number): number =>
  (weightN(massKg) * armMm) / heightMm;

interface Stance {
  weighed: Weighed;
  foot: Box;
  loaded: Box;
}

function seatStands({ weighed, foot, loaded }: Stance): Check {
  const height = loaded.max.z;
  const pushes = sides(foot, loaded, weighed.centre).map(side => ({
    side,
    push: tippingPush(weighed.mass, side, SEAT_LOAD.high, SEAT_INSIDE.high, height),
  }));
  const least = pushes.reduce((w, p) => (p.push < w.push ? p : w));
  const good = least.push >= SEAT_PUSH.high;
  return finding({
    check: 'stability',
    subject: 'piece',
    severity: good ? 'pass' : 'stop',
    rule: CHK_24,
    title: good ? 'It stands with someone on the edge' : `It tips to the ${least.side.name}`,
    figure: least.push,
    limit: SEAT_PUSH.high,
    unit: 'force',
    remedy: good ? '' : 'Set the feet further out, or let the seat overhang less.',
    say: say(
      least.push < 0
        ? 'With {load} {inside} inside its edge it tips over the {side} unpushed.'
        : 'With {load} {inside} inside its edge it stands a push of {push} to the {side}; {limit} is asked.',
      {
        load: q('force', SEAT_LOAD.high),
        inside: mm(SEAT_INSIDE.high),
        side: text(least.side.name),
        push: q('force', least.push),
        limit: q('force', SEAT_PUSH.high),
      },
    ),
  });
}

function tableStands({ weighed, foot, loaded }: Stance): Check {
  const loads = sides(foot, loaded, weighed.centre).map(side => ({
    side,
    load: tippingLoad(weighed.mass, side, TABLE_INSIDE),
  }));
  const least = loads.reduce((w, l) => (l.load < w.load ? l : w));
  const good = least.load >= TABLE_LOAD.high;
  const finite = Number.isFinite(least.load);
  return finding({
    check: 'stability',
    subject: 'piece',
    severity: good ? 'pass' : 'attend',
    rule: CHK_25,
    title: good ? 'It stands with someone leaning on the edge' : `It tips to the ${least.side.name}`,
    figure: finite ? least.load : null,
    limit: TABLE_LOAD.high,
    unit: 'force',
    remedy: good ? '' : 'Set the feet further out, or let the top overhang less.',
    say: finite
      ? say('Pressed down {inside} inside the {side} edge it tips at {load}; {limit} is asked.', {
          inside: mm(TABLE_INSIDE),
          side: text(least.side.name),
          load: q('force', least.load),
          limit: q('force', TABLE_LOAD.high),
        })
      : say('The feet stand so far out that no load on the top tips it; the top overhangs {overhang}.', {
          overhang: mm(Math.max(...sides(foot, loaded, weighed.centre).map(s => s.overhang))),
        }),
  });
}

function storageStands({ weighed, foot, loaded }: Stance): Check[] {
  const height = loaded.max.z;
  if (height < TIP_HEIGHT.high) return [];
  const front = weighed.centre.y - foot.min.y;
  const pull = tippingPull(weighed.mass, front, height);
  const good = pull >= STORAGE_PULL;
  return [
    finding({
      check: 'stability',
      subject: 'piece',
      severity: good ? 'pass' : 'attend',
      rule: CHK_26,
      title: good ? 'Empty and closed, it stands a pull at the top' : 'It comes forward easily',
      figure: pull,
      limit: STORAGE_PULL,
      unit: 'force',
      remedy: good ? '' : 'Fix it to the wall at the top, and say so to the client.',
      say: say('Empty and closed it comes forward at {pull} at the top; {limit} is asked.', {
        pull: q('force', pull),
        limit: q('force', STORAGE_PULL),
      }),
    }),
  ];
}

function judge(input: CheckInput, view: View): Check[] {
  const use = purposeOf(input);
  const { piece } = input;
  const foot = feet(piece.instances, view);
  if (!use || !foot) return [];
  const surface = piece.instances
    .filter(i => !i.loose)
    .filter(use === 'seat' ? isSeat : use === 'table' ? isTop : () => true);
  if (surface.length === 0) return [];
  const weighed = weigh(input, view);
  if (!weighed) {
    return [
      finding({
        check: 'stability',
        subject: 'piece',
        severity: 'unknown',
        rule: use === 'seat' ? CHK_24 : use === 'table' ? CHK_25 : CHK_26,
        title: 'Whether it tips',
        figure: null,
        limit: null,
        unit: 'force',
        remedy: 'Give every part a material of known density, or bought-in parts their mass.',
        say: say('The mass of some part is not known.'),
      }),
    ];
  }
  const loaded = boundsOf(surface.flatMap(p => corners(view.bounds(p))));
  const stance = { weighed, foot, loaded };
  if (use === 'seat') return [seatStands(stance)];
  return use === 'table' ? [tableStands(stance)] : storageStands(stance);
}

export const stabilityCheck: CheckMaker = { name: 'stability', rules: [CHK_24, CHK_25, CHK_26], judge };
