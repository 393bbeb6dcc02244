import type { Paper } from '../server/parts.ts';

/** Papers that the server can make of a job. */
export function serverPapers(_programVersion: string): readonly Paper[] {
  return [];
}
