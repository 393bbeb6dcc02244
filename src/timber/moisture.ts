/** Moisture of wood in air: what it settles at, and the air that belongs to a moisture. */

/** The temperatures (degC) over which the handbook prints its moisture table. */
export const EMC_RANGE = {
  temperatureC: { low: -1.1, high: 132 },
  humidity: { low: 0, high: 0.95 },
} as const;

/**
 * Moisture content at which wood settles in air, %.
 *
 *     EMC = 1800/W [ K h/(1 - K h) + (K1 K h + 2 K1 K2 K^2 h^2)/(1 + K1 K h + K1 K2 K^2 h^2) ]
 *     W  = 349 + 1.29 T + 0.0135 T^2          K  = 0.805 + 0.000736 T - 0.00000273 T^2
 *     K1 = 6.27 - 0.00938 T - 0.000303 T^2    K2 = 1.91 + 0.0407 T - 0.000293 T^2
 *
 * @param temperatureC degC, handbook range -1 to 132
 * @param humidity relative humidity as a fraction, 0 to 1; the table ends at 0.95
 * @throws RangeError when the humidity is not between 0 and 1
 *
 * Source: Wood Handbook FPL-GTR-282 (2021) Eq 4-5.
 */
export function equilibriumMoisture(temperatureC: number, humidity: number): number {
  needHumidity(humidity);
  const t = temperatureC;
  const w = 349 + 1.29 * t + 0.0135 * t * t;
  const k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
  const kh = k * humidity;
  const first = k1 * kh;
  const second = k1 * k2 * kh * kh;
  return (1800 / w) * (kh / (1 - kh) + (first + 2 * second) / (1 + first + second));
}

/**
 * The same by the newer fit of the handbook, %: within about half a per cent of Eq 4-5 in rooms.
 *
 *     EMC = 100 [ A T (1 - T/Tc)^B ln(1 - h) ]^(C T^D)
 *     A = -0.000612, B = 2.43, C = 0.0577, D = 0.430, Tc = 647.1 K, T in kelvin
 *
 * Source: Glass et al. 2014 in Wood Handbook FPL-GTR-282 (2021) Eq 4-6.
 */
export function equilibriumMoisture2014(temperatureC: number, humidity: number): number {
  needHumidity(humidity);
  const { scale, exponent } = fit2014(temperatureC);
  return 100 * (scale * Math.log(1 - humidity)) ** exponent;
}

/**
 * The relative humidity (fraction) at which wood of this moisture neither takes up nor gives off water.
 *
 *     h = 1 - exp{ 1/(A T) (1 - T/Tc)^-B (EMC/100)^((1/C) T^-D) }
 *
 * Source: Wood Handbook FPL-GTR-282 (2021) Eq 4-7, the inverse of Eq 4-6.
 */
export function humidityForMoisture2014(temperatureC: number, moisturePct: number): number {
  const { scale, exponent } = fit2014(temperatureC);
  return 1 - Math.exp((moisturePct / 100) ** (1 / exponent) / scale);
}

function fit2014(temperatureC: number): { scale: number; exponent: number } {
  const t = temperatureC + 273.15;
  return { scale: -0.000612 * t * (1 - t / 647.1) ** 2.43, exponent: 0.0577 * t ** 0.43 };
}

/**
 * The relative humidity (fraction) whose equilibrium moisture by Eq 4-5 is `moisturePct`.
 * Eq 4-5 rises with humidity, so halving finds the one answer, to 1e-9.
 * @throws RangeError when the moisture cannot be reached in air of this temperature (above that at 100 %)
 */
export function humidityForMoisture(temperatureC: number, moisturePct: number): number {
  const most = equilibriumMoisture(temperatureC, 1);
  if (!(moisturePct >= 0 && moisturePct <= most)) {
    throw new RangeError(
      `moisture ${moisturePct} % is outside 0 to ${most.toFixed(1)} %, what wood reaches in air of ${temperatureC} degC`,
    );
  }
  let low = 0;
  let high = 1;
  while (high - low > 1e-9) {
    const half = (low + high) / 2;
    if (equilibriumMoisture(temperatureC, half) < moisturePct) low = half;
    else high = half;
  }
  return (low + high) / 2;
}

/** Air of a room at one season. Humidity as a fraction. */
export interface Air {
  readonly temperatureC: number;
  readonly humidity: number;
}

/** Low and high of a site through the year; `humidity` as fractions, `temperatureC` at those times. */
export interface SiteAir {
  readonly dry: Air;
  readonly damp: Air;
}

/**
 * The moisture that timber of a site swings between, % MC.
 * A piece never quite follows the weeks of damp and drought, so the swing is on the safe side.
 */
export function siteMoisture(site: SiteAir): { low: number; high: number } {
  const dry = equilibriumMoisture(site.dry.temperatureC, site.dry.humidity);
  const damp = equilibriumMoisture(site.damp.temperatureC, site.damp.humidity);
  return { low: Math.min(dry, damp), high: Math.max(dry, damp) };
}

function needHumidity(humidity: number): void {
  if (!(humidity >= 0 && humidity <= 1)) {
    throw new RangeError(`relative humidity ${humidity} is outside 0 to 1 (50 % is 0.5)`);
  }
}
