import type { DisplayList, Item, TextItem } from '../../src/drawings/list.ts';
import type { Ruler } from '../../src/papers/pdf-fonts.ts';

const texts = (items: readonly Item[]): TextItem[] =>
  items.flatMap(item => (item.kind === 'group' ? texts(item.items) : item.kind === 'text' ? [item] : []));

/** All words of a page in the order they are set, spaces made plain. */
export const wordsOf = (page: DisplayList): string =>
  texts(page.items)
    .map(t => t.runs.map(r => r.text).join(''))
    .join(' ')
    .replaceAll(/[\u00a0\u2009\u202f]/g, ' ');

/** Texts that run over the page's margins, as set by the real fonts: none is right. */
export function overPage(page: DisplayList, ruler: Ruler, margin = 8): string[] {
  return texts(page.items).flatMap(t => {
    const width = t.runs.reduce((sum, run) => sum + ruler.width(run, t.face, t.size), 0);
    const before = t.anchor === 'start' ? 0 : t.anchor === 'end' ? width : width / 2;
    const turn = ((t.turn ?? 0) * Math.PI) / 180;
    const ends = [-before, width - before].map(
      d => [t.at[0] + d * Math.cos(turn), t.at[1] + d * Math.sin(turn)] as const,
    );
    const out = ends.some(
      ([x, y]) => x < margin || x > page.width - margin || y < margin || y > page.height - 5,
    );
    return out ? [t.runs.map(r => r.text).join('')] : [];
  });
}
