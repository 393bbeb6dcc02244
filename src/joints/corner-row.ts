import type { Axis } from '../geometry/vector.ts';
import { dot } from '../geometry/vector.ts';
import type { EndName } from '../results/cuts.ts';
import type { MakeContext } from '../setting-out/joint-type.ts';
import type { Refusal } from './fixing.ts';
import { FACE_AXIS, SIZE_OF_AXIS } from './shape.ts';

/** Boards that meet at a corner with a row of tails or fingers. Body frames, mm. */

/** Faces nearer than this are flush, mm. */
const FLUSH = 0.05;

/** Where the row runs in the board whose end enters. */
export interface Row {
  /** Axis along the row, and across it (the thickness of the entering board). */
  along: Axis;
  side: Axis;
  low: number;
  high: number;
  /** The end of the other board on which the row opens. */
  end: EndName;
}

/** The row, or why there is none: the entering board must lie flush with an end of the other, over its own whole end. */
export function onEndOfBoard(
  c: MakeContext,
  what: string,
  figure: string,
): { row: Row } | { refusal: Refusal } {
  const { contact, from, into } = c;
  const no = (fault: string, mend: string) => ({ refusal: { figure, fault, mend } });
  const side = (['y', 'z'] as const).find(a => Math.abs(dot(from.frame[a], into.frame.x)) > 0.7);
  if (!side || FACE_AXIS[contact.intoFace] === 'x')
    return no(
      `${from.instance} and ${into.instance} lie in one line, and ${what} want a corner`,
      'let the one stand across the other',
    );
  const along = side === 'z' ? 'y' : 'z';
  const { min, max } = contact.inFrom;
  for (const a of [along, side] as const) {
    const [shared, own] = [max[a] - min[a], from.body[SIZE_OF_AXIS[a]]];
    if (shared < own - FLUSH)
      return no(
        `${round(own - shared)} mm of the end of ${from.instance} stand over ${into.instance}`,
        `make it ${round(shared)} mm ${a === 'y' ? 'wide' : 'thick'} there, or move it`,
      );
  }
  const before = contact.inInto.min.x;
  const behind = into.body.length - contact.inInto.max.x;
  const step = Math.min(before, behind);
  if (step > FLUSH)
    return no(
      `${what} open on the end of ${into.instance}, and ${from.instance} stands ${round(step)} mm from it`,
      `move it by ${round(step)} mm, flush with the end`,
    );
  return { row: { along, side, low: min[along], high: max[along], end: before <= behind ? 'end1' : 'end2' } };
}

const round = (v: number): number => Math.round(v * 100) / 100;
