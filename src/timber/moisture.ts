/** Moisture of wood in air: what it settles at, and the air that belongs to a moisture. */

import type { Site } from '../results/commission.ts';

/**
 * Moisture content at which wood settles in air, %.
 *
 *     EMC = 1800/W [ K h/(1 - K h) + (K1 K h + 2 K1 K2 K^2 h^2)/(1 + K1 K h + K1 K2 K^2 h^2) ]
 *     W  = 349 + 1.29 T + 0.0135 T^2          K  = 0.805 + 0.000736 T - 0.00000273 T^2
 *     K1 = 6.27 - 0.00938 T - 0.000303 T^2    K2 = 1.91 + 0.0407 T - 0.000293 T^2
 *
 * @param temperatureC degC, handbook range -1 to 132
 * @param humidityPct relative humidity, %; h of the equation is its hundredth; the handbook's table ends at 95
 * @throws RangeError when the humidity is not between 0 and 100
 *
 * Source: Wood Handbook FPL-GTR-282 (2021) Eq 4-5.
 */
export function equilibriumMoisture(temperatureC: number, humidityPct: number): number {
  needHumidity(humidityPct);
  const t = temperatureC;
  const w = 349 + 1.29 * t + 0.0135 * t * t;
  const k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
  const kh = (k * humidityPct) / 100;
  const first = k1 * kh;
  const second = k1 * k2 * kh * kh;
  return (1800 / w) * (kh / (1 - kh) + (first + 2 * second) / (1 + first + second));
}

/**
 * The same by the newer fit of the handbook, %: within 0.75 % MC of Eq 4-5 at 15-25 degC and 30-70 % humidity.
 *
 *     EMC = 100 [ A T (1 - T/Tc)^B ln(1 - h) ]^(C T^D)
 *     A = -0.000612, B = 2.43, C = 0.0577, D = 0.430, Tc = 647.1 K, T in kelvin
 *
 * Source: Glass et al. 2014 in Wood Handbook FPL-GTR-282 (2021) Eq 4-6.
 */
export function equilibriumMoisture2014(temperatureC: number, humidityPct: number): number {
  needHumidity(humidityPct);
  const { scale, exponent } = fit2014(temperatureC);
  return 100 * (scale * Math.log(1 - humidityPct / 100)) ** exponent;
}

/**
 * The relative humidity, %, at which wood of this moisture neither takes up nor gives off water.
 *
 *     h = 1 - exp{ 1/(A T) (1 - T/Tc)^-B (EMC/100)^((1/C) T^-D) }
 *
 * Source: Wood Handbook FPL-GTR-282 (2021) Eq 4-7, the inverse of Eq 4-6.
 */
export function humidityForMoisture2014(temperatureC: number, moisturePct: number): number {
  const { scale, exponent } = fit2014(temperatureC);
  return 100 * (1 - Math.exp((moisturePct / 100) ** (1 / exponent) / scale));
}

function fit2014(temperatureC: number): { scale: number; exponent: number } {
  const t = temperatureC + 273.15;
  return { scale: -0.000612 * t * (1 - t / 647.1) ** 2.43, exponent: 0.0577 * t ** 0.43 };
}

/**
 * The relative humidity, %, whose equilibrium moisture by Eq 4-5 is `moisturePct`.
 * Eq 4-5 rises with humidity, so halving finds the one answer, to 1e-7.
 * @throws RangeError when the moisture cannot be reached in air of this temperature (above that at 100 %)
 */
export function humidityForMoisture(temperatureC: number, moisturePct: number): number {
  const most = equilibriumMoisture(temperatureC, 100);
  if (!(moisturePct >= 0 && moisturePct <= most)) {
    throw new RangeError(
      `moisture ${moisturePct} % is outside 0 to ${most.toFixed(1)} %, what wood reaches in air of ${temperatureC} degC`,
    );
  }
  let low = 0;
  let high = 100;
  while (high - low > 1e-7) {
    const half = (low + high) / 2;
    if (equilibriumMoisture(temperatureC, half) < moisturePct) low = half;
    else high = half;
  }
  return (low + high) / 2;
}

/**
 * The moisture that timber of a site swings between, % MC: the driest air taken at its warmest, the dampest
 * at its coolest, since which season is the dry one depends on the heating. A piece never quite follows the
 * weeks of damp and drought either, so the swing is on the safe side.
 */
export function siteMoisture(site: Required<Pick<Site, 'humidity' | 'temperature'>>): {
  low: number;
  high: number;
} {
  return {
    low: equilibriumMoisture(site.temperature.high, site.humidity.low),
    high: equilibriumMoisture(site.temperature.low, site.humidity.high),
  };
}

function needHumidity(humidityPct: number): void {
  if (!(humidityPct >= 0 && humidityPct <= 100)) {
    throw new RangeError(`relative humidity ${humidityPct} % is outside 0 to 100 %`);
  }
}
