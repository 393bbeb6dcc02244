import type { ExactTasks } from './exact-work.ts';
import { serverThread } from './node-deriver.ts';
import { recycledDesk } from './recycled.ts';

/** The exact kernel's thread is ended at this much memory, bytes. */
const MOST = 500e6;

/** Exact solids in a thread of their own, begun when first needed. */
export const createNodeExact = () => recycledDesk<ExactTasks>(serverThread, MOST);
