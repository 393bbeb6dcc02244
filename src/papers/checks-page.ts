import { STATE_WORD, stateMark } from '../drawings/marks.ts';
import { type Check, SEVERITIES } from '../results/checks.ts';
import type { Derived } from '../results/derived.ts';
import type { ShowOptions } from '../results/show.ts';
import type { Basis } from '../results/source.ts';
import { A4, type Book, SAFETY_LINE } from './book.ts';
import { instanceMarks } from './names.ts';
import { table } from './table.ts';
import { type Rich, STYLE, sayRuns, textHeight } from './typeset.ts';

const BASIS_WORD: Record<Basis, string> = {
  read: 'read in the source',
  memory: 'from memory, not verified',
  computed: 'computed',
  'common practice': 'common practice',
  workshop: 'the workshop\u2019s own',
  maker: 'the maker\u2019s own',
  measured: 'measured',
};

const INDENT = 30;
const WIDE = 138;

/** Checks worst first, each with figure, limit, remedy and source; then what could not be worked out, and cautions. */
export function checksPages(book: Book, derived: Derived, show: ShowOptions): void {
  book.startPage('Checks');
  book.heading('Checks, worst first');
  const sorted = [...derived.checks].sort(
    (a, b) => SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity),
  );
  const told = sorted.filter(c => c.severity !== 'pass');
  if (told.length === 0) book.text('Every check passes.', STYLE.text);
  for (const check of told) checkItem(book, check, show);
  passes(
    book,
    sorted.filter(c => c.severity === 'pass'),
  );
  unmade(book, derived);
  faults(book, derived);
  cautions(book, derived);
}

function checkItem(book: Book, check: Check, show: ShowOptions): void {
  const title: Rich = check.title;
  const sentence = sayRuns(check.say, show);
  const source = `${check.source} (${BASIS_WORD[check.basis]})`;
  const height =
    textHeight(title, WIDE, STYLE.small, book.ruler) +
    textHeight(sentence, WIDE, STYLE.text, book.ruler) +
    textHeight(check.remedy, WIDE, STYLE.table, book.ruler) +
    textHeight(source, WIDE, STYLE.quiet, book.ruler) +
    5;
  book.need(height);
  book.rule('thin', true);
  book.gap(1.6);
  book.add(...stateMark(check.severity, [A4.left, book.y + 0.6], 3.5));
  const top = book.y;
  book.text(STATE_WORD[check.severity], STYLE.small, { x: 6, width: 22 });
  book.y = top;
  book.text(title, STYLE.small, { x: INDENT });
  book.text(sentence, STYLE.text, { x: INDENT });
  if (check.remedy !== '') book.text(check.remedy, { ...STYLE.table, strong: true }, { x: INDENT });
  book.text(source, STYLE.quiet, { x: INDENT });
  book.gap(1.8);
}

function passes(book: Book, list: readonly Check[]): void {
  if (list.length === 0) return;
  book.gap(2);
  book.label(`Pass, ${list.length}`);
  const titles = [...new Map(list.map(c => [c.title, list.filter(o => o.title === c.title).length]))];
  book.text(titles.map(([title, n]) => (n > 1 ? `${title} (${n})` : title)).join('; '), STYLE.table);
  book.gap(3);
}

function unmade(book: Book, derived: Derived): void {
  const { unmade: rows } = derived.setups;
  if (rows.length === 0) return;
  const marks = instanceMarks(derived.piece);
  book.gap(3);
  book.label('Cuts no machine of the shop makes', 24);
  table(
    book,
    [
      { title: 'Mark', width: 16, strong: true },
      { title: 'Why, and another way', width: 80, grow: 1 },
    ],
    rows.map(row => ({ cells: [marks.get(row.instance) ?? row.instance, `${row.reason} ${row.mend}`] })),
  );
}

function faults(book: Book, derived: Derived): void {
  if (derived.faults.length === 0) return;
  book.gap(4);
  book.label('What could not be worked out', 24);
  table(
    book,
    [
      { title: 'Where', width: 46, strong: true },
      { title: 'What, and its mend', width: 80, grow: 1 },
    ],
    derived.faults.map(f => ({ cells: [f.place, `${f.fault}. ${f.mend}`] })),
  );
}

/** Cautions of the work that no card carries: gluing, finishing, handling. */
function cautions(book: Book, derived: Derived): void {
  const carded = new Set(derived.setups.setups.flatMap(s => s.cautions));
  const all = [...new Set(derived.operations.flatMap(o => o.cautions))].filter(c => !carded.has(c));
  book.gap(4);
  book.label('Cautions', 20);
  for (const caution of all) {
    book.need(textHeight(caution, WIDE, STYLE.table, book.ruler) + 1);
    book.add(...stateMark('attend', [A4.left, book.y + 0.5], 3.4));
    book.text(caution, STYLE.table, { x: 6 });
    book.gap(1);
  }
  book.text(
    `${SAFETY_LINE} Strength and stability figures are aids, not certification. Where anyone\u2019s safety hangs on them, ask a qualified person.`,
    STYLE.text,
  );
}
