import { useCallback, useEffect, useState } from 'react';
import type { SetUp } from '../../results/setups.ts';
import { usePorts } from '../ports.ts';
import { cardHash } from './words.ts';

export type TickState = 'open' | 'done' | 'older plan';

export interface Ticks {
  of: (setup: SetUp) => TickState;
  mark: (setup: SetUp, done: boolean) => void;
  trouble: string | undefined;
}

/** Set-ups ticked as done, as the store has them. A tick made on an older plan says so and does not count. */
export function useTicks(job: string): Ticks {
  const { api } = usePorts();
  const [ticks, setTicks] = useState<ReadonlyMap<string, string>>(new Map());
  const [trouble, setTrouble] = useState<string>();
  const read = useCallback(
    () =>
      api.ticks(job).then(
        all => setTicks(all),
        (error: unknown) => setTrouble(error instanceof Error ? error.message : String(error)),
      ),
    [api, job],
  );
  useEffect(() => void read(), [read]);
  const subject = (setup: SetUp): string => `setup:${setup.id}`.slice(0, 200);
  return {
    trouble,
    of: setup => {
      const madeFrom = ticks.get(subject(setup));
      if (madeFrom === undefined) return 'open';
      return madeFrom === cardHash(setup) ? 'done' : 'older plan';
    },
    mark: (setup, done) => {
      const now = new Map(ticks);
      if (done) now.set(subject(setup), cardHash(setup));
      else now.delete(subject(setup));
      setTicks(now);
      api
        .tick(job, subject(setup), done, cardHash(setup))
        .then(() => setTrouble(undefined))
        .catch((error: unknown) => {
          setTrouble(error instanceof Error ? error.message : String(error));
          void read();
        });
    },
  };
}
