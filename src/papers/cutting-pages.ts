import { boughtFigures } from '../cutting/orders.ts';
import { tooSmall } from '../cutting/saw-run.ts';
import { type LayoutOptions, layoutDrawing, layoutOverhang } from '../drawings/layout.ts';
import { words } from '../drawings/list.ts';
import { type Manner, PAPER } from '../drawings/manner.ts';
import { type SawStep, sawOrder } from '../drawings/saw-order.ts';
import { sawRunLines } from '../drawings/saw-run-words.ts';
import { formatLength, roundTo } from '../quantities/length.ts';
import { formatMoney } from '../quantities/money.ts';
import { materialName } from '../reference/material-name.ts';
import type { CuttingPlan, MaterialPlan, StockUse } from '../results/cutting.ts';
import type { Derived } from '../results/derived.ts';
import { type ShowOptions, showSize } from '../results/show.ts';
import { A4, type Book, COLUMN } from './book.ts';
import { capital, crossed, instanceMarks, proof } from './names.ts';
import { table } from './table.ts';
import { type Rich, STYLE, textHeight } from './typeset.ts';

const MANNER: Manner = { ...PAPER, weight: 0.8, text: 2.7 };

/** Every length and sheet to one scale with its saw cuts in order, then what is to be bought. */
export function cuttingPages(book: Book, derived: Derived, show: ShowOptions): void {
  const { cutting } = derived;
  const marks = instanceMarks(derived.piece);
  const uses = cutting.materials.flatMap(m => m.uses);
  book.startPage('Cutting');
  if (uses.length > 0) {
    const scale = Math.min(
      ...uses.map(use => (COLUMN - layoutOverhang(use, MANNER)) / use.length),
      ...uses.map(use => 150 / use.width),
    );
    book.text(
      'All to one scale. Every stock is drawn from the end you work from; each cut is kept on the side of its figure, the kerf falls beyond.',
      STYLE.remark,
    );
    book.gap(2);
    for (const plan of cutting.materials) materialSection(book, plan, { scale, manner: MANNER, show, marks });
  }
  unplaced(book, cutting, show);
  shopping(book, cutting, show);
}

function materialSection(book: Book, plan: MaterialPlan, options: LayoutOptions): void {
  if (plan.uses.length === 0) return;
  const first = layoutHeight(plan.uses[0]!, options, book);
  book.need(14 + first);
  book.gap(2);
  book.text(
    [
      { text: materialName(plan.material) },
      { text: `  ${crossed(plan.section)}`, strong: false, size: 0.8, tone: 'ink-3' },
    ],
    STYLE.heading,
  );
  book.text(plan.words, STYLE.text);
  book.text(
    `${proof(plan.status, 'costs less')} Waste ${roundTo(plan.waste * 100, 0)}\u2009% of what is used.`.trim(),
    STYLE.quiet,
  );
  for (const note of plan.notes) book.text(note, STYLE.remark);
  book.gap(2.5);
  for (const use of plan.uses) stockSection(book, use, options);
  runSection(book, plan, options.show);
  book.rule('thin', true);
  book.gap(2);
}

/** One order for all stock of the material, where it saves settings; stock by its number above. */
function runSection(book: Book, plan: MaterialPlan, show: ShowOptions): void {
  const run = sawRunLines(plan, show);
  if (!run || run.settings >= run.apart) return;
  book.label(`In one go: ${run.settings} settings instead of ${run.apart}; stock is counted from the top`);
  for (const [i, step] of run.lines.entries())
    book.text(
      [
        { text: `${i + 1}  ${step.verb} ` },
        { text: step.figure, strong: true },
        { text: ` on ${step.on}`, tone: 'ink-3' },
      ],
      STYLE.table,
      { x: 5 },
    );
  book.gap(3);
}

const stepRuns = (step: SawStep): Rich => [
  { text: `${step.verb} ` },
  ...step.settings.flatMap((s, i) => [
    ...(i > 0 ? [{ text: '; ' }] : []),
    { text: s.figure, strong: true },
    { text: s.times },
  ]),
];

const STEP = { ...STYLE.table, size: 3.4 };
const INDENT = 11;

