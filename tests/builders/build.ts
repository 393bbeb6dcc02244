import { expect } from 'vitest';
import { expandBuilders } from '../../src/builders/expand.ts';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { checkJobDocument } from '../../src/job-file/read.ts';
import { JOINT_CATALOGUE } from '../../src/joints/index.ts';
import { prove } from '../../src/proof/prove.ts';
import { setOut } from '../../src/setting-out/set-out.ts';

const NONE = { length: 0, width: 0, thickness: 0 };

/** Sets out a job with what its builders make; faults are told at the builder. */
export function build(job: object) {
  const { document, faults } = checkJobDocument({ scantling: 'job/1', title: 'Trial', ...job });
  expect(faults).toEqual([]);
  const whole = expandBuilders(document!);
  const made = setOut(whole.document, JOINT_CATALOGUE, {
    allowances: { timber: NONE, sheet: NONE, bar: NONE, tube: NONE },
    density: () => 700,
  });
  return {
    ...made,
    said: [...whole.faults, ...made.faults].map(f => `${whole.placeOf(f.place)}: ${f.fault}`),
    size: (id: string) => made.piece.instances.find(i => i.id === id)!.size,
  };
}

/** Pairs of parts that share room, by the mesh kernel. */
export const overlaps = async (made: ReturnType<typeof build>) =>
  (await prove(made, await loadMeshKernel())).overlaps.map(o => [o.a, o.b]);
