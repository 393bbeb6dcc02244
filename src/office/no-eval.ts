import { config } from 'zod';

/** The content policy forbids code made from text, so schemas are read step by step. First import of a thread. */
config({ jitless: true });
