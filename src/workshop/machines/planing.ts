import type { MachineFile } from './machine-file.ts';

export const planer: MachineFile = {
  kind: 'planer',
  holds: ['depth of cut', 'fence square'],
  limits: {
    maxDepth: { asks: 'deepest cut at one pass', usual: [1, 4] },
    widest: { asks: 'width of the knives', usual: [150, 410] },
    shortest: { asks: 'shortest piece you pass over it', usual: [250, 350] },
  },
  change: { tool: 30, fence: 2, height: 1, tilt: 2, jig: 0 },
  accuracy: { mm: 0.05 },
  cautions: [
    'Bridge guard down to the work, push blocks on faces, never a hand over the knives. Hollow side down; grain rising away from the knives.',
  ],
};

export const thicknesser: MachineFile = {
  kind: 'thicknesser',
  holds: ['table height', 'depth of cut'],
  limits: {
    maxDepth: { asks: 'deepest cut at one pass', usual: [1, 4] },
    widest: { asks: 'widest piece', usual: [200, 510] },
    shortest: { asks: 'shortest piece between the rollers', usual: [200, 350] },
  },
  change: { tool: 30, fence: 0, height: 1, tilt: 0, jig: 0 },
  accuracy: { mm: 0.1 },
  cautions: [
    'Stand beside the feed. Nothing shorter than the distance of the rollers. Extraction on. Follow with a piece behind against snipe.',
  ],
};
