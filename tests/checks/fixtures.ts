/** Small pieces made by hand, so that checks are tried without a setting-out. */
import { type CheckInput, runChecks } from '../../src/checks/index.ts';
import { type Box, boundsOf, box, boxToWorld, corners } from '../../src/geometry/box.ts';
import type { Frame } from '../../src/geometry/frame.ts';
import { vec } from '../../src/geometry/vector.ts';
import { materialDensity } from '../../src/reference/materials.ts';
import { middle } from '../../src/reference/sourced.ts';
import type { Check } from '../../src/results/checks.ts';
import type { Commission } from '../../src/results/commission.ts';
import { type Cut, type HoleCut, ON_PART, type PocketCut, type TenonCut } from '../../src/results/cuts.ts';
import type { CuttingPlan, StockUse } from '../../src/results/cutting.ts';
import type { DayPlan } from '../../src/results/days.ts';
import type { Operation } from '../../src/results/operations.ts';
import type { Assembly, Instance, JointMade, PartGroup, Piece } from '../../src/results/piece.ts';
import type { SetUpPlan } from '../../src/results/setups.ts';
import type { Workshop } from '../../src/workshop/workshop.ts';

/** Lying along x, width to the back, thickness up. */
export const LYING: Frame = { origin: vec(0, 0, 0), x: vec(1, 0, 0), y: vec(0, 1, 0), z: vec(0, 0, 1) };
/** Standing: length up, width along x, thickness along y. */
export const STANDING: Frame = { origin: vec(0, 0, 0), x: vec(0, 0, 1), y: vec(1, 0, 0), z: vec(0, 1, 0) };

export const at = (frame: Frame, x: number, y: number, z: number): Frame => ({
  ...frame,
  origin: vec(x, y, z),
});

type Given = Partial<Omit<Instance, 'size'>> & { size: [length: number, width: number, thickness: number] };

export function part(id: string, given: Given): Instance {
  const [length, width, thickness] = given.size;
  const size = { length, width, thickness };
  return {
    part: id.replace(/_.*$/, ''),
    name: id.charAt(0).toUpperCase() + id.slice(1).replaceAll('_', ' '),
    kind: 'timber',
    material: 'ash-european',
    round: false,
    frame: LYING,
    body: size,
    added: {},
    cuts: [],
    loose: false,
    mirrored: false,
    grain: 'length',
    show: true,
    ...given,
    id,
    size,
  };
}

type Cutting<C extends Cut> = Partial<C> & { id: string };
const cutBase = (id: string) => ({ id, by: id.split('.')[0]!, stage: ON_PART });

export const hole = (given: Cutting<HoleCut>): HoleCut => ({
  ...cutBase(given.id),
  kind: 'hole',
  role: 'plain',
  face: 'face',
  at: vec(0, 0, 0),
  direction: vec(0, 0, -1),
  diameter: 8,
  depth: 10,
  through: false,
  ...given,
});

export const pocket = (given: Cutting<PocketCut> & { box: Box }): PocketCut => ({
  ...cutBase(given.id),
  kind: 'mortise',
  face: 'face',
  run: 'x',
  through: false,
  corner: 'square',
  ...given,
});

export const tenon = (given: Cutting<TenonCut>): TenonCut => ({
  ...cutBase(given.id),
  kind: 'tenon',
  end: 'end2',
  length: 30,
  y: { low: 10, high: 10 },
  z: { low: 7, high: 7 },
  cheeks: 'z',
  through: false,
  ...given,
});

export function joint(id: string, instances: string[], given: Partial<JointMade> = {}): JointMade {
  return {
    id: `${id}:${instances.join('+')}`,
    joint: id,
    type: 'mortise-and-tenon',
    title: id,
    instances,
    contact: box(0, 0, 0, 1, 1, 1),
    glue: [],
    fasteners: [],
    limits: [],
    dry: false,
    ...given,
  };
}

/** A group for each part, with the mass of the plain box. */
export function groupOf(instance: Instance): PartGroup {
  const { length, width, thickness } = instance.size;
  const volume = instance.round ? (Math.PI / 4) * width * width * length : length * width * thickness;
  const density = materialDensity(instance.material, thickness)?.densityKgM3;
  return {
    mark: instance.id,
    part: instance.part,
    name: instance.name,
    kind: instance.kind,
    material: instance.material,
    instances: [instance.id],
    size: instance.size,
    shoulderLength: length,
    blank: instance.size,
    volume,
    mass: density ? (volume * middle(density)) / 1e9 : null,
    centre: { x: length / 2, y: width / 2, z: thickness / 2 },
  };
}

export function pieceOf(instances: Instance[], joints: JointMade[] = [], assemblies: Assembly[] = []): Piece {
  const bounds = instances.map(i =>
    boxToWorld(i.frame, box(0, 0, 0, i.size.length, i.size.width, i.size.thickness)),
  );
  return {
    instances,
    groups: instances.map(groupOf),
    joints,
    assemblies,
    bounds: bounds.length > 0 ? boundsOf(bounds.flatMap(corners)) : box(0, 0, 0, 0, 0, 0),
    faults: [],
  };
}

