import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  equilibriumMoisture,
  equilibriumMoisture2014,
  humidityForMoisture,
  humidityForMoisture2014,
  siteMoisture,
} from '../../src/timber/moisture.ts';

const temperature = fc.double({ min: -1, max: 60, noNaN: true });
const humidity = fc.double({ min: 0, max: 98, noNaN: true });
const seeded = { seed: 3, numRuns: 300 };

describe('moisture of wood in air', () => {
  it('rises with humidity, by both equations', () => {
    fc.assert(
      fc.property(temperature, humidity, fc.double({ min: 0.05, max: 2, noNaN: true }), (t, h, step) => {
        expect(equilibriumMoisture(t, h + step)).toBeGreaterThan(equilibriumMoisture(t, h));
        expect(equilibriumMoisture2014(t, h + step)).toBeGreaterThan(equilibriumMoisture2014(t, h));
      }),
      seeded,
    );
  });

  it('falls with temperature in rooms', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 40, noNaN: true }),
        fc.double({ min: 20, max: 90, noNaN: true }),
        (t, h) => {
          expect(equilibriumMoisture(t + 2, h)).toBeLessThan(equilibriumMoisture(t, h));
        },
      ),
      seeded,
    );
  });

  it('leads back to the humidity it came from', () => {
    fc.assert(
      fc.property(temperature, fc.double({ min: 1, max: 98, noNaN: true }), (t, h) => {
        expect(humidityForMoisture(t, equilibriumMoisture(t, h))).toBeCloseTo(h, 5);
        expect(humidityForMoisture2014(t, equilibriumMoisture2014(t, h))).toBeCloseTo(h, 6);
      }),
      seeded,
    );
  });

  it('differs little between the two equations in a room', () => {
    for (let t = 15; t <= 25; t += 5) {
      for (let h = 30; h <= 70; h += 5) {
        expect(Math.abs(equilibriumMoisture(t, h) - equilibriumMoisture2014(t, h))).toBeLessThan(0.75);
      }
    }
  });

  it('is nothing in dry air', () => {
    expect(equilibriumMoisture(20, 0)).toBe(0);
    expect(equilibriumMoisture2014(20, 0)).toBe(0);
    expect(humidityForMoisture(20, 0)).toBeCloseTo(0, 5);
  });

  it('refuses a humidity or a moisture that cannot be', () => {
    expect(() => equilibriumMoisture(20, 101)).toThrow('relative humidity 101 % is outside 0 to 100 %');
    expect(() => equilibriumMoisture(20, Number.NaN)).toThrow(RangeError);
    expect(() => humidityForMoisture(20, 40)).toThrow('moisture 40 % is outside 0 to');
    expect(() => humidityForMoisture(20, -1)).toThrow(RangeError);
  });

  it('swings over a year between the dry and the damp of the site', () => {
    const porch = siteMoisture({ humidity: { low: 50, high: 75 }, temperature: { low: 15, high: 22 } });
    expect(porch.low).toBeCloseTo(equilibriumMoisture(22, 50), 9);
    expect(porch.high).toBeCloseTo(equilibriumMoisture(15, 75), 9);
    expect(porch.low).toBeCloseTo(9.2, 1);
  });
});
