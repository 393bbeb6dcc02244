/** Few copies on like plates: `npm run measure -- guillotine-bin-packing-2d --dir DIR --seconds 20 --variant rotation`. */
import { readOptions } from './families/options.ts';
import { readOnePlate, runPlates } from './families/plates.ts';

export function run(args: string[]): void {
  const name = 'guillotine-bin-packing-2d';
  runPlates(
    {
      name,
      read: readOnePlate,
      variants: {
        fixed: { table: 'best-known.csv', turn: false, stages: 'free' },
        rotation: { table: 'best-known.rotation.csv', turn: true, stages: 'free' },
      },
    },
    readOptions(args, name, 20),
  );
}
