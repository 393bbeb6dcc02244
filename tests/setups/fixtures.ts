import { type Box, box } from '../../src/geometry/box.ts';
import { type Frame, WORLD } from '../../src/geometry/frame.ts';
import { axisVector, vec } from '../../src/geometry/vector.ts';
import { type Cut, type HoleCut, ON_PART, type PocketCut, type TenonCut } from '../../src/results/cuts.ts';
import type { Operation } from '../../src/results/operations.ts';
import type { Instance, Piece } from '../../src/results/piece.ts';
import type { Machine, Workshop } from '../../src/workshop/workshop.ts';

const change = { tool: 4, fence: 1, height: 1, tilt: 2, jig: 2, measured: true };
const machine = (id: string, kind: Machine['kind'], more: Partial<Machine> = {}): Machine => ({
  id,
  kind,
  name: kind,
  change,
  ...more,
});

/** A small shop with everything the methods ask for; kerf 3.0, jig 18.2 as in the worked card. */
export const shop = (more: Partial<Workshop> = {}): Workshop => ({
  name: 'test shop',
  currency: 'EUR',
  machines: [
    machine('saw', 'table saw', { maxDepth: 90, fence: 800, maxTilt: 45, shortest: 200 }),
    machine('mitre', 'mitre saw', { maxDepth: 90, maxTilt: 45, shortest: 150 }),
    machine('table', 'router table', { maxDepth: 50, fence: 200, shortest: 150 }),
    machine('router', 'hand router', { maxDepth: 60 }),
    machine('press', 'drill press', { maxDepth: 90, maxTilt: 45 }),
    machine('drill', 'hand drill'),
    machine('chisel', 'chisel mortiser', { maxDepth: 80, shortest: 150 }),
    machine('slot', 'slot mortiser', { maxDepth: 80, shortest: 150 }),
    machine('band', 'band saw', { maxDepth: 200 }),
    machine('metal', 'metal saw', { maxDepth: 60 }),
    machine('hand', 'hand tools'),
  ],
  blades: [
    { id: 'rip', machine: 'saw', name: 'rip blade', kerf: 3, diameter: 250, use: 'rip' },
    { id: 'cross', machine: 'saw', name: 'cross-cut blade', kerf: 2.8, diameter: 250, use: 'cross' },
    { id: 'groove', machine: 'saw', name: 'grooving blade', kerf: 5, diameter: 200, use: 'groove' },
    { id: 'mitring', machine: 'mitre', name: 'mitring blade', kerf: 2.6, diameter: 250, use: 'cross' },
    { id: 'cold', machine: 'metal', name: 'metal blade', kerf: 1.6, diameter: 200, use: 'metal' },
  ],
  cutters: [
    ...[6, 8, 10, 12, 16, 20].map(d => ({
      id: `straight-${d}`,
      name: `straight ${d}`,
      kind: 'straight' as const,
      diameter: d,
      depth: d < 8 ? 25 : 50,
      shank: 8,
      bearing: false,
    })),
    { id: 'chamfer', name: 'chamfer 45', kind: 'chamfer', diameter: 32, depth: 12, shank: 8, bearing: true },
    {
      id: 'round-6',
      name: 'round-over 6',
      kind: 'round-over',
      diameter: 25,
      depth: 6,
      shank: 8,
      bearing: true,
      maxSpeed: 20000,
    },
  ],
  drills: [
    ...[2.5, 3, 4, 4.5, 5, 5.5, 6, 8, 10].map(d => ({
      id: `drill-${d}`,
      name: `brad point ${d}`,
      kind: 'brad point' as const,
      diameter: d,
      depth: 90,
    })),
    { id: 'twist-4', name: 'twist 4', kind: 'twist', diameter: 4, depth: 60 },
    { id: 'forstner-16', name: 'Forstner 16', kind: 'forstner', diameter: 16, depth: 60 },
    { id: 'sink', name: 'countersink 12', kind: 'countersink', diameter: 12, depth: 20 },
    ...[8, 10, 12].map(d => ({
      id: `chisel-${d}`,
      name: `chisel ${d}`,
      kind: 'mortise chisel' as const,
      diameter: d,
      depth: 60,
    })),
  ],
  jigs: [
    { id: 'upright', name: 'upright jig', kind: 'upright tenon jig', machine: 'saw', offset: 18.2 },
    { id: 'sled', name: 'cross-cut sled', kind: 'cross-cut sled', machine: 'saw', offset: 0 },
    { id: 'taper', name: 'taper sled', kind: 'taper sled', machine: 'saw', offset: 0 },
    { id: 'mitres', name: 'mitre sled', kind: 'mitre sled', machine: 'saw', offset: 0 },
    { id: 'dowels', name: 'dowel jig', kind: 'dowel jig', machine: 'drill', offset: 0 },
  ],
  clamps: [],
  rack: [],
  suppliers: [],
  calendar: { week: { 1: [{ from: 480, to: 1020 }] }, daysOff: [] },
  rates: { hour: 4500, contingency: 0, margin: 0, tax: { registered: false, rate: 0 }, consumables: 0 },
  allowances: {
    timber: { length: 20, width: 4, thickness: 3 },
    sheet: { length: 4, width: 4, thickness: 0 },
    bar: { length: 2, width: 0, thickness: 0 },
    tube: { length: 2, width: 0, thickness: 0 },
  },
  adhesives: {},
  finishes: {},
  times: {},
  leastOffcut: { length: 300, width: 50 },
  climate: { temperature: 18, humidity: 55 },
  ...more,
});

