import { type ReactNode, useId, useState } from 'react';
import { madeFromJob } from '../../cutting/kept-layouts.ts';
import {
  keepLayout,
  layoutDone,
  type MeasuredOffcut,
  rackAfter,
  releaseLayout,
} from '../../job/layout-edits.ts';
import { formatLength, parseLength } from '../../quantities/length.ts';
import type { StockUse } from '../../results/cutting.ts';
import type { Derived } from '../../results/derived.ts';
import { showDate } from '../../results/show.ts';
import type { CuttingDocument } from '../../setting-out/cutting-schema.ts';
import { usePerson, useShow } from '../person.ts';
import { usePorts } from '../ports.ts';
import type { JobSession, JobView } from '../session.ts';
import { StateMark } from '../state-mark.tsx';

interface Props {
  use: StockUse;
  derived: Derived;
  session: JobSession;
  view: JobView;
}

/** Keeps a layout as it stands, lets it go, or ticks it cut with what was left as measured. */
export function KeepLayout({ use, derived, session, view }: Props): ReactNode {
  const [asking, setAsking] = useState(false);
  const document = view.document ?? {};
  const hash = (): string => madeFromJob(use, derived, document.cutting as CuttingDocument | undefined);
  const { kept } = use;
  return (
    <div className="laid">
      {kept && (
        <p className="fate">
          <StateMark state={kept.stale.length > 0 ? 'attend' : 'pass'} word={false} />{' '}
          {kept.done ? `Cut ${showDate(kept.done)}.` : 'Kept as it stands.'}
        </p>
      )}
      {kept?.stale.map(words => (
        <p className="stale" key={words}>
          {words}
        </p>
      ))}
      {!kept?.done && !asking && (
        <p className="acts">
          {kept ? (
            <button
              type="button"
              className="act"
              onClick={() => void session.commit([releaseLayout(use.id)])}
            >
              Plan it again
            </button>
          ) : (
            <button
              type="button"
              className="act"
              onClick={() => void session.commit([keepLayout(document, use, hash())])}
            >
              Keep this layout
            </button>
          )}{' '}
          <button type="button" className="act" onClick={() => setAsking(true)}>
            It is cut
          </button>
        </p>
      )}
      {asking && (
        <Measured use={use} hash={hash} session={session} view={view} close={() => setAsking(false)} />
      )}
    </div>
  );
}

/** Asks for each offcut as measured; an empty one does not go back. */
function Measured({
  use,
  hash,
  session,
  view,
  close,
}: {
  use: StockUse;
  hash: () => string;
  session: JobSession;
  view: JobView;
  close: () => void;
}): ReactNode {
  const { unit } = usePerson();
  const show = useShow();
  const ports = usePorts();
  const id = useId();
  const back = use.left.filter(left => left.fate === 'back to the rack');
  const [typed, setTyped] = useState(() =>
    back.map(left => ({
      length: formatLength(left.length, show),
      width: formatLength(left.narrow ?? left.width, show),
    })),
  );
  const read = typed.map(({ length, width }) => {
    if (length.trim() === '' || width.trim() === '') return undefined;
    const [l, w] = [parseLength(length, unit), parseLength(width, unit)];
    return l.ok && w.ok && l.value > 0 && w.value > 0 ? { length: l.value, width: w.value } : 'wrong';
  });
  const wrong = read.includes('wrong');
  const done = (): void => {
    const offcuts = read.filter((one): one is MeasuredOffcut => one !== undefined && one !== 'wrong');
    const tag = `${String(view.document?.number ?? 'job')}-${use.id}`
      .replace(/[^A-Za-z0-9]+/g, '-')
      .slice(0, 40);
    void session.commit([layoutDone(view.document ?? {}, use, hash(), ports.today(), offcuts)]);
    void session.changeWorkshop(workshop => rackAfter(workshop, use, offcuts, tag));
    close();
  };
  return (
    <form
      className="measured"
      onSubmit={event => {
        event.preventDefault();
        if (!wrong) done();
      }}
    >
      {back.length === 0 && <p>Nothing is left to keep.</p>}
      {back.map((left, i) => (
        <fieldset key={`${left.x} ${left.y}`}>
          <legend>Offcut {i + 1} as measured</legend>
          {(['length', 'width'] as const).map(side =>
            side === 'width' && use.round ? null : (
              <label key={side} htmlFor={`${id}${i}${side}`}>
                {side === 'length' ? 'Length' : 'Width'}
                <input
                  id={`${id}${i}${side}`}
                  inputMode="decimal"
                  value={typed[i]?.[side] ?? ''}
                  aria-invalid={read[i] === 'wrong'}
                  onChange={event =>
                    setTyped(typed.map((one, k) => (k === i ? { ...one, [side]: event.target.value } : one)))
                  }
                />
              </label>
            ),
          )}
        </fieldset>
      ))}
      {wrong && <p className="stale">A size is not a length above 0: write 598, or leave it empty.</p>}
      <p className="acts">
        <button type="submit" className="btn" disabled={wrong}>
          Cut, offcuts to the rack
        </button>{' '}
        <button type="button" className="act" onClick={close}>
          Not yet
        </button>
      </p>
    </form>
  );
}
