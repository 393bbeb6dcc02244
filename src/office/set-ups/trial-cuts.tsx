import { type ReactNode, useId, useState } from 'react';
import type { EditOperation } from '../../job/edits.ts';
import { formatLength, parseLength } from '../../quantities/length.ts';
import type { SetUp, Trial } from '../../results/setups.ts';
import { correctedSetting, correctionOf, readsNow } from '../../setups/trials.ts';
import { usePerson, useShow } from '../person.ts';
import type { JobSession } from '../session.ts';
import { StateMark } from '../state-mark.tsx';

/** The number the next trial of a set-up takes. */
const nextTrial = (trials: readonly Trial[]): number => Math.max(0, ...trials.map(t => Number(t.id))) + 1;

/** The edit that keeps a trial: the first of a set-up makes its place, the others go beside it. */
export function trialEdit(setup: SetUp, value: { set: string; measured: string }): EditOperation {
  const trials = setup.trials ?? [];
  const id = String(nextTrial(trials));
  return trials.length === 0
    ? { path: ['trials', setup.id], value: { [id]: value } }
    : { path: ['trials', setup.id, id], value };
}

/**
 * What a trial cut measured, entered; the answer is what the setting goes to, in which direction. Each is kept with
 * the job, so that it is there after a restart, and can be taken back.
 */
export function TrialCuts({ setup, session }: { setup: SetUp; session: JobSession }): ReactNode {
  const { unit } = usePerson();
  const show = useShow();
  const [typed, setTyped] = useState('');
  const field = useId();
  const answer = useId();
  const setting = correctedSetting(setup);
  const now = readsNow(setup);
  if (!setting || now === undefined) return null;
  const trials = setup.trials ?? [];
  const read = typed.trim() === '' ? undefined : parseLength(typed, unit);
  const asked = read?.ok ? correctionOf(setup, now, read.value) : undefined;
  const keep = (): void => {
    if (!read?.ok) return;
    const value = { set: `${now} mm`, measured: `${read.value} mm` };
    void session.commit([trialEdit(setup, value)]);
    setTyped('');
  };
  return (
    <div className="trial-cuts">
      {trials.length > 0 && (
        <ol>
          {trials.map(t => (
            <li key={t.id}>
              <StateMark state={t.older ? 'attend' : t.fits ? 'pass' : 'note'} word={false} />
              <span>
                {t.words}
                {t.older && '; made for another figure, not counted'}
              </span>{' '}
              <button
                type="button"
                className="act"
                onClick={() => void session.commit([{ path: ['trials', setup.id, t.id] }])}
              >
                Take back
              </button>
            </li>
          ))}
        </ol>
      )}
      <form
        onSubmit={event => {
          event.preventDefault();
          keep();
        }}
      >
        <label htmlFor={field}>
          Measured on trial {nextTrial(trials)}, {setting.name} at{' '}
          {formatLength(now, { ...show, trim: false })}
        </label>
        <input
          id={field}
          value={typed}
          inputMode="decimal"
          autoComplete="off"
          aria-describedby={answer}
          aria-invalid={read !== undefined && !read.ok}
          onChange={event => setTyped(event.target.value)}
        />
        <button type="submit" className="btn" disabled={!asked}>
          Keep
        </button>
      </form>
      <p id={answer} role="status">
        {asked ? `${asked.words}.` : read && !read.ok ? `${read.fault}: write ${read.expected}.` : ''}
      </p>
    </div>
  );
}
