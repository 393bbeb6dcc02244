import { describe, expect, it } from 'vitest';
import { build } from '../builders/build.ts';
import { checksOf, input, sentence } from './fixtures.ts';

const found = (up: number, over: object = {}) => {
  const made = build({
    parts: {},
    drawers: {
      d: {
        opening: { left: 0, right: 300, bottom: 0, top: 100, front: 0, back: 400 },
        material: 'oak-european',
        corner: 'dovetailed',
        bottom: { material: 'birch-plywood', thickness: 6, up },
        ...over,
      },
    },
  });
  expect(made.said).toEqual([]);
  return checksOf('groove end', input(made.piece));
};

describe('CHK-46: the groove of a drawer bottom at dovetailed corners', () => {
  it('lies in the lowest tail and does not show', () => {
    const [check, ...rest] = found(6);
    expect(rest).toEqual([]);
    expect(check).toMatchObject({ severity: 'pass', figure: 0 });
    expect(sentence(check!)).toMatch(/^The groove in Drawer, front is 6\.2 wide/);
  });

  // 97.5 of side, four tails, pins of 6 and halves of 3, one in eight over 15: at its root, the narrowest, the
  // lowest tail is 4.875 to 19.5. A groove up to 26.1 is 6.6 too high.
  it('in a pin is told with the way to the nearest tail', () => {
    const [check] = found(20);
    expect(check).toMatchObject({ severity: 'attend', title: 'Groove shows at the end of Drawer, front' });
    expect(check!.figure).toBeCloseTo(6.6, 1);
    expect(check!.remedy).toMatch(/towards the back edge/);
  });

  it('moved by that figure it no longer shows', () => {
    expect(found(13.4)[0]).toMatchObject({ severity: 'pass' });
    expect(found(13.6)[0]).toMatchObject({ severity: 'attend' });
  });

  it('a rebated corner has no tails to lie in, and nothing is said', () => {
    expect(found(20, { corner: 'rebated' })).toEqual([]);
  });
});
