import { z } from 'zod';
import { jobSchema } from '../setting-out/schema.ts';
import { workshopSchema } from '../workshop/schema.ts';

/** JSON Schemas of the two kinds of file, made from the code; docs/schema holds them, a test keeps them true. */
export const JSON_SCHEMAS = {
  job: () => ({
    title: 'Scantling job file, version 1',
    ...z.toJSONSchema(jobSchema, { io: 'input', unrepresentable: 'any' }),
  }),
  workshop: () => ({
    title: 'Scantling workshop file, version 1',
    ...z.toJSONSchema(workshopSchema, { io: 'input', unrepresentable: 'any' }),
  }),
} as const;

export const schemaText = (kind: keyof typeof JSON_SCHEMAS): string =>
  `${JSON.stringify(JSON_SCHEMAS[kind](), null, 2)}\n`;
