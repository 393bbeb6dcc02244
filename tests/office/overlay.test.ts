import { describe, expect, test } from 'vitest';
import { corners } from '../../src/geometry/box.ts';
import { analyse } from '../../src/office/ink/analyse.ts';
import { boxMesh } from '../../src/office/ink/box-mesher.ts';
import { cameraFor, project, type Sheet, STANCES } from '../../src/office/ink/camera.ts';
import { overlay, type Picked } from '../../src/office/ink/overlay.ts';
import { mainStations, partStations } from '../../src/office/ink/stations.ts';
import { formatLength } from '../../src/quantities/length.ts';
import { bench } from './fixtures/bench.ts';

const parts = bench.instances.map(i => analyse(i, boxMesh(i)));
const names = new Map(bench.instances.map(i => [i.id, i.name]));
const main = mainStations(parts, names, bench.bounds);
const stretcher = parts.find(p => p.instance === 'stretcher')!;
const picked: Picked = {
  name: 'stretcher',
  stations: {
    x: partStations(stretcher, 'x'),
    y: partStations(stretcher, 'y'),
    z: partStations(stretcher, 'z'),
  },
  shadow: [],
};
const SHEETS: Sheet[] = [
  { width: 1064, height: 640, small: false },
  { width: 960, height: 560, small: false },
  { width: 390, height: 380, small: true },
];
const lay = (azimuth: number, elevation: number, sheet: Sheet, of: Picked | undefined, name = 'stretcher') =>
  overlay({
    camera: cameraFor({ azimuth, elevation }, bench.bounds, sheet),
    bounds: bench.bounds,
    main,
    picked: of && { ...of, name },
    sheet,
    figure: mm => formatLength(mm, { unit: 'mm' }),
  });

describe('stations', () => {
  test('of the stretcher: its ends and its shoulders, not its mortises', () => {
    expect(picked.stations.x.at).toEqual([11.5, 98.5, 1281.5, 1368.5]);
    expect(picked.stations.z.at).toEqual([115, 185]);
  });

  test('of the whole: ends, legs and the centre line; the seams between seat boards are no faces', () => {
    expect(main.x.map(s => s.at)).toEqual([0, 60, 105, 690, 1275, 1320, 1380]);
    expect(main.x.find(s => s.centre)?.at).toBe(690);
    const seam = 380 / 3;
    expect(main.y.some(s => Math.abs(s.at - seam) < 0.1)).toBe(false);
  });
});

describe('rods', () => {
  test('figures of lying rods keep apart and on the sheet however it is turned', () => {
    let views = 0;
    for (const sheet of SHEETS)
      for (let azimuth = 0; azimuth < 360; azimuth += 11)
        for (let elevation = 0; elevation <= 90; elevation += 15)
          for (const of of [picked, undefined]) {
            const { over } = lay(azimuth, elevation, sheet, of);
            const at = [...over.matchAll(/translate\(([-\d.]+) [-\d.]+\) rotate/g)]
              .map(m => Number(m[1]))
              .sort((a, b) => a - b);
            views++;
            at.forEach((x, i) => {
              expect(x).toBeGreaterThan(8);
              expect(x).toBeLessThan(sheet.width);
              if (i > 0) expect(x - at[i - 1]!).toBeGreaterThan(14.8);
            });
          }
    expect(views).toBe(3 * 33 * 7 * 2);
  });

  test('the piece stays on the sheet in every named view', () => {
    for (const sheet of SHEETS)
      for (const stance of Object.values(STANCES)) {
        const camera = cameraFor(stance, bench.bounds, sheet);
        for (const p of corners(bench.bounds)) {
          const [x, y] = project(camera, p);
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(sheet.width);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(sheet.height);
        }
      }
  });

  test('a name is shown as text, whatever is in it', () => {
    const { over } = lay(33, 17, SHEETS[0]!, picked, '<img src=x onerror=alert(1)>');
    expect(over).not.toContain('<img');
    expect(over).toContain('&lt;img');
  });

  test('the picked part names its shoulder on the rod', () => {
    expect(lay(33, 17, SHEETS[0]!, picked).over).toContain('shoulder 1183');
  });
});
