import type { MachineFile } from './machine-file.ts';

export const tableSaw: MachineFile = {
  kind: 'table saw',
  holds: ['blade', 'blade height', 'fence', 'stop', 'tilt', 'jig'],
  limits: {
    maxDepth: { asks: 'greatest blade height', usual: [60, 110] },
    fence: { asks: 'furthest fence setting', usual: [300, 1300] },
    maxTilt: { asks: 'greatest tilt', usual: [45, 47] },
    shortest: { asks: 'shortest piece you run', usual: [150, 300] },
  },
  change: { tool: 6, fence: 2, height: 1, tilt: 3, jig: 4 },
  accuracy: { mm: 0.2, degrees: 0.5 },
  cautions: [
    'Guard on, riving knife no more than 8 mm from the blade. Push stick for the last 300 mm.',
    'Stand beside the line of the blade. Waste stays free of the fence.',
  ],
};

export const mitreSaw: MachineFile = {
  kind: 'mitre saw',
  holds: ['blade', 'stop', 'mitre', 'tilt'],
  limits: {
    maxDepth: { asks: 'thickest piece', usual: [50, 110] },
    widest: { asks: 'widest piece, square', usual: [120, 340] },
    shortest: { asks: 'shortest piece you hold', usual: [120, 200] },
  },
  change: { tool: 6, fence: 2, height: 1, tilt: 3, jig: 0 },
  accuracy: { mm: 0.1, degrees: 0.1 },
  cautions: [
    'Guard working, hands 150 mm clear of the blade, piece held to the fence until the blade stands.',
  ],
};

export const bandSaw: MachineFile = {
  kind: 'band saw',
  holds: ['band', 'guide height', 'fence', 'tilt of the table'],
  limits: {
    maxDepth: { asks: 'height under the guides', usual: [100, 400] },
    fence: { asks: 'throat, band to frame', usual: [200, 600] },
    shortest: { asks: 'shortest piece you run', usual: [50, 150] },
  },
  change: { tool: 8, fence: 2, height: 1, tilt: 2, jig: 4 },
  accuracy: { mm: 0.8 },
  cautions: [
    'Guides just over the work. Both hands beside the line of the band, never before it; round work in a vee block.',
  ],
};

export const metalSaw: MachineFile = {
  kind: 'metal saw',
  holds: ['blade', 'stop', 'mitre'],
  limits: { maxDepth: { asks: 'thickest bar', usual: [50, 150] } },
  change: { tool: 10, fence: 2, height: 0, tilt: 2, jig: 2 },
  accuracy: { mm: 0.5, degrees: 0.5 },
  cautions: [
    'Eye protection. Clamp both sides of the cut. Burrs cut: file before handling. Keep steel dust from oak.',
  ],
};
