import { signedArea } from '../geometry/polygon.ts';
import type { Point } from './list.ts';

/** The part of segment a-b inside a convex polygon, or nothing. */
export function clipSegment(a: Point, b: Point, convex: readonly Point[]): [Point, Point] | undefined {
  const sign = signedArea(convex) < 0 ? -1 : 1;
  let enter = 0;
  let leave = 1;
  for (let i = 0; i < convex.length; i++) {
    const [px, py] = convex[i]!;
    const [qx, qy] = convex[(i + 1) % convex.length]!;
    const side = ([x, y]: Point): number => sign * ((qx - px) * (y - py) - (qy - py) * (x - px));
    const da = side(a);
    const db = side(b);
    if (da < 0 && db < 0) return undefined;
    if (da < 0) enter = Math.max(enter, da / (da - db));
    else if (db < 0) leave = Math.min(leave, da / (da - db));
  }
  if (leave - enter < 1e-9) return undefined;
  const at = (t: number): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
  return [at(enter), at(leave)];
}

/** The parts of polylines inside a convex polygon; segments that go on are kept in one run. */
export function clipRuns(lines: readonly (readonly Point[])[], convex: readonly Point[]): Point[][] {
  const kept: Point[][] = [];
  for (const points of lines) {
    let open: Point[] | undefined;
    for (let i = 0; i + 1 < points.length; i++) {
      const piece = clipSegment(points[i]!, points[i + 1]!, convex);
      if (!piece) {
        open = undefined;
        continue;
      }
      const last = open?.at(-1);
      if (open && last && last[0] === piece[0][0] && last[1] === piece[0][1]) open.push(piece[1]);
      else {
        open = [piece[0], piece[1]];
        kept.push(open);
      }
    }
  }
  return kept;
}

/** Convex hull (Andrew's monotone chain), counter-clockwise in the page's x and y. */
export function hull(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  if (sorted.length < 3) return sorted;
  const half = (list: readonly Point[]): Point[] => {
    const chain: Point[] = [];
    for (const p of list) {
      while (chain.length > 1) {
        const [a, b] = [chain.at(-2)!, chain.at(-1)!];
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 1e-9) break;
        chain.pop();
      }
      chain.push(p);
    }
    return chain.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}
