import { metal } from '../reference/metals.ts';
import type { Commission, FinishRecipe } from '../results/commission.ts';
import type { Cut } from '../results/cuts.ts';
import type { Assembly, Instance, JointMade, PartGroup, Piece } from '../results/piece.ts';
import type { Workshop } from '../workshop/workshop.ts';

/** One definition with all its copies: what is set up and made together. */
export interface PartView {
  id: string;
  name: string;
  kind: Instance['kind'];
  material: string;
  metal: boolean;
  copies: Instance[];
  /** A copy that stands for all in section. */
  first: Instance;
  blank: PartGroup['blank'];
  measureFirst: Instance['measureFirst'];
}

/** A glue-up with all that goes into it, those of its sub-assemblies too. */
export interface AssemblyView {
  assembly: Assembly;
  joints: JointMade[];
  /** Members of it and of every assembly in it. */
  all: Set<string>;
  parent: string | undefined;
  /** Boards glued edge to edge into one: nothing but long grain in its joints, and nothing cut for them. */
  panel: boolean;
  /** Glue in at least one joint; else it is only put together. */
  glued: boolean;
  /** Welded in at least one joint, and glued in none. */
  welded: boolean;
}

/** The piece, asked the way the order of work asks. */
export interface View {
  piece: Piece;
  commission: Commission;
  workshop: Workshop;
  parts: PartView[];
  partOf: Map<string, PartView>;
  instances: Map<string, Instance>;
  assemblies: AssemblyView[];
  assembly: Map<string, AssemblyView>;
  /** The assembly that takes the instance in directly. */
  homeOf: Map<string, AssemblyView>;
  /** Joints that no assembly closes: put together at the end, without glue. */
  loose: JointMade[];
  recipeOf: Map<string, FinishRecipe>;
  jointsOf: Map<string, JointMade[]>;
}

export function viewOf(piece: Piece, commission: Commission, workshop: Workshop): View {
  const instances = new Map(piece.instances.map(i => [i.id, i]));
  const parts = partViews(piece);
  const partOf = new Map(parts.flatMap(part => part.copies.map(copy => [copy.id, part])));
  const made = new Map(piece.joints.map(joint => [joint.id, joint]));
  const closed = new Set(piece.assemblies.flatMap(a => a.joints));
  const open = piece.joints.filter(joint => !closed.has(joint.id));
  const all = [...piece.assemblies, ...unnamed(piece, open, instances)];
  const assemblies = assemblyViews(all, made, instances);
  const glued = new Set(assemblies.flatMap(a => a.joints.map(j => j.id)));
  const jointsOf = new Map<string, JointMade[]>();
  for (const joint of piece.joints)
    for (const id of joint.instances) jointsOf.set(id, [...(jointsOf.get(id) ?? []), joint]);
  return {
    piece,
    commission,
    workshop,
    parts,
    partOf,
    instances,
    assemblies,
    assembly: new Map(assemblies.map(a => [a.assembly.id, a])),
    homeOf: new Map(assemblies.flatMap(a => a.assembly.instances.map(id => [id, a] as const))),
    loose: open.filter(joint => !glued.has(joint.id)),
    recipeOf: new Map(commission.finishes.flatMap(r => r.instances.map(id => [id, r] as const))),
    jointsOf,
  };
}

function partViews(piece: Piece): PartView[] {
  const groups = new Map(piece.groups.flatMap(group => group.instances.map(id => [id, group] as const)));
  const byPart = new Map<string, Instance[]>();
  for (const instance of piece.instances)
    byPart.set(instance.part, [...(byPart.get(instance.part) ?? []), instance]);
  return [...byPart].map(([id, copies]) => {
    const first = copies[0]!;
    return {
      id,
      name: first.name,
      kind: first.kind,
      material: first.material,
      metal: first.kind === 'bar' || first.kind === 'tube' || metal(first.material) !== undefined,
      copies,
      first,
      blank: groups.get(first.id)?.blank ?? first.size,
      measureFirst: first.measureFirst,
    };
  });
}

