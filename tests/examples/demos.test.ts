import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { deriveJob } from '../../src/job/derive.ts';
import { readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';

/** The demo commissions, each size reckoned by hand from the setting-out beside it. */
const example = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), 'utf8');
const workshop = readWorkshopFile(example('workshop')).workshop!;

const SIZES: Record<string, [name: string, quantity: number, size: [number, number, number], sum: string][]> =
  {
    'porch-bench': [
      ['Leg', 4, [423, 45, 45], '450 - 27'],
      ['Top cross rail', 2, [340, 60, 45], '250 + 2 x 45'],
      ['Lower cross rail', 2, [340, 80, 32], '250 + 2 x 45'],
      ['Stretcher', 1, [1357, 70, 32], '1170 + 2 x 6.5 + 2 x (32 + 55)'],
      ['Middle post', 1, [278, 45, 45], '363 - 185 + 70 + 30'],
      ['Bar, stainless', 2, [1221, 16, 16], '1183 + 2 x 20 - 2'],
    ],
    'writing-table': [
      ['Leg', 4, [716, 42, 42], '740 - 24'],
      ['Side apron', 2, [562, 92, 22], '506 + 2 x 28'],
      ['Back apron', 1, [1192, 92, 22], '1136 + 2 x 28'],
      ['Front rail, upper', 1, [1178, 42, 16], '1136 + 2 x 21'],
      ['Drawer front', 1, [558, 58, 20], '560 - 2, 60 - 2'],
      ['Drawer back', 1, [546, 46, 10], '538 + 2 x 4'],
      ['Drawer bottom', 1, [547, 424.5, 4], '538 + 2 x 5 - 1'],
    ],
    'wall-cabinet': [
      ['Bottom', 1, [888, 251, 18], '864 + 2 x 12'],
      ['Divider', 1, [696, 251, 18], '684 + 2 x 6'],
      ['Shelf', 1, [435, 251, 18], '423 + 2 x 6'],
      ['Back', 1, [720, 882, 6.5], '900 - 2 x 9'],
      ['Hanging rail', 2, [880, 60, 20], '900 - 20'],
      ['Face frame centre stile', 1, [680, 40, 22], '640 + 2 x 20'],
      ['Door stile', 4, [636, 55, 21], '640 - 4'],
      ['Door top rail', 2, [346, 55, 21], '276 + 2 x 35'],
      ['Cherry panel', 1, [529, 291, 10], '511 + 2 x 9, 276 + 2 x 7.5'],
      ['Brass panel, core', 1, [529, 294, 4], '511 + 2 x 9, 276 + 2 x 9'],
    ],
    'bedside-cabinet': [
      ['Side, core', 2, [440, 365.5, 18], '560 - 120, 380 - 6.5 - 8'],
      ['Top, core', 1, [424, 365.5, 18], '460 - 2 x 18'],
      ['Top, lipping', 1, [424, 18, 8], 'as the core'],
      ['Stand', 2, [320, 25, 120], '380 - 60, over the bends'],
      [
        'Drawer, box front',
        1,
        [398.6, 127.2, 10],
        '424 - 2 x 12.7, 130 - 1.5 - 0.5 less what cherry grows, to 0.1',
      ],
      ['Drawer, front', 1, [421, 127.2, 18], '424 - 2 x 1.5'],
      ['Door, stile', 2, [252, 50, 20], '394 - 138 - 2 x 2'],
    ],
    'tool-chest': [
      ['End', 2, [390, 180, 20], 'as entered'],
      ['Front and back', 2, [720, 180, 20], '680 + 2 x 20: tails through the ends'],
      ['Till side', 1, [362, 140, 16], '350 + 2 x 6'],
      ['Tray side', 2, [240, 55, 10], '220 + 2 x 10: fingers through the ends'],
      ['Tray end', 2, [348, 55, 10], '350 - 2'],
      ['Lid board', 3, [660, 132, 24], '720 + 2 x 6 - 2 x 72 + 2 x 36, 396 / 3'],
      ['Breadboard end', 2, [396, 72, 24], '390 + 6'],
    ],
  };

describe.each(Object.entries(SIZES))('%s', (name, rows) => {
  const { document, faults } = readJobFile(example(name));
  const { derived } = deriveJob(document!, workshop, { today: '2026-11-25' });

  test('has no fault, nothing unplaced, nothing unmade, and no check says stop', () => {
    expect([...faults, ...derived.faults]).toEqual([]);
    expect(derived.cutting.materials.flatMap(m => m.unplaced)).toEqual([]);
    expect(derived.setups.unmade).toEqual([]);
    expect(derived.days.trouble).toEqual([]);
    expect(derived.checks.filter(c => c.severity === 'stop').map(c => c.title)).toEqual([]);
  });

  test.each(rows)('%s', (part, quantity, [length, width, thickness]) => {
    const groups = derived.piece.groups.filter(g => g.name === part);
    expect(groups.reduce((sum, g) => sum + g.instances.length, 0)).toBe(quantity);
    for (const g of groups) expect(g.size).toEqual({ length, width, thickness });
  });
});

test('one dimension changed: what follows, follows, and nothing else', () => {
  const { document } = readJobFile(example('porch-bench'));
  const sizes = (length: number) => {
    const changed = { ...document!, parameters: { ...document!.parameters, length } };
    return new Map(
      deriveJob(changed, workshop, { today: '2026-11-25' }).derived.piece.groups.map(g => [
        g.name,
        g.size.length,
      ]),
    );
  };
  const [before, after] = [sizes(1380), sizes(1340)];
  const moved = [...before]
    .filter(([name, l]) => after.get(name) !== l)
    .map(([name, l]) => [name, after.get(name)! - l]);
  expect(moved).toEqual([
    ['Stretcher', -40],
    ['Seat board', -40],
    ['Bar, stainless', -40],
  ]);
});
