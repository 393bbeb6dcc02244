import fc from 'fast-check';
import type { EditOperation, Json, JsonObject } from '../../src/job/edits.ts';
import { applyEdit } from '../../src/job/edits.ts';

/** Few names, so that random edits meet each other. Letters only: integer-like names have no order of their own. */
const name = fc.constantFrom('parts', 'joints', 'leg', 'rail', 'length', 'width', 'toString');

const value: fc.Arbitrary<Json> = fc.letrec<{ json: Json }>(tie => ({
  json: fc.oneof(
    { maxDepth: 3 },
    fc.integer({ min: -50, max: 50 }),
    fc.constantFrom('oak', 'ash', ''),
    fc.boolean(),
    fc.constant(null),
    fc.array(tie('json'), { maxLength: 3 }),
    fc.dictionary(name, tie('json'), { maxKeys: 4, noNullPrototype: true }),
  ),
})).json;

export const documents: fc.Arbitrary<JsonObject> = fc.dictionary(
  name,
  fc.oneof(value, fc.dictionary(name, value, { maxKeys: 4, noNullPrototype: true })),
  { maxKeys: 5, noNullPrototype: true },
);

export const operations: fc.Arbitrary<EditOperation> = fc.record(
  {
    path: fc.array(name, { minLength: 1, maxLength: 4 }),
    value,
    before: fc.option(name, { nil: null }),
  },
  { requiredKeys: ['path'] },
);

/** One operation at a time, the plain way: copy everything, walk, set. The slow truth `applyEdit` is held against. */
export function applySlowly(document: JsonObject, { path, value }: EditOperation): JsonObject | undefined {
  const copy = structuredClone(document) as Record<string, Json>;
  let at = copy;
  for (const [depth, key] of path.slice(0, -1).entries()) {
    if (!Object.hasOwn(at, key)) {
      if (value === undefined) return copy;
      if (depth === 1 || (depth === 0 && path.length > 2)) return undefined;
      at[key] = {};
    }
    const next = at[key];
    if (typeof next !== 'object' || next === null || Array.isArray(next)) return undefined;
    at = next as Record<string, Json>;
  }
  const last = path[path.length - 1]!;
  if (value === undefined) delete at[last];
  else at[last] = value;
  return copy;
}

export function mustApply(document: JsonObject, ...list: EditOperation[]) {
  const applied = applyEdit(document, { operations: list });
  if (!applied.ok) throw new Error(applied.faults.map(one => `${one.place}: ${one.fault}`).join('; '));
  return applied;
}

/** Those of the operations that hold one after another, so that a long random edit is not refused as a whole. */
export function thatHold(document: JsonObject, list: readonly EditOperation[]): EditOperation[] {
  let current = document;
  return list.filter(operation => {
    const applied = applyEdit(current, { operations: [operation] });
    if (applied.ok) current = applied.document;
    return applied.ok;
  });
}
