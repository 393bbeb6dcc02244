import { place, words } from '../drawings/list.ts';
import { type Manner, PAPER } from '../drawings/manner.ts';
import { type PartPlan, partPlan } from '../drawings/part-plan.ts';
import type { Derived } from '../results/derived.ts';
import type { PartGroup } from '../results/piece.ts';
import type { ShowOptions } from '../results/show.ts';
import { A4, type Book, COLUMN } from './book.ts';
import { STYLE } from './typeset.ts';

const MANNER: Manner = { ...PAPER, weight: 0.7, text: 2.7 };
const TITLE = 9;
const BETWEEN = 6;

/** A drawing of each part that carries cuts, for marking out: from end 1, from the face edge, from the face side. */
export function markingPages(book: Book, derived: Derived, show: ShowOptions): void {
  const { groups, instances } = derived.piece;
  const plans = groups.flatMap(group => {
    const instance = instances.find(i => i.id === group.instances[0]);
    if (!instance || instance.cuts.length === 0 || instance.measureFirst || group.kind === 'bought-in')
      return [];
    const plan = partPlan(instance, {
      width: COLUMN,
      height: 96,
      manner: MANNER,
      show,
      scales: [1, 0.5, 0.2, 0.1],
    });
    return [{ group, plan }];
  });
  if (plans.length === 0) return;
  book.startPage('Marking out');
  book.text(
    'Face edge above, face side below. Figures run from end 1 along the part, from the face edge and the face side across it.',
    STYLE.remark,
  );
  book.gap(3);
  for (const row of rowsOf(plans)) {
    const height = Math.max(...row.map(p => p.plan.height)) + TITLE;
    book.need(height);
    let x = A4.left;
    for (const { group, plan } of row) {
      book.add(...title(group, plan, x, book.y), ...place(plan.items, x, book.y + TITLE));
      x += plan.width + BETWEEN;
    }
    book.y += height + 3;
  }
}

interface Placed {
  group: PartGroup;
  plan: PartPlan;
}

/** Drawings side by side as long as the column takes them. */
function rowsOf(plans: readonly Placed[]): Placed[][] {
  const rows: Placed[][] = [];
  let used = 0;
  for (const placed of plans) {
    const row = rows.at(-1);
    if (row && used + BETWEEN + placed.plan.width <= COLUMN) {
      row.push(placed);
      used += BETWEEN + placed.plan.width;
    } else {
      rows.push([placed]);
      used = placed.plan.width;
    }
  }
  return rows;
}

const SCALE_WORD: Record<string, string> = {
  '1': 'full size',
  '0.5': '1 : 2',
  '0.2': '1 : 5',
  '0.1': '1 : 10',
};

function title(group: PartGroup, plan: PartPlan, x: number, y: number) {
  const count = group.instances.length;
  const scale = SCALE_WORD[`${plan.scale}`] ?? 'not to scale';
  const how = `${count === 1 ? '' : `${count} alike, `}${scale}${plan.broken ? ', broken' : ''}`;
  return [
    words([x, y + 3.4], [{ text: group.mark, strong: true }, { text: `\u00a0 ${group.name}` }], {
      size: 3.6,
    }),
    words([x, y + 7], how, { size: 2.9, tone: 'ink-3' }),
  ];
}
