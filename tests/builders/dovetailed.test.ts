import { describe, expect, test } from 'vitest';
import { build, overlaps } from './build.ts';

const carcase = {
  site: { name: 'Bedroom', humidity: { low: 40, high: 60 }, temperature: { low: 16, high: 22 } },
  moisture: 9,
  parts: {
    side: {
      kind: 'timber',
      material: 'oak-european',
      length: 300,
      width: 400,
      thickness: 20,
      along: 'up',
      facing: 'left',
      at: { left: 0, front: 0, bottom: 0 },
      mirror: { x: 225 },
    },
    shelf: {
      kind: 'timber',
      material: 'oak-european',
      width: 400,
      thickness: 20,
      along: 'right',
      facing: 'up',
      at: { left: 'side.right', right: 'side_x.left', front: 0, bottom: 0 },
      repeat: { count: 2, along: 'z', step: 140 },
    },
  },
  joints: { shelf_in_side: { type: 'housing', from: 'shelf', into: 'side', count: 4 } },
};
const opening = {
  left: 'side.right',
  right: 'side_x.left',
  bottom: 'shelf.top',
  top: 'shelf_2.bottom',
  front: 'side.front',
  back: '400 mm',
};

describe('a drawer with dovetailed corners', () => {
  test.each([
    ['lapped', { thickness: 20 }],
    ['through, behind a false front', { false_front: 18 }],
  ])('%s: has its joints, and no two parts in one place', async (_name, front) => {
    const made = build({
      ...carcase,
      drawers: {
        low: {
          opening,
          material: 'sycamore',
          corner: 'dovetailed',
          side: { thickness: 12 },
          front: { material: 'oak-european', ...front },
          bottom: { material: 'birch-plywood', thickness: 4 },
        },
      },
    });
    expect(made.said).toEqual([]);
    expect(made.piece.joints.filter(j => j.type.endsWith('-dovetail'))).toHaveLength(2);
    expect(await overlaps(made)).toEqual([]);
  });
});
