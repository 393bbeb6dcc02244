import { expect, test } from 'vitest';
import { ON_PART, type TaperCut } from '../../src/results/cuts.ts';
import { partCentre } from '../../src/results/part-volume.ts';

const taper = (face: TaperCut['face']): TaperCut => ({
  id: face,
  by: 'taper',
  stage: ON_PART,
  kind: 'taper',
  face,
  from: 100,
  to: 700,
  amount: 9,
});

test('a tapered leg has its centre towards the thick end and away from the tapered side', () => {
  const size = { length: 700, width: 45, thickness: 45 };
  // By hand: a wedge of 600 x 9 / 2 x 45, its middle two thirds along and a third of 9 below the face.
  const wedge = (600 * 9 * 45) / 2;
  const whole = 700 * 45 * 45;
  const centre = partCentre({ size, round: false }, [taper('face')]);
  expect(centre.x).toBeCloseTo((whole * 350 - wedge * (100 + 400)) / (whole - wedge), 6);
  expect(centre.z).toBeCloseTo((whole * 22.5 - wedge * (45 - 3)) / (whole - wedge), 6);
  expect(centre.y).toBeCloseTo(22.5, 9);
  expect(partCentre({ size, round: false }, [taper('backEdge')]).y).toBeCloseTo(
    (whole * 22.5 - wedge * 3) / (whole - wedge),
    6,
  );
});

test('an uncut part has its centre in its middle', () => {
  expect(partCentre({ size: { length: 10, width: 4, thickness: 2 }, round: false }, [])).toEqual({
    x: 5,
    y: 2,
    z: 1,
  });
});
