import type { LongerLook } from '../cutting/longer-look.ts';
import { applyEdit, type EditOperation, type JsonObject } from '../job/edits.ts';
import { operationsBetween } from '../job/edits-changes.ts';
import { type Overruled, overruled } from '../job/overruled.ts';
import { overlapChecks } from '../proof/overlap-check.ts';
import { wayInChecks } from '../proof/way-in-check.ts';
import type { Check } from '../results/checks.ts';
import type { Derived } from '../results/derived.ts';
import type { Fault } from '../results/fault.ts';
import type { Triangles } from '../results/kernel.ts';
import { say } from '../results/message.ts';
import { text } from '../results/quantity.ts';
import type { Why } from '../results/why.ts';
import {
  type Deriver,
  type JobState,
  type KeptLine,
  type KeptSettingOut,
  type OfficeApi,
  Refusal,
  type Shaper,
} from './ports.ts';

export type Saving = 'saved' | 'saving' | 'not saved';

/** Everything a job's pages read. A new object whenever something changes. */
export interface JobView {
  state: JobState | undefined;
  /** The document with edits that are not saved yet and what is being typed. */
  document: JsonObject | undefined;
  derived: Derived | undefined;
  /** Surfaces of the parts by what they are made from, as far as the solids are done. */
  surfaces: ReadonlyMap<string, Triangles>;
  /** True while results are older than what is on the screen. */
  behind: boolean;
  /** What the derivation says against the size that is being typed. */
  typedFaults: readonly Fault[];
  before: { kept: KeptSettingOut; derived: Derived | undefined } | undefined;
  saving: Saving;
  /** What could not be done, and how to mend it. */
  trouble: string | undefined;
}

const EMPTY: JobView = {
  state: undefined,
  document: undefined,
  derived: undefined,
  surfaces: new Map(),
  behind: true,
  typedFaults: [],
  before: undefined,
  saving: 'saved',
  trouble: undefined,
};

interface Tools {
  api: OfficeApi;
  deriver: Deriver;
  shaper: Shaper;
  today: () => string;
  /** Milliseconds. */
  retryAfter?: number;
}

/** Milliseconds until the store is tried again, and how often an edit goes on from a newer version. */
const RETRY_AFTER = 3000;
const MOST_STALE = 3;

/** What the maker has set aside holds for what the solids say too. */
const withProof = (derived: Derived, proof: Check[], document: JsonObject | undefined): Derived => ({
  ...derived,
  checks: [...derived.checks, ...overruled(proof, (document?.overruled ?? {}) as Overruled)],
});

/** Solids could not be made: not known, which never counts as pass. */
const notShaped = (words: string): Check => ({
  check: 'overlap',
  subject: 'piece',
  severity: 'unknown',
  title: 'Overlap of parts',
  figure: null,
  limit: 0,
  unit: 'volume',
  source: 'solids cut by the joints and features of the setting-out',
  basis: 'computed',
  remedy: 'Load the page again; what was saved is there.',
  say: say('The solids could not be made: {why}.', { why: text(words) }),
});

/** Faults at the parameters that are being typed. */
const faultsOfTyped = (derived: Derived, typed: readonly EditOperation[]): Fault[] =>
  typed
    .filter(({ path }) => path[0] === 'parameters')
    .flatMap(({ path }) => derived.faults.filter(f => isAt(f.place, `parameters.${path[1]}`)));

/** A fault's place is the path or lies below it. */
export const isAt = (place: string, path: string): boolean => place === path || place.startsWith(`${path}.`);

const wordsOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/**
 * One open job: the saved document, edits on their way, what is being typed, and results that follow.
 * Edits are applied here at once and saved one after another; a save that fails stays on the screen.
 */
export class JobSession {
  private view: JobView = EMPTY;
  private readonly listeners = new Set<() => void>();
  private readonly id: string;
  private readonly tools: Tools;
  private workshop: JsonObject | undefined;
  private waiting: (readonly EditOperation[])[] = [];
  private typed: readonly EditOperation[] = [];
  private queue: Promise<void> = Promise.resolve();
  private turn = 0;
  private retry: ReturnType<typeof setTimeout> | undefined;
  private unwatch: (() => void) | undefined;

