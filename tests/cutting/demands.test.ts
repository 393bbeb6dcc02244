import { expect, test } from 'vitest';
import { checkCutting } from '../../src/cutting/check-cutting.ts';
import { collectDemands } from '../../src/cutting/demands.ts';
import { planCutting } from '../../src/cutting/plan-cutting.ts';
import { box } from '../../src/geometry/box.ts';
import { WORLD } from '../../src/geometry/frame.ts';
import type { Operation } from '../../src/results/operations.ts';
import type { Instance, PartGroup, Piece } from '../../src/results/piece.ts';
import { forSale, shop, supplier } from './shop.ts';

const size = (length: number, width: number, thickness: number) => ({ length, width, thickness });

const instance = (over: Partial<Instance> & Pick<Instance, 'id' | 'part'>): Instance => ({
  name: over.part,
  kind: 'timber',
  material: 'ash-european',
  round: false,
  frame: WORLD,
  body: size(400, 45, 45),
  size: size(400, 45, 45),
  added: {},
  cuts: [],
  mirrored: false,
  grain: 'length',
  show: true,
  loose: false,
  ...over,
});

const group = (mark: string, instances: Instance[], blank = size(420, 50, 48)): PartGroup => ({
  mark,
  part: instances[0]!.part,
  name: instances[0]!.name,
  kind: instances[0]!.kind,
  material: instances[0]!.material,
  instances: instances.map(one => one.id),
  size: instances[0]!.size,
  shoulderLength: 400,
  blank,
  volume: 1,
  mass: 1,
  centre: { x: 0, y: 0, z: 0 },
});

const legs = [instance({ id: 'leg', part: 'leg' }), instance({ id: 'leg_x', part: 'leg' })];
const panel = instance({
  id: 'panel',
  part: 'panel',
  kind: 'sheet',
  material: 'birch-plywood',
  size: size(300, 500, 18),
  grain: 'width',
});
const hinge = instance({ id: 'hinge', part: 'hinge', kind: 'bought-in' });
const drawerSide = instance({
  id: 'side',
  part: 'side',
  measureFirst: { when: 'dry fit', reserve: size(20, 5, 2) },
});
const pieces: Piece = {
  instances: [...legs, panel, hinge, drawerSide],
  groups: [
    group('A', legs),
    group('B', [panel], size(304, 504, 18)),
    group('C', [hinge]),
    group('D', [drawerSide], size(460, 70, 14)),
  ],
  joints: [],
  assemblies: [],
  bounds: box(0, 0, 0, 1, 1, 1),
  faults: [],
};
const trial: Operation = {
  id: 'tenon-trial',
  kind: 'test piece',
  title: 'trial tenon',
  instances: [],
  cuts: [],
  handsOn: { low: 1, likely: 1, high: 1, source: { text: '', basis: 'memory' } },
  after: [],
  resources: [],
  testPiece: { of: 'leg', length: 200, width: 45, thickness: 45, material: 'ash-european' },
  cautions: [],
};

test('blanks of parts, reserves of measure-first parts, test pieces at the section of the blank (CUT-10)', () => {
  const demands = collectDemands(pieces, [trial]);
  expect(demands.map(d => [d.mark, d.instance, d.length, d.width, d.thickness, d.purpose, d.across])).toEqual(
    [
      ['A', 'leg', 420, 50, 48, 'part', false],
      ['A', 'leg_x', 420, 50, 48, 'part', false],
      ['B', 'panel', 304, 504, 18, 'part', true],
      ['D', 'side', 460, 70, 14, 'part', false],
      ['test A', 'test:tenon-trial', 200, 50, 48, 'test piece', false],
    ],
  );
});

test('a whole piece is planned and holds before the checker, which also knows what is wanted', () => {
  const workshop = shop({
    suppliers: [
      supplier(
        forSale({ id: 'square', kind: 'planed length', material: 'ash-european', width: 52, thickness: 52 }),
        forSale({ id: 'flat', kind: 'planed length', material: 'ash-european', width: 95, thickness: 18 }),
        forSale({
          id: 'ply',
          kind: 'sheet',
          material: 'birch-plywood',
          length: 1220,
          width: 610,
          thickness: 18,
        }),
      ),
    ],
  });
  const plan = planCutting(pieces, [trial], workshop, { seed: 1, iterations: 60 });
  expect(checkCutting(plan, pieces, [trial], workshop)).toEqual([]);
  expect(plan.buy.map(line => [line.id, line.quantity])).toEqual([
    ['square', 1],
    ['flat', 1],
    ['ply', 1],
  ]);
  expect(checkCutting(plan, pieces, [], workshop)).toEqual([
    'test:tenon-trial is in the plan and nobody wants it',
  ]);
});
