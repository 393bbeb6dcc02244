import { PART_1 } from './mission-furniture-1.ts';
import { PART_2 } from './mission-furniture-2.ts';
import { PART_3 } from './mission-furniture-3.ts';
import { MORE } from './mission-furniture-more.ts';
import type { PublishedPiece } from './piece.ts';

export const PIECES: readonly PublishedPiece[] = [...PART_1, ...PART_2, ...PART_3, ...MORE];