  constructor(id: string, tools: Tools) {
    this.id = id;
    this.tools = tools;
  }

  subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  };

  snapshot = (): JobView => this.view;

  private set(change: Partial<JobView>): void {
    this.view = { ...this.view, ...change };
    for (const listener of this.listeners) listener();
  }

  async open(): Promise<void> {
    try {
      const [state, workshop] = await Promise.all([this.tools.api.job(this.id), this.tools.api.workshop()]);
      this.workshop = workshop;
      this.take(state);
      this.unwatch = this.tools.api.watch((id, version) => this.changedElsewhere(id, version));
      await this.readBefore();
    } catch (error) {
      this.set({ trouble: wordsOf(error) });
    }
  }

  /** Another window saved: go on from there, unless a save of our own is on its way. */
  private changedElsewhere(id: string, version: number): void {
    const { state, saving } = this.view;
    if (id === this.id && state && version > state.version && saving !== 'saving') void this.reread();
  }

  /** Shows what would follow from these operations without saving them. */
  preview(operations: readonly EditOperation[]): void {
    this.typed = operations;
    this.refresh();
  }

  settle(): void {
    if (this.typed.length > 0) this.preview([]);
  }

  /** Keeps what was typed: on the screen at once, then in the store, one edit after another. */
  commit(operations: readonly EditOperation[]): Promise<void> {
    this.typed = [];
    this.waiting.push(operations);
    this.refresh();
    this.set({ saving: 'saving' });
    return this.inTurn(() => this.flush());
  }

  /** One edit of the workshop, after what of the job is still on its way; results follow. */
  changeWorkshop(make: (workshop: JsonObject) => readonly EditOperation[]): Promise<void> {
    return this.inTurn(async () => {
      try {
        this.workshop = await this.tools.api.editWorkshop(make);
        if (this.view.document) await this.derive(this.view.document);
      } catch (error) {
        this.set({ trouble: wordsOf(error) });
      }
    });
  }

  undo = (): Promise<void> => this.act(base => this.tools.api.undo(this.id, base));
  redo = (): Promise<void> => this.act(base => this.tools.api.redo(this.id, base));

  keep = (name: string): Promise<void> =>
    this.act(async () => {
      const state = await this.tools.api.keep(this.id, name);
      queueMicrotask(() => void this.readBefore());
      return state;
    });

  /** Makes the job as it was in a kept setting-out; one edit, so that it can be undone. */
  goBackTo = async (number: number): Promise<void> => {
    try {
      const kept = await this.tools.api.kept(this.id, number);
      const operations = operationsBetween(this.view.document ?? {}, kept.document);
      if (operations.length > 0) await this.commit(operations);
    } catch (error) {
      this.set({ trouble: wordsOf(error) });
    }
  };

  keptList = (): Promise<readonly KeptLine[]> => this.tools.api.keptList(this.id);

  /** A longer search over the layouts of the document. */
  async longer(document: JsonObject, signal: AbortSignal): Promise<LongerLook | undefined> {
    if (!this.workshop) return undefined;
    return this.tools.deriver.longer(document, this.workshop, this.tools.today(), signal);
  }

  why = (figure: string): Promise<Why | undefined> => this.tools.deriver.why(figure);

  /** Edits that are on the screen and not yet in the store. */
  get unsaved(): boolean {
    return this.waiting.length > 0;
  }

  private inTurn(work: () => Promise<void>): Promise<void> {
    this.queue = this.queue.then(work);
    return this.queue;
  }

  private act(work: (base: number) => Promise<JobState>): Promise<void> {
    this.set({ saving: 'saving' });
    return this.inTurn(async () => {
      await this.flush();
      if (this.waiting.length > 0) return;
      try {
        this.take(await work(this.view.state?.version ?? 0));
        this.set({ saving: 'saved', trouble: undefined });
      } catch (error) {
        this.set({ saving: 'not saved', trouble: wordsOf(error) });
        await this.reread();
      }
    });
  }

  /** Saves what waits. Nothing entered is lost: while the store is away it waits on and is tried again. */
  private async flush(): Promise<void> {
    let refused: string | undefined;
    for (let stale = 0; this.waiting.length > 0; ) {
      try {
        const state = await this.tools.api.edit(this.id, this.view.state?.version ?? 0, this.waiting[0]!);
        this.waiting.shift();
        this.take(state);
      } catch (error) {
        const refusal = error instanceof Refusal ? error : undefined;
        if (refusal?.why === 'stale' && refusal.state && stale++ < MOST_STALE) {
          this.take(refusal.state);
          continue;
        }
        this.set({ saving: 'not saved', trouble: wordsOf(error) });
        if (refusal?.why === 'away') {
          this.tryAgainSoon();
          return;
        }
        // Only what the store refuses is given up; what waits behind it is still saved.
        this.waiting.shift();
        refused = wordsOf(error);
        await this.reread();
      }
    }
    this.set(
      refused === undefined
        ? { saving: 'saved', trouble: undefined }
        : { saving: 'not saved', trouble: refused },
    );
  }

  private tryAgainSoon(): void {
    clearTimeout(this.retry);
    this.retry = setTimeout(() => void this.inTurn(() => this.flush()), this.tools.retryAfter ?? RETRY_AFTER);
  }

  /** After a refused save the store is right: read it again, so that the screen shows what is kept. */
  private async reread(): Promise<void> {
    try {
      this.take(await this.tools.api.job(this.id));
    } catch {
      // The server is away; what was shown stays, and the trouble already says so.
    }
  }

  private take(state: JobState): void {
    if (state.version < (this.view.state?.version ?? 0)) return;
    this.set({ state });
    this.refresh();
  }

  private refresh(): void {
    const { state } = this.view;
    if (!state) return;
    let document = state.document;
    for (const operations of [...this.waiting, this.typed]) {
      const applied = applyEdit(document, { operations });
      if (applied.ok) document = applied.document;
    }
    if (document === this.view.document) return;
    this.set({ document, behind: true });
    void this.derive(document);
  }

  private async derive(document: JsonObject): Promise<void> {
    if (!this.workshop) return;
    const turn = ++this.turn;
    try {
      const derived = await this.tools.deriver.derive(document, this.workshop, this.tools.today());
      if (!derived || turn !== this.turn) return;
      const typedFaults = faultsOfTyped(derived, this.typed);
      this.set({ typedFaults });
      // A size that cannot be read yet does not take the piece apart: the last results stay until it can.
      if (typedFaults.length > 0) {
        this.set({ behind: false });
        return;
      }
      this.set({
        derived: withProof(derived, overlapChecks(undefined, []), this.view.document),
        behind: false,
      });
      void this.shape(derived, turn);
    } catch (error) {
      if (turn === this.turn) this.set({ behind: false, trouble: wordsOf(error) });
    }
  }

  /** The second tier: solids follow the figures and fill in. */
  private async shape(derived: Derived, turn: number): Promise<void> {
    try {
      const found = await this.tools.shaper.shapes(derived.piece);
      if (!found || turn !== this.turn) return;
      const proof = (ways: Check[]) => withProof(derived, [...found.checks, ...ways], this.view.document);
      this.set({ surfaces: found.surfaces, derived: proof(wayInChecks(undefined)) });
      const ways = await this.tools.shaper.ways(derived.piece);
      if (ways && turn === this.turn) this.set({ derived: proof(ways) });
    } catch (error) {
      if (turn === this.turn)
        this.set({ derived: withProof(derived, [notShaped(wordsOf(error))], this.view.document) });
    }
  }

  private async readBefore(): Promise<void> {
    try {
      const [last] = await this.tools.api.keptList(this.id);
      if (!last || !this.workshop) {
        this.set({ before: undefined });
        return;
      }
      const kept = await this.tools.api.kept(this.id, last.number);
      this.set({ before: { kept, derived: undefined } });
      const derived = await this.tools.deriver.compare(kept.document, this.workshop, this.tools.today());
      this.set({ before: { kept, derived } });
    } catch (error) {
      this.set({ trouble: wordsOf(error) });
    }
  }

  close(): void {
    clearTimeout(this.retry);
    this.unwatch?.();
    this.listeners.clear();
    this.tools.deriver.close();
    this.tools.shaper.close();
  }
}
