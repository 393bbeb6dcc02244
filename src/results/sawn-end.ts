import { type Vec3, vec } from '../geometry/vector.ts';
import { hollowOf } from './cut-shapes.ts';
import type { EndCut } from './cuts.ts';
import type { StockShape } from './kernel.ts';

/** A stock's section: area (mm2), middle (y and z in the part's frame, mm), second moments about it (mm4). */
interface StockSection {
  area: number;
  y: number;
  z: number;
  yy: number;
  zz: number;
  yz: number;
}

/** Sums of a rectangle about the frame's origin: area, first and second moments. */
const sumsOf = (y0: number, y1: number, z0: number, z1: number): number[] => {
  const [w, t] = [y1 - y0, z1 - z0];
  const [y, z] = [(y0 + y1) / 2, (z0 + z1) / 2];
  const area = w * t;
  return [
    area,
    area * y,
    area * z,
    area * (y * y + (w * w) / 12),
    area * (z * z + (t * t) / 12),
    area * y * z,
  ];
};

export function sectionOf(stock: StockShape): StockSection {
  const { width: w, thickness: t } = stock.size;
  if (stock.round) {
    const bore = stock.wall === undefined ? 0 : Math.max(0, w - 2 * stock.wall);
    const second = (Math.PI / 64) * (w ** 4 - bore ** 4);
    return { area: (Math.PI / 4) * (w * w - bore * bore), y: w / 2, z: w / 2, yy: second, zz: second, yz: 0 };
  }
  const whole = sumsOf(0, w, 0, t);
  const hollow = hollowOf(stock);
  const gone = hollow ? sumsOf(hollow.min.y, hollow.max.y, hollow.min.z, hollow.max.z) : whole.map(() => 0);
  const [area, my, mz, yy, zz, yz] = whole.map((sum, i) => sum - gone[i]!) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const [y, z] = [my / area, mz / area];
  return { area, y, z, yy: yy - area * y * y, zz: zz - area * z * z, yz: yz - area * y * z };
}

/**
 * What a slanting saw takes off an end, exactly, whatever the section: its depth below the end is linear over it,
 * so volume = area x depth at the middle, and its moments follow from the section's second moments.
 *
 * @returns volume, mm3, and middle in the part's frame, mm
 */
export function sawnEnd(stock: StockShape, cut: EndCut): { volume: number; middle: Vec3 } {
  const { length, width, thickness } = stock.size;
  const [m, b] = [cut.mitre, cut.bevel].map(angle => Math.tan((angle * Math.PI) / 180)) as [number, number];
  const s = sectionOf(stock);
  const depth = m * (s.y - (m > 0 ? 0 : width)) + b * (s.z - (b > 0 ? 0 : thickness));
  const volume = s.area * depth;
  if (volume <= 0) return { volume: 0, middle: vec(cut.end === 'end1' ? 0 : length, s.y, s.z) };
  const squares = s.area * depth * depth + m * m * s.yy + b * b * s.zz + 2 * m * b * s.yz;
  const inFrom = squares / 2 / volume;
  return {
    volume,
    middle: vec(
      cut.end === 'end1' ? inFrom : length - inFrom,
      s.y + (m * s.yy + b * s.yz) / volume,
      s.z + (m * s.yz + b * s.zz) / volume,
    ),
  };
}
