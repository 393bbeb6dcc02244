import type { DocumentStateAnswer } from '../api/caller.ts';
import type { Answer, Body, Params, Query, RouteName } from '../api/routes.ts';
import type { Fault } from '../results/fault.ts';
import { fault } from '../results/fault.ts';
import type { DocumentState, Saved } from '../store/documents.ts';

export interface FileAnswer {
  bytes: Uint8Array | string;
  mediaType: string;
  name: string;
}

export interface Refused {
  status: 400 | 404 | 409 | 422 | 501;
  faults: Fault[];
  state?: DocumentStateAnswer;
}

export type Reply<T> = { status: 200 | 201; body: T } | { status: 200; file: FileAnswer } | Refused;

export interface Asked<N extends RouteName> {
  params: Params<N>;
  query: Query<N>;
  body: Body<N>;
}

export type Handler<N extends RouteName> = (asked: Asked<N>) => Promise<Reply<Answer<N>>>;
export type Handlers<N extends RouteName = RouteName> = { [K in N]: Handler<K> };

export const ok = <T>(body: T): { status: 200; body: T } => ({ status: 200, body });
export const created = <T>(body: T): { status: 201; body: T } => ({ status: 201, body });
export const fileOf = (file: FileAnswer): { status: 200; file: FileAnswer } => ({ status: 200, file });
export const faulty = (faults: Fault[]): Refused => ({ status: 422, faults });

export const unknown = (what: string, id: string | number): Refused => ({
  status: 404,
  faults: [fault(what, `there is no ${what} ${id}`, 'look in the list; it may have another name')],
});

export const stateAnswer = ({ kind: _kind, ...state }: DocumentState): DocumentStateAnswer => state;

const STALE = fault(
  'edit',
  'the setting-out has changed in another window since you opened it here',
  'look at it as it now stands, then make the change again',
);

/** What the store said to an edit, undo or redo, as an answer. */
export function savedReply(saved: Saved, what: string, id: string): Reply<DocumentStateAnswer> {
  if (saved.ok) return ok(stateAnswer(saved.state));
  if (saved.why === 'stale') return { status: 409, faults: [STALE], state: stateAnswer(saved.state) };
  if (saved.why === 'faults') return faulty(saved.faults);
  if (saved.why === 'missing') return unknown(what, id);
  return faulty([fault('edit', 'there is nothing to take back', 'make an edit first')]);
}
