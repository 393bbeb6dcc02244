import type { MachineFile } from './machine-file.ts';

export const handTools: MachineFile = {
  kind: 'hand tools',
  holds: ['tool', 'gauge', 'marking knife', 'hold: vice, holdfast, bench hook'],
  limits: {},
  change: { tool: 1, fence: 1, height: 0, tilt: 0, jig: 1 },
  accuracy: { mm: 0.2 },
  cautions: ['Both hands behind the edge of the chisel; work held in vice or by clamps.'],
};

export const bench: MachineFile = {
  kind: 'bench',
  holds: ['tool', 'hold: vice, holdfast'],
  limits: {},
  change: { tool: 1, fence: 1, height: 0, tilt: 0, jig: 1 },
  accuracy: { mm: 0.3 },
  cautions: ['Both hands behind the edge; work held in vice or by clamps.'],
};

export const clamping: MachineFile = {
  kind: 'clamps',
  holds: ['number', 'opening', 'spacing', 'cauls', 'weights'],
  limits: {},
  change: { tool: 0, fence: 3, height: 0, tilt: 0, jig: 2 },
  accuracy: {},
  cautions: ['Fingers out before it closes. Heavy assemblies are lifted by two.'],
};
