import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { vec } from '../../src/geometry/vector.ts';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { deriveJob } from '../../src/job/derive.ts';
import { readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';
import { trappedMembers } from '../../src/proof/motions.ts';
import { wayInChecks } from '../../src/proof/way-in-check.ts';
import { ON_PART, type ProfileCut } from '../../src/results/cuts.ts';
import type { Assembly, Instance, Piece } from '../../src/results/piece.ts';
import { SolidCache } from '../../src/solids/shapes.ts';
import { at, hole, LYING, part, pieceOf, pocket, STANDING } from '../checks/fixtures.ts';

const mesh = await loadMeshKernel();
const told = (piece: Piece) => {
  const cache = new SolidCache(mesh);
  const checks = wayInChecks(trappedMembers(piece, mesh, cache));
  cache.keep([]);
  return checks;
};
const verdict = (piece: Piece) => told(piece).map(c => [c.severity, c.title]);

const assembly = (id: string, given: Partial<Assembly>): Assembly => ({
  id,
  name: `the ${id}`,
  instances: [],
  assemblies: [],
  joints: [],
  dryFit: true,
  order: 1,
  ...given,
});

/** One glue-up of `first` before the rest, or all at once. */
const inOrder = (parts: Instance[], first: string[], order: 'frame first' | 'at once'): Piece => {
  const rest = parts.map(p => p.id).filter(id => order === 'at once' || !first.includes(id));
  const early = order === 'at once' ? [] : [assembly('frame', { instances: first })];
  const whole = assembly('whole', { instances: rest, assemblies: early.map(a => a.id), order: 2 });
  return pieceOf(parts, [], [...early, whole]);
};

/** A bar in blind holes of two rails. */
const barred = (order: 'frame first' | 'at once'): Piece => {
  const across = { ...LYING, x: vec(0, 1, 0), y: vec(0, 0, 1), z: vec(1, 0, 0) };
  const rails = [-32, 1183].map((x, i) =>
    part(`rail_${i}`, {
      size: [340, 80, 32],
      frame: at(across, x, 0, 0),
      cuts: [
        hole({
          id: 'rest.1',
          at: vec(100, 40, i === 0 ? 32 : 0),
          direction: vec(0, 0, i === 0 ? -1 : 1),
          diameter: 16.4,
          depth: 20,
        }),
      ],
    }),
  );
  const bar = part('bar', { size: [1221, 16, 16], round: true, frame: at(LYING, -19, 92, 32) });
  return inOrder([bar, ...rails], ['rail_0', 'rail_1'], order);
};

test('a bar between rails that are one already is shut out, by name', () => {
  const [check, ...more] = told(barred('frame first'));
  expect(more).toEqual([]);
  expect([check!.severity, check!.title]).toEqual(['stop', 'Bar is shut out']);
  expect(check!.remedy).toBe('Put it into the frame, or glue that up later.');
});

test('the same bar goes in as the rails close on it', () => {
  expect(verdict(barred('at once'))).toEqual([['pass', 'Every part has a straight way in']]);
});

/** A tie dovetailed into two posts: the left socket opens to the front, the right one to the side given. */
const tied = (right: 'front' | 'back'): Piece => {
  const socket = (low: number): ProfileCut => ({
    id: `tail.${low}`,
    by: 'tail',
    stage: ON_PART,
    kind: 'dovetail',
    face: 'back',
    axis: 'z',
    from: low,
    to: low + 20,
    // Along the post x, across it y: narrow at the tie, wide inside.
    polygon: [],
    through: false,
  });
  const post = (id: string, x: number, low: number, inner: 'low' | 'high') => {
    const [near, deep] = inner === 'high' ? [40, 20] : [0, 20];
    return part(id, {
      size: [200, 40, 40],
      frame: at(STANDING, x, 0, 0),
      cuts: [
        {
          ...socket(low),
          polygon: [
            [90, near],
            [110, near],
            [120, deep],
            [80, deep],
          ],
        },
      ],
    });
  };
  const lowRight = right === 'front' ? 0 : 20;
  const tail = (tip: number, neck: number): [number, number][][] => [
    [
      [tip, 0],
      [neck, 0],
      [neck, 10],
    ],
    [
      [tip, 40],
      [neck, 30],
      [neck, 40],
    ],
  ];
  // The tie lies along x, width up, thickness to the front: its own z looks to world -y.
  const tie = part('tie', {
    size: [340, 40, 40],
    frame: { origin: vec(-20, 40, 80), x: vec(1, 0, 0), y: vec(0, 0, 1), z: vec(0, -1, 0) },
    cuts: [
      ...[...tail(0, 20), ...tail(340, 320)].map(
        (polygon, n): ProfileCut => ({
          ...socket(0),
          id: `tail.1${n}`,
          from: 0,
          to: 40,
          through: true,
          polygon,
        }),
      ),
      pocket({ id: 'thin.1', box: { min: vec(0, 0, 0), max: vec(20, 40, 20) } }),
      pocket({
        id: 'thin.2',
        box:
          right === 'front'
            ? { min: vec(320, 0, 0), max: vec(340, 40, 20) }
            : { min: vec(320, 0, 20), max: vec(340, 40, 40) },
      }),
    ],
  });
  const parts = [tie, post('left', -40, 0, 'high'), post('right', 300, lowRight, 'low')];
  return inOrder(parts, ['left', 'right'], 'frame first');
};

test('opposed dovetails trap a tie between posts that stand; dovetails of one side let it in', () => {
  expect(verdict(tied('front'))).toEqual([['pass', 'Every part has a straight way in']]);
  expect(verdict(tied('back'))).toEqual([['stop', 'Tie is shut out']]);
});

const example = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), 'utf8');

test.each(['porch-bench', 'writing-table', 'wall-cabinet'])('%s goes together', name => {
  const { workshop } = readWorkshopFile(example('workshop'));
  const { piece } = deriveJob(readJobFile(example(name)).document!, workshop!, {
    today: '2026-11-25',
  }).derived;
  expect(verdict(piece)).toEqual([['pass', 'Every part has a straight way in']]);
});

test('not yet tried is pending, never a pass', () => {
  expect(wayInChecks(undefined).map(c => c.severity)).toEqual(['pending']);
});
