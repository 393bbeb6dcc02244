/** How time under load weakens and bends timber and boards: kmod and kdef of EN 1995-1-1. */
import { type Band, band } from './sourced.ts';

export type ServiceClass = 1 | 2 | 3;
export type Duration = 'permanent' | 'long' | 'medium' | 'short' | 'instantaneous';
export type TimeMaterial = 'timber' | 'plywood' | 'chipboard' | 'mdf' | 'hardboard';

const EUROCODEPY = 'EN 1995-1-1 by github pcachim/eurocodepy@90d3dec';
const ICE =
  'EN 1995-1-1 Table 3.1, reprinted at http://what-when-how.com/Tutorial/topic-1471b74oeb/ICE-Manual-of-Structural-Design-Buildings-368.html';
const TABLE_3_2 = 'EN 1995-1-1 Table 3.2';

type Factors = Record<Duration, number>;
const factors = (
  permanent: number,
  long: number,
  medium: number,
  short: number,
  instantaneous: number,
): Factors => ({
  permanent,
  long,
  medium,
  short,
  instantaneous,
});

const SOLID = {
  1: factors(0.6, 0.7, 0.8, 0.9, 1.1),
  2: factors(0.6, 0.7, 0.8, 0.9, 1.1),
  3: factors(0.5, 0.55, 0.65, 0.7, 0.9),
} as const;

/** Strength left under load, by material. */
export const KMOD: Readonly<
  Record<TimeMaterial, { by: Partial<Record<ServiceClass, Factors>>; source: string } | undefined>
> = {
  timber: { by: SOLID, source: EUROCODEPY },
  plywood: { by: SOLID, source: EUROCODEPY },
  chipboard: { by: { 1: factors(0.3, 0.45, 0.65, 0.85, 1.1) }, source: `${ICE} (particleboard P4)` },
  mdf: { by: { 1: factors(0.2, 0.4, 0.6, 0.8, 1.1) }, source: `${ICE} (MDF.LA)` },
  hardboard: undefined,
};

/** What is left of the strength under a load that stays so long. Undefined where the tables are silent. */
export function kmod(
  material: TimeMaterial,
  serviceClass: ServiceClass,
  duration: Duration,
): Band | undefined {
  const row = KMOD[material];
  const value = row?.by[serviceClass]?.[duration];
  return row && value !== undefined ? band(value, value, 'read', row.source) : undefined;
}

const remembered = (value: number): Band => band(value, value, 'memory', `${TABLE_3_2}, remembered`);
const listed = (value: number): Band =>
  band(value, value, 'read', `${TABLE_3_2}, remembered and confirmed in a stored listing`);
const library = (value: number): Band => band(value, value, 'read', EUROCODEPY);

/** Creep over bending at once, by material. */
export const KDEF: Readonly<Record<TimeMaterial, Partial<Record<ServiceClass, Band>>>> = {
  timber: { 1: library(0.6), 2: library(0.8), 3: library(2.0) },
  plywood: { 1: listed(0.8), 2: listed(1.0) },
  chipboard: { 1: remembered(2.25) },
  mdf: { 1: remembered(2.25) },
  hardboard: { 1: remembered(2.25) },
};

/** Creep under a standing load over the bending at once. Undefined where the tables are silent. */
export function kdef(material: TimeMaterial, serviceClass: ServiceClass = 1): Band | undefined {
  return KDEF[material][serviceClass];
}
