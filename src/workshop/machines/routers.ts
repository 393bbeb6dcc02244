import type { MachineFile } from './machine-file.ts';

export const routerTable: MachineFile = {
  kind: 'router table',
  holds: ['cutter', 'cutter height', 'fence', 'stops', 'speed'],
  limits: {
    maxDepth: { asks: 'greatest height of a cutter', usual: [30, 70] },
    fence: { asks: 'furthest fence setting', usual: [100, 400] },
    shortest: { asks: 'shortest piece you run', usual: [100, 250] },
  },
  change: { tool: 5, fence: 2, height: 1, tilt: 0, jig: 3 },
  accuracy: { mm: 0.1 },
  cautions: ['Feed against the turn of the cutter; a climbing cut snatches. Ear and eye protection.'],
};

export const handRouter: MachineFile = {
  kind: 'hand router',
  holds: ['cutter', 'depth', 'side fence, bearing or template', 'speed'],
  limits: { maxDepth: { asks: 'greatest plunge', usual: [35, 80] } },
  change: { tool: 4, fence: 2, height: 1, tilt: 0, jig: 4 },
  accuracy: { mm: 0.1 },
  cautions: [
    'Clamp the work. Feed against the turn of the cutter, left to right with the fence on the right.',
  ],
};
