import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import { liftersFor } from '../../checks/lifting.ts';
import type { Derived } from '../../results/derived.ts';
import { showClock, showDate, showText } from '../../results/show.ts';
import { Figure, FigureText, Money } from '../figure.tsx';
import { useShow } from '../person.ts';
import type { JobSession, JobView } from '../session.ts';
import { Asked } from '../why.tsx';
import { changedSince } from './changes.ts';
import { Keep } from './keep.tsx';

/** The foot of every sheet: what it costs, when it is ready, what changed. It never scrolls away. */
export function TitleBlock({ session, view }: { session: JobSession; view: JobView }): ReactNode {
  const { derived } = view;
  return (
    <footer className={view.behind ? 'foot behind' : 'foot'}>
      {derived && <Offer derived={derived} />}
      {derived && <Ready derived={derived} />}
      {derived && <Weight derived={derived} />}
      {derived && <ToBuy derived={derived} />}
      <Changed session={session} view={view} />
      <div className="cell end">
        <span className="row">
          <UndoRedo session={session} view={view} />
        </span>
        <em aria-live="polite">{savedWords(view)}</em>
      </div>
    </footer>
  );
}

export function UndoRedo({ session, view }: { session: JobSession; view: JobView }): ReactNode {
  return (
    <>
      <Button className="act" isDisabled={!view.state?.canUndo} onPress={() => void session.undo()}>
        Undo
      </Button>
      <Button className="act" isDisabled={!view.state?.canRedo} onPress={() => void session.redo()}>
        Redo
      </Button>
    </>
  );
}

function savedWords(view: JobView): string {
  if (view.saving === 'saving') return 'Saving';
  if (view.saving === 'not saved') return 'Not saved';
  const at = view.state?.savedAt;
  if (!at) return '';
  const local = new Date(at);
  if (Number.isNaN(local.getTime())) return 'Saved';
  const two = (n: number): string => String(n).padStart(2, '0');
  return `Saved ${showClock(`T${two(local.getHours())}:${two(local.getMinutes())}`)}`;
}

/** While faults stand a total or a date would be one of half a piece: it is not given out as the offer. */
const faultWords = (faults: number): string => `${faults} ${faults === 1 ? 'fault' : 'faults'} to mend`;

function Offer({ derived: { price, faults } }: { derived: Derived }): ReactNode {
  if (faults.length > 0)
    return (
      <div className="cell big">
        <span>Offer</span>
        <b>not known</b>
        <em>{faultWords(faults.length)}</em>
      </div>
    );
  return (
    <div className="cell big">
      <span>Offer</span>
      <b>
        <Asked figure="offer.total">
          <Money minor={price.total} round />
        </Asked>
      </b>
      <em>
        likely; <Money minor={price.low} round /> to <Money minor={price.high} round />
      </em>
    </div>
  );
}

function Ready({ derived: { days, faults } }: { derived: Derived }): ReactNode {
  if (faults.length > 0)
    return (
      <div className="cell big">
        <span>Ready</span>
        <b>not known</b>
        <em>{faultWords(faults.length)}</em>
      </div>
    );
  const worked = days.days.filter(d => d.entries.length > 0).length;
  const hours = { kind: 'number', value: Math.round(days.handsOnMinutes.likely / 6) / 10 } as const;
  const late = days.deadline && !days.deadline.kept ? days.deadline.daysLate : 0;
  return (
    <div className="cell big">
      <span>Ready</span>
      <b>
        <Asked figure="days.finish">
          {days.finish.likely ? showDate(days.finish.likely, 'short') : 'not known'}
        </Asked>
      </b>
      {late > 0 ? (
        <em className="late">
          {late} {late === 1 ? 'day' : 'days'} after the deadline
        </em>
      ) : (
        <em>
          {worked} working {worked === 1 ? 'day' : 'days'}, <Figure of={hours} /> h
          <span className="long"> at the bench</span>
        </em>
      )}
    </div>
  );
}

/** Mass of the whole, and which parts have none known. */
export function massOf(derived: Derived): { mass: number; unknown: number } {
  let [mass, unknown] = [0, 0];
  for (const group of derived.piece.groups) {
    if (group.mass === null) unknown += group.instances.length;
    else mass += group.mass * group.instances.length;
  }
  return { mass, unknown };
}

const LIFTERS = { 1: 'one lifter', 2: 'two lifters', 3: 'three lifters' };

/** By the same rule as the check of lifting (CHK-29). */
function lifterWords(mass: number): string {
  const people = liftersFor(mass);
  return people ? LIFTERS[people] : 'too heavy to lift whole';
}

function Weight({ derived }: { derived: Derived }): ReactNode {
  const { mass, unknown } = massOf(derived);
  return (
    <div className="cell weight">
      <span>Weight</span>
      <b>
        <Figure of={{ kind: 'mass', value: mass }} />
      </b>
      <em>
        {derived.piece.instances.length === 0
          ? 'nothing is set out'
          : unknown > 0
            ? `${unknown} ${unknown === 1 ? 'part' : 'parts'} not known`
            : lifterWords(mass)}
      </em>
    </div>
  );
}

/** What the bought stock costs; stock from the rack is not counted. */
const buyPrice = (derived: Derived): number => derived.cutting.buy.reduce((sum, line) => sum + line.price, 0);

function ToBuy({ derived }: { derived: Derived }): ReactNode {
  const { cutting } = derived;
  const pieces = cutting.buy.reduce((n, line) => n + line.quantity, 0);
  return (
    <div className="cell buy">
      <span>To buy</span>
      <b>
        {pieces === 0
          ? derived.faults.length > 0
            ? 'not known'
            : 'nothing'
          : `${pieces} ${pieces === 1 ? 'piece' : 'pieces'}`}
      </b>
      <em>
        {derived.faults.length > 0 ? (
          'of what could be worked out'
        ) : pieces === 0 ? (
          'all is in the rack'
        ) : (
          <>
            <Money minor={buyPrice(derived)} />, {cutting.buy[0]!.item}
          </>
        )}
      </em>
    </div>
  );
}

function Changed({ session, view }: { session: JobSession; view: JobView }): ReactNode {
  const show = useShow();
  const since = changedSince(view, show);
  if (view.trouble)
    return (
      <div className="cell chg" role="alert">
        <span>Not done</span>
        <em className="trouble">{view.trouble}</em>
      </div>
    );
  return (
    <div className="cell chg">
      <span>
        {since ? `Since setting-out ${view.before?.kept.number}` : 'Not kept yet'}{' '}
        <Keep session={session} view={view} />
      </span>
      <b>
        {since?.first ? (
          <span className="yours">
            <FigureText text={since.first} />
          </span>
        ) : (
          'nothing changed'
        )}
      </b>
      <em>{since?.first ? <Difference view={view} more={since.more} /> : 'undo goes back step by step'}</em>
    </div>
  );
}

function Difference({ view, more }: { view: JobView; more: number }): ReactNode {
  const show = useShow();
  const [before, now] = [view.before?.derived, view.derived];
  const rest = more > 0 ? `and ${more} more; ` : '';
  if (!before || !now) return rest.replace('; ', '');
  const by = now.price.total - before.price.total;
  const money = showText({ kind: 'money', value: Math.abs(by) }, show);
  const price = by === 0 ? 'same price' : `${by > 0 ? '+' : '\u2212'}${money}`;
  const [from, to] = [before.days.finish.likely, now.days.finish.likely];
  const date =
    from === to ? 'no change of date' : `ready ${showDate(to, 'short')}, was ${showDate(from, 'short')}`;
  return `${rest}${price}, ${date}`;
}
