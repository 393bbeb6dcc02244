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

test.each(PIECES.map(p => p.id))('%s: no two parts share room', async id => {
  const { derived } = deriveJob(readPiece(id).document, workshop!, { today: '2026-11-25' });
  const proved = prove(derived, await loadMeshKernel());
  expect(proved.complete).toBe(true);
  expect(proved.overlaps).toEqual([]);
});
