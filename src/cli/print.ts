import pc from 'picocolors';
import { formatHours, formatMinutes } from '../quantities/time.ts';
import type { Check, Severity } from '../results/checks.ts';
import { goWords } from '../results/days.ts';
import type { Derived } from '../results/derived.ts';
import type { Fault } from '../results/fault.ts';
import { mm, q } from '../results/quantity.ts';
import { type ShowOptions, sayText, showDate, showQuantity, showText } from '../results/show.ts';
import type { Why } from '../results/why.ts';
import { partResults } from './results.ts';

/** Readable tables for a person at a terminal. Every function returns lines. */

type Align = 'left' | 'right';

/** A plain table: columns as wide as they need, figures to the right. */
export function table(head: string[], rows: string[][], align: Align[]): string[] {
  const width = head.map((h, i) => Math.max(h.length, ...rows.map(r => (r[i] ?? '').length)));
  const line = (cells: string[]): string =>
    cells
      .map((c, i) => (align[i] === 'right' ? c.padStart(width[i]!) : c.padEnd(width[i]!)))
      .join('  ')
      .trimEnd();
  return [pc.dim(line(head)), ...rows.map(line)];
}

export const figure = (value: number | null, show: ShowOptions): string =>
  value === null ? '-' : showQuantity(mm(value), show).figure;

export function partLines(derived: Derived, show: ShowOptions): string[] {
  const rows = partResults(derived).map(p => [
    p.mark,
    p.name,
    String(p.quantity),
    ...[p.length, p.width, p.thickness, p.shoulderLength].map(v =>
      // Screws and hinges are bought by count and have no sizes here.
      p.kind === 'bought-in' && v === 0 ? '-' : figure(v, show),
    ),
    p.kind === 'bought-in'
      ? '-'
      : [p.blank.length, p.blank.width, p.blank.thickness].map(v => figure(v, show)).join(' x '),
    p.material,
    p.mass === null ? '-' : p.mass.toFixed(2),
  ]);
  const total = derived.piece.groups.reduce((sum, g) => sum + (g.mass ?? 0) * g.instances.length, 0);
  const unknown = derived.piece.groups.some(g => g.mass === null && g.kind !== 'bought-in');
  return [
    ...table(
      ['Mark', 'Part', 'No.', 'Length', 'Width', 'Thick', 'Shoulder', 'Blank', 'Material', 'kg each'],
      rows,
      ['left', 'left', 'right', 'right', 'right', 'right', 'right', 'left', 'left', 'right'],
    ),
    '',
    `${derived.piece.instances.length} pieces, ${total.toFixed(1)} kg${unknown ? ' and what has no known density' : ''}; sizes in ${show.unit}.`,
  ];
}

export function setUpLines(derived: Derived, show: ShowOptions): string[] {
  const { setups } = derived;
  const fine = { ...show, trim: false, decimals: 1 };
  const lines = setups.setups.flatMap(s => [
    `${String(s.number).padStart(3)}  ${pc.bold(s.title)}  ${pc.dim(`${s.machine}, ${s.tool}`)}`,
    `     ${s.settings.map(x => `${x.name} ${showText(x.value, fine)}`).join(', ')}`,
    `     ${pc.dim(s.settings.map(x => `${x.name}: ${x.how}`).join('; '))}`,
  ]);
  for (const u of setups.unmade) lines.push(pc.red(`  ${u.instance}, ${u.cut}: ${u.reason}. ${u.mend}`));
  if (setups.asks?.length) lines.push('', pc.bold('To write into the workshop file'));
  for (const a of setups.asks ?? [])
    lines.push(`  ${a.machine}: ${a.asks}. ${pc.dim(`Needed for ${a.because}.`)}`);
  lines.push(
    '',
    `${setups.setups.length} set-ups, ${formatMinutes(setups.value)} of change-over (${standing(setups.status)}; no order needs less than ${formatMinutes(setups.bound)}); part by part it would be ${formatMinutes(setups.partByPart)}.`,
  );
  return lines;
}

const standing = (status: string): string =>
  status === 'proved best' ? 'proved best' : status === 'within' ? 'near the best' : 'as good as found';

