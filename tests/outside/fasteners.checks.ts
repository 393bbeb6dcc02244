import { adhesive } from '../../src/reference/adhesives.ts';
import { gaugeDiameterMm, screw } from '../../src/reference/screws.ts';
import { timberSpecies } from '../../src/reference/timber-species.ts';
import { pullOut, screwLateral, screwWithdrawal } from '../../src/timber/fasteners.ts';
import { type OutsideCheck, outside } from './check.ts';

const gravity = (key: string): number => timberSpecies(key)?.specificGravity12?.low ?? Number.NaN;
const shank = (size: string): number => screw(size)?.shankMm ?? Number.NaN;

export const checks: OutsideCheck[] = [
  outside({
    id: 'screw-10-red-oak',
    topic: 'fasteners',
    inputs: { timber: 'red-oak-american', size: 'no-10', threadMm: 25.4 },
    published: 5271,
    unit: 'N ultimate',
    tolerance: 2,
    source: 'FPL-GTR-282 Eq 8-10, Table 8-9, Table 5-3a',
    basis: 'read formula, arithmetic',
    ours: ({ timber, size, threadMm }) => screwWithdrawal(gravity(timber), shank(size), threadMm),
  }),
  outside({
    id: 'screw-withdrawal-ultimate-same',
    topic: 'fasteners',
    inputs: { gravity: 0.45, gauge: 10, threadMm: 25.4 },
    published: 2687,
    unit: 'N ultimate',
    tolerance: 1,
    source: 'FPL Eq 8-10',
    basis: 'read formula, arithmetic',
    ours: input => screwWithdrawal(input.gravity, gaugeDiameterMm(input.gauge), input.threadMm),
  }),
  outside({
    id: 'screw-lateral-8',
    topic: 'fasteners',
    inputs: { size: 'no-8', gravities: [0.4, 0.5, 0.6] },
    published: [402.9, 556.3, 767.4],
    unit: 'N at the proportional limit',
    tolerance: 0.5,
    source: 'p = K D^2, hardwood K by specific gravity: FPL Table 8-4',
    basis: 'read formula, arithmetic',
    ours: ({ size, gravities }) => gravities.map(g => screwLateral('hardwood', g, shank(size)) ?? Number.NaN),
  }),
  outside({
    id: 'screw-gauge-diameter',
    topic: 'fasteners',
    inputs: { gauges: [4, 6, 8, 10, 12, 14] },
    published: [0.112, 0.138, 0.164, 0.19, 0.216, 0.242],
    unit: 'in',
    tolerance: 1e-9,
    source:
      'https://www.finescrews.com/news/industry-news/screw-size-charts-gauge-diameters-hole-sizes-nails-vs-screws.html',
    basis: 'printed answer',
    ours: ({ gauges }) => gauges.map(gauge => gaugeDiameterMm(gauge) / 25.4),
  }),
  outside({
    id: 'screw-gauge-table-shanks',
    topic: 'fasteners',
    inputs: { gauges: [4, 5, 6, 7, 8, 9, 10, 11, 12, 14, 16, 18] },
    published: [2.84, 3.18, 3.51, 3.84, 4.17, 4.5, 4.83, 5.16, 5.49, 6.15, 6.81, 7.47],
    unit: 'mm',
    tolerance: 0.006,
    source: 'FPL-GTR-282 Table 8-9 (read through a public digitisation) against the gauge formula',
    basis: 'consistency of two sources',
    ours: ({ gauges }) => gauges.map(gaugeDiameterMm),
  }),
  outside({
    id: 'dowel-withdrawal-8mm',
    topic: 'fasteners',
    inputs: { diameterMm: 8, lengthMm: 25, bonds: [3.0, 4.9, 8.6] },
    published: [1885, 3079, 5404],
    unit: 'N',
    tolerance: 5,
    source: 'bond strengths read in BioResources 2018 and 2020; force = pi D L tau',
    basis: 'read values, arithmetic',
    ours: ({ diameterMm, lengthMm, bonds }) => bonds.map(bond => pullOut(diameterMm, lengthMm, bond)),
  }),
  outside({
    id: 'rod-pull-out-epoxy',
    topic: 'fasteners',
    inputs: { holeMm: 12, lengthMm: 50 },
    published: 10397,
    unit: 'N',
    tolerance: 5,
    source: 'filled epoxy 800 psi: https://epoxyworks.com/more-on-hardware-bonding; F = pi D L tau',
    basis: 'read values, arithmetic',
    ours: ({ holeMm, lengthMm }) => pullOut(holeMm, lengthMm, adhesive('epoxy')?.shearMPa?.low ?? Number.NaN),
  }),
];
