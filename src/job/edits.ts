import type { Fault } from '../results/fault.ts';
import { fault } from '../results/fault.ts';
import { operationFaults, printPath } from './edits-guard.ts';

export type Json = null | boolean | number | string | readonly Json[] | JsonObject;
export interface JsonObject {
  readonly [key: string]: Json;
}

/**
 * One change at an address. A path names members by id, never by position in a list; lists are whole values.
 * Without `value` the member is taken away. `before` places it among its neighbours: before the named one,
 * or last when null; without it a new member goes last and an old one stays where it is.
 */
export interface EditOperation {
  path: readonly string[];
  value?: Json | undefined;
  before?: string | null | undefined;
}

/** What the maker did at once: all of its operations hold or none. */
export interface Edit {
  id: string;
  actor: string;
  device: string;
  /** ISO 8601 instant. */
  at: string;
  operations: readonly EditOperation[];
}

export type Applied =
  | { ok: true; document: JsonObject; inverse: EditOperation[] }
  | { ok: false; faults: Fault[] };

type Step =
  | { ok: true; object: JsonObject; inverse: EditOperation | undefined }
  | { ok: false; fault: Fault };

export const isObject = (value: Json | undefined): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const own = (object: JsonObject, key: string): Json | undefined =>
  Object.hasOwn(object, key) ? object[key] : undefined;

/**
 * Applies the edit to the document and gives the operations that take it back. What the edit does not touch
 * is shared with the old document. Faults name the path; then nothing is changed.
 */
export function applyEdit(document: JsonObject, edit: Pick<Edit, 'operations'>): Applied {
  const faults = operationFaults(edit.operations);
  if (faults.length > 0) return { ok: false, faults };
  let current = document;
  const inverse: EditOperation[] = [];
  for (const operation of edit.operations) {
    const step = applyAt(current, operation, 0);
    if (!step.ok) return { ok: false, faults: [step.fault] };
    current = step.object;
    if (step.inverse) inverse.unshift(step.inverse);
  }
  return { ok: true, document: current, inverse };
}

function applyAt(object: JsonObject, operation: EditOperation, depth: number): Step {
  const key = operation.path[depth]!;
  if (depth === operation.path.length - 1) return setMember(object, operation, key);
  const child = own(object, key);
  if (child === undefined) return makeLevel(object, operation, depth);
  if (!isObject(child)) return { ok: false, fault: notNested(operation, depth) };
  const step = applyAt(child, operation, depth + 1);
  return step.ok && step.object !== child
    ? { ...step, object: { ...object, [key]: step.object } }
    : passUp(step, object);
}

const passUp = (step: Step, object: JsonObject): Step => (step.ok ? { ...step, object } : step);

/** Levels that are missing are made, but never a member of a collection: that would be half a part. */
function makeLevel(object: JsonObject, operation: EditOperation, depth: number): Step {
  if (operation.value === undefined) return { ok: true, object, inverse: undefined };
  const membersMissing = depth === 0 ? operation.path.length > 2 : depth === 1;
  if (membersMissing) return { ok: false, fault: notThere(operation) };
  const rest = operation.path.slice(depth + 1);
  const value = rest.reduceRight<Json>((inner, key) => ({ [key]: inner }), operation.value);
  return setMember(object, { path: operation.path.slice(0, depth + 1), value }, operation.path[depth]!);
}

function setMember(object: JsonObject, { path, value, before }: EditOperation, key: string): Step {
  const there = Object.hasOwn(object, key);
  const old = own(object, key);
  if (value === undefined) {
    if (!there) return { ok: true, object, inverse: undefined };
    const { [key]: _gone, ...rest } = object;
    return { ok: true, object: rest, inverse: { path, value: old!, before: following(object, key) } };
  }
  if (!there) return { ok: true, object: placed(object, key, value, before ?? null), inverse: { path } };
  if (before === undefined) {
    return { ok: true, object: { ...object, [key]: value }, inverse: { path, value: old! } };
  }
  const inverse = { path, value: old!, before: following(object, key) };
  return { ok: true, object: placed(object, key, value, before), inverse };
}

function following(object: JsonObject, key: string): string | null {
  const keys = Object.keys(object);
  return keys[keys.indexOf(key) + 1] ?? null;
}

function placed(object: JsonObject, key: string, value: Json, before: string | null): JsonObject {
  const others = Object.entries(object).filter(([name]) => name !== key);
  const at = before === null ? -1 : others.findIndex(([name]) => name === before);
  others.splice(at < 0 ? others.length : at, 0, [key, value]);
  return Object.fromEntries(others);
}

const notThere = (operation: EditOperation): Fault => {
  const member = printPath(operation.path.slice(0, 2));
  return fault(
    printPath(operation.path),
    `${member} is not in the setting-out, so nothing in it can be changed`,
    `add ${member} as a whole first`,
  );
};

const notNested = (operation: EditOperation, depth: number): Fault => {
  const holder = printPath(operation.path.slice(0, depth + 1));
  return fault(
    printPath(operation.path),
    `${holder} is a single value and holds no ${operation.path[depth + 1]}`,
    `set ${holder} as a whole`,
  );
};
