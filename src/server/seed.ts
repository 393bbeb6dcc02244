import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { JsonObject } from '../job/edits.ts';
import type { Store } from '../store/store.ts';
import type { FileForm, Template } from './parts.ts';
import { WORKSHOP_ID } from './parts.ts';

const WORKSHOP_FILE = 'workshop.yaml';
const JOB_FILE = /^([A-Za-z0-9][A-Za-z0-9_-]*)\.yaml$/;

/** The demo jobs of a folder, by name of file. They are also what a new job can begin from. */
export function readTemplates(folder: string, jobFile: FileForm): Template[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .sort()
    .filter(name => name !== WORKSHOP_FILE && JOB_FILE.test(name))
    .flatMap(name => {
      const text = readFileSync(join(folder, name), 'utf8');
      const { document } = jobFile.read(text);
      const id = name.replace(JOB_FILE, '$1');
      return document ? [{ id, title: String(document.title ?? id), text }] : [];
    });
}

/** On the first start puts the workshop and the demo jobs into the store. Gives the ids of what was added. */
export async function seed(
  store: Store,
  folder: string,
  templates: readonly Template[],
  forms: { jobFile: FileForm; workshopFile: FileForm },
): Promise<string[]> {
  if (await store.documents.get(WORKSHOP_ID)) return [];
  const added: string[] = [];
  for (const { id, text } of [...templates].reverse()) {
    const { document } = forms.jobFile.read(text);
    if (document && (await store.documents.create(id, 'job', document))) added.unshift(id);
  }
  // Last, because the workshop's being there is the sign that the first start is over.
  await store.documents.create(WORKSHOP_ID, 'workshop', readWorkshop(folder, forms.workshopFile));
  return added;
}

function readWorkshop(folder: string, form: FileForm): JsonObject {
  const file = join(folder, WORKSHOP_FILE);
  return (
    (existsSync(file) ? form.read(readFileSync(file, 'utf8')).document : undefined) ?? { name: 'Workshop' }
  );
}
