import type { MachineFile } from './machine-file.ts';

export const lathe: MachineFile = {
  kind: 'lathe',
  holds: ['centres', 'tool rest', 'speed', 'calipers', 'station stick'],
  limits: {
    longest: { asks: 'length between centres', usual: [400, 1100] },
    widest: { asks: 'swing, the greatest diameter', usual: [200, 450] },
  },
  change: { tool: 1, fence: 1, height: 1, tilt: 0, jig: 5 },
  accuracy: { mm: 0.5 },
  cautions: [
    'Face shield. Turn the work by hand before the motor. Rest close and the tool on it before the wood. No gloves, no sleeves; rest away for sanding.',
  ],
};

export const discSander: MachineFile = {
  kind: 'disc sander',
  holds: ['grit', 'tilt of the table', 'mitre fence'],
  limits: { widest: { asks: 'diameter of the disc', usual: [200, 400] } },
  change: { tool: 5, fence: 1, height: 0, tilt: 2, jig: 1 },
  accuracy: { mm: 0.3, degrees: 0.5 },
  cautions: [
    'Work on the half of the disc that runs down. Extraction and mask; metal dust and wood dust never together.',
  ],
};

export const beltSander: MachineFile = {
  kind: 'belt sander',
  holds: ['grit'],
  limits: { widest: { asks: 'width of the belt', usual: [75, 150] } },
  change: { tool: 3, fence: 1, height: 0, tilt: 1, jig: 1 },
  accuracy: { mm: 0.3 },
  cautions: ['Keep it moving along the grain; lift before it stops. Extraction and mask.'],
};

export const polisher: MachineFile = {
  kind: 'polisher',
  holds: ['mop', 'compound'],
  limits: { widest: { asks: 'diameter of the mop', usual: [100, 250] } },
  change: { tool: 3, fence: 0, height: 0, tilt: 0, jig: 0 },
  accuracy: {},
  cautions: [
    'Present the work below the middle of the mop, edges trailing: a leading edge is torn from the hand. Eye protection, mask.',
  ],
};
