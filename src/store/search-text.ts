/** Lower case without accents, so that `ébène` is found by `Ebene`. */
export const searchText = (...words: (string | null | undefined)[]): string =>
  words
    .filter(word => word)
    .join(' ')
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase();

/** What is typed into the search, as patterns for `like ... escape '\'`: every word must be found. */
export const searchPatterns = (typed: string): string[] =>
  searchText(typed)
    .split(/\s+/)
    .filter(word => word !== '')
    .slice(0, 8)
    .map(word => `%${word.replaceAll(/[\\%_]/g, String.raw`\$&`)}%`);
