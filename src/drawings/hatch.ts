import { clipRuns } from './clip.ts';
import { type Item, type Point, runs, type Tone } from './list.ts';
import { type Random, seeded } from './seeded.ts';

/**
 * Material as lines. A face is given by its corner and two edges in list units: `along` is the way of the
 * grain, `across` the other. Hatches are drawn over the whole face and clipped to what is seen of it, so that a
 * part keeps its grain however it is cut up by what stands before it.
 */
export interface Field {
  corner: Point;
  along: Point;
  across: Point;
  seed: number;
  /** Distance of the lines, list units. */
  gap: number;
  /** Convex area seen; the whole face when absent. */
  seen?: readonly Point[];
}

const size = ([x, y]: Point): number => Math.hypot(x, y);

const at = (field: Field, a: number, b: number): Point => [
  field.corner[0] + field.along[0] * a + field.across[0] * b,
  field.corner[1] + field.along[1] * a + field.across[1] * b,
];

const cut = (field: Field, lines: Point[][]): Point[][] => (field.seen ? clipRuns(lines, field.seen) : lines);

const hatch = (field: Field, lines: Point[][], tone: Tone): Item[] => {
  const kept = cut(field, lines);
  return kept.length === 0 ? [] : [runs(kept, { stroke: 'hatch', tone })];
};

/** Long grain: broken lines along the grain, hardly waved. */
export function longGrain(field: Field, tone: Tone = 'timber'): Item[] {
  const random = seeded(field.seed);
  const length = size(field.along);
  const width = size(field.across);
  const { gap } = field;
  if (length < gap || width < gap * 0.6) return [];
  const lines: Point[][] = [];
  const rows = Math.max(1, Math.round(width / gap));
  for (let row = 0; row < rows; row++) {
    const b = (row + 0.35 + 0.3 * random()) / rows;
    let a = 0.01 + 0.12 * random();
    while (a < 0.97) {
      const reach = Math.min(0.985 - a, (gap * (8 + 12 * random() + 30 * random() * random())) / length);
      if (reach * length > gap) lines.push(wave(field, a, reach, b, random));
      a += reach + (gap * (1.6 + 8 * random())) / length;
    }
  }
  return hatch(field, lines, tone);
}

function wave(field: Field, a: number, reach: number, b: number, random: Random): Point[] {
  const length = size(field.along);
  const depth = Math.min(0.02, (0.1 * field.gap) / size(field.across));
  const steps = Math.max(2, Math.round((reach * length) / (5 * field.gap)));
  const phase = random() * 6;
  return Array.from({ length: steps + 1 }, (_, k) => {
    const x = a + (reach * k) / steps;
    return at(field, x, b + depth * Math.sin(phase + (x * length) / (7.6 * field.gap)));
  });
}

/** End grain: arcs about a heart outside the face; `up` turns the heart over, for neighbouring boards. */
export function endGrain(field: Field, up = true): Item[] {
  const random = seeded(field.seed);
  const width = size(field.along);
  const height = size(field.across);
  const { gap } = field;
  if (width < gap || height < gap) return [];
  const heart: Point = [
    width * (0.25 + 0.5 * random()),
    up ? height * (1.25 + 0.5 * random()) : -height * (0.25 + 0.5 * random()),
  ];
  const lines: Point[][] = [];
  const least = up ? heart[1] - height : -heart[1];
  const most = Math.hypot(width, height) * 2;
  for (
    let radius = least + gap * (0.3 + 0.4 * random());
    radius < most;
    radius += gap * (0.8 + 0.4 * random())
  )
    lines.push(...ring(field, heart, radius, width, height));
  return hatch(field, lines, 'timber');
}

function ring(field: Field, heart: Point, radius: number, width: number, height: number): Point[][] {
  const kept: Point[][] = [];
  let open: Point[] = [];
  const steps = Math.max(20, Math.round((radius / field.gap) * 5));
  for (let i = 0; i <= steps; i++) {
    const angle = (2 * Math.PI * i) / steps;
    const x = heart[0] + radius * Math.cos(angle);
    const y = heart[1] + radius * Math.sin(angle);
    if (x > 0 && x < width && y > 0 && y < height) open.push(at(field, x / width, y / height));
    else {
      if (open.length > 1) kept.push(open);
      open = [];
    }
  }
  if (open.length > 1) kept.push(open);
  return kept;
}

/** Parallel lines at 45 degrees on the page over a convex area: metal (rising) and waste (falling). */
export function diagonals(area: readonly Point[], gap: number, tone: Tone, rising = true): Item[] {
  const slope = rising ? -1 : 1;
  const offsets = area.map(([x, y]) => y - slope * x);
  const low = Math.min(...offsets);
  const high = Math.max(...offsets);
  const left = Math.min(...area.map(p => p[0]));
  const right = Math.max(...area.map(p => p[0]));
  const step = gap * Math.SQRT2;
  const lines: Point[][] = [];
  for (let c = Math.ceil(low / step) * step; c < high; c += step)
    lines.push([
      [left, slope * left + c],
      [right, slope * right + c],
    ]);
  const kept = clipRuns(lines, area);
  return kept.length === 0 ? [] : [runs(kept, { stroke: 'hatch', tone })];
}

/** Edge of a sheet: layers along `along`, every second one ticked. `layers` 5 to 13, odd. */
export function sheetEdge(field: Field, layers: number): Item[] {
  const length = size(field.along);
  const lines: Point[][] = [];
  for (let i = 1; i < layers; i++) lines.push([at(field, 0, i / layers), at(field, 1, i / layers)]);
  const step = field.gap / length;
  for (let i = 1; i < layers; i += 2)
    for (let a = step; a < 1; a += step)
      lines.push([at(field, a, i / layers), at(field, Math.max(0, a - step * 0.4), (i + 1) / layers)]);
  return hatch(field, lines, 'board');
}

/** Layers of a sheet of a given thickness (mm), odd, as plywood is laid. */
export const layersOf = (thickness: number): number =>
  Math.min(13, Math.max(3, 2 * Math.round(thickness / 2.8) + 1));

export type Material = 'timber' | 'board' | 'metal' | 'brass';

/** Face of a material lying flat: grain, sparse grain, or slanted lines. */
export function faceHatch(material: Material, field: Field): Item[] {
  if (material === 'timber') return longGrain(field);
  if (material === 'board') return longGrain({ ...field, gap: field.gap * 2.2 }, 'board');
  const area = field.seen ?? [at(field, 0, 0), at(field, 1, 0), at(field, 1, 1), at(field, 0, 1)];
  return diagonals(area, field.gap, material);
}
