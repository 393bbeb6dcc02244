import type { Axis } from '../geometry/vector.ts';
import { leastBend } from '../reference/bends.ts';
import { type Cut, FACE_AXIS, type LocalFace } from '../results/cuts.ts';
import { airOf, developedLength, unbendable } from './bent.ts';
import { SIZE_OF_AXIS } from './faces.ts';
import { base, type Context, faceOf, Lacking } from './feature-context.ts';
import {
  bevelWaste,
  cornerWaste,
  fairCurve,
  hollowArc,
  lineWaste,
  stationAxis,
  windowWaste,
} from './shaped-wastes.ts';

/** A line along a face: an arc of a stated depth, or through entered points; a scribe joins them straight. */
export function line(c: Context, kind: 'curve' | 'scribe'): Cut[] {
  const face = c.face(faceOf(c, 'face'));
  const along = stationAxis(face);
  const shift = along === 'x' ? c.start : 0;
  const entered = c.points()?.map(([at, depth]): [number, number] => [at + shift, depth]);
  if (entered) {
    rising(entered, 'points');
    if (entered.some(([, depth]) => depth < 0))
      throw new Lacking('points', 'a point lies outside the part', 'depths are taken off and not below 0');
    if (entered.every(([, depth]) => depth === 0))
      throw new Lacking('points', 'the line takes nothing off', 'give a depth above 0 somewhere');
    const drawn = kind === 'curve' ? fairCurve(entered) : entered;
    return [{ ...base(c), id: '', ...lineWaste(kind, face, drawn, c.size) }];
  }
  if (kind === 'scribe')
    throw new Lacking('points', 'no offsets are entered', 'list stations with what is taken off at each');
  const from = (c.get('from') ?? 0) + shift;
  const to = c.get('to') === undefined ? c.size[SIZE_OF_AXIS[along]] : c.get('to')! + shift;
  if (to <= from) throw new Lacking('to', 'the curve ends before it begins', 'give a station after from');
  const depth = c.need('depth');
  const half = (to - from) / 2;
  // Deeper than half its chord a circle swings out beyond its own ends.
  if (depth > half + SLACK)
    throw new Lacking(
      'depth',
      `an arc ${shown(depth)} mm deep is more than half its chord of ${shown(2 * half)}`,
      `give ${shown(half)} mm or less`,
    );
  const whole = c.size[SIZE_OF_AXIS[FACE_AXIS[face]]];
  if (depth >= whole - SLACK)
    throw new Lacking(
      'depth',
      `an arc ${shown(depth)} mm deep leaves nothing of ${shown(whole)}`,
      `give less than ${shown(whole)} mm`,
    );
  return [{ ...base(c), id: '', ...lineWaste(kind, face, hollowArc(from, to, depth), c.size) }];
}

const SLACK = 1e-6;
const shown = (mm: number): number => Math.round(mm * 100) / 100;
const sizesOf = (c: Context): string => `${c.size.length} x ${c.size.width} x ${c.size.thickness} mm`;

function rising(points: readonly [number, number][], field: string): void {
  if (points.length < 2 || points.some(([at], i) => i > 0 && at <= points[i - 1]![0]))
    throw new Lacking(field, 'the stations do not rise', 'list at least two points from end 1 onwards');
}

export function cutOut(c: Context): Cut[] {
  const face = c.face(faceOf(c, 'face'));
  const shift = FACE_AXIS[face] === 'x' ? 0 : c.start;
  const round = c.get('diameter');
  const along = c.need('along') + shift;
  const across = c.need('across');
  const [wide, high] = round === undefined ? [c.need('width'), c.need('size')] : [round, round];
  // A round one is told by its centre, one of four sides by its nearest corner.
  const [a, b] = round === undefined ? [along, across] : [along - round / 2, across - round / 2];
  const radius = round === undefined ? (c.get('radius') ?? 0) : round / 2;
  if (radius < 0 || radius > Math.min(wide, high) / 2)
    throw new Lacking(
      'radius',
      `corners of ${radius} mm do not go into it`,
      'give half its least side or less',
    );
  inside(c, 'along', [a, a + wide], c.size[SIZE_OF_AXIS[stationAxis(face)]], round);
  inside(c, 'across', [b, b + high], c.size[SIZE_OF_AXIS[acrossOf(face)]], round);
  const window = { along: [a, a + wide], across: [b, b + high], radius } satisfies Parameters<
    typeof windowWaste
  >[1];
  return [{ ...base(c), id: '', ...windowWaste(face, window, c.size) }];
}

/** The other axis of a face than that of its stations. */
const acrossOf = (face: LocalFace): Axis =>
  (['z', 'y', 'x'] as const).find(k => k !== FACE_AXIS[face] && k !== stationAxis(face))!;

