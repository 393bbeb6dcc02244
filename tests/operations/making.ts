import { box } from '../../src/geometry/box.ts';
import { WORLD } from '../../src/geometry/frame.ts';
import { vec } from '../../src/geometry/vector.ts';
import type { Commission, FinishRecipe, FinishStep } from '../../src/results/commission.ts';
import {
  type Cut,
  type EdgeCut,
  type EndCut,
  type HoleCut,
  ON_PART,
  type PocketCut,
  type Size,
  type TaperCut,
  type TenonCut,
} from '../../src/results/cuts.ts';
import type { Operation } from '../../src/results/operations.ts';
import type { Assembly, GlueFace, Instance, JointMade, PartKind, Piece } from '../../src/results/piece.ts';
import type { Workshop } from '../../src/workshop/workshop.ts';
import { workshop as emptyShop } from '../days/making.ts';

export const size = (length: number, width: number, thickness: number): Size => ({
  length,
  width,
  thickness,
});

/** A copy of a part; several copies of one part share its id before the dot: `leg.1`, `leg.2`. */
export function copy(
  id: string,
  of: Size,
  cuts: Cut[] = [],
  more: Partial<Instance> & { kind?: PartKind; material?: string } = {},
): Instance {
  const part = id.split('.')[0]!;
  return {
    id,
    part,
    name: part,
    kind: 'timber',
    material: 'ash-european',
    round: false,
    frame: WORLD,
    body: of,
    size: of,
    added: {},
    cuts,
    mirrored: false,
    grain: 'length',
    show: true,
    loose: false,
    ...more,
  };
}

let cutCount = 0;
const base = (by: string) => {
  cutCount += 1;
  return { id: `${by}.${cutCount}`, by, stage: ON_PART };
};

export const tenon = (by: string): TenonCut => ({
  ...base(by),
  kind: 'tenon',
  end: 'end2',
  length: 30,
  y: { low: 5, high: 5 },
  z: { low: 7, high: 7 },
  cheeks: 'z',
  through: false,
});

export const pocket = (
  by: string,
  kind: PocketCut['kind'],
  run: PocketCut['run'] = 'x',
  length = 60,
): PocketCut => ({
  ...base(by),
  kind,
  face: 'face',
  box: run === 'x' ? box(10, 5, 10, 10 + length, 15, 20) : box(10, 0, 10, 20, length, 20),
  run,
  through: false,
  corner: 'square',
});

export const hole = (by: string, role: HoleCut['role'] = 'plain'): HoleCut => ({
  ...base(by),
  kind: 'hole',
  role,
  face: 'face',
  at: vec(20, 20, 20),
  direction: vec(0, 0, -1),
  diameter: 8,
  depth: 20,
  through: false,
});

export const mitre = (by: string): EndCut => ({
  ...base(by),
  kind: 'end-cut',
  end: 'end1',
  mitre: 45,
  bevel: 0,
});
export const edge = (by: string, kind: EdgeCut['kind']): EdgeCut => ({
  ...base(by),
  kind,
  edges: [{ a: 'face', b: 'faceEdge' }],
  size: 3,
});
export const taper = (by: string): TaperCut => ({
  ...base(by),
  kind: 'taper',
  face: 'back',
  from: 100,
  to: 400,
  amount: 9,
});

/** The same cut, made on a glued assembly. */
export const onAssembly = <C extends Cut>(cut: C, assembly: string): C => ({
  ...cut,
  stage: { when: 'after', assembly },
});

export function joint(
  name: string,
  instances: string[],
  more: Partial<JointMade> & { grain?: GlueFace['grain'] } = {},
): JointMade {
  const { grain = 'cross', ...rest } = more;
  return {
    id: `${name}:${instances.join('+')}`,
    joint: name,
    type: 'made for a test',
    title: name,
    instances,
    contact: box(0, 0, 0, 400, 30, 10),
    glue: rest.dry ? [] : [{ between: [instances[0]!, instances[1] ?? instances[0]!], area: 20_000, grain }],
    fasteners: [],
    limits: [],
    dry: false,
    ...rest,
  };
}

export const assembly = (
  id: string,
  instances: string[],
  joints: JointMade[],
  more: Partial<Assembly> = {},
): Assembly => ({
  id,
  name: id,
  instances,
  assemblies: [],
  joints: joints.map(j => j.id),
  dryFit: true,
  order: 1,
  ...more,
});

/** Blanks are 3 mm thicker, 5 wider and 20 longer for timber; sheets, bars and hardware come to size. */
export function piece(instances: Instance[], joints: JointMade[] = [], assemblies: Assembly[] = []): Piece {
  const parts = [...new Set(instances.map(i => i.part))];
  return {
    instances,
    groups: parts.map((part, k) => {
      const own = instances.filter(i => i.part === part);
      const first = own[0]!;
      const over = first.kind === 'timber' ? [20, 5, 3] : [0, 0, 0];
      return {
        mark: String.fromCharCode(65 + k),
        part,
        name: first.name,
        kind: first.kind,
        material: first.material,
        instances: own.map(i => i.id),
        size: first.size,
        shoulderLength: first.body.length,
        blank: size(
          first.size.length + over[0]!,
          first.size.width + over[1]!,
          first.size.thickness + over[2]!,
        ),
        volume: 0,
        mass: null,
        centre: { x: 0, y: 0, z: 0 },
      };
    }),
    joints,
    assemblies,
    bounds: box(0, 0, 0, 1, 1, 1),
    faults: [],
  };
}

export const step = (kind: FinishStep['kind'], name: string, more: Partial<FinishStep> = {}): FinishStep => ({
  kind,
  name,
  ...more,
});

export const recipe = (
  id: string,
  instances: string[],
  steps: FinishStep[],
  more: Partial<FinishRecipe> = {},
): FinishRecipe => ({ id, name: id, steps, instances, when: 'after glue-up', ...more });

export const commission = (...finishes: FinishRecipe[]): Commission => ({
  title: 'A test',
  number: '1',
  brief: '',
  finishes,
  price: { extras: [], extraHours: [] },
});

/** A shop with a full rack of ash, a table saw and a chisel mortiser. */
export function shop(more: Partial<Workshop> = {}): Workshop {
  const change = { tool: 5, fence: 1, height: 1, tilt: 3, jig: 3, measured: false };
  return {
    ...emptyShop(),
    machines: [
      { id: 'saw', kind: 'table saw', name: 'Saw', change },
      { id: 'mortiser', kind: 'chisel mortiser', name: 'Mortiser', change },
    ],
    rack: [
      {
        id: 'ash',
        kind: 'board',
        material: 'ash-european',
        label: 'ash',
        length: 3000,
        width: 300,
        thickness: 52,
        round: false,
        quantity: 20,
        value: 5000,
      },
    ],
    ...more,
  };
}

export const byId = (operations: Operation[], id: string): Operation => {
  const found = operations.find(o => o.id === id);
  if (!found) throw new Error(`no operation ${id}; there are ${operations.map(o => o.id).join(', ')}`);
  return found;
};

/** Numbers of the rules by which `first` comes before `next`. */
export const rulesBetween = (operations: Operation[], first: string, next: string): string[] =>
  byId(operations, next)
    .after.filter(a => a.operation === first)
    .map(a => a.rule.number)
    .sort();
