import { describe, expect, test } from 'vitest';
import type { Sheet } from '../../src/office/ink/camera.ts';
import type { IdMask } from '../../src/office/ink/ink-view.ts';
import { markSpots, placeLabel } from '../../src/office/ink/label.ts';

const sheet: Sheet = { width: 600, height: 400, small: false };

/** A sheet with parts drawn as rectangles: number from 0, then left, top, width, height. */
function maskOf(...parts: [number, number, number, number, number][]): IdMask {
  const { width, height } = sheet;
  const bytes = new Uint8Array(width * height * 4);
  for (const [part, x, y, w, h] of parts)
    for (let j = y; j < y + h; j++)
      for (let i = x; i < x + w; i++) {
        const at = ((height - 1 - j) * width + i) * 4;
        bytes[at + 2] = (part + 1) % 256;
        bytes[at + 3] = Math.floor((part + 1) / 256);
      }
  return { width, height, bytes };
}

const covers = (
  label: { x: number; y: number; width: number; height: number },
  x: number,
  y: number,
): boolean => x > label.x && x < label.x + label.width && y > label.y && y < label.y + label.height;

describe('the name of the picked part', () => {
  test('stands on free ground near it, its leader ends on the part', () => {
    const mask = maskOf([0, 200, 150, 200, 60], [300, 150, 120, 300, 25]);
    const label = placeLabel(mask, 0, sheet, 1, 100, 34)!;
    expect(label.point[0]).toBeGreaterThanOrEqual(200);
    expect(label.point[0]).toBeLessThanOrEqual(400);
    for (let x = 150; x < 450; x += 10)
      for (let y = 120; y < 210; y += 10)
        if ((y >= 150 && x >= 200 && x < 400) || y < 145) expect(covers(label, x, y)).toBe(false);
    expect(Math.abs(label.y - label.point[1])).toBeLessThan(120);
  });

  test('a part that is not seen has no name on the sheet', () => {
    expect(placeLabel(maskOf([0, 200, 150, 200, 60]), 7, sheet, 1, 100, 34)).toBeUndefined();
  });
});

describe('marks of parts that are taken apart', () => {
  test('stand on the part where it is seen', () => {
    const spots = markSpots(maskOf([0, 100, 100, 80, 40], [258, 300, 200, 40, 120]), sheet, 1);
    expect(spots.get(0)![0]).toBeCloseTo(140, -1);
    expect(spots.get(258)![1]).toBeCloseTo(260, -1);
  });

  test('the smaller part gives way where two would be read as one', () => {
    const spots = markSpots(maskOf([0, 100, 100, 80, 80], [1, 136, 132, 12, 12]), sheet, 1);
    expect([...spots.keys()]).toEqual([0]);
  });
});
