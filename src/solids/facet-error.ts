import { polygonArea } from '../geometry/polygon.ts';
import type { Primitive } from '../results/cut-shapes.ts';
import type { StockShape } from '../results/kernel.ts';
import { primitiveVolume } from '../results/part-volume.ts';

/** Sides that the mesh kernel gives a full circle. */
const SIDES = 32;
/** Share of a circle's area that a polygon of so many sides inside it does not cover: 1 - sin(2 pi / n) n / (2 pi). */
const UNCOVERED = 1 - (SIDES / (2 * Math.PI)) * Math.sin((2 * Math.PI) / SIDES);
/** How far the mesh kernel draws an outline past its two ends, so that no skin stays, mm. */
const PAST = 0.01;

/**
 * The most by which the volume of a meshed part may differ from the exact one, mm3: every round face lies inside
 * its circle by one thirty-second's segment (0.64 % of its volume), and outlines that end in the wood go 0.01 mm past.
 */
export function facetError({ size, round, wall }: StockShape, gone: readonly Primitive[]): number {
  const stock = round ? (Math.PI / 4) * size.width ** 2 * size.length * (wall === undefined ? 1 : 2) : 0;
  return gone.reduce((sum, p) => sum + errorOf(p), UNCOVERED * stock);
}

function errorOf(p: Primitive): number {
  if (p.shape === 'cylinder' || p.shape === 'cone') {
    const height = Math.hypot(p.to.x - p.from.x, p.to.y - p.from.y, p.to.z - p.from.z);
    const widest = p.shape === 'cylinder' ? p.radius : Math.max(p.radiusFrom, p.radiusTo);
    return UNCOVERED * primitiveVolume(p) + (height > 0 ? Math.PI * widest ** 2 * 2 * PAST : 0);
  }
  if (p.shape === 'prism') return 2 * PAST * polygonArea(p.polygon);
  if (p.shape !== 'turned') return 0;
  const left = p.profile.slice(1).reduce((sum, [b, s], i) => {
    const [a, r] = p.profile[i]!;
    return sum + ((b - a) * Math.PI * (r * r + r * s + s * s)) / 3;
  }, 0);
  return UNCOVERED * left;
}
