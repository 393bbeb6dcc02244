import type { MachineFile } from './machine-file.ts';

export const drillPress: MachineFile = {
  kind: 'drill press',
  holds: ['bit', 'fence', 'depth stop', 'tilt of the table', 'speed'],
  limits: {
    maxDepth: { asks: 'stroke of the spindle', usual: [50, 120] },
    maxTilt: { asks: 'greatest tilt of the table', usual: [0, 45] },
  },
  change: { tool: 1, fence: 2, height: 1, tilt: 4, jig: 3 },
  accuracy: { mm: 0.1 },
  cautions: ['Clamp small work; a drill that grabs turns it. Sleeves and hair clear.'],
};

export const handDrill: MachineFile = {
  kind: 'hand drill',
  holds: ['bit', 'guide or jig', 'depth collar'],
  limits: {},
  change: { tool: 1, fence: 1, height: 1, tilt: 2, jig: 2 },
  accuracy: { mm: 0.3 },
  cautions: ['Clamp small work; a drill that grabs turns it. Sleeves and hair clear.'],
};

export const slotMortiser: MachineFile = {
  kind: 'slot mortiser',
  holds: ['cutter', 'height of the table', 'stops', 'depth'],
  limits: {
    maxDepth: { asks: 'greatest plunge', usual: [60, 120] },
    shortest: { asks: 'shortest piece you clamp', usual: [100, 200] },
  },
  change: { tool: 3, fence: 2, height: 2, tilt: 2, jig: 3 },
  accuracy: { mm: 0.1 },
  cautions: ['Work clamped down before the cutter enters. Shallow strokes; chips out between them.'],
};

export const chiselMortiser: MachineFile = {
  kind: 'chisel mortiser',
  holds: ['chisel', 'fence', 'depth stop'],
  limits: {
    maxDepth: { asks: 'stroke', usual: [60, 130] },
    fence: { asks: 'furthest fence setting', usual: [60, 150] },
    shortest: { asks: 'shortest piece you clamp', usual: [100, 200] },
  },
  change: { tool: 5, fence: 2, height: 1, tilt: 0, jig: 3 },
  accuracy: { mm: 0.2 },
  cautions: ['Chuck key out. Clear the chips often; a packed chisel burns.'],
};
