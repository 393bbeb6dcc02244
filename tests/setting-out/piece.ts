import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { checkJobDocument } from '../../src/job-file/read.ts';
import { JOINT_CATALOGUE } from '../../src/joints/index.ts';
import { prove } from '../../src/proof/prove.ts';
import type { Instance } from '../../src/results/piece.ts';
import { setOut } from '../../src/setting-out/set-out.ts';

const NONE = { length: 0, width: 0, thickness: 0 };

export const timber = (over: object) => ({ kind: 'timber', material: 'oak-european', ...over });

/** Sets out a job given as plain data; faults of the reader and of the setting-out together. */
export function pieceOf(job: object) {
  const { document, faults } = checkJobDocument({ scantling: 'job/1', title: 'Trial', ...job });
  const made = setOut(document!, JOINT_CATALOGUE, {
    allowances: { timber: NONE, sheet: NONE, bar: NONE, tube: NONE },
    density: () => 700,
  });
  const all = [...faults, ...made.faults];
  return {
    ...made,
    faults: all,
    said: all.map(f => `${f.place}: ${f.fault}`),
    instance: (id: string): Instance => made.piece.instances.find(i => i.id === id)!,
  };
}

/** Overlaps and volumes of the solids, by the mesh kernel. */
export const proofOf = async (made: ReturnType<typeof pieceOf>) => prove(made, await loadMeshKernel());
