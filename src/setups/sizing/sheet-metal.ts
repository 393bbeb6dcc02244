import { MACHINE_FILES } from '../../workshop/machines/index.ts';
import { say1 } from '../figures.ts';
import { made, refuse } from '../method.ts';
import { handBench } from '../methods/hand-bench.ts';
import type { SizingMethod } from './sized.ts';
import { lay, sizingDraft } from './sizing-draft.ts';

/** Thinnest that is sawn rather than sheared by hand, mm (common practice). */
const SHEARED = 1.2;

/** Scribed from a filed edge, sheared or sawn outside the line, filed to it: width first, then length. */
export const sheetMetalByHand: SizingMethod = {
  name: 'shears or piercing saw, and file',
  brings: ['sheet metal'],
  attempt(sized) {
    const { instance, workshop } = sized;
    const machine = handBench(workshop);
    if (!machine) return refuse('no hand tools are in the workshop file');
    const { size } = instance;
    const tool = size.thickness <= SHEARED ? 'scriber, shears, file' : 'scriber, piercing saw, file';
    const shared = {
      method: 'cut outside a scribed line and filed to it',
      machine,
      tool,
      toolId: tool,
      kerf: 0.5,
      reads: 'gauge' as const,
      rule: 'kerf' as const,
      view: 'hand' as const,
      kerfSide: 'outside the line',
      before: ['Film stays on the show face; it is scribed through'],
      after: ['Burrs off; edges are sharp until they are filed'],
      cautions: [
        'Gloves for sheet edges, never at a turning tool. Eye protection.',
        ...MACHINE_FILES['hand tools'].cautions,
      ],
      passes: 2,
    };
    return made(
      sizingDraft({
        ...shared,
        what: 'Sheet metal to width',
        size: size.width,
        how: `${say1(size.width)} finished`,
        lays: [lay('from the filed edge', 'back', 'faceEdge', 'backEdge', 'end1')],
        seen: 'from the end, filed edge on the right',
        work: { width: size.width + 5, height: Math.max(4, size.thickness) },
      }),
      sizingDraft({
        ...shared,
        what: 'Sheet metal to length',
        size: size.length,
        how: `${say1(size.length)} finished`,
        lays: [lay('from the filed end', 'back', 'end1', 'end2', 'backEdge')],
        seen: 'from the side, filed end on the right',
        work: { width: size.length + 5, height: Math.max(4, size.thickness) },
      }),
    );
  },
};
