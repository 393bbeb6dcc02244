import type { JsonObject } from '../../job/edits.ts';
import { diffDocuments } from '../../job/edits-changes.ts';
import type { Derived } from '../../results/derived.ts';
import { type ShowOptions, showText } from '../../results/show.ts';
import type { JobView } from '../session.ts';

const PLURAL: Record<string, string> = {
  parameters: 'size',
  parts: 'part',
  joints: 'joint',
  features: 'feature',
  assemblies: 'glue-up',
  finishes: 'finish',
};

/** What changed since the last kept setting-out: the first change in words, and how many more there are. */
export function changedSince(view: JobView, show: ShowOptions): { first: string; more: number } | undefined {
  const { before, document, derived } = view;
  if (!before || !document) return undefined;
  const places = new Map<string, string[]>();
  for (const { path } of diffDocuments(before.kept.document, document)) {
    const place = path.slice(0, 2).join('.');
    if (!places.has(place)) places.set(place, path);
  }
  const all = [...places.values()].sort(
    (a, b) => Number(b[0] === 'parameters') - Number(a[0] === 'parameters'),
  );
  const [path] = all;
  if (!path) return { first: '', more: 0 };
  return { first: changeWords(path, before.derived, derived, show, document), more: all.length - 1 };
}

function changeWords(
  path: readonly string[],
  before: Derived | undefined,
  now: Derived | undefined,
  show: ShowOptions,
  document: JsonObject,
): string {
  const [collection, id] = path;
  if (collection === 'parameters') {
    const find = (d: Derived | undefined) => d?.parameters.find(p => p.id === id);
    const [old, current] = [find(before), find(now)];
    const text = (p: ReturnType<typeof find>): string => (p?.value ? showText(p.value, show) : 'none');
    return `${(current ?? old)?.label ?? id} ${text(old)} \u2192 ${text(current)}`;
  }
  if (id === undefined) return `${collection} changed`;
  const word = PLURAL[collection ?? ''] ?? collection;
  const members = document[collection ?? ''];
  const there = typeof members === 'object' && members !== null && id in members;
  return `${word} ${id} ${there ? 'changed' : 'taken out'}`;
}
