import { kmod } from '../../src/reference/load-duration.ts';
import { strengthClass } from '../../src/reference/strength-classes.ts';
import { timberSpecies } from '../../src/reference/timber-species.ts';
import {
  bucklingFactor,
  bucklingLoad,
  depthFactor,
  designStrength,
  relativeSlenderness,
  slenderness,
} from '../../src/timber/design-strength.ts';
import { rectangle, roundTube } from '../../src/timber/sections.ts';
import {
  bendingStress,
  strengthAtAngle,
  strengthAtMoisture,
  taperedEdgeStress,
} from '../../src/timber/stress.ts';
import { type OutsideCheck, outside } from './check.ts';

const EUROCODE_PAGE =
  'EN 1995-1-1 Eq 6.25-6.29 as printed at https://www.eurocode.us/structural-timber-design/km-wbq.html';
const BENDING_PAGE =
  'kh, gammaM: http://www.onlinestructuraldesign.com/preview/Wood_element_bending_EC5/Wood_element_bending_EC5.aspx';
const DURATIONS = ['permanent', 'long', 'medium', 'short', 'instantaneous'] as const;

const strengthOf = (name: string) => {
  const row = strengthClass(name);
  if (!row) throw new Error(`no strength class ${name}`);
  return row;
};

const slender = (
  id: string,
  name: string,
  lambda: number,
  published: { relative: number; factor: number },
): OutsideCheck =>
  outside({
    id,
    topic: 'buckling',
    inputs: { name, lambda },
    published,
    unit: '-',
    tolerance: 0.001,
    source: EUROCODE_PAGE,
    basis: 'read formula, arithmetic',
    ours: input => {
      const row = strengthOf(input.name);
      const relative = relativeSlenderness(input.lambda, row.crushing, row.stiffness5);
      return { relative, factor: bucklingFactor(relative) };
    },
  });

