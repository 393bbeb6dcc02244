import { signedArea } from '../geometry/polygon.ts';
import { dot, norm, sub, type Vec3 } from '../geometry/vector.ts';
import type { Instance } from '../results/piece.ts';
import { depthOrder } from './depth-order.ts';
import { type Facet, facetsOf, type Segment } from './facets.ts';
import { endGrain, faceHatch, layersOf, type Material, sheetEdge } from './hatch.ts';
import { group, type Item, type Point, polygon, runs, type Wash } from './list.ts';
import type { Manner } from './manner.ts';
import { layered, materialOf } from './material.ts';
import { onPage, type Projection } from './projection.ts';
import { seedOf } from './seeded.ts';

export interface InkOptions {
  scale: number;
  origin: Point;
  manner: Manner;
  /** Instance drawn as picked. */
  picked?: string;
  /** Where a world point lies on the page, when it is not the plain projection: a part broken in its length. */
  toPage?: (p: Vec3) => Point;
}

/**
 * Instances in ink: silhouettes first at twice the weight, then every visible face back to front with its wash, its
 * hatch and its edges. Groups carry the instance as their figure, so that a screen can make them pressable.
 */
export function inkOf(instances: readonly Instance[], view: Projection, options: InkOptions): Item[] {
  const toPage = options.toPage ?? onPage(view, options.scale, options.origin);
  const facing = instances.flatMap((instance, i) =>
    withBarrelEdges(facetsOf(instance, i).filter(facet => dot(facet.normal, view.eye) > 1e-6)),
  );
  if (facing.length === 0) return [];
  const silhouette = runs(
    facing.filter(f => f.kind !== 'hole').flatMap(f => f.segments.map(segment => segment.map(toPage))),
    { stroke: 'silhouette' },
  );
  const items: Item[] = [silhouette];
  let open: { owner: number; items: Item[] } | undefined;
  for (const facet of depthOrder(facing)) {
    if (open?.owner !== facet.owner) {
      open = { owner: facet.owner, items: [] };
      const instance = instances[facet.owner]!;
      items.push(group(open.items, { figure: instance.id, label: instance.name }));
    }
    open.items.push(...inkFacet(facet, instances[facet.owner]!, toPage, options));
  }
  return items;
}

const near = (p: Vec3, q: Vec3): boolean => norm(sub(p, q)) < 1e-6;

/** Gives round and turned stock its long edges: those of its visible sides that no other visible side shares. */
function withBarrelEdges(facing: Facet[]): Facet[] {
  const sides = facing.filter(f => f.kind === 'side');
  return facing.map(facet => {
    if (facet.kind !== 'side') return facet;
    const [a, b, c, d] = facet.points;
    const has = (other: Facet, p: Vec3): boolean => other.points.some(q => near(p, q));
    const shared = (p: Vec3, q: Vec3): boolean =>
      sides.some(other => other !== facet && has(other, p) && has(other, q));
    const edges: Segment[] = [...facet.segments];
    if (a && b && !shared(a, b)) edges.push([a, b]);
    if (c && d && !shared(d, c)) edges.push([d, c]);
    return { ...facet, segments: edges };
  });
}

function washOf(facet: Facet, material: Material, picked: boolean): Wash {
  if (facet.kind === 'hole') return 'sheet';
  if (picked) return 'picked';
  return material === 'timber' && facet.kind === 'end' ? 'timber-end' : material;
}

function inkFacet(facet: Facet, instance: Instance, toPage: (p: Vec3) => Point, options: InkOptions): Item[] {
  const { manner, picked } = options;
  const points = facet.points.map(toPage);
  if (Math.abs(signedArea(points)) < 5e-5) return [];
  const isPicked = picked === instance.id;
  const material = materialOf(instance.material, instance.kind);
  const lines = facet.segments.map(s => s.map(toPage));
  return [
    polygon(points, { wash: washOf(facet, material, isPicked), seal: true }),
    ...hatchOf(facet, instance, material, points, toPage, manner),
    ...(lines.length === 0
      ? []
      : [runs(lines, { stroke: 'edge', ...(isPicked ? { tone: 'pencil' as const } : {}) })]),
  ];
}

function hatchOf(
  facet: Facet,
  instance: Instance,
  material: Material,
  seen: Point[],
  toPage: (p: Vec3) => Point,
  manner: Manner,
): Item[] {
  if (facet.kind === 'hole') return [];
  const corner = toPage(facet.field.corner);
  const reach = (d: Vec3): Point => {
    const c = facet.field.corner;
    const [x, y] = toPage({ x: c.x + d.x, y: c.y + d.y, z: c.z + d.z });
    return [x - corner[0], y - corner[1]];
  };
  const n = facet.normal;
  const seed = seedOf(`${instance.id} ${facet.kind} ${n.x.toFixed(2)} ${n.y.toFixed(2)} ${n.z.toFixed(2)}`);
  const field = { corner, along: reach(facet.field.along), across: reach(facet.field.across), seed, seen };
  const px = manner.px * Math.max(0.75, manner.weight);
  if (facet.kind === 'side') return barLine(facet, material, toPage, px);
  // A face seen nearly edge-on takes no hatch: lines would run together into a bar.
  const open = Math.abs(field.along[0] * field.across[1] - field.along[1] * field.across[0]);
  if (open < 3 * px * Math.max(Math.hypot(...field.along), Math.hypot(...field.across))) return [];
  if (facet.kind === 'end' && material === 'timber')
    return endGrain({ ...field, gap: 3.4 * px }, seedOf(instance.id) % 2 === 0);
  if (facet.kind === 'edge' && material === 'board') {
    if (!layered(instance.material)) return [];
    const layers = layersSeen(instance.size.thickness, open / Math.hypot(...field.along), px);
    return layers === 0 ? [] : sheetEdge({ ...field, gap: 5 * px }, layers);
  }
  if (material === 'metal' || material === 'brass') return faceHatch(material, { ...field, gap: 5 * px });
  return faceHatch(material, { ...field, gap: 5.2 * px });
}

/** Layers of a sheet that can be told apart in an edge `wide` on the page: odd, or none. */
function layersSeen(thickness: number, wide: number, px: number): number {
  const most = Math.floor(wide / (2.6 * px));
  const layers = Math.min(layersOf(thickness), most % 2 === 0 ? most - 1 : most);
  return layers < 3 ? 0 : layers;
}

/** Lines of a bar's side at its two ends; one more is its long edge. */
const RIMS = 2;

/** A bar is hatched along its length, where its sides turn away from the eye. */
function barLine(facet: Facet, material: Material, toPage: (p: Vec3) => Point, px: number): Item[] {
  const [a, b, , d] = facet.points.map(toPage);
  if (!a || !b || !d || facet.segments.length > RIMS) return [];
  const wide = Math.hypot(d[0] - a[0], d[1] - a[1]);
  const tone = material === 'brass' ? 'brass' : 'metal';
  return wide < 0.5 * px || wide > 1.4 * px ? [] : [runs([[a, b]], { stroke: 'hatch', tone })];
}
