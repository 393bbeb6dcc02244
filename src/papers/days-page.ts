import { dayNumber, isoDay } from '../drawings/clock.ts';
import { fortnight } from '../drawings/fortnight.ts';
import { PAPER, small } from '../drawings/manner.ts';
import { formatHours, formatMinutes } from '../quantities/time.ts';
import { type DayEntry, goWords, type WaitEntry } from '../results/days.ts';
import type { Derived } from '../results/derived.ts';
import { showClock, showDate } from '../results/show.ts';
import { type Book, COLUMN } from './book.ts';
import { gapWords, proof } from './names.ts';
import { type Row, table } from './table.ts';
import { STYLE } from './typeset.ts';

const WAIT_WORD: Record<WaitEntry['what'], string> = {
  clamp: 'In clamps',
  dry: 'Dries',
  cure: 'Cures',
  rest: 'Rests',
  delivery: 'On its way',
  outwork: 'Away',
};

/** The days: fortnights as rods, then each day's work with what it leaves to wait. */
export function daysPages(book: Book, derived: Derived): void {
  const { days } = derived;
  if (days.days.length === 0) return;
  book.startPage('Days');
  book.heading(`Ready ${showDate(days.finish.likely, 'long')}`);
  const between =
    days.finish.low === days.finish.high
      ? ''
      : ` Between ${showDate(days.finish.low, 'short')} and ${showDate(days.finish.high, 'short')}, as the hours fall.`;
  const due = days.deadline
    ? ` Due ${showDate(days.deadline.date)}: ${days.deadline.kept ? 'kept' : `${days.deadline.daysLate} days late`}.`
    : '';
  book.text(
    `${formatHours(days.handsOnMinutes.likely)} at the bench, ${formatHours(days.handsOnMinutes.low)} to ${formatHours(days.handsOnMinutes.high)}.${between}${due}`,
    STYLE.text,
  );
  book.text(
    proof(days.status, 'is done sooner') || gapWords(days.status, days.value, days.bound),
    STYLE.quiet,
  );
  book.gap(4);
  rods(book, derived);
  for (const trouble of days.trouble) {
    book.text([{ text: trouble.what, strong: true }, { text: ` ${trouble.mend}` }], STYLE.text);
    book.gap(1);
  }
  book.gap(2);
  dayTable(book, derived);
}

/** As many fortnights as the work takes, four at most; the table below holds every day. */
function rods(book: Book, derived: Derived): void {
  const { days } = derived;
  const first = dayNumber(days.days[0]!.date);
  const last = dayNumber(days.days.at(-1)!.date);
  const shortWords = Object.fromEntries(derived.operations.map(o => [o.id, shorten(o.title)]));
  const job = { name: '', ready: '', promised: true, plan: days, words: shortWords };
  const count = Math.min(4, Math.floor((last - first) / 14) + 1);
  for (let i = 0; i < count; i++) {
    const drawing = fortnight([job], {
      width: COLUMN,
      manner: small(PAPER),
      from: isoDay(first + i * 14),
      bare: true,
    });
    book.drawing(drawing);
    book.gap(3);
  }
}

const SMALL_WORDS = new Set(['a', 'an', 'and', 'at', 'for', 'of', 'off', 'on', 'the', 'to', 'with']);

/** The first two words that carry something say enough in a block. */
const shorten = (title: string): string =>
  title
    .toLowerCase()
    .split(/[ ,:]+/)
    .filter(word => !SMALL_WORDS.has(word))
    .slice(0, 2)
    .join(' ');

function dayTable(book: Book, derived: Derived): void {
  const { days, setups } = derived;
  const cards = new Map(setups.setups.map(s => [s.id, s.number]));
  const waits = new Map(days.waits.map(w => [w.operation, w]));
  const columns = [
    { title: '', width: 4, tick: true },
    { title: 'From', width: 11, anchor: 'end' as const },
    { title: 'To', width: 11, anchor: 'end' as const },
    { title: 'Work', width: 70, grow: 1, strong: true },
    { title: 'Card', width: 9, anchor: 'end' as const },
    { title: 'Hands on', width: 17, anchor: 'end' as const },
  ];
  const rows = days.days
    .filter(day => day.entries.length > 0)
    .flatMap((day): Row[] => {
      const minutes = day.entries.reduce((sum, e) => sum + e.minutes, 0);
      const title = [
        { text: showDate(day.date, 'long') },
        { text: `  ${formatHours(minutes)}`, strong: false, tone: 'ink-3' as const },
      ];
      return [
        { cells: [title], section: true },
        ...day.entries.map(entry => dayRow(entry, derived, cards, waits)),
      ];
    });
  table(book, columns, rows);
}

function dayRow(
  entry: DayEntry,
  derived: Derived,
  cards: ReadonlyMap<string, number>,
  waits: ReadonlyMap<string, WaitEntry>,
): Row {
  const card = entry.setUp === undefined ? undefined : cards.get(entry.setUp);
  const wait = entry.piece.part === entry.piece.of ? waits.get(entry.operation) : undefined;
  const go = goWords(entry);
  const notes: string[] = [];
  if (entry.changeOver) notes.push(`Make the machine ready first, ${formatMinutes(entry.changeOver)}.`);
  if (wait) notes.push(waitNote(wait, derived));
  return {
    cells: [
      '',
      showClock(entry.start),
      showClock(entry.end),
      go ? `${entry.title}, ${go}` : entry.title,
      card === undefined ? '' : `${card}`,
      formatMinutes(entry.minutes),
    ],
    ...(notes.length === 0 ? {} : { note: notes.join(' ') }),
  };
}

function waitNote(wait: WaitEntry, derived: Derived): string {
  const until = `${showDate(wait.end, 'short')} ${showClock(wait.end)}`;
  const titles = wait.meanwhile.slice(0, 3).map(id => derived.operations.find(o => o.id === id)?.title ?? id);
  const meanwhile = titles.length === 0 ? '' : ` Meanwhile: ${titles.join('; ').toLowerCase()}.`;
  return `${WAIT_WORD[wait.what]} until ${until}.${meanwhile}`;
}
