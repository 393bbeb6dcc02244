import { createContext, useContext, useMemo, useSyncExternalStore } from 'react';
import type { ShowOptions } from '../results/show.ts';

/** What a person chooses for their own screen; it never changes the job. */
export interface Person {
  unit: 'mm' | 'cm' | 'in';
  ground: 'system' | 'light' | 'dark';
}

const KEY = 'scantling.person';
const DEFAULT: Person = { unit: 'mm', ground: 'system' };

function read(): Person {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    if (typeof kept !== 'object' || kept === null) return DEFAULT;
    const { unit, ground } = kept as Record<string, unknown>;
    return {
      unit: unit === 'cm' || unit === 'in' ? unit : 'mm',
      ground: ground === 'light' || ground === 'dark' ? ground : 'system',
    };
  } catch {
    return DEFAULT;
  }
}

let person: Person | undefined;
const listeners = new Set<() => void>();

const current = (): Person => {
  person ??= read();
  return person;
};

/** Puts the chosen ground on the page; without one the system decides. */
export function applyGround(): void {
  const { ground } = current();
  if (ground === 'system') delete document.documentElement.dataset.ground;
  else document.documentElement.dataset.ground = ground;
}

export function choose(change: Partial<Person>): void {
  person = { ...current(), ...change };
  try {
    localStorage.setItem(KEY, JSON.stringify(person));
  } catch {
    // Private windows may refuse; the choice then lasts as long as the page.
  }
  applyGround();
  for (const listener of listeners) listener();
}

export const usePerson = (): Person =>
  useSyncExternalStore(
    listener => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    current,
    () => DEFAULT,
  );

/** Currency of the open job. */
const CurrencyContext = createContext('GBP');
export const CurrencyProvider = CurrencyContext.Provider;

/** The person's unit and precision with the job's currency: what every figure is shown by. */
export function useShow(): ShowOptions {
  const { unit } = usePerson();
  const currency = useContext(CurrencyContext);
  return useMemo(() => ({ unit, denominator: 64, currency }), [unit, currency]);
}
