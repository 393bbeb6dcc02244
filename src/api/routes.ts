import { z } from 'zod';
import * as shape from './shapes.ts';

export interface Route<
  P extends z.ZodType = z.ZodType,
  Q extends z.ZodType = z.ZodType,
  B extends z.ZodType = z.ZodType,
  A extends z.ZodType = z.ZodType,
> {
  method: 'GET' | 'POST' | 'PUT' | 'DELETE';
  /** With `:name` for what `params` holds. */
  path: string;
  summary: string;
  params: P;
  query: Q;
  body: B;
  answer: A;
  /** Set where the answer is a file and not JSON. */
  file: boolean;
}

type Nothing = z.ZodObject<Record<never, z.ZodType>>;
const nothing: Nothing = z.object({});

function route<
  A extends z.ZodType = Nothing,
  P extends z.ZodType = Nothing,
  Q extends z.ZodType = Nothing,
  B extends z.ZodType = Nothing,
>(given: {
  method: Route['method'];
  path: string;
  summary: string;
  params?: P;
  query?: Q;
  body?: B;
  answer?: A;
  file?: boolean;
}): Route<P, Q, B, A> {
  return {
    params: nothing as z.ZodType as P,
    query: nothing as z.ZodType as Q,
    body: nothing as z.ZodType as B,
    answer: nothing as z.ZodType as A,
    file: false,
    ...given,
  };
}

const ofJob = z.object({ id: shape.documentId });
const state = shape.documentState;

