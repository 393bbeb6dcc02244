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

interface Box {
  text: string;
  x0: number;
  x1: number;
  y0: number;
  y1: number;
}

/** What a text covers, a little less than its letters; only level and upright text is asked about. */
function boxOf(t: TextItem, ruler: Ruler): Box | undefined {
  const width = t.runs.reduce((sum, run) => sum + ruler.width(run, t.face, t.size), 0);
  const before = t.anchor === 'start' ? 0 : t.anchor === 'end' ? width : width / 2;
  const [x, y] = t.at;
  const text = t.runs.map(r => r.text).join('');
  if (text.trim() === '') return undefined;
  const [up, down, slack] = [t.size * 0.55, t.size * 0.02, 0.15];
  if (!t.turn)
    return { text, x0: x - before + slack, x1: x - before + width - slack, y0: y - up, y1: y - down };
  if (t.turn === -90)
    return { text, x0: x - up, x1: x - down, y0: y - (width - before) + slack, y1: y + before - slack };
  return undefined;
}

/** Pairs of texts that run into each other. */
export function collisions(page: DisplayList, ruler: Ruler): string[] {
  const boxes = texts(page.items)
    .map(t => boxOf(t, ruler))
    .filter(b => b !== undefined);
  return boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter(b => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1)
      .map(b => `${page.title}: "${a.text}" and "${b.text}"`),
  );
}
