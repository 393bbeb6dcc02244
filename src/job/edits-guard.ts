import type { Fault } from '../results/fault.ts';
import { fault } from '../results/fault.ts';
import type { EditOperation, Json } from './edits.ts';

/** Far above any real setting-out; they only stop a runaway or hostile edit. */
export const EDIT_LIMITS = {
  operations: 5000,
  pathSteps: 12,
  keyLength: 200,
  valueDepth: 40,
  valueMembers: 200_000,
} as const;

const REFUSED = new Set(['__proto__', 'constructor', 'prototype']);

export const printPath = (path: readonly string[]): string => path.join('.');

/** Everything wrong with the operations before any of them is tried. */
export function operationFaults(operations: readonly EditOperation[]): Fault[] {
  if (operations.length > EDIT_LIMITS.operations)
    return [
      fault(
        'edit',
        `${operations.length} changes at once`,
        `send at most ${EDIT_LIMITS.operations} in one edit`,
      ),
    ];
  return operations.flatMap(operation => [...pathFaults(operation.path), ...valueFaults(operation)]);
}

function pathFaults(path: readonly string[]): Fault[] {
  const place = printPath(path) || 'edit';
  if (path.length === 0)
    return [fault(place, 'the change has no address', 'name what it changes, e.g. parameters.height')];
  if (path.length > EDIT_LIMITS.pathSteps)
    return [fault(place, 'the address is too deep', `use at most ${EDIT_LIMITS.pathSteps} steps`)];
  return path.flatMap(key => keyFaults(place, key));
}

function keyFaults(place: string, key: string): Fault[] {
  if (REFUSED.has(key)) return [fault(place, `the name ${key} is not allowed`, 'choose another name')];
  if (key === '') return [fault(place, 'a name is empty', 'give it a name')];
  return key.length > EDIT_LIMITS.keyLength
    ? [fault(place, 'a name is too long', `keep names under ${EDIT_LIMITS.keyLength} characters`)]
    : [];
}

function valueFaults({ path, value }: EditOperation): Fault[] {
  if (value === undefined) return [];
  const place = printPath(path);
  let left: number = EDIT_LIMITS.valueMembers;
  const visit = (inner: Json, depth: number): Fault[] => {
    left -= 1;
    if (left < 0) return [];
    if (depth > EDIT_LIMITS.valueDepth)
      return [fault(place, 'the value is nested too deep', `keep it under ${EDIT_LIMITS.valueDepth} levels`)];
    if (typeof inner === 'number')
      return Number.isFinite(inner) ? [] : [fault(place, 'a number is not finite', 'give a plain number')];
    if (typeof inner !== 'object' || inner === null) return [];
    if (Array.isArray(inner)) return (inner as readonly Json[]).flatMap(one => visit(one, depth + 1));
    return Object.entries(inner).flatMap(([key, one]) => [
      ...keyFaults(place, key),
      ...visit(one, depth + 1),
    ]);
  };
  const faults = visit(value, 0);
  if (left < 0)
    return [fault(place, 'the value has too many members', `keep it under ${EDIT_LIMITS.valueMembers}`)];
  return faults;
}
