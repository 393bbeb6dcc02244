import { type ReactNode, useMemo, useRef } from 'react';
import { dayNumber, isoDay } from '../../drawings/clock.ts';
import { fortnight } from '../../drawings/fortnight.ts';
import { DESK } from '../../drawings/manner.ts';
import { todayRod } from '../../drawings/today.ts';
import { type WaitRow, waitsDrawing } from '../../drawings/waits.ts';
import { formatHours, formatMinutes } from '../../quantities/time.ts';
import { type Day, goWords, type WaitEntry } from '../../results/days.ts';
import type { Derived } from '../../results/derived.ts';
import { showClock, showDate } from '../../results/show.ts';
import { Drawing } from '../drawing.tsx';
import { usePorts } from '../ports.ts';
import { StateMark } from '../state-mark.tsx';
import { useSize } from '../use-size.ts';
import { WhyNote } from '../why.tsx';

/** The day in hand as a standing rod, what is drying, the fortnight, and every day in words. */
export function DaysPage({ derived }: { derived: Derived }): ReactNode {
  const today = usePorts().today();
  const host = useRef<HTMLElement>(null);
  const { width } = useSize(host);
  const { days } = derived;
  const next = days.days.find(d => d.date >= today && d.entries.length > 0) ?? days.days[0];
  if (!next)
    return (
      <main className="days" ref={host}>
        <p className="say none">Nothing to do yet.</p>
      </main>
    );
  return (
    <main className="days" ref={host}>
      {width > 0 && (
        <>
          <div className="two">
            <DayInHand derived={derived} day={next} today={today} width={width < 900 ? width - 36 : 440} />
            <div>
              <Waiting derived={derived} from={next.date} width={width < 900 ? width - 36 : width - 560} />
              <Trouble derived={derived} />
              <SetAside derived={derived} />
            </div>
          </div>
          <Fortnight derived={derived} from={next.date} width={Math.max(640, width - 64)} />
          <Every derived={derived} />
          <WhyNote hint={false} />
        </>
      )}
    </main>
  );
}

/** As tall as what is in the day asks for; what does not fit stands together. */
const rodHeight = ({ entries }: Day): number => Math.min(900, Math.max(420, entries.length * 48 + 40));

function DayInHand({
  derived,
  day,
  today,
  width,
}: {
  derived: Derived;
  day: Day;
  today: string;
  width: number;
}): ReactNode {
  const drawing = useMemo(() => todayRod(day, { width, height: rodHeight(day), manner: DESK }), [day, width]);
  const minutes = day.entries.reduce((n, e) => n + e.minutes, 0);
  return (
    <section className="td">
      <h2>
        {day.date === today ? 'Today' : showDate(day.date, 'short')}{' '}
        <span className="quiet">
          {formatHours(minutes)} at the bench, {derived.title}
        </span>
      </h2>
      <Drawing of={drawing} />
    </section>
  );
}

const FREE: Record<WaitEntry['what'], string> = {
  clamp: 'clamps off',
  dry: 'dry',
  cure: 'cured',
  rest: 'rested',
  delivery: 'here',
  outwork: 'back',
};

/** As much as the names' column of the strips holds; day by day has it in full. */
const inColumn = (text: string): string => (text.length > 28 ? `${text.slice(0, 26).trimEnd()}\u2026` : text);

/** Days shown in the strip of waits. */
const WAIT_DAYS = 4;
const MOST_WAITS = 6;