/** Every door of the server. The server binds a handler to each; the office calls them by these names. */
export const ROUTES = {
  about: route({
    method: 'GET',
    path: '/api/about',
    summary: 'What is running',
    answer: z.object({ program: z.string(), version: z.string(), engine: z.string(), folder: z.string() }),
  }),
  listJobs: route({
    method: 'GET',
    path: '/api/jobs',
    summary: 'Jobs, last saved first; every word of the search must be found',
    query: z.object({
      search: z.string().max(200).default(''),
      limit: z.coerce.number().int().min(1).max(500).default(100),
      offset: z.coerce.number().int().nonnegative().default(0),
    }),
    answer: shape.jobList,
  }),
  listTemplates: route({
    method: 'GET',
    path: '/api/templates',
    summary: 'What a new job can begin from',
    answer: z.object({ templates: z.array(z.object({ id: z.string(), title: z.string() })) }),
  }),
  createJob: route({
    method: 'POST',
    path: '/api/jobs',
    summary: 'A new job from a template, a job file or nothing but a title',
    body: shape.newJob,
    answer: shape.opened,
  }),
  importJob: route({
    method: 'POST',
    path: '/api/jobs/import',
    summary: 'Takes in a job file; what is wrong in it is listed, and it still opens',
    body: shape.importedJob,
    answer: shape.opened,
  }),
  getJob: route({
    method: 'GET',
    path: '/api/jobs/:id',
    summary: 'A job as it stands',
    params: ofJob,
    answer: state,
  }),
  editJob: route({
    method: 'POST',
    path: '/api/jobs/:id/edits',
    summary: 'One edit, on the disk when it answers; 409 with the newer job when made on an older version',
    params: ofJob,
    body: shape.editAct,
    answer: state,
  }),
  undoJob: route({
    method: 'POST',
    path: '/api/jobs/:id/undo',
    summary: 'Takes back the last edit',
    params: ofJob,
    body: shape.act,
    answer: state,
  }),
  redoJob: route({
    method: 'POST',
    path: '/api/jobs/:id/redo',
    summary: 'Makes the last edit that was taken back again',
    params: ofJob,
    body: shape.act,
    answer: state,
  }),
  listRevisions: route({
    method: 'GET',
    path: '/api/jobs/:id/revisions',
    summary: 'Frozen setting-outs, newest first',
    params: ofJob,
    answer: z.object({ revisions: z.array(shape.revisionLine) }),
  }),
  freezeRevision: route({
    method: 'POST',
    path: '/api/jobs/:id/revisions',
    summary: 'Freezes the setting-out as it stands under the next number',
    params: ofJob,
    body: shape.newRevision,
    answer: shape.revisionLine,
  }),
  getRevision: route({
    method: 'GET',
    path: '/api/jobs/:id/revisions/:number',
    summary: 'A frozen setting-out',
    params: ofJob.extend({ number: z.coerce.number().int().positive() }),
    answer: shape.revisionLine.extend({ document: shape.document }),
  }),
  changesSince: route({
    method: 'GET',
    path: '/api/jobs/:id/changes',
    summary: 'What has changed since a frozen setting-out (the last one when none is named)',
    params: ofJob,
    query: z.object({ since: z.coerce.number().int().positive().optional() }),
    answer: shape.changes,
  }),
  exportJob: route({
    method: 'GET',
    path: '/api/jobs/:id/file.yaml',
    summary: 'The job as a file',
    params: ofJob,
    file: true,
  }),
  paper: route({
    method: 'GET',
    path: '/api/jobs/:id/papers/:name',
    summary: 'A paper made from the job as it stands',
    params: ofJob.extend({ name: shape.paperName }),
    file: true,
  }),
  issuePaper: route({
    method: 'POST',
    path: '/api/jobs/:id/papers/:name/issue',
    summary: 'Makes a paper and keeps it for good as sent',
    params: ofJob.extend({ name: shape.paperName }),
    answer: shape.issuedLine,
  }),
  listIssued: route({
    method: 'GET',
    path: '/api/jobs/:id/issued',
    summary: 'Papers that were issued',
    params: ofJob,
    answer: z.object({ issued: z.array(shape.issuedLine) }),
  }),
  issuedPaper: route({
    method: 'GET',
    path: '/api/issued/:id',
    summary: 'An issued paper, byte for byte as sent',
    params: ofJob,
    file: true,
  }),
  listMeasurements: route({
    method: 'GET',
    path: '/api/jobs/:id/measurements',
    summary: 'What was measured, oldest first',
    params: ofJob,
    answer: z.object({ measurements: z.array(shape.measurement) }),
  }),
  addMeasurement: route({
    method: 'POST',
    path: '/api/jobs/:id/measurements',
    summary: 'One measurement',
    params: ofJob,
    body: shape.measurement,
  }),
  listTicks: route({
    method: 'GET',
    path: '/api/jobs/:id/ticks',
    summary: 'What was ticked and cleared, oldest first',
    params: ofJob,
    answer: z.object({ ticks: z.array(shape.tick) }),
  }),
  addTick: route({
    method: 'POST',
    path: '/api/jobs/:id/ticks',
    summary: 'One tick, or one cleared',
    params: ofJob,
    body: shape.tick,
  }),
  getWorkshop: route({
    method: 'GET',
    path: '/api/workshop',
    summary: 'The workshop as it stands',
    answer: state,
  }),
  putWorkshop: route({
    method: 'PUT',
    path: '/api/workshop',
    summary: 'Replaces the workshop whole; kept as one edit that can be undone',
    body: shape.act.extend({ document: shape.document }),
    answer: state,
  }),
  editWorkshop: route({
    method: 'POST',
    path: '/api/workshop/edits',
    summary: 'One edit of the workshop',
    body: shape.editAct,
    answer: state,
  }),
  undoWorkshop: route({
    method: 'POST',
    path: '/api/workshop/undo',
    summary: 'Takes back the last edit of the workshop',
    body: shape.act,
    answer: state,
  }),
  redoWorkshop: route({
    method: 'POST',
    path: '/api/workshop/redo',
    summary: 'Makes the last edit that was taken back again',
    body: shape.act,
    answer: state,
  }),
  exportWorkshop: route({
    method: 'GET',
    path: '/api/workshop/file.yaml',
    summary: 'The workshop as a file',
    file: true,
  }),
  listClients: route({
    method: 'GET',
    path: '/api/clients',
    summary: 'Clients by name',
    answer: z.object({ clients: z.array(shape.client) }),
  }),
  createClient: route({
    method: 'POST',
    path: '/api/clients',
    summary: 'A new client',
    body: shape.clientDetails,
    answer: shape.client,
  }),
  getClient: route({
    method: 'GET',
    path: '/api/clients/:id',
    summary: 'What is known of a client',
    params: ofJob,
    answer: shape.client,
  }),
  saveClient: route({
    method: 'PUT',
    path: '/api/clients/:id',
    summary: 'Replaces what is known of a client',
    params: ofJob,
    body: shape.clientDetails,
    answer: shape.client,
  }),
  eraseClient: route({
    method: 'DELETE',
    path: '/api/clients/:id',
    summary: 'Erases all that is known of a client; papers already issued stay as sent',
    params: ofJob,
    answer: shape.client,
  }),
  openapi: route({
    method: 'GET',
    path: '/api/openapi.json',
    summary: 'This description',
    answer: shape.document,
  }),
} satisfies Record<string, Route>;

export type Routes = typeof ROUTES;
export type RouteName = keyof Routes;
/** As the handler gets it, defaults filled in. */
export type Params<N extends RouteName> = z.output<Routes[N]['params']>;
export type Query<N extends RouteName> = z.output<Routes[N]['query']>;
export type Body<N extends RouteName> = z.output<Routes[N]['body']>;
export type Answer<N extends RouteName> = z.output<Routes[N]['answer']>;
/** As the caller gives it. */
export type GivenParams<N extends RouteName> = z.input<Routes[N]['params']>;
export type GivenQuery<N extends RouteName> = z.input<Routes[N]['query']>;
export type GivenBody<N extends RouteName> = z.input<Routes[N]['body']>;

/** Header that carries the token of this start on everything but reading. */
export const TOKEN_HEADER = 'x-scantling-token';
/** Name of the meta element in the served page that holds it. */
export const TOKEN_META = 'scantling-token';
/** Stream of `{ id, version }` as documents change, one JSON object per server-sent event. */
export const EVENTS_PATH = '/api/events';
