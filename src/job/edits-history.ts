/**
 * Undo and redo over a log of edits that is only added to. An undo is itself an entry of the log: it applies
 * the inverse of the entry it takes back; a redo applies the inverse of the undo. The two stacks live in the
 * log as a chain: every entry remembers what lay under it on its stack, so each act costs the same however
 * long the log is.
 */
export type EntryKind = 'edit' | 'undo' | 'redo';

/** Numbers of the log entries on top of the stacks; null when there is nothing. */
export interface History {
  undo: number | null;
  redo: number | null;
}

export const NO_HISTORY: History = { undo: null, redo: null };

export interface Linked {
  history: History;
  /** Entry that lies under the new one on its stack; kept with the new entry. */
  under: number | null;
}

/** After a new edit: it can be undone, and what could be redone no longer can. */
export const afterEdit = (history: History, entry: number): Linked => ({
  history: { undo: entry, redo: null },
  under: history.undo,
});

/** After `entry` has undone the top of the undo stack, under which `underTop` lay. */
export const afterUndo = (history: History, entry: number, underTop: number | null): Linked => ({
  history: { undo: underTop, redo: entry },
  under: history.redo,
});

/** After `entry` has redone the top of the redo stack, under which `underTop` lay. */
export const afterRedo = (history: History, entry: number, underTop: number | null): Linked => ({
  history: { undo: entry, redo: underTop },
  under: history.undo,
});
