import { z } from 'zod';
import type { Json, JsonObject } from '../job/edits.ts';

/** What goes over HTTP, in the words of the store and the job file. JSON throughout; instants are ISO 8601. */

export const documentId = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9_-]{0,63}$/)
  .describe('Letters, figures, - and _, at most 64');

const instant = z.iso.datetime();
const words = z.string().max(4000);
const short = z.string().max(200);

/** A setting-out or workshop as it is written in its file, as data. */
export const document = z.record(z.string(), z.json()) as z.ZodType<JsonObject, JsonObject>;
const json = z.json() as z.ZodType<Json, Json>;

export const faultShape = z.object({
  place: z.string(),
  line: z.number().int().optional(),
  column: z.number().int().optional(),
  fault: z.string(),
  expected: z.string().optional(),
  mend: z.string(),
});

const operation = z.strictObject({
  path: z.array(z.string().max(200)).max(12).describe('Names of members by id, never a position in a list'),
  value: json.optional().describe('Without it the member is taken away'),
  before: z.string().nullable().optional().describe('Neighbour it goes before; null for last'),
});

const acting = {
  id: documentId.describe('Made by the sender; an edit sent twice is applied once'),
  actor: short.default('maker'),
  device: short.default('desk'),
  at: instant,
  base: z.number().int().nonnegative().describe('Version of the document the maker was looking at'),
};

export const act = z.strictObject(acting);
export const editAct = z.strictObject({ ...acting, operations: z.array(operation).min(1).max(5000) });

export const documentState = z.object({
  id: z.string(),
  document,
  version: z.number().int(),
  canUndo: z.boolean(),
  canRedo: z.boolean(),
  settingOut: z.number().int().describe('Number of the setting-out in work: one after the last frozen one'),
  createdAt: z.string(),
  savedAt: z.string(),
});

export const refusal = z.object({
  faults: z.array(faultShape),
  state: documentState.optional().describe('With 409: the newer document to go on from'),
});

export const jobList = z.object({
  jobs: z.array(
    z.object({
      id: z.string(),
      title: z.string(),
      number: z.string(),
      client: z.object({ id: z.string(), name: z.string() }).nullable(),
      deadline: z.string().nullable(),
      settingOut: z.number().int(),
      savedAt: z.string(),
    }),
  ),
  total: z.number().int(),
});

export const newJob = z
  .strictObject({
    template: documentId.optional().describe('Id of a template to begin from'),
    text: z.string().max(1_000_000).optional().describe('A job file'),
    title: short.optional(),
  })
  .refine(
    body => body.template === undefined || body.text === undefined,
    'Give a template or a text, not both',
  );

export const importedJob = z.strictObject({ text: z.string().max(1_000_000).describe('A job file') });

export const opened = z.object({ state: documentState, faults: z.array(faultShape) });

export const revisionLine = z.object({
  number: z.number().int(),
  name: z.string(),
  note: z.string(),
  at: z.string(),
  version: z.number().int(),
});

export const newRevision = z.strictObject({ name: short.min(1), note: words.default('') });

export const changes = z.object({
  since: revisionLine,
  changes: z.array(z.object({ path: z.array(z.string()), old: json.optional(), new: json.optional() })),
});

export const clientDetails = z.strictObject({
  name: short.min(1),
  address: words.default(''),
  email: short.default(''),
  phone: short.default(''),
  notes: words.default(''),
});

export const client = z.object({
  id: z.string(),
  name: z.string(),
  address: z.string(),
  email: z.string(),
  phone: z.string(),
  notes: z.string(),
  savedAt: z.string(),
  erasedAt: z.string().nullable(),
});

const said = { id: documentId, actor: short.default('maker'), device: short.default('desk'), at: instant };

export const measurement = z.strictObject({
  ...said,
  subject: short.min(1).describe('Part, copy, batch or joint'),
  figure: short.min(1),
  value: z.number(),
  unit: z.string().max(20),
});

export const tick = z.strictObject({
  ...said,
  subject: short.min(1).describe('Run of a set-up, operation or step'),
  done: z.boolean(),
  madeFrom: z.string().max(128).describe('Hash of the plan it was ticked on'),
});

export const issuedLine = z.object({
  id: z.string(),
  revision: z.number().int().nullable(),
  kind: z.string(),
  title: z.string(),
  mediaType: z.string(),
  hash: z.string(),
  programVersion: z.string(),
  tablesHash: z.string(),
  issuedAt: z.string(),
  keepUntil: z.string().nullable(),
});

export const paperName = z
  .string()
  .regex(/^[a-z0-9-]{1,60}\.[a-z0-9]{1,8}$/)
  .describe('e.g. pack.pdf');