export function dayLines(derived: Derived): string[] {
  const { days } = derived;
  const lines = days.days.flatMap(d => [
    pc.bold(showDate(d.date, 'long')),
    ...d.entries.map(
      e =>
        `  ${e.start.slice(11, 16)} to ${e.end.slice(11, 16)}  ${e.title}${e.piece.of > 1 ? ` (${goWords(e)})` : ''}`,
    ),
  ]);
  for (const t of days.trouble) lines.push(pc.red(`  ${t.what} ${t.mend}`));
  lines.push(
    '',
    `Ready ${showDate(days.finish.likely, 'long')}; ${formatHours(days.handsOnMinutes.likely)} at the bench (${formatHours(days.handsOnMinutes.low)} to ${formatHours(days.handsOnMinutes.high)}).`,
  );
  if (days.deadline)
    lines.push(
      days.deadline.kept
        ? `The deadline, ${showDate(days.deadline.date, 'long')}, is kept.`
        : pc.red(
            `${days.deadline.daysLate} days after the deadline, ${showDate(days.deadline.date, 'long')}.`,
          ),
    );
  return lines;
}

const COLOUR: Record<Severity, (s: string) => string> = {
  stop: pc.red,
  attend: pc.yellow,
  unknown: pc.cyan,
  pending: pc.dim,
  note: s => s,
  pass: pc.green,
};
const WORD: Record<Severity, string> = {
  stop: 'Stop',
  attend: 'Attend',
  unknown: 'Not known',
  pending: 'Working',
  note: 'Note',
  pass: 'Pass',
};

/** Worst first; five in full, the rest in a line each when `all`. */
export function checkLines(checks: readonly Check[], show: ShowOptions, all: boolean): string[] {
  const open = checks.filter(c => c.severity !== 'pass');
  const shown = all ? checks : open.slice(0, 5);
  const lines = shown.flatMap(c => [
    `${COLOUR[c.severity](WORD[c.severity].padEnd(10))} ${pc.bold(c.title)}`,
    `           ${sayText(c.say, show)}`,
    ...(c.severity === 'pass' ? [] : [`           ${c.remedy}`]),
    pc.dim(`           ${c.source} (${c.basis})`),
  ]);
  const passed = checks.filter(c => c.severity === 'pass').length;
  return [
    ...lines,
    '',
    `${open.length} to look at, ${passed} pass${all || open.length <= 5 ? '' : `; ${open.length - 5} more with --all`}.`,
  ];
}

export function priceLines(derived: Derived, show: ShowOptions): string[] {
  const money = (minor: number): string => showQuantity(q('money', minor), show).figure;
  const { price } = derived;
  return [
    ...table(
      ['', 'Amount', 'How'],
      [
        ...price.lines.map(l => [l.label, money(l.amount), l.how]),
        ['Net', money(price.net), ''],
        ['Tax', money(price.tax), ''],
        ['Total', money(price.total), ''],
      ],
      ['left', 'right', 'left'],
    ),
    '',
    `Likely ${money(price.total)}; ${money(price.low)} to ${money(price.high)} from the spread of hours.`,
  ];
}

export function whyLines(why: Why, show: ShowOptions, depth = 0, seen = new Set<string>()): string[] {
  const value = why.value ? showText(why.value, show) : 'not known';
  const reason = [
    why.formula,
    why.rule ? `rule ${why.rule.number}: ${why.rule.says} ${why.rule.reason}` : undefined,
    why.source && why.how !== 'entered' && why.how !== 'expression'
      ? `${why.source.text} (${why.source.basis})`
      : undefined,
    why.how === 'entered' ? 'as you entered it' : undefined,
  ].filter(t => t !== undefined && t !== '');
  const lines = [
    `${'  '.repeat(depth)}${why.label}: ${pc.bold(value)}${reason.length > 0 ? pc.dim(`  ${reason.join('; ')}`) : ''}`,
  ];
  if (seen.has(why.figure)) return lines;
  seen.add(why.figure);
  return [...lines, ...why.inputs.flatMap(i => whyLines(i, show, depth + 1, seen))];
}

/**
 * Names and notes are text: control characters in them must not steer the terminal. Our own colours
 * (escape, bracket, figures, m) and line ends stay.
 */
export const plainText = (line: string): string => line.replace(STEERING, '\ufffd');

// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what it looks for.
const STEERING = /\x1b(?!\[\d{1,2}m)|[\x00-\x08\x0b-\x1a\x1c-\x1f\x7f-\x9f]/g;

export const faultLine = (f: Fault): string =>
  `${f.line === undefined ? '' : `line ${f.line}: `}${f.place}: ${f.fault}. ${capital(f.mend)}.`;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1).replace(/\.$/, '');
