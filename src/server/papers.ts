import type { IssuedLine } from '../store/issued.ts';
import type { Handlers, Refused } from './answers.ts';
import { created, faulty, fileOf, ok, unknown } from './answers.ts';
import { fileName } from './file-name.ts';
import { findJob } from './jobs.ts';
import type { Paper, ServerParts } from './parts.ts';
import { WORKSHOP_ID } from './parts.ts';

interface Made {
  paper: Paper;
  bytes: Uint8Array;
  title: string;
}

export function paperHandlers(
  parts: ServerParts,
): Handlers<'paper' | 'issuePaper' | 'listIssued' | 'issuedPaper'> {
  const { issued } = parts.store;
  return {
    paper: async ({ params: { id, name } }) => {
      const made = await makePaper(parts, id, name);
      if (!('paper' in made)) return made;
      const { paper, bytes, title } = made;
      return fileOf({ bytes, mediaType: paper.mediaType, name: outputName(title, name) });
    },
    issuePaper: async ({ params: { id, name } }) => {
      const made = await makePaper(parts, id, name);
      if (!('paper' in made)) return made;
      return created(lineAnswer(await issue(parts, id, made)));
    },
    listIssued: async ({ params: { id } }) => ok({ issued: (await issued.list(id)).map(lineAnswer) }),
    issuedPaper: async ({ params: { id } }) => {
      const kept = await issued.get(id);
      if (!kept) return unknown('issued paper', id);
      const { bytes, mediaType, title } = kept;
      return fileOf({
        bytes,
        mediaType,
        name: fileName(title, mediaType === 'application/pdf' ? 'pdf' : 'bin'),
      });
    },
  };
}

const lineAnswer = ({ documentId: _job, ...line }: IssuedLine) => line;

const outputName = (title: string, name: string): string => {
  const dot = name.lastIndexOf('.');
  return fileName(`${title} ${name.slice(0, dot)}`, name.slice(dot + 1));
};

async function makePaper(parts: ServerParts, id: string, name: string): Promise<Made | Refused> {
  const job = await findJob(parts, id);
  if (!job) return unknown('job', id);
  const paper = parts.papers.find(one => one.name === name);
  if (!paper) return unknown('paper', name);
  const workshop = await parts.store.documents.get(WORKSHOP_ID);
  const made = await paper.make(job.document, workshop?.document ?? {}, job.settingOut);
  if ('faults' in made) return faulty(made.faults);
  return { paper, bytes: made.bytes, title: String(job.document.title ?? id) };
}

function issue(parts: ServerParts, id: string, { paper, bytes, title }: Made): Promise<IssuedLine> {
  const paperLine = {
    id: parts.newId('paper'),
    documentId: id,
    revision: null,
    kind: paper.kind,
    title: `${title} ${paper.title}`,
    mediaType: paper.mediaType,
    programVersion: parts.programVersion,
    tablesHash: parts.tablesHash,
    keepUntil: null,
  };
  return parts.store.issued.keep(paperLine, bytes);
}