export const without = (workshop: Workshop, ...kinds: Machine['kind'][]): Workshop => ({
  ...workshop,
  machines: workshop.machines.filter(m => !kinds.includes(m.kind)),
});

export function part(
  id: string,
  [length, width, thickness]: [number, number, number],
  cuts: Cut[] = [],
  more: Partial<Instance> = {},
): Instance {
  const size = { length, width, thickness };
  return {
    id,
    part: id,
    name: id[0]!.toUpperCase() + id.slice(1).replaceAll('_', ' '),
    kind: 'timber',
    material: 'ash-european',
    round: false,
    frame: WORLD,
    body: size,
    size,
    added: {},
    cuts,
    mirrored: false,
    grain: 'length',
    show: true,
    loose: false,
    ...more,
  };
}

export const tenon = (id: string, more: Partial<TenonCut> = {}): TenonCut => ({
  kind: 'tenon',
  id,
  by: 'joint',
  stage: ON_PART,
  end: 'end1',
  length: 45,
  y: { low: 0, high: 0 },
  z: { low: 10.5, high: 10.5 },
  cheeks: 'z',
  through: true,
  ...more,
});

export const pocket = (
  kind: PocketCut['kind'],
  id: string,
  at: Box,
  more: Partial<PocketCut> = {},
): PocketCut => ({
  kind,
  id,
  by: 'joint',
  stage: ON_PART,
  face: 'face',
  box: at,
  run: 'x',
  through: false,
  corner: 'square',
  ...more,
});

export const hole = (id: string, more: Partial<HoleCut> = {}): HoleCut => ({
  kind: 'hole',
  id,
  by: 'joint',
  stage: ON_PART,
  role: 'plain',
  face: 'face',
  at: vec(100, 30, 20),
  direction: vec(0, 0, -1),
  diameter: 8,
  depth: 15,
  through: false,
  ...more,
});

export const pieceOf = (instances: Instance[], more: Partial<Piece> = {}): Piece => ({
  instances,
  groups: instances.map((instance, i) => ({
    mark: String.fromCharCode(65 + (i % 26)),
    part: instance.part,
    name: instance.name,
    kind: instance.kind,
    material: instance.material,
    instances: [instance.id],
    size: instance.size,
    shoulderLength: instance.size.length,
    blank: instance.size,
    volume: 1,
    mass: 1,
    centre: { x: 0, y: 0, z: 0 },
  })),
  joints: [],
  assemblies: [],
  bounds: box(0, 0, 0, 1, 1, 1),
  faults: [],
  ...more,
});

export function operation(
  id: string,
  cuts: [instance: string, cut: string][],
  after: string[] = [],
  more: Partial<Operation> = {},
): Operation {
  return {
    id,
    kind: 'cut',
    title: id,
    instances: [...new Set(cuts.map(([instance]) => instance))],
    cuts: cuts.map(([instance, cut]) => ({ instance, cut })),
    handsOn: { low: 5, likely: 10, high: 15, source: { text: 'test', basis: 'maker' } },
    after: after.map(o => ({
      operation: o,
      rule: { number: 'T-1', says: 't', reason: 't', source: { text: 't', basis: 'maker' } },
      hard: true,
    })),
    resources: [],
    cautions: [],
    ...more,
  };
}

/** Turned so that its length runs along the world's y (a rail that enters a leg standing along z). */
export const ALONG_Y: Frame = {
  origin: vec(0, 0, 0),
  x: axisVector('y'),
  y: axisVector('z'),
  z: axisVector('x'),
};
export const UPRIGHT: Frame = {
  origin: vec(0, 0, 0),
  x: axisVector('z'),
  y: axisVector('y'),
  z: axisVector('x', -1),
};

/** The worked card: a rail 32.1 thick with a tenon into a slot of 11.0 in a leg measured 45.0. */
export function workedRail(measured = 32.1): Piece {
  const leg = part(
    'leg',
    [423, 45, 45],
    [
      pocket('mortise', 'cross.1', box(180, 0, 17, 240, 45, 28), {
        face: 'faceEdge',
        by: 'cross',
        through: true,
        mate: { instance: 'rail', cut: 'cross.1' },
        clearance: 0.1,
      }),
    ],
    { frame: UPRIGHT, measured: { width: 45, thickness: 45 } },
  );
  const rail = part(
    'rail',
    [340, 80, 32],
    [
      tenon('cross.1', {
        by: 'cross',
        y: { low: 10, high: 10 },
        clearance: 0.1,
        mate: { instance: 'leg', cut: 'cross.1' },
      }),
    ],
    { frame: ALONG_Y, measured: { thickness: measured } },
  );
  return pieceOf([leg, rail]);
}
