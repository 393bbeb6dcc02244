import type { MachineKind } from '../workshop.ts';
import { bench, clamping, handTools } from './bench.ts';
import { chiselMortiser, drillPress, handDrill, slotMortiser } from './drills.ts';
import type { MachineFile } from './machine-file.ts';
import { planer, thicknesser } from './planing.ts';
import { handRouter, routerTable } from './routers.ts';
import { bandSaw, metalSaw, mitreSaw, tableSaw } from './saws.ts';
import { beltSander, discSander, lathe, polisher } from './shaping.ts';

export type { Limit } from './machine-file.ts';

const FILES: readonly MachineFile[] = [
  tableSaw,
  mitreSaw,
  bandSaw,
  planer,
  thicknesser,
  routerTable,
  handRouter,
  drillPress,
  handDrill,
  slotMortiser,
  chiselMortiser,
  lathe,
  discSander,
  beltSander,
  metalSaw,
  polisher,
  handTools,
  bench,
  clamping,
];

/** Every kind of machine with its file: a kind without one does not compile. */
export const MACHINE_FILES = Object.fromEntries(FILES.map(f => [f.kind, f])) as Record<
  MachineKind,
  MachineFile
>;
