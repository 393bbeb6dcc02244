import { operationsBetween } from '../job/edits-changes.ts';
import type { Saved } from '../store/documents.ts';
import type { Handlers } from './answers.ts';
import { fileOf, ok, stateAnswer, unknown } from './answers.ts';
import { published } from './jobs.ts';
import type { ServerParts } from './parts.ts';
import { WORKSHOP_ID } from './parts.ts';

type WorkshopRoutes =
  | 'getWorkshop'
  | 'putWorkshop'
  | 'editWorkshop'
  | 'undoWorkshop'
  | 'redoWorkshop'
  | 'exportWorkshop';

export function workshopHandlers(parts: ServerParts): Handlers<WorkshopRoutes> {
  const { documents } = parts.store;
  const tell = (saved: Saved) => published(parts, saved, 'workshop', WORKSHOP_ID);
  return {
    getWorkshop: async () => {
      const state = await documents.get(WORKSHOP_ID);
      return state ? ok(stateAnswer(state)) : unknown('workshop', WORKSHOP_ID);
    },
    putWorkshop: async ({ body: { document, ...act } }) => {
      const state = await documents.get(WORKSHOP_ID);
      if (!state) return unknown('workshop', WORKSHOP_ID);
      const operations = operationsBetween(state.document, document);
      return operations.length === 0 && act.base === state.version
        ? ok(stateAnswer(state))
        : tell(await documents.edit(WORKSHOP_ID, { ...act, operations }));
    },
    editWorkshop: async ({ body }) => tell(await documents.edit(WORKSHOP_ID, body)),
    undoWorkshop: async ({ body }) => tell(await documents.undo(WORKSHOP_ID, body)),
    redoWorkshop: async ({ body }) => tell(await documents.redo(WORKSHOP_ID, body)),
    exportWorkshop: async () => {
      const state = await documents.get(WORKSHOP_ID);
      if (!state) return unknown('workshop', WORKSHOP_ID);
      const bytes = parts.workshopFile.write(state.document);
      return fileOf({ bytes, mediaType: 'application/yaml', name: 'workshop.yaml' });
    },
  };
}
