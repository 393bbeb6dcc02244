import type { FigureBook } from '../figures/book.ts';
import { type Box, box, boxCentre, boxToWorld } from '../geometry/box.ts';
import type { Frame } from '../geometry/frame.ts';
import {
  AXES,
  type Axis,
  add,
  axisVector,
  cross,
  rotateAbout,
  scale,
  sub,
  type Vec3,
  vec,
} from '../geometry/vector.ts';
import type { Size } from '../results/cuts.ts';
import type { Copy } from './copies.ts';
import { AXIS_WORDS, type Lie, lieOf } from './part-figures.ts';
import type { PartDocument } from './schema.ts';

/** A copy's body between shoulders: its size, and its frame in the world when it has a place. */
export interface Body {
  copy: Copy;
  size: Size;
  frame: Frame;
  /** Round bar, tube or dowel. */
  round: boolean;
  /** False for loose parts, which have no place in the piece. */
  placed: boolean;
}

export const bodyBox = (size: Size): Box => box(0, 0, 0, size.length, size.width, size.thickness);

const LOOSE: Lie = { x: axisVector('x'), y: axisVector('y'), z: axisVector('z') };

/** Body of a copy, or undefined when a figure it needs cannot be worked out. */
export function bodyOf(copy: Copy, document: PartDocument, book: FigureBook): Body | undefined {
  const p = `parts.${copy.part}`;
  const [length, width, thickness] = ['length', 'width', 'thickness'].map(s => book.number(`${p}.body.${s}`));
  if (length === undefined || width === undefined || thickness === undefined) return undefined;
  const size = { length, width, thickness };
  const round = document.diameter !== undefined;
  if (document.at === undefined)
    return { copy, size, frame: { origin: vec(0, 0, 0), ...LOOSE }, round, placed: false };
  const lie = lieOf(document);
  if (!lie) return undefined;
  const faces = AXES.map(a => ({
    low: book.number(`${p}.${AXIS_WORDS[a].low}`),
    high: book.number(`${p}.${AXIS_WORDS[a].high}`),
  }));
  if (faces.some(f => f.low === undefined || f.high === undefined)) return undefined;
  const corner = (axis: Axis, i: number): number => {
    const runs = lie.x[axis] + lie.y[axis] + lie.z[axis];
    return runs > 0 ? faces[i]!.low! : faces[i]!.high!;
  };
  let frame: Frame = { origin: vec(corner('x', 0), corner('y', 1), corner('z', 2)), ...lie };
  frame = turned(frame, size, p, document, book);
  if (copy.k > 1 && document.repeat) {
    const step = book.number(`${p}.repeat.step`);
    if (step === undefined) return undefined;
    frame = {
      ...frame,
      origin: add(frame.origin, scale(axisVector(document.repeat.along), (copy.k - 1) * step)),
    };
  }
  for (const axis of copy.mirrored) {
    const plane = book.number(`${p}.mirror.${axis}`);
    if (plane === undefined) return undefined;
    frame = reflected(frame, size, axis, plane);
  }
  return { copy, size, frame, round, placed: true };
}

function turned(frame: Frame, size: Size, p: string, document: PartDocument, book: FigureBook): Frame {
  if (!document.turn) return frame;
  const centre = boxCentre(boxToWorld(frame, bodyBox(size)));
  let { origin, x, y, z } = frame;
  for (const axis of AXES) {
    const degrees = document.turn[axis] === undefined ? 0 : (book.number(`${p}.turn.${axis}`) ?? 0);
    if (degrees === 0) continue;
    const turn = (v: Vec3): Vec3 => rotateAbout(v, axis, (degrees * Math.PI) / 180);
    origin = add(centre, turn(sub(origin, centre)));
    [x, y, z] = [turn(x), turn(y), turn(z)];
  }
  return { origin, x, y, z };
}

/** Mirror image with a right-handed frame: end 1 and the face side stay themselves, the edges change over. */
function reflected(frame: Frame, size: Size, axis: Axis, plane: number): Frame {
  const flip = (v: Vec3): Vec3 => ({ ...v, [axis]: -v[axis] || 0 });
  const far = add(frame.origin, scale(frame.y, size.width));
  const origin = { ...far, [axis]: 2 * plane - far[axis] };
  const x = flip(frame.x);
  const z = flip(frame.z);
  return { origin, x, y: cross(z, x), z };
}
