import { describe, expect, it } from 'vitest';
import { ADHESIVES, adhesive, bondsBoth } from '../../src/reference/adhesives.ts';
import { CLIMATES, indoorClimate } from '../../src/reference/climate.ts';
import { cuttingSpeed, routerSpeedLimit } from '../../src/reference/cutting-speeds.ts';
import { BRAD_POINT_DRILLS_MM, nearestSize } from '../../src/reference/drills.ts';
import { sizesOf, usualSize } from '../../src/reference/ergonomics.ts';
import { COMPATIBILITIES, compatibility } from '../../src/reference/finish-compatibility.ts';
import { FINISHES, finishProduct } from '../../src/reference/finishes.ts';
import { fitOf } from '../../src/reference/fits.ts';
import { furnitureLoad } from '../../src/reference/furniture-loads.ts';
import { linearTolerance } from '../../src/reference/iso2768.ts';
import { kdef, kmod } from '../../src/reference/load-duration.ts';
import { MACHINE_RULES } from '../../src/reference/machine-rules.ts';
import { proportionsOf } from '../../src/reference/proportions.ts';
import { machineScrew, screw, WOOD_SCREWS } from '../../src/reference/screws.ts';
import { WIRE_GAUGE_MM } from '../../src/reference/stock.ts';
import { STRENGTH_CLASSES, strengthClass } from '../../src/reference/strength-classes.ts';
import { workTime } from '../../src/reference/work-times.ts';
import { equilibriumMoisture } from '../../src/timber/moisture.ts';

describe('adhesives', () => {
  it('know what they bond', () => {
    const pva = adhesive('pva-d3');
    const epoxy = adhesive('epoxy');
    expect(pva && bondsBoth(pva, 'timber', 'sheet')).toBe(true);
    expect(pva && bondsBoth(pva, 'timber', 'metal')).toBe(false);
    expect(epoxy && bondsBoth(epoxy, 'metal', 'sheet')).toBe(true);
  });

  it('are listed with times in minutes that follow one another', () => {
    for (const glue of ADHESIVES.rows) {
      const { clampMinutes: clamp, fullStrengthMinutes: full } = glue;
      if (clamp && full) expect(clamp.low, glue.key).toBeLessThanOrEqual(full.high);
      expect(glue.cautions.length, glue.key).toBeGreaterThan(0);
    }
    expect(adhesive('contact')?.dryMinutes).toMatchObject({ low: 15, high: 30 });
  });
});

describe('finishes', () => {
  it.each([
    'hardwax-oil',
    'danish-oil',
    'water-varnish',
    'shellac',
    'wax-paste',
    'spirit-stain',
    'india-ink',
    'metal-lacquer',
    'epoxy-seal',
  ])('hold %s', key => expect(finishProduct(key)?.key).toBe(key));

  it('warn of rags wherever a drying oil is', () => {
    for (const finish of FINISHES.rows.filter(row => row.family === 'oil' || row.family === 'hardwax oil')) {
      expect(finish.hazards, finish.key).toContain('rags heat and take fire');
    }
  });

  it('leave room between the least wait and the end of the window', () => {
    for (const { key, recoatMinutes, recoatWithinMinutes } of FINISHES.rows) {
      if (recoatMinutes && recoatWithinMinutes) {
        expect(recoatMinutes.low, key).toBeLessThan(recoatWithinMinutes.high);
      }
    }
  });

  it('say once what goes over what', () => {
    const pairs = COMPATIBILITIES.map(row => `${row.over} over ${row.under}`);
    expect(new Set(pairs).size).toBe(pairs.length);
    expect(compatibility('water-based', 'oil')).toMatchObject({
      verdict: 'with care',
      waitMinutes: { low: 10080 },
    });
    expect(compatibility('nitrocellulose', 'oil varnish')?.verdict).toBe('no');
    expect(compatibility('soap', 'shellac')).toBeUndefined();
  });
});

describe('screws', () => {
  it('are found as the trade writes them', () => {
    for (const size of ['4', '4.0', '4 mm', '4.0 mm']) expect(screw(size)?.key).toBe('4.0');
    expect(screw('No 8')?.shankMm).toBe(4.17);
    expect(screw('gauge 8')?.key).toBe('no-8');
    expect(screw('8')).toBeUndefined();
    expect(machineScrew('M5')).toMatchObject({ tappingDrillMm: { low: 4.2 }, clearanceMm: { low: 5.5 } });
  });

  it('pass their clearance hole and bite in their pilot hole', () => {
    for (const row of WOOD_SCREWS.rows) {
      // A gauge hole is rounded to the drill sold, so No 4 is 0.04 under its shank.
      expect(row.clearanceMm.low, row.key).toBeGreaterThan(row.shankMm - 0.05);
      expect(row.pilotHardwoodMm.high, row.key).toBeLessThan(row.shankMm);
      expect(row.headMm.low, row.key).toBeGreaterThan(row.clearanceMm.high);
      if (row.pilotSoftwoodMm) {
        expect(row.pilotSoftwoodMm.high, row.key).toBeLessThanOrEqual(row.pilotHardwoodMm.high);
      }
    }
  });
});

