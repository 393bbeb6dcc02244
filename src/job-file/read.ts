import type { z } from 'zod';
import { nearest } from '../figures/nearest.ts';
import { type Fault, fault } from '../results/fault.ts';
import { JOB_KIND, JOB_VERSION, type JobDocument, jobSchema } from '../setting-out/schema.ts';
import { workshopFrom } from '../workshop/from-file.ts';
import {
  WORKSHOP_KIND,
  WORKSHOP_VERSION,
  type WorkshopDocument,
  workshopSchema,
} from '../workshop/schema.ts';
import type { Workshop } from '../workshop/workshop.ts';
import { migrateJob } from './migrate.ts';
import { readText, type Text } from './yaml.ts';

export interface JobRead {
  /** Absent only when nothing at all can be made of the file. */
  document?: JobDocument;
  faults: Fault[];
  /** Adds line and column to faults told later, by their place. */
  locate(fault: Fault): Fault;
}

type Json = Record<string, unknown>;
const isObject = (v: unknown): v is Json => typeof v === 'object' && v !== null && !Array.isArray(v);

/** `parts.leg.length` to a path that the file knows; figure places such as `joints.a.tenon.length` end at what is written. */
const pathOf = (place: string): string[] => place.split('.').filter(p => p !== '');

function locator(text: Text): (f: Fault) => Fault {
  return f => (f.line === undefined ? { ...f, ...text.position(pathOf(f.place)) } : f);
}

/**
 * Reads a job file. What is wrong is told with place, line and mend, all at once; what is right is kept, so
 * that a setting-out with a fault still opens.
 */
export function readJobFile(text: string): JobRead {
  const read = readText(text);
  const locate = locator(read);
  if (read.faults.length > 0) return { faults: read.faults, locate };
  const kind = checkKind(read.value, 'job', JOB_VERSION);
  if (kind) return { faults: [locate(kind)], locate };
  const { value, faults } = migrateJob(read.value as Json);
  const checked = keepWhatIsRight(jobSchema, value, { scantling: JOB_KIND, title: 'Untitled' });
  return {
    ...(checked.data ? { document: { ...checked.data, scantling: JOB_KIND } } : {}),
    faults: [...faults, ...checked.faults].map(locate),
    locate,
  };
}

/** Checks a document that did not come from text (an edit, the store): same rules, no lines. */
export function checkJobDocument(value: unknown): { document?: JobDocument; faults: Fault[] } {
  const checked = keepWhatIsRight(jobSchema, value, { scantling: JOB_KIND, title: 'Untitled' });
  return { ...(checked.data ? { document: checked.data } : {}), faults: checked.faults };
}

export function readWorkshopFile(text: string): {
  document?: WorkshopDocument;
  workshop?: Workshop;
  faults: Fault[];
} {
  const read = readText(text);
  const locate = locator(read);
  if (read.faults.length > 0) return { faults: read.faults };
  const kind = checkKind(read.value, 'workshop', WORKSHOP_VERSION);
  if (kind) return { faults: [locate(kind)] };
  const made = checkWorkshopDocument(read.value);
  return { ...made, faults: made.faults.map(locate) };
}

/** A workshop document from the store or an edit: faulty entries are told and left out, the rest is used. */
export function checkWorkshopDocument(value: unknown): {
  document?: WorkshopDocument;
  workshop?: Workshop;
  faults: Fault[];
} {
  const checked = keepWhatIsRight(workshopSchema, value, { scantling: WORKSHOP_KIND, name: 'Workshop' });
  return checked.data
    ? {
        document: checked.kept as WorkshopDocument,
        workshop: workshopFrom(checked.data),
        faults: checked.faults,
      }
    : { faults: checked.faults };
}

function checkKind(value: unknown, wanted: 'job' | 'workshop', version: number): Fault | undefined {
  if (!isObject(value))
    return fault(
      'file',
      'this is not a Scantling file',
      `begin with the line scantling: ${wanted}/${version}`,
    );
  const kind = value.scantling;
  const match = typeof kind === 'string' ? /^(job|workshop)\/(\d+)$/.exec(kind) : null;
  if (!match)
    return fault(
      'scantling',
      kind === undefined
        ? 'the first line, scantling, is missing'
        : `${String(kind)} is no kind of file known here`,
      `write scantling: ${wanted}/${version}`,
    );
  if (match[1] !== wanted)
    return fault(
      'scantling',
      `this is a ${match[1]} file, a ${wanted} file is needed`,
      `open a ${wanted} file`,
    );
  return Number(match[2]) > version
    ? fault(
        'scantling',
        `the file is of version ${match[2]}, this program reads up to ${version}`,
        'bring the program up to date; the file is left as it is',
      )
    : undefined;
}

const ROUNDS = 200;

