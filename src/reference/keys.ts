/** Keys of the tables: lower-case words joined by hyphens, and hints for a word that is no key. */

/** A row that can be looked up. `also` holds other names in use for the same thing. */
export interface Keyed {
  readonly key: string;
  readonly also?: readonly string[];
}

/** "American Walnut" and "walnut, american" both become "american-walnut" and "walnut-american". */
export function toKey(words: string): string {
  return words
    .toLowerCase()
    .replace(/[^a-z0-9.]+/g, '-')
    .replace(/^-+|-+$/g, '');
}

/** The words of a key in alphabetical order, so that `european-ash` finds `ash-european`. */
function sortedWords(key: string): string {
  return key.split('-').sort().join('-');
}

/** A look-up over rows by key, by another name, or by the same words in another order. */
export interface Table<Row extends Keyed> {
  readonly rows: readonly Row[];
  find(key: string): Row | undefined;
  nearest(word: string, count?: number): string[];
}

/**
 * Builds the look-up once per table.
 * @throws Error when two rows answer to the same words: such a table has no certain answer.
 */
export function table<Row extends Keyed>(rows: readonly Row[]): Table<Row> {
  const byWords = new Map<string, Row>();
  for (const row of rows) {
    for (const name of [row.key, ...(row.also ?? [])]) {
      const words = sortedWords(name);
      const held = byWords.get(words);
      if (held && held !== row) {
        throw new Error(`two rows answer to "${name}": ${held.key} and ${row.key}`);
      }
      byWords.set(words, row);
    }
  }
  return {
    rows,
    find: key => byWords.get(sortedWords(toKey(key))),
    nearest: (word, count = 3) => nearestKeys(word, rows, count),
  };
}

/**
 * The keys most like a word, best first: for the hint "no timber `waulnut`; nearest: walnut-european".
 * Distance is counted against each name and against each of its single words, so "walnut" finds both walnuts.
 * Keys further than half the word's letters away are left out.
 */
export function nearestKeys(word: string, rows: readonly Keyed[], count = 3): string[] {
  const wanted = toKey(word);
  const limit = Math.max(2, Math.floor(wanted.length / 2));
  return rows
    .map(row => ({ key: row.key, distance: nearestDistance(wanted, row) }))
    .filter(candidate => candidate.distance <= limit)
    .sort((a, b) => a.distance - b.distance || (a.key < b.key ? -1 : 1))
    .slice(0, count)
    .map(candidate => candidate.key);
}

function nearestDistance(wanted: string, row: Keyed): number {
  const names = [row.key, ...(row.also ?? [])];
  const whole = names.map(name => editDistance(sortedWords(wanted), sortedWords(name)));
  // One word alone says less than the whole name, so it counts as one letter further away.
  const single = names
    .flatMap(name => name.split('-'))
    .filter(part => part.length > 2)
    .map(part => editDistance(wanted, part) + 1);
  return Math.min(...whole, ...single);
}

/** Letters to insert, delete or exchange to turn one word into the other. */
export function editDistance(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, j) => j);
  for (let i = 1; i <= from.length; i++) {
    const next = [i];
    for (let j = 1; j <= to.length; j++) {
      const exchange = (row[j - 1] ?? 0) + (from[i - 1] === to[j - 1] ? 0 : 1);
      next.push(Math.min(exchange, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[to.length] ?? 0;
}
