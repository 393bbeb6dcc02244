import type { PublishedPiece } from './piece.ts';

/** H. H. Windsor, Mission Furniture: How to Make It, Part 1 (Popular Mechanics Co., Chicago). Facts and numbers only. */
export const PART_1: readonly PublishedPiece[] = [];
