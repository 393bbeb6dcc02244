/** The joint table: every joint at three sizes, on the solids of the mesh kernel. `npm run measure -- joints` */
import { loadMeshKernel } from '../src/host/mesh-kernel-node.ts';
import { JOINTS } from '../src/joints/index.ts';
import { found, SIZES, TOO_BIG, tryJoint } from '../tests/joints/table.ts';

const list = (numbers: readonly number[]): string =>
  numbers.map(n => String(Math.round(n * 100) / 100)).join(', ');

export async function run(): Promise<void> {
  const kernel = await loadMeshKernel();
  console.log(
    `| joint | thinner part, mm | overlap, mm3 | gaps found, mm | gaps stated, mm | ${TOO_BIG} mm too big: overlap told, mm3 | reckoned, mm3 |\n|---|---|---|---|---|---|---|`,
  );
  let tried = 0;
  let worst = 0;
  for (const { type } of JOINTS)
    for (const t of SIZES) {
      const r = tryJoint(kernel, type, t);
      const { told, expected } = r.spoiled;
      tried += 1;
      worst = Math.max(worst, Math.abs(told / expected - 1));
      console.log(
        `| ${type} | ${t} | ${list([r.overlap])} | ${list(found(r.gaps)) || 'none square'} | ${list(r.stated) || 'none square'} | ${told.toFixed(1)} | ${expected.toFixed(1)} |`,
      );
    }
  console.log(
    `\n${JOINTS.length} joints, ${tried} trials. Largest difference of overlap told and reckoned: ${(100 * worst).toFixed(2)} %.`,
  );
}
