import { BOARDS } from './boards.ts';
import { CORNERS } from './corners.ts';
import { FIXINGS } from './fixings.ts';
import type { Sample } from './parts.ts';
import { PLAIN } from './plain.ts';
import { TENONS } from './tenons.ts';

/** A sample of every joint; a joint's file adds its own here by its group. */
export const PIECES: Record<string, Sample> = { ...PLAIN, ...TENONS, ...BOARDS, ...CORNERS, ...FIXINGS };