function layoutHeight(use: StockUse, options: LayoutOptions, book: Book): number {
  const drawing = layoutDrawing(use, options);
  const steps = sawOrder(use, options.show).reduce(
    (sum, step) => sum + textHeight(stepRuns(step), COLUMN - INDENT, STEP, book.ruler) + 0.6,
    0,
  );
  return drawing.height + steps + 8;
}

function stockSection(book: Book, use: StockUse, options: LayoutOptions): void {
  const { show } = options;
  const drawing = layoutDrawing(use, options);
  book.need(layoutHeight(use, options, book));
  const size = showSize({ length: use.length, width: use.width, thickness: use.thickness }, show, use.round);
  book.text(
    [
      { text: crossed(capital(use.label)), strong: true },
      {
        text: `  ${size}, ${use.from === 'rack' ? 'from the rack' : 'to buy'}, kerf ${formatLength(use.kerf, show)}`,
        tone: 'ink-3',
      },
    ],
    STYLE.table,
  );
  book.gap(1);
  book.drawing(drawing);
  sawOrder(use, show).forEach((step, i) => {
    const height = textHeight(stepRuns(step), COLUMN - INDENT, STEP, book.ruler);
    if (book.need(height)) book.gap(0);
    book.tick(A4.left, book.y + 0.5, 3.4);
    book.add(
      words([A4.left + 9, book.y + 3.35], `${i + 1}`, { size: STEP.size, anchor: 'end', tone: 'ink-3' }),
    );
    book.text(stepRuns(step), STEP, { x: INDENT });
    book.gap(0.6);
  });
  for (const small of tooSmall(use)) book.text(small.words, STYLE.remark, { x: INDENT });
  book.gap(4);
}

function unplaced(book: Book, cutting: CuttingPlan, show: ShowOptions): void {
  const rows = cutting.materials.flatMap(m => m.unplaced);
  if (rows.length === 0) return;
  book.heading('No stock for these');
  table(
    book,
    [
      { title: 'Mark', width: 14, strong: true },
      { title: 'Blank', width: 40 },
      { title: 'Why, and what would do', width: 60, grow: 1 },
    ],
    rows.map(({ demand, reason, mend }) => ({
      cells: [demand.mark, showSize(demand, show, demand.round), `${reason} ${mend}`],
    })),
  );
  book.gap(6);
}

function shopping(book: Book, cutting: CuttingPlan, show: ShowOptions): void {
  if (cutting.buy.length === 0) {
    book.text('Nothing to buy: the rack does it.', STYLE.say);
    return;
  }
  const money = (minor: number): string => formatMoney(minor, show.currency);
  book.need(20 + cutting.buy.length * 7);
  book.gap(2);
  book.heading('To buy');
  const total =
    cutting.buy.reduce((sum, l) => sum + l.price, 0) +
    cutting.orders.reduce((sum, order) => sum + order.delivery + order.shortfall, 0);
  table(
    book,
    [
      { title: '', width: 4, tick: true },
      { title: 'No.', width: 9, anchor: 'end', strong: true },
      { title: 'What', width: 60, grow: 1.4 },
      { title: 'From', width: 30, grow: 1 },
      { title: 'Each', width: 20, anchor: 'end' },
      { title: 'In all', width: 22, anchor: 'end' },
    ],
    [
      ...cutting.buy.map(l => ({
        cells: [
          '',
          `${l.quantity}`,
          crossed(capital(l.item)),
          l.supplier,
          money(l.unitPrice),
          money(l.price),
        ],
      })),
      ...cutting.orders.flatMap(order => [
        ...(order.delivery > 0
          ? [{ cells: ['', '', 'Carriage', order.supplier, '', money(order.delivery)] }]
          : []),
        ...(order.shortfall > 0
          ? [{ cells: ['', '', 'Made up to the least order', order.supplier, '', money(order.shortfall)] }]
          : []),
      ]),
      { cells: ['', '', 'In all', '', '', money(total)], total: true },
    ],
  );
  book.gap(2);
  for (const one of boughtFigures(cutting)) {
    const left = one.leftValue > 0 ? `; offcuts worth ${money(one.leftValue)} stay` : '';
    book.text(
      `${materialName(one.material)} ${crossed(one.section)}: ${roundTo(one.waste * 100, 0)}\u2009% of what is bought is waste${left}.`,
      STYLE.remark,
    );
  }
}
