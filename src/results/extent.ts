import { type Box, boundsOf, box, boxToWorld, corners } from '../geometry/box.ts';
import type { Instance } from './piece.ts';

/** Box in the world round the envelopes of some copies, mm; at the origin and of no size where there are none. */
export function extentOf(copies: readonly Pick<Instance, 'frame' | 'size'>[]): Box {
  const points = copies.flatMap(({ frame, size }) =>
    corners(boxToWorld(frame, box(0, 0, 0, size.length, size.width, size.thickness))),
  );
  return points.length > 0 ? boundsOf(points) : box(0, 0, 0, 0, 0, 0);
}
