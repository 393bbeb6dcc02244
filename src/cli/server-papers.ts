import { deriveJob } from '../job/derive.ts';
import type { JsonObject } from '../job/edits.ts';
import { checkJobDocument, checkWorkshopDocument } from '../job-file/read.ts';
import { partsCsv, shoppingCsv } from '../papers/exports.ts';
import { readPaperFonts } from '../papers/font-reader.ts';
import { jobPack } from '../papers/pack.ts';
import type { Derived } from '../results/derived.ts';
import { fault } from '../results/fault.ts';
import type { Paper } from '../server/parts.ts';
import type { JobDocument } from '../setting-out/schema.ts';
import type { Workshop } from '../workshop/workshop.ts';

interface Ready {
  document: JobDocument;
  workshop: Workshop;
  derived: Derived;
}

type Made = Awaited<ReturnType<Paper['make']>>;

/** Derives as the office does; a document the store holds may be half written, which a paper must not be. */
async function ready(
  job: JsonObject,
  workshop: JsonObject,
  today: string,
  make: (r: Ready) => Promise<Uint8Array> | Uint8Array,
): Promise<Made> {
  const read = checkJobDocument(job);
  const shop = checkWorkshopDocument(workshop);
  if (!read.document || !shop.workshop)
    return {
      faults: [
        ...read.faults,
        ...shop.faults,
        fault('paper', 'there is nothing to print yet', 'mend the faults first'),
      ],
    };
  const { derived } = deriveJob(read.document, shop.workshop, { today });
  return { bytes: await make({ document: read.document, workshop: shop.workshop, derived }) };
}

/** Papers that the server can make of a job. `today` is asked for each paper. */
export function serverPapers(programVersion: string, today: () => string): readonly Paper[] {
  return [
    {
      name: 'pack.pdf',
      kind: 'pack',
      title: 'Job pack',
      mediaType: 'application/pdf',
      make: (job, workshop) =>
        ready(job, workshop, today(), async ({ document, workshop: shop, derived }) =>
          jobPack(
            derived,
            {
              title: derived.title,
              number: String(document.number ?? ''),
              settingOut: 1,
              date: today(),
              programVersion,
              currency: shop.currency,
              unit: document.units ?? 'mm',
            },
            await readPaperFonts(),
          ),
        ),
    },
    {
      name: 'parts.csv',
      kind: 'parts',
      title: 'Parts list',
      mediaType: 'text/csv; charset=utf-8',
      make: (job, workshop) => ready(job, workshop, today(), ({ derived }) => partsCsv(derived)),
    },
    {
      name: 'shopping.csv',
      kind: 'shopping',
      title: 'Shopping list',
      mediaType: 'text/csv; charset=utf-8',
      make: (job, workshop) =>
        ready(job, workshop, today(), ({ derived, workshop: shop }) => shoppingCsv(derived, shop.currency)),
    },
  ];
}