export const commission = (given: Partial<Commission> = {}): Commission => ({
  title: 'A piece',
  number: '1',
  brief: '',
  finishes: [],
  price: { extras: [], extraHours: [] },
  ...given,
});

/** Air that brings 9 to 15 % by Eq 4-5, as in an unheated porch. */
export const PORCH: NonNullable<Commission['site']> = {
  name: 'porch',
  humidity: { low: 50, high: 75 },
  temperature: { low: 3, high: 20 },
  doors: [{ name: 'the front door', width: 760, height: 1980 }],
};

export const workshop = (given: Partial<Workshop> = {}): Workshop => ({
  name: 'The shop',
  currency: 'GBP',
  machines: [],
  blades: [],
  cutters: [],
  drills: [],
  jigs: [],
  clamps: [],
  rack: [],
  suppliers: [],
  calendar: { week: {}, daysOff: [] },
  rates: {
    hour: 4400,
    contingency: 0.08,
    margin: 0.1,
    tax: { registered: false, rate: 0.2 },
    consumables: 0.05,
  },
  allowances: {
    timber: { length: 20, width: 4, thickness: 2 },
    sheet: { length: 0, width: 0, thickness: 0 },
    bar: { length: 2, width: 0, thickness: 0 },
    tube: { length: 2, width: 0, thickness: 0 },
  },
  adhesives: {},
  finishes: {},
  times: {},
  leastOffcut: { length: 300, width: 40 },
  climate: { temperature: 18, humidity: 55 },
  ...given,
});

export const cuttingPlan = (uses: StockUse[] = []): CuttingPlan => ({
  materials: [
    {
      status: 'proved best',
      value: 0,
      bound: 0,
      material: 'ash-european',
      section: '',
      kind: 'timber',
      uses,
      unplaced: [],
      cost: 0,
      waste: 0,
      words: '',
      notes: [],
    },
  ],
  buy: [],
  orders: [],
  cost: 0,
});

export const stock = (given: Partial<StockUse> = {}): StockUse => ({
  id: 'ash-1',
  item: 'ash-1',
  label: 'Ash 27 x 200 x 3000',
  from: 'rack',
  kind: 'board',
  material: 'ash-european',
  length: 3000,
  width: 200,
  thickness: 27,
  round: false,
  kerf: 3,
  trim: { end: 0, edge: 0 },
  price: 4000,
  placed: [
    {
      mark: 'A',
      instance: 'seat',
      x: 0,
      y: 0,
      length: 1400,
      width: 200,
      turned: false,
      purpose: 'part',
    },
  ],
  cuts: [],
  left: [],
  ...given,
});

export const setUpPlan = (given: Partial<SetUpPlan> = {}): SetUpPlan => ({
  status: 'proved best',
  value: 0,
  bound: 0,
  setups: [],
  partByPart: 0,
  unmade: [],
  ...given,
});

export const dayPlan = (given: Partial<DayPlan> = {}): DayPlan => ({
  status: 'proved best',
  value: 0,
  bound: 0,
  start: '2026-11-25T08:00',
  days: [],
  waits: [],
  finish: { low: '2026-12-08', likely: '2026-12-10', high: '2026-12-14' },
  handsOnMinutes: { low: 0, likely: 0, high: 0 },
  critical: [],
  trouble: [],
  ...given,
});

export const operation = (id: string, given: Partial<Operation> = {}): Operation => ({
  id,
  kind: 'cut',
  title: id,
  instances: [],
  cuts: [],
  handsOn: { low: 10, likely: 20, high: 40, source: { text: 'work times', basis: 'memory' } },
  after: [],
  resources: [],
  cautions: [],
  ...given,
});

export function input(piece: Piece, given: Partial<CheckInput> = {}): CheckInput {
  return {
    piece,
    commission: commission(),
    operations: [],
    cutting: cuttingPlan(),
    setups: setUpPlan(),
    days: dayPlan(),
    workshop: workshop(),
    ...given,
  };
}

/** The judgements of one check, or of one rule of it. */
export function checksOf(name: string, given: CheckInput, rule?: string): Check[] {
  return runChecks(given).filter(c => c.check === name && (rule === undefined || c.rule?.number === rule));
}

/** The only judgement of a check. Fails when there are more, or none. */
export function only(name: string, given: CheckInput, rule?: string): Check {
  const found = checksOf(name, given, rule);
  if (found.length !== 1)
    throw new Error(`${name}: ${found.length} judgements: ${found.map(f => f.title).join('; ')}`);
  return found[0]!;
}

/** The sentence with its values written in, lengths to a tenth. */
export function sentence(check: Check): string {
  return check.say.template.replace(/\{(\w+)\}/g, (_, key: string) => {
    const value = check.say.values[key]?.value;
    return typeof value === 'number' ? String(Math.round(value * 10) / 10) : String(value);
  });
}
