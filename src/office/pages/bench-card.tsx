import { type ReactNode, useMemo, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { cardDrawing } from '../../drawings/card.ts';
import { BENCH } from '../../drawings/manner.ts';
import type { Derived } from '../../results/derived.ts';
import type { SetUp } from '../../results/setups.ts';
import { Drawing } from '../drawing.tsx';
import { Figure } from '../figure.tsx';
import { useShow } from '../person.ts';
import { jobAddress } from '../route.ts';
import type { JobSession } from '../session.ts';
import { SettingFigure } from '../set-ups/setting-figure.tsx';
import { useTicks } from '../set-ups/ticks.ts';
import { TrialCuts } from '../set-ups/trial-cuts.tsx';
import { passCount, runWords, settingName } from '../set-ups/words.ts';
import { StateMark } from '../state-mark.tsx';
import { useSize } from '../use-size.ts';

/** Shown large: what the hand sets first. */
const LARGE = 2;

/** One set-up for the hand at the machine: no scrolling, two large figures, two large buttons. */
export function BenchCard({
  id,
  derived,
  number,
  session,
}: {
  id: string;
  derived: Derived;
  number: number;
  session: JobSession;
}): ReactNode {
  const { setups } = derived.setups;
  const setup = setups.find(s => s.number === number);
  const [trial, setTrial] = useState(false);
  const ticks = useTicks(id);
  const next = setups.find(s => s.number > number);
  if (!setup)
    return (
      <main className="waiting">
        <p className="say">There is no set-up {number} any more.</p>
        <a className="act" href={jobAddress(id, 'set-ups')}>
          All set-ups
        </a>
      </main>
    );
  const done = ticks.of(setup) === 'done';
  return (
    <div className="bench-card">
      <header>
        <a href={jobAddress(id, 'set-ups')}>All set-ups</a>
        <span>
          Set-up <b>{setup.number}</b> of {setups.length}
        </span>
      </header>
      {trial ? <Trial setup={setup} session={session} /> : <Card setup={setup} trouble={ticks.trouble} />}
      <nav aria-label="This set-up">
        {setup.correction || setup.testPiece ? (
          <Button className="b2" onPress={() => setTrial(!trial)}>
            {trial ? 'Back to the card' : 'Trial cut'}
          </Button>
        ) : (
          <Button className="b2" isDisabled={!done} onPress={() => ticks.mark(setup, false)}>
            Not done
          </Button>
        )}
        <Button
          className="b1"
          onPress={() => {
            ticks.mark(setup, true);
            if (next) location.hash = jobAddress(id, 'set-ups', next.number);
          }}
        >
          {done ? 'Done already' : 'Done'}
        </Button>
      </nav>
    </div>
  );
}

function Card({ setup, trouble }: { setup: SetUp; trouble: string | undefined }): ReactNode {
  const show = useShow();
  const host = useRef<HTMLElement>(null);
  const { width, height } = useSize(host);
  const drawing = useMemo(
    () =>
      cardDrawing(setup.drawing, {
        width: Math.max(280, width),
        height: Math.max(220, height - 8),
        manner: BENCH,
        show,
        id: setup.id,
      }),
    [setup, show, width, height],
  );
  const large = setup.settings.slice(0, LARGE);
  const rest = setup.settings.slice(LARGE);
  return (
    <main>
      <h1 className="serif">{setup.title}</h1>
      <p className="mach">
        {setup.machine}, {setup.tool}
      </p>
      <dl>
        {large.map(setting => (
          <div key={setting.name}>
            <dt>
              {settingName(setting)}
              {setting.value.kind === 'length' && <span className="u">{show.unit}</span>}
            </dt>
            <dd>
              <SettingFigure setting={setting} bare />
            </dd>
          </div>
        ))}
      </dl>
      <p className="run">
        {rest.map(setting => (
          <span key={setting.name}>
            {settingName(setting)}{' '}
            <b>
              <SettingFigure setting={setting} />
            </b>
            .{' '}
          </span>
        ))}
        {setup.testPiece && (
          <>
            <b>Test piece</b> first, then{' '}
          </>
        )}
        <b>{runWords(setup)}</b>: <b>{passCount(setup)}</b> cuts
      </p>
      <figure ref={host}>{width > 0 && <Drawing of={drawing} />}</figure>
      {trouble && (
        <p className="trouble" role="alert">
          {trouble}
        </p>
      )}
      <ul className="caution">
        {setup.cautions.slice(0, 2).map(c => (
          <li key={c}>
            <StateMark state="attend" word={false} />
            <span>{c}</span>
          </li>
        ))}
      </ul>
    </main>
  );
}

/** How a measured error on the trial cut moves the fence. */
function Trial({ setup, session }: { setup: SetUp; session: JobSession }): ReactNode {
  const { wanted, correction, testPiece } = setup;
  return (
    <main>
      <h1 className="serif">Trial cut</h1>
      {testPiece && <p className="mach">On the test piece {testPiece.mark}, same section.</p>}
      {wanted && (
        <dl>
          <div>
            <dt>{wanted.label}</dt>
            <dd>
              <Figure of={wanted.value} bare />
            </dd>
          </div>
        </dl>
      )}
      {wanted && <p className="run">{wanted.how}</p>}
      <TrialCuts setup={setup} session={session} />
      {correction && (
        <ul className="caution">
          <li>
            <StateMark state="note" word={false} />
            <span>{correction.tooBig}</span>
          </li>
          <li>
            <StateMark state="note" word={false} />
            <span>{correction.tooSmall}</span>
          </li>
          <li>
            <StateMark state="note" word={false} />
            <span>
              {correction.share === 'half'
                ? 'Both faces are cut: move the fence by half of what you measure.'
                : 'One face is cut: move the fence by all of what you measure.'}
            </span>
          </li>
        </ul>
      )}
    </main>
  );
}
