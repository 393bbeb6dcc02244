import { z } from 'zod';
import type { JsonObject } from '../job/edits.ts';
import type { Route } from './routes.ts';
import { ROUTES } from './routes.ts';
import { refusal } from './shapes.ts';

/** The routes as an OpenAPI 3.1 description (https://spec.openapis.org/oas/v3.1.0). */
export function describeApi(version: string): JsonObject {
  const paths: Record<string, Record<string, JsonObject>> = {};
  for (const [name, route] of Object.entries(ROUTES)) {
    const path = route.path.replaceAll(/:(\w+)/g, '{$1}');
    paths[path] = { ...paths[path], [route.method.toLowerCase()]: operationOf(name, route) };
  }
  return { openapi: '3.1.0', info: { title: 'Scantling', version }, paths };
}

function operationOf(name: string, route: Route): JsonObject {
  const hasBody = route.method === 'POST' || route.method === 'PUT';
  return {
    operationId: name,
    summary: route.summary,
    parameters: [...parameters('path', route.params), ...parameters('query', route.query)],
    ...(hasBody ? { requestBody: { required: true, content: json(route.body, 'input') } } : {}),
    responses: {
      200: {
        description: route.summary,
        content: route.file ? { 'application/octet-stream': {} } : json(route.answer, 'output'),
      },
      default: { description: 'What is wrong, where, and what mends it', content: json(refusal, 'output') },
    },
  };
}

const json = (schema: z.ZodType, io: 'input' | 'output'): JsonObject => ({
  'application/json': { schema: schemaOf(schema, io) },
});

const schemaOf = (schema: z.ZodType, io: 'input' | 'output'): JsonObject =>
  z.toJSONSchema(schema, { io }) as JsonObject;

function parameters(where: 'path' | 'query', schema: z.ZodType): JsonObject[] {
  const described = schemaOf(schema, 'input');
  const required = (described.required ?? []) as readonly string[];
  return Object.entries((described.properties ?? {}) as JsonObject).map(([name, one]) => ({
    name,
    in: where,
    required: where === 'path' || required.includes(name),
    schema: one,
  }));
}
