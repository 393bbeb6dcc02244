import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { deriveJob } from '../../src/job/derive.ts';
import { readWorkshopFile } from '../../src/job-file/read.ts';
import { prove } from '../../src/proof/prove.ts';
import { readPiece } from './piece.ts';
import { PIECES } from './pieces.ts';

const { workshop } = readWorkshopFile(
  readFileSync(new URL('../../examples/workshop.yaml', import.meta.url), 'utf8'),
);

test.each(PIECES.map(p => [p.id, p.conflicts] as const))(
  '%s: no two parts share room, and printed numbers that disagree are told',
  async (id, conflicts) => {
    const { derived } = deriveJob(readPiece(id).document, workshop!, { today: '2026-11-25' });
    const proved = prove(derived, await loadMeshKernel());
    expect(proved.complete).toBe(true);
    expect(proved.overlaps).toEqual([]);
    // Printed numbers that disagree are told by the check with the arithmetic, and no others are.
    const apart = derived.checks.filter(c => c.check === 'agreement' && c.severity !== 'pass');
    expect(apart.map(c => c.subject).sort()).toEqual([...(conflicts ?? [])].sort());
  },
);
