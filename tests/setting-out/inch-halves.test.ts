import { expect, test } from 'vitest';
import { checkJobDocument } from '../../src/job-file/read.ts';
import { JOINT_CATALOGUE } from '../../src/joints/index.ts';
import { setOut } from '../../src/setting-out/set-out.ts';

test('mirrored boards in fractions of an inch are one pair of hands, each counted once', () => {
  const board = { kind: 'timber', material: 'oak-european' };
  const { document } = checkJobDocument({
    scantling: 'job/1',
    title: 'Shelf',
    units: 'in',
    parts: {
      side: {
        ...board,
        length: 16,
        width: 7,
        thickness: '3/4',
        along: 'up',
        facing: 'right',
        at: { left: 0, back: 7, bottom: 0 },
        mirror: { x: '15 1/2' },
      },
      shelf: {
        ...board,
        length: '29 1/2',
        width: 6,
        thickness: '3/4',
        along: 'right',
        facing: 'up',
        at: { left: 'side.right', back: '6 5/8', bottom: '2 1/2' },
      },
    },
    joints: { in: { type: 'housing', from: 'shelf', into: 'side', count: 2, set: { depth: '1/4' } } },
  });
  const none = { length: 0, width: 0, thickness: 0 };
  const { piece } = setOut(document!, JOINT_CATALOGUE, {
    allowances: { timber: none, sheet: none, bar: none, tube: none },
    density: () => 700,
  });
  expect(piece.groups.map(g => [g.mark, g.instances])).toEqual([
    ['A L', ['side']],
    ['A R', ['side_x']],
    ['B', ['shelf']],
  ]);
  expect(piece.groups.flatMap(g => g.instances).sort()).toEqual(piece.instances.map(i => i.id).sort());
});
