/** Cuts that are no rectangular ways, as regions, from the figures of the card alone. */
import { AXES, type Axis, type Vec3 } from '../geometry/vector.ts';
import { type LocalFace, POLYGON_AXES, type Size } from '../results/cuts.ts';
import type { Lay, Removal, Run, Setting } from '../results/setups.ts';
import { AXIS, extent, figure, HIGH, inFrom } from './simulator-card.ts';
import type { Region } from './simulator-regions.ts';

/** Past any part: a cut that goes right through is drawn on into the air, mm. */
const AIR = 1000;

const out = (face: LocalFace): 1 | -1 => (HIGH.includes(face) ? 1 : -1);

/** A region of a card, or the words that say what the card lacks. */
export type Drawn = Region[] | string;

export function outlineRegions(
  blank: Size,
  settings: readonly Setting[],
  run: Run,
  lay: Lay,
  removal: Removal,
): Drawn {
  const gauge = figure(settings, 'gauge');
  const station = run.stations?.[0];
  if (gauge === undefined || station === undefined || !lay.end || !removal.outline || !run.along)
    return 'no gauge or line on the card';
  const axis = AXIS[lay.entry];
  const [u] = POLYGON_AXES[axis];
  const { against, end } = lay;
  const polygon = removal.outline.map(([a, b]): [number, number] => {
    const p = inFrom(blank, against, gauge + a);
    const q = inFrom(blank, end, station + b);
    return AXIS[against] === u ? [p, q] : [q, p];
  });
  return [
    {
      shape: 'prism',
      axis,
      from: inFrom(blank, lay.entry, run.along.from),
      to: inFrom(blank, lay.entry, run.along.to),
      polygon,
    },
  ];
}

/** All beyond a blade that leans away from the fence, from the table up. */
export function bevelRegions(blank: Size, settings: readonly Setting[], lay: Lay): Drawn {
  const [fence, tilt] = [figure(settings, 'fence'), figure(settings, 'tilt')];
  if (fence === undefined || tilt === undefined) return 'no fence or tilt on the card';
  const slope = Math.tan((tilt * Math.PI) / 180);
  const [side, up] = [AXIS[lay.against], AXIS[lay.entry]];
  // Away from the fence less what the blade leans back over the height.
  const normal: Vec3 = { x: 0, y: 0, z: 0 };
  normal[side] = -out(lay.against);
  normal[up] = slope * out(lay.entry);
  const point: Vec3 = { x: 0, y: 0, z: 0 };
  point[side] = inFrom(blank, lay.against, fence);
  point[up] = inFrom(blank, lay.entry, 0);
  return [plane(normal, point)];
}

const plane = (raw: Vec3, through: Vec3): Region => {
  const length = Math.hypot(raw.x, raw.y, raw.z);
  const normal = { x: raw.x / length, y: raw.y / length, z: raw.z / length };
  return {
    shape: 'beyond',
    normal,
    offset: normal.x * through.x + normal.y * through.y + normal.z * through.z,
  };
};

/** An angled end: the stop reads from the long point of the other end to the long point of this one. */
export function endRegions(blank: Size, settings: readonly Setting[], lay: Lay): Drawn {
  const [mitre, bevel] = [figure(settings, 'mitre'), figure(settings, 'tilt')];
  const stop = figure(settings, 'stop');
  if (mitre === undefined || bevel === undefined || stop === undefined || !lay.end)
    return 'no angle or stop on the card';
  const long = lay.long ?? [];
  const normal: Vec3 = { x: out(lay.entry), y: 0, z: 0 };
  const point: Vec3 = { x: inFrom(blank, lay.end, stop), y: 0, z: 0 };
  for (const [axis, angle] of [
    ['y', mitre],
    ['z', bevel],
  ] as const) {
    const face = long.find(f => AXIS[f] === axis);
    if (!face) continue;
    normal[axis] = -out(face) * Math.tan((angle * Math.PI) / 180);
    point[axis] = inFrom(blank, face, 0);
  }
  return [plane(normal, point)];
}

/** A taper: nothing where it begins, the offset at the thin end, right across. */
export function taperRegions(blank: Size, from: number, amount: number, lay: Lay, end: LocalFace): Drawn {
  const side = AXIS[lay.entry];
  const axis = AXES.find(k => k !== 'x' && k !== side)!;
  const level = inFrom(blank, lay.entry, 0);
  const tip = inFrom(blank, end, 0);
  const corners: Record<Axis, number>[] = [
    { x: inFrom(blank, end, from), y: level, z: level },
    { x: tip, y: level, z: level },
    { x: tip, y: inFrom(blank, lay.entry, amount), z: inFrom(blank, lay.entry, amount) },
  ];
  const [u, v] = POLYGON_AXES[axis];
  return [
    {
      shape: 'prism',
      axis,
      from: 0,
      to: extent(blank, axis),
      polygon: corners.map((c): [number, number] => [c[u], c[v]]),
    },
  ];
}

