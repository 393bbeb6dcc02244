import { type LongerLook, lookLonger } from '../cutting/longer-look.ts';
import { type Deriving, deriveJob } from '../job/derive.ts';
import type { JsonObject } from '../job/edits.ts';
import { checkJobDocument, checkWorkshopDocument } from '../job-file/read.ts';
import type { Derived } from '../results/derived.ts';
import type { Why } from '../results/why.ts';
import type { CuttingDocument } from '../setting-out/cutting-schema.ts';
import type { Workshop } from '../workshop/workshop.ts';

export interface DeriveInput {
  document: JsonObject;
  workshop: JsonObject;
  /** ISO date. */
  today: string;
}

/** Tasks of the deriving thread. It keeps the last derivation, so that why can be asked of it. */
export function deriveTasks() {
  let last: Deriving | undefined;
  return {
    derive: (input: DeriveInput): Derived => {
      last = derivedFrom(input);
      return last.derived;
    },
    compare: (input: DeriveInput): Derived => derivedFrom(input).derived,
    longer: (input: DeriveInput): LongerLook => {
      const { derived, wishes, shop } = derivedFrom(input);
      return lookLonger(derived, shop, wishes);
    },
    why: (figure: string): Why | undefined => last?.why(figure),
  };
}

interface Made extends Deriving {
  wishes: CuttingDocument | undefined;
  shop: Workshop;
}

export type DeriveTasks = ReturnType<typeof deriveTasks>;

/** A document with faults still gives what is right in it; its faults stand first among the results'. */
function derivedFrom({ document, workshop, today }: DeriveInput): Made {
  const job = checkJobDocument(document);
  const shop = checkWorkshopDocument(workshop);
  const faults = [...job.faults, ...shop.faults.map(f => ({ ...f, place: `workshop.${f.place}` }))];
  if (!job.document || !shop.workshop) {
    const [first] = faults;
    throw new Error(
      first ? `${first.place}: ${first.fault}; ${first.mend}` : 'nothing can be made of this job',
    );
  }
  const made = deriveJob(job.document, shop.workshop, { today });
  const derived = { ...made.derived, faults: [...faults, ...made.derived.faults] };
  return { ...made, derived, wishes: job.document.cutting, shop: shop.workshop };
}
