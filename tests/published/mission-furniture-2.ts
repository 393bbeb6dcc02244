import type { PublishedPiece } from './piece.ts';

/** H. H. Windsor, Mission Furniture: How to Make It, Part 2 (Popular Mechanics Co., Chicago). Facts and numbers only. */
const BOOK = { book: 'Mission Furniture: How to Make It, Part 2', year: 1910 };

export const PART_2: readonly PublishedPiece[] = [
  {
    ...BOOK,
    id: 'mf2-062-side-chair',
    title: 'Square side chair',
    page: '62-66',
    check: 'exact',
    rows: [
      {
        part: 'rail, thicker',
        ids: ['seat_front', 'seat_side'],
        quantity: 4,
        length: 17 + 1 / 2,
        width: 2,
        thickness: 7 / 8,
        basis: 'printed',
      },
      {
        part: 'rail, thinner',
        ids: ['low_front', 'low_side'],
        quantity: 4,
        length: 17 + 1 / 2,
        width: 2,
        thickness: 3 / 4,
        basis: 'printed',
      },
      {
        part: 'front post',
        ids: ['front_post'],
        quantity: 2,
        length: 19,
        width: 1 + 1 / 2,
        thickness: 1 + 1 / 2,
        basis: 'printed',
      },
      {
        part: 'rear post',
        ids: ['rear_post'],
        quantity: 2,
        length: 37 + 1 / 2,
        width: 1 + 1 / 2,
        thickness: 1 + 1 / 2,
        basis: 'printed',
      },
      {
        part: 'back',
        ids: ['back'],
        quantity: 1,
        length: 17 + 1 / 2,
        width: 9 + 3 / 4,
        thickness: 3 / 4,
        basis: 'printed',
      },
      {
        part: 'cleat',
        ids: ['cleat'],
        quantity: 2,
        length: 16,
        width: 1,
        thickness: 3 / 8,
        basis: 'printed',
      },
      {
        part: 'slat',
        ids: ['slat'],
        quantity: 4,
        length: 16 + 1 / 2,
        width: 2,
        thickness: 3 / 8,
        basis: 'printed',
      },
    ],
    relations: [
      {
        parameter: 'clear',
        moves: {
          'rail, thicker': { length: 10 },
          'rail, thinner': { length: 10 },
          back: { length: 10 },
          cleat: { length: 10 },
        },
      },
      { parameter: 'height', moves: { 'rear post': { length: 10 } } },
      {
        parameter: 'tenon',
        moves: { 'rail, thicker': { length: 20 }, 'rail, thinner': { length: 20 }, back: { length: 20 } },
      },
    ],
    left: [
      'printed conflict: rails of 17 1/2 = 15 1/2 + 2 x 1 carry no extra, the text gives 1/2 in. on all lengths (18)',
    ],
  },
];