/** Refuses a window that stands over the part along one of its axes, with the places that would do. */
function inside(
  c: Context,
  field: 'along' | 'across',
  [low, high]: [number, number],
  whole: number,
  round: number | undefined,
): void {
  if (low >= -SLACK && high <= whole + SLACK) return;
  const shift = field === 'along' ? c.start : 0;
  const span = high - low;
  const first = (round === undefined ? 0 : round / 2) - shift;
  throw new Lacking(
    field,
    `the cut-out reaches from ${shown(low)} to ${shown(high)} mm, the part from 0 to ${shown(whole)}`,
    span > whole + SLACK
      ? `make it ${shown(whole)} mm or less that way`
      : `give ${shown(first)} to ${shown(first + whole - span)} mm`,
  );
}

export function bevel(c: Context): Cut[] {
  const face = c.face(faceOf(c, 'face'));
  const edge = c.face(faceOf(c, 'edge'));
  if (FACE_AXIS[face] === FACE_AXIS[edge])
    throw new Lacking('edge', 'the edge lies on the same face', 'name the side that is planed out of square');
  const angle = c.need('angle');
  if (angle <= 0 || angle >= 90)
    throw new Lacking(
      'angle',
      `a bevel of ${angle} degrees cannot be cut`,
      'give degrees from square, above 0',
    );
  const [thick, room] = [c.size[SIZE_OF_AXIS[FACE_AXIS[face]]], c.size[SIZE_OF_AXIS[FACE_AXIS[edge]]]];
  const taken = Math.tan((angle * Math.PI) / 180) * thick;
  if (taken > room + SLACK)
    throw new Lacking(
      'angle',
      `a bevel of ${angle} degrees through ${thick} mm takes ${shown(taken)} mm, the part has ${room}`,
      `give ${Math.floor((Math.atan2(room, thick) * 1800) / Math.PI) / 10} deg or less`,
    );
  return [{ ...base(c), id: '', ...bevelWaste(face, edge, angle, c.size) }];
}

export function roundedCorner(c: Context): Cut[] {
  const end = c.feature.end;
  if (!end) throw new Lacking('end', 'no end is named', 'give end: end1 or end2');
  const side = c.face(faceOf(c, 'edge'));
  if (FACE_AXIS[side] === 'x')
    throw new Lacking('edge', 'the side is an end', 'name the long side of the corner');
  const radius = c.need('size');
  const room = Math.min(c.size.length, c.size[SIZE_OF_AXIS[FACE_AXIS[side]]]);
  if (radius > room + SLACK)
    throw new Lacking(
      'size',
      `a corner of radius ${radius} mm is larger than the part, ${sizesOf(c)}`,
      `give ${room} mm or less`,
    );
  return [{ ...base(c), id: '', ...cornerWaste(end, side, radius, c.size) }];
}

export function turned(c: Context): Cut[] {
  const points = c.points()?.map(([at, diameter]) => ({ at: at + c.start, diameter }));
  if (!points) throw new Lacking('points', 'no outline is given', 'list stations with the diameter there');
  if (points.some((p, i) => i > 0 && p.at < points[i - 1]!.at) || points.at(-1)!.at <= points[0]!.at)
    throw new Lacking('points', 'the stations do not rise', 'list at least two points from end 1 onwards');
  return [{ ...base(c), id: '', kind: 'turned', profile: points, round: c.round }];
}

/** A bar bent about its width: the part's own length and thickness are those of the box round it, outside. */
export function bent(c: Context): Cut[] {
  const form = c.feature.form;
  if (!form) throw new Lacking('form', 'no form is named', 'give form: L, U or Z');
  if (c.round)
    throw new Lacking('on', 'a round bar is not bent by this feature', 'name a flat or square bar');
  const stock = c.need('size');
  const least = leastBend(c.material) * stock;
  const radius = c.get('radius') ?? least;
  if (radius < least - 1e-9)
    throw new Lacking(
      'radius',
      `a bend of ${radius} mm inside is tighter than ${stock} mm of ${c.material} bears`,
      `give ${least} mm or more`,
    );
  const riser = form === 'Z' ? c.need('along') + c.start : undefined;
  const bend = { form, stock, radius, kFactor: c.kFactor, ...(riser === undefined ? {} : { riser }) };
  const fault = unbendable(bend, c.size);
  if (fault) throw new Lacking('radius', fault, 'make the legs longer or the radius smaller');
  return [
    {
      ...base(c),
      id: '',
      kind: 'bent',
      form,
      stock,
      radius,
      developed: developedLength(bend, c.size),
      air: airOf(bend, c.size).map(outline => outline.map(([x, z]): [number, number] => [z, x])),
    },
  ];
}
