/** Furniture orders from like boards: `npm run measure -- guillotine-cutting-stock-2d-furniture --dir DIR --seconds 60`. */
import { numbersOf, readOptions } from './families/options.ts';
import { type PlateProblem, runPlates } from './families/plates.ts';

export function readOnePlate(text: string): PlateProblem {
  const [l, w, n, ...rest] = numbersOf(text);
  return {
    sizes: [{ l: l!, w: w!, cost: 1 }],
    types: Array.from({ length: n! }, (_, i) => ({
      l: rest[3 * i]!,
      w: rest[3 * i + 1]!,
      demand: rest[3 * i + 2]!,
    })),
  };
}

export function run(args: string[]): void {
  const name = 'guillotine-cutting-stock-2d-furniture';
  runPlates(
    {
      name,
      read: readOnePlate,
      variants: {
        fixed: { table: 'best-known.csv', turn: false, stages: 'free' },
        rotation: { table: 'best-known.rotation.csv', turn: true, stages: 'free' },
        'two-staged-L': { table: 'best-known.two-staged.L.csv', turn: false, stages: 'strips along' },
        'two-staged-W': { table: 'best-known.two-staged.W.csv', turn: false, stages: 'strips across' },
      },
    },
    readOptions(args, name, 60),
  );
}
