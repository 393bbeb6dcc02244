import type { Progress } from '../../src/results/solver.ts';

/** Tasks that try the desk: one that answers, one that never would, one that fails, one that breaks its worker. */
export const TRIALS = {
  count: (input: { to: number }, progress: Progress): { sum: number } => {
    let sum = 0;
    for (let n = 1; n <= input.to; n += 1) {
      sum += n;
      progress(n, input.to, sum);
    }
    return { sum };
  },
  forever: (_input: object, progress: Progress): never => {
    progress(0, 1, 0);
    for (;;);
  },
  fail: (input: { words: string }): never => {
    throw new Error(input.words);
  },
  breakDown: async (_input: object): Promise<void> => {
    process.exit(3);
  },
};