/** The way of a dovetail cutter: as wide as the cutter at its depth, narrower by its slope at the face. */
export function undercutRegions(
  blank: Size,
  settings: readonly Setting[],
  run: Run,
  lay: Lay,
  removal: Removal,
): Drawn {
  const [from, depth] = [figure(settings, 'from', 'fence'), figure(settings, 'depth')];
  const slope = figure(settings, 'angle');
  if (from === undefined || depth === undefined || slope === undefined || !lay.end)
    return 'no distance, depth or slope on the card';
  const axis = AXIS[lay.end];
  const [u] = POLYGON_AXES[axis];
  const back = depth * Math.tan((slope * Math.PI) / 180);
  return removal.moves.map((move): Region => {
    const near = from + move;
    const far = near + removal.width;
    const corners: [number, number][] = [
      [near, depth],
      [far, depth],
      [far - back, 0],
      [near + back, 0],
    ];
    return {
      shape: 'prism',
      axis,
      from: run.along ? inFrom(blank, lay.end!, run.along.from) : 0,
      to: run.along ? inFrom(blank, lay.end!, run.along.to) : extent(blank, axis),
      polygon: corners.map(([s, d]): [number, number] => {
        const [p, q] = [inFrom(blank, lay.against, s), inFrom(blank, lay.entry, d)];
        return AXIS[lay.against] === u ? [p, q] : [q, p];
      }),
    };
  });
}

/** Everything outside the turned line, about the middle of the stock. */
export function turnedRegions(blank: Size, settings: readonly Setting[], lay: Lay, removal: Removal): Drawn {
  const greatest = figure(settings, 'gauge');
  if (greatest === undefined || !removal.turned || !lay.end) return 'no diameter on the card';
  const { end } = lay;
  const profile = removal.turned
    .map((s): [number, number] => [inFrom(blank, end, s.at), (greatest - s.less) / 2])
    .sort((a, b) => a[0] - b[0]);
  return [{ shape: 'turned', profile, centre: [blank.width / 2, blank.thickness / 2] }];
}

/** A chamfer or a quarter round along one edge. */
export function edgeRegion(blank: Size, lay: Lay, size: number, profile: 'chamfer' | 'round-over'): Region {
  const [a, b] = [lay.entry, lay.against];
  const axis = AXES.find(k => k !== AXIS[a] && k !== AXIS[b])!;
  const [u] = POLYGON_AXES[axis];
  const at = (inA: number, inB: number): [number, number] => {
    const [p, q] = [inFrom(blank, a, inA), inFrom(blank, b, inB)];
    return AXIS[a] === u ? [p, q] : [q, p];
  };
  const steps = profile === 'chamfer' ? 1 : 12;
  const arc = Array.from({ length: steps + 1 }, (_, i) => {
    const t = ((Math.PI / 2) * i) / steps;
    return profile === 'chamfer'
      ? at(size * (1 - i), size * i)
      : at(size * (1 - Math.sin(t)), size * (1 - Math.cos(t)));
  });
  return { shape: 'prism', axis, from: 0, to: extent(blank, axis), polygon: [at(0, 0), ...arc] };
}

/** Where a leaning drill goes, from the slopes the card gives. */
export function leaning(lay: Lay): Vec3 {
  const way: Vec3 = { x: 0, y: 0, z: 0 };
  way[AXIS[lay.entry]] = -out(lay.entry);
  for (const { towards, angle } of lay.lean ?? [])
    way[AXIS[towards]] = out(towards) * Math.tan((angle * Math.PI) / 180);
  const length = Math.hypot(way.x, way.y, way.z);
  return { x: way.x / length, y: way.y / length, z: way.z / length };
}

export interface HoleFigures {
  lay: Lay;
  at: Partial<Record<Axis, number>>;
  diameter: number;
  depth: number;
  /** How far in from the entry face its mouth lies. */
  inset: number;
}

const centreOf = (blank: Size, { lay, at, inset }: HoleFigures): Vec3 => ({
  x: 0,
  y: 0,
  z: 0,
  ...at,
  [AXIS[lay.entry]]: inFrom(blank, lay.entry, inset),
});

/** A bore; the mouth of a leaning one is drawn on into the air, so that its rim is open all round. */
export function boreRegion(blank: Size, hole: HoleFigures): Region {
  const centre = centreOf(blank, hole);
  const way = leaning(hole.lay);
  const mouth = (hole.lay.lean ?? []).length === 0 ? 0 : AIR;
  const along = (t: number): Vec3 => ({
    x: centre.x + way.x * t,
    y: centre.y + way.y * t,
    z: centre.z + way.z * t,
  });
  return { shape: 'cylinder', from: along(-mouth), to: along(hole.depth), radius: hole.diameter / 2 };
}

/** What stands between two bores of one slot. */
export function betweenBores(blank: Size, a: HoleFigures, b: HoleFigures): Region | undefined {
  const [p, q] = [centreOf(blank, a), centreOf(blank, b)];
  const along = AXES.find(k => Math.abs(p[k] - q[k]) > 1e-6);
  if (!along) return undefined;
  const into = AXIS[a.lay.entry];
  const min: Vec3 = { x: 0, y: 0, z: 0 };
  const max: Vec3 = { x: 0, y: 0, z: 0 };
  for (const axis of AXES) {
    const r = axis === along ? 0 : a.diameter / 2;
    min[axis] = Math.min(p[axis], q[axis]) - r;
    max[axis] = Math.max(p[axis], q[axis]) + r;
  }
  const bottom = inFrom(blank, a.lay.entry, a.inset + a.depth);
  min[into] = Math.min(p[into], bottom);
  max[into] = Math.max(p[into], bottom);
  return { shape: 'box', box: { min, max } };
}

/** A countersink: its width at the face, to a point at its own angle. */
export function sunkRegion(blank: Size, hole: HoleFigures, angle: number): Region {
  const centre = centreOf(blank, hole);
  const way = leaning(hole.lay);
  const deep = hole.diameter / 2 / Math.tan((angle * Math.PI) / 360);
  return {
    shape: 'cone',
    from: centre,
    to: { x: centre.x + way.x * deep, y: centre.y + way.y * deep, z: centre.z + way.z * deep },
    radiusFrom: hole.diameter / 2,
    radiusTo: 0,
  };
}