function Waiting({ derived, from, width }: { derived: Derived; from: string; width: number }): ReactNode {
  const rows = useMemo((): WaitRow[] => {
    const until = isoDay(dayNumber(from) + WAIT_DAYS);
    const titles = new Map(derived.operations.map(o => [o.id, o.title]));
    return derived.days.waits
      .filter(w => w.end >= from && w.start < until)
      .slice(0, MOST_WAITS)
      .map(w => ({
        title: inColumn(titles.get(w.operation) ?? w.operation),
        job:
          w.meanwhile.length > 0
            ? inColumn(`meanwhile ${titles.get(w.meanwhile[0]!) ?? w.meanwhile[0]}`)
            : '',
        what: w.what,
        start: w.start,
        end: w.end,
        say: FREE[w.what],
      }));
  }, [derived, from]);
  const drawing = useMemo(
    () =>
      waitsDrawing(rows, {
        width: Math.max(width, 560),
        manner: DESK,
        from: `${from}T06:00`,
        to: `${isoDay(dayNumber(from) + WAIT_DAYS)}T12:00`,
      }),
    [rows, from, width],
  );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls sideways on a narrow screen, by keyboard too
    <section className="waits" aria-labelledby="waits" tabIndex={0}>
      <h2 id="waits">
        Waiting <span className="quiet">from {showDate(from, 'short')}</span>
      </h2>
      {rows.length === 0 ? <p className="say">Nothing waits in these days.</p> : <Drawing of={drawing} />}
    </section>
  );
}

/** Rules of the order that the maker set aside: each with its risk and his reason. */
function SetAside({ derived }: { derived: Derived }): ReactNode {
  const notes = derived.checks.filter(c => c.check === 'order');
  if (notes.length === 0) return null;
  return (
    <section className="say3" aria-label="Rules set aside">
      {notes.map(note => (
        <div key={note.subject}>
          <StateMark state="attend" />
          <p className="serif">
            {note.title} <span className="quiet">{note.subject}</span>. {note.remedy}
          </p>
        </div>
      ))}
    </section>
  );
}

function Trouble({ derived }: { derived: Derived }): ReactNode {
  const { trouble, deadline } = derived.days;
  if (trouble.length === 0 && (!deadline || deadline.kept)) return null;
  return (
    <section className="say3">
      {deadline && !deadline.kept && (
        <div>
          <StateMark state="stop" />
          <p className="serif">
            The deadline is {showDate(deadline.date, 'long')}; this is ready {deadline.daysLate}{' '}
            {deadline.daysLate === 1 ? 'day' : 'days'} later.
          </p>
        </div>
      )}
      {trouble.map(t => (
        <div key={`${t.operation} ${t.what}`}>
          <StateMark state="attend" />
          <p className="serif">
            {t.what}. {t.mend}.
          </p>
        </div>
      ))}
    </section>
  );
}

function Fortnight({ derived, from, width }: { derived: Derived; from: string; width: number }): ReactNode {
  const drawing = useMemo(
    () =>
      fortnight(
        [
          {
            name: derived.title,
            ready: derived.days.finish.likely ? `ready ${showDate(derived.days.finish.likely, 'short')}` : '',
            promised: true,
            plan: derived.days,
            words: Object.fromEntries(derived.operations.map(o => [o.id, o.title.toLowerCase()])),
          },
        ],
        { width, manner: DESK, from },
      ),
    [derived, from, width],
  );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls sideways on a narrow screen, by keyboard too
    <section className="ft2 wide" aria-labelledby="fortnight" tabIndex={0}>
      <h2 id="fortnight">The fortnight</h2>
      <Drawing of={drawing} />
    </section>
  );
}

/** Every day in words: what the drawings show, for reading, printing and screen readers. */
function Every({ derived }: { derived: Derived }): ReactNode {
  const days = derived.days.days.filter(d => d.entries.length > 0);
  return (
    <section className="every" aria-labelledby="every">
      <h2 id="every">
        Day by day <span className="quiet">{days.length} working days</span>
      </h2>
      <table>
        <tbody>
          {days.flatMap(day =>
            day.entries.map((entry, i) => (
              <tr
                key={`${day.date} ${entry.operation} ${entry.piece.part}`}
                className={i === 0 ? 'first' : ''}
              >
                <th scope="row">{i === 0 ? showDate(day.date, 'short') : ''}</th>
                <td className="n">{showClock(entry.start)}</td>
                <td>
                  {entry.title}
                  {entry.piece.of > 1 && <span className="quiet"> {goWords(entry)}</span>}
                </td>
                <td className="n quiet">{formatMinutes(entry.minutes)}</td>
              </tr>
            )),
          )}
        </tbody>
      </table>
    </section>
  );
}
