/** Speeds of tools: the rim of a blade or cutter, and the range each kind of tool works in. */
import { type Keyed, table } from './keys.ts';
import { type Band, band, memory, read } from './sourced.ts';

/** Speed of the rim, m/s: v = pi D n/60000. Kinematics. */
export function rimSpeed(diameterMm: number, rpm: number): number {
  return (Math.PI * diameterMm * rpm) / 60000;
}

/** Turns a minute for a speed of the rim: n = 60000 v/(pi D). */
export function rpmForRimSpeed(diameterMm: number, speedMPerS: number): number {
  return (60000 * speedMPerS) / (Math.PI * diameterMm);
}

export interface CuttingSpeed extends Keyed, Band {
  /** `low` and `high` in m/s at the rim. */
  readonly tool: string;
  readonly material: string;
}

const speed = (
  key: string,
  tool: string,
  material: string,
  low: number,
  high: number,
  note?: string,
): CuttingSpeed => ({
  key,
  tool,
  material,
  ...memory(low, high, note),
});

export const CUTTING_SPEEDS = table<CuttingSpeed>([
  speed('saw-softwood', 'circular saw, tipped', 'softwood', 70, 100),
  speed('saw-hardwood', 'circular saw, tipped', 'hardwood', 70, 90),
  speed('saw-board', 'circular saw, tipped', 'chipboard, MDF', 60, 80),
  speed('cutter-steel-softwood', 'moulding cutter, high-speed steel', 'softwood', 50, 80),
  speed('cutter-steel-hardwood', 'moulding cutter, high-speed steel', 'hardwood', 40, 60),
  speed('cutter-tipped-board', 'moulding cutter, tipped', 'MDF, chipboard', 35, 60),
  speed(
    'spindle-hand-feed',
    'spindle moulder, hand feed',
    'any',
    40,
    70,
    'below 40 kickback, above 70 ejection; tool marked MAN',
  ),
  speed('bandsaw', 'band saw', 'timber', 15, 25),
  speed('drill-timber', 'brad point or twist drill', 'timber', 0.8, 4),
  speed('forstner', 'Forstner bit', 'timber', 0.5, 2),
  speed('drill-steel', 'twist drill', 'mild steel', 0.4, 0.5, '25-30 m a minute'),
  speed('drill-brass', 'twist drill', 'brass', 0.8, 1.2),
  speed('drill-copper', 'twist drill', 'copper', 0.5, 0.8),
  speed('drill-aluminium', 'twist drill', 'aluminium', 1.0, 1.7),
]);

/** The speed range of that key. */
export const cuttingSpeed = (key: string): CuttingSpeed | undefined => CUTTING_SPEEDS.find(key);

/** A blade runs at this share of the speed marked on it, %. */
export const SAW_SHARE_OF_MARKED_PCT = read(
  50,
  75,
  'http://carbidespecialties.com/saw_performance_specs.htm',
);

const ROUTER_LADDER = 'http://woodworking.about.com/od/safetyfirst/a/RouterBitSpeeds.htm';
const LADDER = [
  { upToMm: 25.4, rpm: 24000 },
  { upToMm: 50.8, rpm: 18000 },
  { upToMm: 63.5, rpm: 16000 },
  { upToMm: 88.9, rpm: 12000 },
];

/**
 * Greatest turns a minute of a router cutter by its diameter; the figure marked on the cutter wins where it is lower.
 * Undefined above 88.9 mm (3 1/2 in), which is no router cutter.
 */
export function routerSpeedLimit(diameterMm: number): Band | undefined {
  const step = LADDER.find(row => diameterMm <= row.upToMm);
  return step && band(step.rpm, step.rpm, 'read', ROUTER_LADDER);
}