export const checks: OutsideCheck[] = [
  outside({
    id: 'mc-strength-white-ash',
    topic: 'strength',
    inputs: { timber: 'white-ash-american', green: 66, meetsAt: 24, moisture: 8 },
    published: 119.5,
    unit: 'MPa',
    tolerance: 0.1,
    source: 'FPL-GTR-282 Eq 5-3 printed example (read through a public digitisation)',
    basis: 'printed answer',
    ours: ({ timber, green, meetsAt, moisture }) =>
      strengthAtMoisture(
        timberSpecies(timber)?.bendingStrengthMPa?.low ?? Number.NaN,
        green,
        moisture,
        meetsAt,
      ),
  }),
  outside({
    id: 'tapered-edge-stress',
    topic: 'strength',
    inputs: { widthMm: 100, depthMm: 200, slope: 0.1 },
    published: { along: 375, shear: 37.5, across: 3.75 },
    unit: 'Pa for 1 N m',
    tolerance: 0.01,
    source: 'FPL-GTR-282 Eq 9-16 printed example (read through a public digitisation)',
    basis: 'printed answer',
    ours: ({ widthMm, depthMm, slope }) => {
      const stress = taperedEdgeStress(1000, widthMm, depthMm, slope);
      return { along: stress.alongMPa * 1e6, shear: stress.shearMPa * 1e6, across: stress.acrossMPa * 1e6 };
    },
  }),
  outside({
    id: 'hankinson-45',
    topic: 'strength',
    inputs: { across: 7.0, angle: 45 },
    published: 12.172,
    unit: 'MPa',
    tolerance: 0.001,
    source: 'FPL Eq 8-16 with northern red oak values',
    basis: 'read formula, arithmetic',
    ours: ({ across, angle }) =>
      strengthAtAngle(timberSpecies('red-oak-american')?.crushingMPa?.low ?? Number.NaN, across, angle),
  }),
  outside({
    id: 'euler-tube-4-ends',
    topic: 'buckling',
    inputs: { outerMm: 40, wallMm: 2, lengthMm: 1200, stiffnessMPa: 210000 },
    published: { pinned: 62.2, free: 15.6, oneFixed: 127, fixed: 249 },
    unit: 'kN',
    tolerance: 0.6,
    source: 'Gere, Mechanics of Materials, problem 11.4-2, https://www.coursehero.com/file/6641211/',
    basis: 'printed answer',
    ours: ({ outerMm, wallMm, lengthMm, stiffnessMPa }) => {
      const load = (ends: Parameters<typeof bucklingLoad>[3]) =>
        bucklingLoad(lengthMm, stiffnessMPa, roundTube(outerMm, wallMm), ends) / 1000;
      return {
        pinned: load('pinned'),
        free: load('fixed and free'),
        oneFixed: load('fixed and pinned'),
        fixed: load('fixed'),
      };
    },
  }),
  outside({
    id: 'square-column-textbook',
    topic: 'buckling',
    inputs: { sideMm: 98.3, lengthMm: 2000, stiffnessMPa: 13000, safety: 2.5 },
    published: 100,
    unit: 'kN',
    tolerance: 0.5,
    source: 'mechanics textbook example: a square column of 98.3 mm carries 100 kN 2.5 times over',
    basis: 'memory',
    ours: ({ sideMm, lengthMm, stiffnessMPa, safety }) =>
      bucklingLoad(lengthMm, stiffnessMPa, rectangle(sideMm, sideMm)) / safety / 1000,
  }),
  outside({
    id: 'slenderness-100mm',
    topic: 'buckling',
    inputs: { sideMm: 100, lengthMm: 3750 },
    published: 129.9,
    unit: '-',
    tolerance: 0.05,
    source:
      'EC5 textbook example 5.7.3, https://www.eurocode.us/structural-timber-design/info-pge.html and info-fvf.html',
    basis: 'printed answer',
    ours: ({ sideMm, lengthMm }) => slenderness(lengthMm, rectangle(sideMm, sideMm)),
  }),
  slender('ec5-kc-c24-lambda129.9', 'C24', 129.9, { relative: 2.203, factor: 0.188 }),
  slender('ec5-kc-c16-lambda60', 'C16', 60, { relative: 1.0716, factor: 0.636 }),
  outside({
    id: 'ec5-kc-lrel1.59',
    topic: 'buckling',
    inputs: { relative: 1.59 },
    published: 0.3424,
    unit: '-',
    tolerance: 0.0005,
    source: EUROCODE_PAGE,
    basis: 'read formula, arithmetic',
    ours: ({ relative }) => bucklingFactor(relative),
  }),
  outside({
    id: 'ec5-kh',
    topic: 'strength',
    inputs: { depthMm: [40, 45, 75, 100, 150, 200] },
    published: [1.3, 1.2723, 1.1487, 1.0845, 1, 1],
    unit: '-',
    tolerance: 0.0002,
    source: BENDING_PAGE,
    basis: 'read formula, arithmetic',
    ours: ({ depthMm }) => depthMm.map(depthFactor),
  }),
  outside({
    id: 'ec5-fmd-c24-240',
    topic: 'strength',
    inputs: { name: 'C24', depthMm: 240 },
    published: 16.615,
    unit: 'MPa',
    tolerance: 0.001,
    source: BENDING_PAGE,
    basis: 'read formula, arithmetic',
    ours: ({ name, depthMm }) =>
      designStrength(strengthOf(name).bending, kmod('timber', 1, 'short')?.low ?? Number.NaN, depthMm),
  }),
  outside({
    id: 'ec5-rail-d30-bending',
    topic: 'strength',
    inputs: { name: 'D30', widthMm: 25, depthMm: 90, spanMm: 1400, loadN: 1000 },
    published: { moment: 350, stress: 10.37, depth: 1.1076, strength: 23.004, used: 0.4508 },
    unit: 'N m, MPa, -',
    tolerance: 0.002,
    source: `${BENDING_PAGE}; kh valid to 700 kg/m3`,
    basis: 'read formula, arithmetic',
    ours: ({ name, widthMm, depthMm, spanMm, loadN }) => {
      const moment = (loadN * spanMm) / 4;
      const stress = bendingStress(moment, rectangle(widthMm, depthMm));
      const short = kmod('timber', 1, 'short')?.low ?? Number.NaN;
      const strength = designStrength(strengthOf(name).bending, short, depthMm);
      return {
        moment: moment / 1000,
        stress,
        depth: depthFactor(depthMm),
        strength,
        used: stress / strength,
      };
    },
  }),
  outside({
    id: 'ec5-kmod-panels',
    topic: 'strength',
    inputs: { materials: ['timber', 'chipboard', 'mdf'] },
    published: [0.6, 0.7, 0.8, 0.9, 1.1, 0.3, 0.45, 0.65, 0.85, 1.1, 0.2, 0.4, 0.6, 0.8, 1.1],
    unit: '-',
    tolerance: 1e-9,
    source:
      'EN 1995-1-1 table reprinted at http://what-when-how.com/Tutorial/topic-1471b74oeb/ICE-Manual-of-Structural-Design-Buildings-368.html',
    basis: 'consistency of two sources',
    ours: ({ materials }) =>
      materials.flatMap(material =>
        DURATIONS.map(duration => kmod(material, 1, duration)?.low ?? Number.NaN),
      ),
  }),
];
