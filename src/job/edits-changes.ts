import type { EditOperation, Json, JsonObject } from './edits.ts';
import { isObject } from './edits.ts';
import { EDIT_LIMITS } from './edits-guard.ts';

/** One place where two documents differ; `old` is absent for what was added, `new` for what was taken away. */
export interface Change {
  path: string[];
  old?: Json;
  new?: Json;
}

/**
 * What changed from `before` to `after`, in the order of the documents. Objects are compared member by
 * member (as deep as an edit may reach); lists and single values are whole. The order of members is not a difference.
 */
export function diffDocuments(before: JsonObject, after: JsonObject): Change[] {
  const changes: Change[] = [];
  compare(before, after, [], changes);
  return changes;
}

function compare(before: JsonObject, after: JsonObject, path: string[], changes: Change[]): void {
  if (before === after) return;
  for (const [key, old] of Object.entries(before)) {
    const here = [...path, key];
    if (!Object.hasOwn(after, key)) changes.push({ path: here, old });
    else compareValue(old, after[key]!, here, changes);
  }
  for (const [key, value] of Object.entries(after))
    if (!Object.hasOwn(before, key)) changes.push({ path: [...path, key], new: value });
}

function compareValue(old: Json, value: Json, path: string[], changes: Change[]): void {
  const deeper = path.length < EDIT_LIMITS.pathSteps && isObject(old) && isObject(value);
  if (deeper) compare(old, value, path, changes);
  else if (!sameJson(old, value)) changes.push({ path, old, new: value });
}

/** Equal as values; members of objects in any order. */
export function sameJson(a: Json, b: Json): boolean {
  if (a === b) return true;
  if (Array.isArray(a) && Array.isArray(b))
    return a.length === b.length && a.every((one, index) => sameJson(one, b[index]));
  if (!isObject(a) || !isObject(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every(key => Object.hasOwn(b, key) && sameJson(a[key]!, b[key]!))
  );
}

/** Operations that turn `before` into `after` (up to the order of members). */
export const operationsBetween = (before: JsonObject, after: JsonObject): EditOperation[] =>
  diffDocuments(before, after).map(({ path, new: value }) =>
    value === undefined ? { path } : { path, value },
  );
