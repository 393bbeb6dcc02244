/** Rules of the machines that set-up cards quote. They defer to the machine's manual and to local law. */
import type { Sourced } from './sourced.ts';

export interface MachineRule extends Sourced {
  readonly says: string;
  readonly valueMm?: { readonly low?: number; readonly high?: number };
}

const MANUAL = 'https://www.easymanua.ls/jet/jts-600x/manual?p=127';
const HSE = 'https://www.hse.gov.uk/woodworking/ripsaw.htm';
const RECALLED = 'remembered, unverified';

export const MACHINE_RULES = {
  'blade-speed': { says: 'No blade runs faster than the speed marked on it', source: MANUAL, basis: 'read' },
  'riving-knife-height': {
    says: 'The tip of the riving knife stands no more than 2 mm below the highest tooth',
    valueMm: { high: 2 },
    source: MANUAL,
    basis: 'read',
  },
  'riving-knife-gap': {
    says: 'The riving knife stands 3 to 8 mm behind the teeth',
    valueMm: { low: 3, high: 8 },
    source: `${MANUAL}; ${HSE}`,
    basis: 'read',
  },
  'riving-knife-thickness': {
    says: 'The riving knife is thicker than the plate and thinner than the kerf',
    source: HSE,
    basis: 'read',
  },
  'push-stick': {
    says: 'A push stick for the last 300 mm of the cut, the stick at least 450 mm long',
    valueMm: { low: 300 },
    source: HSE,
    basis: 'read',
  },
  'tooth-height': {
    says: 'For a through cut the teeth stand 3 to 6 mm above the stock',
    valueMm: { low: 3, high: 6 },
    source: 'renovateyourworld.com blade-height; woodweb Table_Saw_Blade_Height',
    basis: 'read',
  },
  'hand-feed-grooving': {
    says: 'Hand-fed grooving tools are marked MAN and cut no wider than 20 mm',
    valueMm: { high: 20 },
    source: MANUAL,
    basis: 'read',
  },
  'hand-feed-mark': {
    says: 'MAN is for hand feed, MEC for mechanical feed only',
    source: `EN 847-1, ${RECALLED}`,
    basis: 'memory',
  },
  'router-pass': {
    says: 'A router pass is about half the cutter diameter deep, and under 6 to 8 mm',
    valueMm: { high: 8 },
    source: RECALLED,
    basis: 'memory',
  },
  'feed-direction': {
    says: 'Feed against the rotation of the cutter; a climb cut grabs the piece',
    source: 'trade practice',
    basis: 'common practice',
  },
} as const satisfies Record<string, MachineRule>;