/** Glued joints that the setting-out puts into no assembly: each cluster of them is a glue-up of its own. */
function unnamed(
  piece: Piece,
  open: readonly JointMade[],
  instances: ReadonlyMap<string, Instance>,
): Assembly[] {
  const glued = open.filter(
    joint =>
      !joint.dry &&
      (joint.glue.length > 0 || joint.weld !== undefined) &&
      joint.instances.every(id => instances.get(id)?.kind !== 'bought-in'),
  );
  if (glued.length === 0) return [];
  const taken = new Map(piece.assemblies.flatMap(a => a.instances.map(id => [id, a.id] as const)));
  const parent = new Map(piece.assemblies.flatMap(a => a.assemblies.map(child => [child, a.id] as const)));
  const top = (id: string): string => (parent.has(id) ? top(parent.get(id)!) : id);
  const node = (id: string): string => (taken.has(id) ? `assembly ${top(taken.get(id)!)}` : `part ${id}`);
  const cluster = new Map<string, string>();
  const find = (of: string): string => {
    const up = cluster.get(of) ?? of;
    return up === of ? of : find(up);
  };
  for (const joint of glued) {
    const [first, ...rest] = joint.instances.map(node);
    for (const other of rest) cluster.set(find(other), find(first!));
  }
  const roots = [...new Set(glued.map(joint => find(node(joint.instances[0]!))))];
  const last = Math.max(0, ...piece.assemblies.map(a => a.order));
  return roots.map((root, k) => {
    const joints = glued.filter(joint => find(node(joint.instances[0]!)) === root);
    const members = [...new Set(joints.flatMap(joint => joint.instances))];
    return {
      id: roots.length === 1 ? 'rest' : `rest_${k + 1}`,
      name: roots.length === 1 ? 'the rest' : `the rest, ${k + 1}`,
      instances: members.filter(id => !taken.has(id)),
      assemblies: [...new Set(members.flatMap(id => (taken.has(id) ? [top(taken.get(id)!)] : [])))],
      joints: joints.map(joint => joint.id),
      dryFit: joints.length > 1,
      order: last + 1 + k,
    };
  });
}

function assemblyViews(
  assemblies: readonly Assembly[],
  made: ReadonlyMap<string, JointMade>,
  instances: ReadonlyMap<string, Instance>,
): AssemblyView[] {
  const byId = new Map(assemblies.map(a => [a.id, a]));
  const parent = new Map(assemblies.flatMap(a => a.assemblies.map(child => [child, a.id] as const)));
  const members = (a: Assembly, seen: Set<string>): string[] =>
    seen.has(a.id)
      ? []
      : [
          ...a.instances,
          ...a.assemblies.flatMap(id => {
            const child = byId.get(id);
            return child ? members(child, new Set(seen).add(a.id)) : [];
          }),
        ];
  return [...assemblies]
    .sort((a, b) => a.order - b.order)
    .map(assembly => {
      const joints = assembly.joints.flatMap(id => made.get(id) ?? []);
      return {
        assembly,
        joints,
        all: new Set(members(assembly, new Set())),
        parent: parent.get(assembly.id),
        panel: joints.length > 0 && joints.every(joint => edgeGlued(joint, instances)),
        glued: joints.some(joint => !joint.dry && joint.glue.length > 0),
        welded: joints.some(joint => joint.weld) && !joints.some(joint => joint.glue.length > 0),
      };
    });
}

const edgeGlued = (joint: JointMade, instances: ReadonlyMap<string, Instance>): boolean =>
  joint.glue.length > 0 &&
  joint.glue.every(face => face.grain === 'long') &&
  joint.bond === undefined &&
  joint.instances.every(
    id =>
      instances.get(id)?.kind === 'timber' && !instances.get(id)!.cuts.some(cut => cut.by === joint.joint),
  );

/** Surface of the copies, m2: six faces of the envelope, or barrel and ends of a round. */
export function surfaceM2(copies: readonly Instance[]): number {
  return copies.reduce((sum, { size, round }) => {
    const { length: l, width: w, thickness: t } = size;
    const area = round ? Math.PI * w * (l + w / 2) : 2 * (l * w + l * t + w * t);
    return sum + area / 1e6;
  }, 0);
}

/** Length of the copies together, m. */
export const lengthM = (copies: readonly Instance[]): number =>
  copies.reduce((sum, { size }) => sum + size.length / 1000, 0);

export const isStaged = (cut: Cut): boolean => cut.stage.when === 'after';

/** The two largest faces of a glued panel, m2. */
export function panelFacesM2(view: AssemblyView, instances: ReadonlyMap<string, Instance>): number {
  return [...view.all].reduce((sum, id) => {
    const size = instances.get(id)?.size;
    return size ? sum + (2 * size.length * size.width) / 1e6 : sum;
  }, 0);
}
