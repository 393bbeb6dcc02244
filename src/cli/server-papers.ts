import type { DerivedJob } from '../host/derive-work.ts';
import { createNodeDeriver } from '../host/node-deriver.ts';
import { createNodeExact } from '../host/node-exact.ts';
import type { JsonObject } from '../job/edits.ts';
import { partsCsv, shoppingCsv } from '../papers/exports.ts';
import { readPaperFonts } from '../papers/font-reader.ts';
import { labelPack } from '../papers/label-pages.ts';
import { jobPack } from '../papers/pack.ts';
import { stepFile } from '../papers/step.ts';
import { fault } from '../results/fault.ts';
import type { Paper } from '../server/parts.ts';

type Made = Awaited<ReturnType<Paper['make']>>;

/** Papers that the server can make of a job. `today` is asked for each paper. */
export function serverPapers(programVersion: string, today: () => string): readonly Paper[] {
  const deriver = createNodeDeriver();
  const exact = createNodeExact();
  /** Derives as the office does; a document the store holds may be half written, which a paper must not be. */
  const ready = async (
    job: JsonObject,
    workshop: JsonObject,
    make: (derived: DerivedJob) => Promise<Uint8Array> | Uint8Array,
  ): Promise<Made> => {
    const answer = await deriver.run('derive', { job, workshop, today: today() });
    return 'faults' in answer
      ? {
          faults: [
            ...answer.faults,
            fault('paper', 'there is nothing to print yet', 'mend the faults first'),
          ],
        }
      : { bytes: await make(answer) };
  };
  /** What stands at the head and foot of every page of a job. */
  const headOf = ({ document, workshop, derived }: DerivedJob, settingOut: number) => ({
    title: derived.title,
    number: String(document.number ?? ''),
    settingOut,
    date: today(),
    programVersion,
    currency: workshop.currency,
    unit: document.units ?? ('mm' as const),
  });
  return [
    {
      name: 'pack.pdf',
      kind: 'pack',
      title: 'Job pack',
      mediaType: 'application/pdf',
      make: (job, workshop, settingOut) =>
        ready(job, workshop, async made =>
          jobPack(made.derived, headOf(made, settingOut), await readPaperFonts()),
        ),
    },
    {
      name: 'labels.pdf',
      kind: 'labels',
      title: 'Labels',
      mediaType: 'application/pdf',
      make: (job, workshop, settingOut) =>
        ready(job, workshop, async made =>
          labelPack(made.derived, headOf(made, settingOut), await readPaperFonts()),
        ),
    },
    {
      name: 'parts.csv',
      kind: 'parts',
      title: 'Parts list',
      mediaType: 'text/csv; charset=utf-8',
      make: (job, workshop) => ready(job, workshop, ({ derived }) => partsCsv(derived)),
    },
    {
      name: 'shopping.csv',
      kind: 'shopping',
      title: 'Shopping list',
      mediaType: 'text/csv; charset=utf-8',
      make: (job, workshop) =>
        ready(job, workshop, ({ derived, workshop: shop }) => shoppingCsv(derived, shop.currency)),
    },
    {
      name: 'piece.step',
      kind: 'step',
      title: 'Solids of the piece',
      mediaType: 'model/step',
      make: (job, workshop) =>
        ready(job, workshop, async ({ derived }) =>
          stepFile(
            (await exact.run('step', { title: derived.title, instances: derived.piece.instances })).bytes,
            {
              title: derived.title,
              date: today(),
              programVersion,
            },
          ),
        ),
    },
  ];
}
