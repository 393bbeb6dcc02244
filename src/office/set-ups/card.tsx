import { type ReactNode, useMemo } from 'react';
import { Button } from 'react-aria-components';
import { cardDrawing } from '../../drawings/card.ts';
import { DESK } from '../../drawings/manner.ts';
import type { Run, SetUp } from '../../results/setups.ts';
import { Drawing } from '../drawing.tsx';
import { Figure } from '../figure.tsx';
import { useShow } from '../person.ts';
import type { JobSession } from '../session.ts';
import { StateMark } from '../state-mark.tsx';
import { Asked, WhyNote } from '../why.tsx';
import { SettingFigure } from './setting-figure.tsx';
import { StandsNow } from './stands-now.tsx';
import type { Ticks } from './ticks.ts';
import { TrialCuts } from './trial-cuts.tsx';
import { passCount, passWords, runName, settingName } from './words.ts';

const MANNER = { ...DESK, text: 13 };

/** One machine made ready, as its card: settings, the drawing from where you stand, what to run, cautions. */
export function SetUpCard({
  setup,
  of,
  ticks,
  session,
}: {
  setup: SetUp;
  of: number;
  ticks: Ticks;
  session: JobSession;
}): ReactNode {
  const show = useShow();
  const drawing = useMemo(
    () => cardDrawing(setup.drawing, { width: 560, height: 400, manner: MANNER, show, id: setup.id }),
    [setup, show],
  );
  const state = ticks.of(setup);
  return (
    <article className="card" aria-labelledby="card-title">
      <header>
        <div>
          <h2 id="card-title" className="serif">
            {setup.title}
          </h2>
          <p className="mach">
            {setup.machine}, {setup.tool}
          </p>
        </div>
        <p className="num">
          Set-up <b>{setup.number}</b> of {of}
        </p>
      </header>
      <dl className="settings">
        {setup.settings.map(setting => (
          <div key={setting.name}>
            <dt>{settingName(setting)}</dt>
            <dd>
              <Asked figure={`setups.${setup.id}.${setting.name.replace(/\s+/g, '-')}`}>
                <SettingFigure setting={setting} />
              </Asked>
            </dd>
            {setting.how && <dd className="how">{setting.how}</dd>}
          </div>
        ))}
        {setup.wanted && (
          <div>
            <dt>{setup.wanted.label}</dt>
            <dd>
              <Asked figure={`setups.${setup.id}.wanted`}>
                <Figure of={setup.wanted.value} />
              </Asked>
            </dd>
            <dd className="how">{setup.wanted.how}</dd>
          </div>
        )}
      </dl>
      <WhyNote hint={false} />
      <div className="body">
        <figure>
          <Drawing of={drawing} />
          <figcaption>Seen {setup.drawing.seen ?? 'from where you stand'}.</figcaption>
        </figure>
        <div className="doing">
          <Lines title="Before" lines={setup.before} />
          <Runs setup={setup} />
          <Lines title="After" lines={setup.after} />
        </div>
      </div>
      {setup.accuracy && <p className="quiet accuracy">{setup.accuracy}.</p>}
      {setup.refused && setup.refused.length > 0 && (
        <p className="quiet accuracy">
          Not {setup.refused.map(r => `at the ${r.method}: ${r.reason}`).join('; not ')}.
        </p>
      )}
      {setup.cautions.length > 0 && (
        <ul className="caution">
          {setup.cautions.map(c => (
            <li key={c}>
              <StateMark state="attend" word={false} />
              <span>{c}</span>
            </li>
          ))}
        </ul>
      )}
      {setup.correction && (
        <section className="trial">
          <h3>Trial cut</h3>
          <p>
            {setup.correction.tooBig} {setup.correction.tooSmall}
          </p>
          <TrialCuts setup={setup} session={session} />
        </section>
      )}
      <StandsNow setup={setup} session={session} />
      <p className="row tickrow">
        <Button className="btn" onPress={() => ticks.mark(setup, state !== 'done')}>
          {state === 'done' ? 'Not done after all' : 'Done'}
        </Button>
        {state === 'done' && <StateMark state="pass" />}
        {state === 'older plan' && <span className="quiet">Ticked on an older plan; look again.</span>}
        {ticks.trouble && <span className="trouble">{ticks.trouble}</span>}
      </p>
    </article>
  );
}

function Lines({ title, lines }: { title: string; lines: readonly string[] }): ReactNode {
  if (lines.length === 0) return null;
  return (
    <section>
      <h3>{title}</h3>
      {lines.map(line => (
        <p key={line}>{line}</p>
      ))}
    </section>
  );
}

/** Runs alike in everything but the part stand in one row. */
function Runs({ setup }: { setup: SetUp }): ReactNode {
  const rows = new Map<string, Run[]>();
  for (const run of setup.runs) {
    const key = `${runName(run)} ${run.passes.join()}`;
    rows.set(key, [...(rows.get(key) ?? []), run]);
  }
  const cuts = passCount(setup);
  return (
    <section>
      <h3>
        Run{' '}
        <span className="quiet">
          {cuts} {cuts === 1 ? 'cut' : 'cuts'}
          {setup.kerfSide ? `, kerf ${setup.kerfSide}` : ''}
        </span>
      </h3>
      <table>
        <tbody>
          {setup.testPiece && (
            <tr>
              <th scope="row">Test piece</th>
              <td>as {setup.testPiece.mark}, first</td>
              <td className="n" />
            </tr>
          )}
          {[...rows].map(([key, runs]) => (
            <tr key={key}>
              <th scope="row">{runName(runs[0]!)}</th>
              <td>{passWords(runs[0]!)}</td>
              <td className="n">{runs.length > 1 ? `${runs.length} places` : ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