describe('standards as quoted', () => {
  it('give general tolerances by size', () => {
    expect(linearTolerance('m', 1380)).toMatchObject({ low: -1.2, high: 1.2 });
    expect(linearTolerance('m', 120)?.high).toBe(0.3);
    expect(linearTolerance('f', 3000)).toBeUndefined();
    expect(linearTolerance('v', 2)).toBeUndefined();
    expect(linearTolerance('c', 4001)).toBeUndefined();
    expect(linearTolerance('m', 0.4)).toBeUndefined();
  });

  it('grow with the class, and within a class with its number', () => {
    const conifers = STRENGTH_CLASSES.rows.filter(row => row.key.startsWith('c'));
    for (const [index, row] of conifers.slice(1).entries()) {
      expect(row.stiffness, row.key).toBeGreaterThan(conifers[index]?.stiffness ?? 0);
    }
    expect(strengthClass('C24')).toMatchObject({ bending: 24, stiffness: 11000 });
    // Every D class keeps the 5 % stiffness at 0.84 of the mean.
    for (const row of STRENGTH_CLASSES.rows.filter(d => d.key.startsWith('d'))) {
      expect(row.stiffness5 / row.stiffness, row.key).toBeCloseTo(0.84, 2);
    }
  });

  it('weaken and creep by time and class', () => {
    expect(kmod('timber', 1, 'permanent')?.low).toBe(0.6);
    expect(kmod('mdf', 2, 'long')).toBeUndefined();
    expect(kmod('hardboard', 1, 'long')).toBeUndefined();
    expect(kdef('timber')).toMatchObject({ low: 0.6, basis: 'read' });
    expect(kdef('mdf')).toMatchObject({ low: 2.25, basis: 'memory' });
    expect(kdef('mdf', 3)).toBeUndefined();
  });
});

describe('climates', () => {
  it('carry a moisture that Eq 4-5 gives back from their air', () => {
    let compared = 0;
    for (const { key, temperatureC, humidityPct, moisturePct } of CLIMATES.rows) {
      if (!humidityPct || !moisturePct) continue;
      const t =
        temperatureC?.[0] !== undefined && temperatureC[1] !== undefined
          ? (temperatureC[0] + temperatureC[1]) / 2
          : 20;
      for (const end of [0, 1] as const) {
        const rh = humidityPct[end];
        const moisture = moisturePct[end];
        if (rh === undefined || moisture === undefined) continue;
        expect(Math.abs(equilibriumMoisture(t, rh) - moisture), key).toBeLessThan(0.11);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(70);
  });

  it('are found by place, room and season', () => {
    expect(indoorClimate('uk-living-room-winter')).toMatchObject({ humidityPct: [40, 55], basis: 'memory' });
  });
});

describe('the rest of the workshop', () => {
  it('is found by key', () => {
    expect(fitOf('tenon-thickness')).toMatchObject({ low: 0.05, high: 0.15 });
    expect(fitOf('kerf-table-saw-thin-kerf')?.low).toBe(2.38);
    expect(workTime('tenon-machine')).toMatchObject({ low: 3, high: 6, per: 'tenon', basis: 'memory' });
    expect(workTime('drawer-hand-dovetailed')?.basis).toBe('read');
    expect(furnitureLoad('seat-static')?.low).toBe(1300);
    expect(cuttingSpeed('bandsaw')).toMatchObject({ low: 15, high: 25 });
    expect(usualSize('dining-table-height-to-top')).toMatchObject({ low: 724, high: 762 });
    expect(sizesOf('bookcase').length).toBeGreaterThan(10);
    expect(proportionsOf('dining table').length).toBeGreaterThan(8);
    expect(MACHINE_RULES['push-stick'].valueMm.low).toBe(300);
    expect(WIRE_GAUGE_MM.get(20)).toBe(0.91);
  });

  it('slows a router as its cutter grows', () => {
    expect(routerSpeedLimit(12)?.low).toBe(24000);
    expect(routerSpeedLimit(25.5)?.low).toBe(18000);
    expect(routerSpeedLimit(80)?.low).toBe(12000);
    expect(routerSpeedLimit(100)).toBeUndefined();
  });

  it('takes the nearest drill, the smaller of two', () => {
    expect(nearestSize(BRAD_POINT_DRILLS_MM, 7.9)).toBe(8);
    expect(nearestSize(BRAD_POINT_DRILLS_MM, 11)).toBe(10);
    expect(nearestSize({ sizesMm: [], source: 'none', basis: 'memory' }, 3)).toBeUndefined();
  });
});