/** Takes out what the schema refuses, smallest piece first, until the rest passes; each fault is told once. */
function keepWhatIsRight<S extends z.ZodType>(
  schema: S,
  value: unknown,
  base: Json,
): { data?: z.output<S>; kept: unknown; faults: Fault[] } {
  let kept: unknown = { ...base, ...(structuredClone(value) as Json) };
  const faults = new Map<string, Fault>();
  for (let round = 0; round < ROUNDS; round++) {
    const result = schema.safeParse(kept);
    if (result.success) return { data: result.data, kept, faults: [...faults.values()] };
    for (const f of result.error.issues.flatMap(i => told(i, kept))) {
      const key = `${f.place}|${f.fault}`;
      if (!faults.has(key)) faults.set(key, f);
    }
    const next = structuredClone(kept);
    const taken = byEntry(result.error.issues).map(issues => withoutThose(next, issues, base));
    if (!taken.some(Boolean)) break;
    kept = next;
  }
  return { kept, faults: [...faults.values()] };
}

/** Issues by what they belong to: `parts.leg` for all that is wrong with the leg. */
function byEntry(issues: readonly Issue[]): Issue[][] {
  const entries = new Map<string, Issue[]>();
  for (const issue of issues) {
    const entry = issue.path
      .slice(0, typeof issue.path[1] === 'number' ? 1 : 2)
      .map(String)
      .join('.');
    entries.set(entry, [...(entries.get(entry) ?? []), issue]);
  }
  return [...entries.values()];
}

/** A missing value takes its owner along, so it goes alone; else all, the last of a list first, for the rest move up. */
function withoutThose(value: unknown, issues: readonly Issue[], base: Json): boolean {
  const missing = issues.find(
    i => i.code !== 'unrecognized_keys' && valueAt(value, deepest(i).path) === undefined,
  );
  if (missing) return without(value, missing, base);
  return [...issues]
    .reverse()
    .map(i => without(value, i, base))
    .some(Boolean);
}

const valueAt = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>((v, k) => (v as Json | null | undefined)?.[String(k)], value);

type Issue = z.core.$ZodIssue;

/** For a union, the branch that came furthest is the one the writer meant. */
function deepest(issue: Issue): Issue {
  if (issue.code !== 'invalid_union') return issue;
  const branches = issue.errors.map(list => list[0]).filter(i => i !== undefined);
  const best = branches
    .map(b => ({ ...b, path: [...issue.path, ...b.path] }) as Issue)
    .sort((a, b) => b.path.length - a.path.length)[0];
  return best && best.path.length > issue.path.length ? deepest(best) : issue;
}

function told(raw: Issue, value: unknown): Fault[] {
  const issue = deepest(raw);
  const place = issue.path.map(String).join('.') || 'file';
  const at = valueAt(value, issue.path);
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map(key =>
      fault(
        `${place === 'file' ? '' : `${place}.`}${key}`,
        `${key} is not known here`,
        'check the word against docs/job-file.md, or take it out',
      ),
    );
  return [toldOne(issue, place, at)];
}

function toldOne(issue: Issue, place: string, at: unknown): Fault {
  switch (issue.code) {
    case 'invalid_value': {
      const near = typeof at === 'string' ? nearest(at, issue.values.map(String)) : undefined;
      return fault(
        place,
        at === undefined ? 'this is missing' : `${show(at)} is not one of the words known here`,
        near ? `did you mean ${near}?` : `write one of ${issue.values.map(String).join(', ')}`,
      );
    }
    case 'invalid_type':
      return at === undefined
        ? fault(
            place,
            'this is missing',
            `give ${issue.expected === 'string' ? 'a word' : `a ${issue.expected}`}`,
          )
        : fault(
            place,
            `${show(at)} stands where ${issue.expected === 'record' || issue.expected === 'object' ? 'entries' : `a ${issue.expected}`} should be`,
            `write ${issue.expected === 'record' || issue.expected === 'object' ? 'entries with their ids' : `a ${issue.expected}`}`,
          );
    case 'invalid_union':
      return fault(place, `${show(at)} cannot stand here`, 'write a figure, a quantity or an expression');
    case 'invalid_key':
      return fault(
        place,
        `${String(issue.path.at(-1))} cannot be an id`,
        'an id is a letter, then letters, figures or _, at most 41 in all',
      );
    default:
      return fault(place, issue.message.toLowerCase(), 'see docs/job-file.md for what may stand here');
  }
}

const show = (v: unknown): string => {
  const text = typeof v === 'string' ? `"${v}"` : JSON.stringify(v);
  return text === undefined ? 'nothing' : text.length > 40 ? `${text.slice(0, 37)}...` : text;
};

/** Takes the offending value out; if its owner cannot do without it, the owner too. False when nothing could go. */
function without(value: unknown, raw: Issue, base: Json): boolean {
  const issue = deepest(raw);
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map(key => takeOut(value, [...issue.path, key], base)).some(Boolean);
  return takeOut(value, [...issue.path], base);
}

function takeOut(value: unknown, path: PropertyKey[], base: Json): boolean {
  while (path.length > 0) {
    const last = path.pop()!;
    const owner = valueAt(value, path);
    if (Array.isArray(owner)) {
      owner.splice(Number(last), 1);
      return true;
    }
    if (isObject(owner) && Object.hasOwn(owner, String(last))) {
      if (path.length === 0 && Object.hasOwn(base, String(last))) owner[String(last)] = base[String(last)];
      else delete owner[String(last)];
      return true;
    }
    // The value was missing: its owner goes.
  }
  return false;
}
