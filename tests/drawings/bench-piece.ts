import type { Frame } from '../../src/geometry/frame.ts';
import { vec } from '../../src/geometry/vector.ts';
import type { Cut, PocketCut, TenonCut } from '../../src/results/cuts.ts';
import { ON_PART } from '../../src/results/cuts.ts';
import type { Instance, PartGroup, Piece } from '../../src/results/piece.ts';

/**
 * A bench for drawings: two end frames with through tenons, a stretcher, a bar, a plywood shelf and a seat of three
 * boards. Sizes are plain sums, so that a wrong drawing is seen at once.
 */

const standing = (x: number, y: number, z: number): Frame => ({
  origin: vec(x, y, z),
  x: vec(0, 0, 1),
  y: vec(1, 0, 0),
  z: vec(0, 1, 0),
});
/** Along world y, width up. */
const crossing = (x: number, y: number, z: number): Frame => ({
  origin: vec(x, y, z),
  x: vec(0, 1, 0),
  y: vec(0, 0, 1),
  z: vec(1, 0, 0),
});
/** Along world x, width up, face to the front. */
const along = (x: number, y: number, z: number): Frame => ({
  origin: vec(x, y, z),
  x: vec(1, 0, 0),
  y: vec(0, 0, 1),
  z: vec(0, -1, 0),
});
/** Along world x, width to the back, face up. */
const lying = (x: number, y: number, z: number): Frame => ({
  origin: vec(x, y, z),
  x: vec(1, 0, 0),
  y: vec(0, 1, 0),
  z: vec(0, 0, 1),
});

const part = (
  id: string,
  name: string,
  material: string,
  kind: Instance['kind'],
  frame: Frame,
  size: [number, number, number],
  cuts: Cut[] = [],
  added: Instance['added'] = {},
): Instance => {
  const [length, width, thickness] = size;
  return {
    id,
    part: id.replace(/_.*$/, ''),
    name,
    kind,
    material,
    round: kind === 'bar',
    frame,
    size: { length, width, thickness },
    body: { length: length - (added.end1 ?? 0) - (added.end2 ?? 0), width, thickness },
    added,
    cuts,
    mirrored: false,
    grain: 'length',
    loose: false,
    show: true,
  };
};

const base = (id: string) => ({ id, by: id, stage: ON_PART });

const mortise = (id: string, x: number, run: number): PocketCut => ({
  ...base(id),
  kind: 'mortise',
  face: 'back',
  box: { min: vec(x, 17, 0), max: vec(x + run, 28, 45) },
  run: 'x',
  through: true,
  corner: 'square',
});

const tenon = (id: string, end: 'end1' | 'end2'): TenonCut => ({
  ...base(id),
  kind: 'tenon',
  end,
  length: 45,
  y: { low: 10, high: 10 },
  z: { low: 10.5, high: 10.5 },
  cheeks: 'z',
  through: true,
});

const leg = (id: string, x: number, y: number): Instance =>
  part(
    id,
    'Leg',
    'ash',
    'timber',
    standing(x, y, 0),
    [423, 45, 45],
    [
      mortise('rail.1', 120, 60),
      {
        ...base('taper'),
        kind: 'taper',
        face: y < 100 ? 'face' : 'back',
        from: 110,
        to: 0,
        amount: 9,
      },
    ],
  );

const rail = (id: string, x: number): Instance =>
  part(
    id,
    'Lower cross rail',
    'ash',
    'timber',
    crossing(x, 20, 110),
    [340, 80, 32],
    [tenon('rail.2', 'end1'), tenon('rail.3', 'end2')],
    { end1: 45, end2: 45 },
  );

const bearer = (id: string, x: number): Instance =>
  part(id, 'Top cross rail', 'ash', 'timber', crossing(x, 65, 363), [250, 60, 45]);

const INSTANCES: Instance[] = [
  leg('leg', 60, 20),
  leg('leg_x', 1275, 20),
  leg('leg_y', 60, 315),
  leg('leg_xy', 1275, 315),
  rail('rail', 66.5),
  rail('rail_x', 1281.5),
  bearer('bearer', 60),
  bearer('bearer_x', 1275),
  part(
    'stretcher',
    'Stretcher',
    'ash',
    'timber',
    along(98.5, 206, 115),
    [1183, 70, 32],
    [
      {
        ...base('shelf.1'),
        kind: 'groove',
        face: 'face',
        box: { min: vec(0, 30, 22), max: vec(1183, 39, 32) },
        run: 'x',
        through: true,
        corner: 'square',
      },
      {
        ...base('pilot'),
        kind: 'hole',
        role: 'clearance',
        face: 'face',
        at: vec(590, 55, 32),
        direction: vec(0, 0, -1),
        diameter: 12,
        depth: 32,
        through: true,
      },
    ],
  ),
  part('bar', 'Bar', 'stainless', 'bar', lying(98.5, 92, 142), [1183, 16, 16]),
  part('shelf', 'Shelf', 'birch-plywood', 'sheet', lying(300, 186, 145), [600, 120, 9]),
  ...[0, 1, 2].map(i =>
    part(`seat_${i + 1}`, 'Seat board', 'ash', 'timber', lying(0, (i * 380) / 3, 423), [1380, 380 / 3, 27]),
  ),
];

const group = (mark: string, ids: string[], mass: number): PartGroup => {
  const first = INSTANCES.find(i => i.id === ids[0])!;
  const { length, width, thickness } = first.size;
  const over = first.kind === 'timber' ? { l: 20, w: 5, t: 0 } : { l: 5, w: 0, t: 0 };
  return {
    mark,
    part: first.part,
    name: first.name,
    kind: first.kind,
    material: first.material,
    instances: ids,
    size: first.size,
    shoulderLength: first.body.length,
    blank: { length: length + over.l, width: width + over.w, thickness: thickness + over.t },
    volume: length * width * thickness,
    mass,
    centre: { x: length / 2, y: width / 2, z: thickness / 2 },
  };
};

export const PIECE: Piece = {
  instances: INSTANCES,
  groups: [
    group('A', ['leg', 'leg_x', 'leg_y', 'leg_xy'], 0.58),
    group('B', ['bearer', 'bearer_x'], 0.46),
    group('C', ['rail', 'rail_x'], 0.59),
    group('D', ['stretcher'], 1.8),
    group('E', ['seat_1', 'seat_2', 'seat_3'], 3.21),
    group('F', ['shelf'], 0.44),
    group('G', ['bar'], 1.87),
  ],
  joints: [],
  assemblies: [],
  bounds: { min: vec(0, 0, 0), max: vec(1380, 380, 450) },
  faults: [],
};
