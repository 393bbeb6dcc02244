import type { JsonObject } from '../job/edits.ts';
import type { Derived } from '../results/derived.ts';
import type { Why } from '../results/why.ts';

/** What the office and its deriving worker say to each other: plain data only. */
export type Ask =
  | { kind: 'derive' | 'compare'; document: JsonObject; workshop: JsonObject; today: string }
  | { kind: 'why'; figure: string };

export type Told =
  | { kind: 'derived'; derived: Derived }
  | { kind: 'why'; why: Why | undefined }
  | { kind: 'failed'; words: string };
