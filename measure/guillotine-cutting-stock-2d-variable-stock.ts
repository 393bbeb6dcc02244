/** Three board sizes, strips along the first side: `npm run measure -- guillotine-cutting-stock-2d-variable-stock --dir DIR`. */
import { numbersOf, readOptions } from './families/options.ts';
import { type PlateProblem, runPlates } from './families/plates.ts';

function readPlates(text: string): PlateProblem {
  const numbers = numbersOf(text);
  let at = 0;
  const next = (): number => numbers[at++]!;
  const sizes = Array.from({ length: next() }, () => ({ l: next(), w: next(), cost: next() }));
  const types = Array.from({ length: next() }, () => ({ l: next(), w: next(), demand: next() }));
  return { sizes, types };
}

export function run(args: string[]): void {
  const name = 'guillotine-cutting-stock-2d-variable-stock';
  runPlates(
    {
      name,
      read: readPlates,
      variants: {
        fixed: { table: 'best-known.csv', turn: false, stages: 'strips along' },
        rotation: { table: 'best-known.rotation.csv', turn: true, stages: 'strips along' },
      },
    },
    readOptions(args, name, 10),
  );
}
