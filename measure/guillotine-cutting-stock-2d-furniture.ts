/** Furniture orders from like boards: `npm run measure -- guillotine-cutting-stock-2d-furniture --dir DIR --seconds 60`. */
import { readOptions } from './families/options.ts';
import { readOnePlate, runPlates } from './families/plates.ts';

export function run(args: string[]): void {
  const name = 'guillotine-cutting-stock-2d-furniture';
  runPlates(
    {
      name,
      read: readOnePlate,
      variants: {
        fixed: { table: 'best-known.csv', turn: false, stages: 'free' },
        rotation: { table: 'best-known.rotation.csv', turn: true, stages: 'free' },
        'two-staged-L': {
          table: 'best-known.two-staged.csv',
          where: { first_stage_strips: 'span-L' },
          turn: false,
          stages: 'strips along',
        },
        'two-staged-W': {
          table: 'best-known.two-staged.csv',
          where: { first_stage_strips: 'span-W' },
          turn: false,
          stages: 'strips across',
        },
      },
    },
    readOptions(args, name, 60),
  );
}
