import { type ReactNode, useMemo } from 'react';
import { cardDrawing } from '../../drawings/card.ts';
import { DESK } from '../../drawings/manner.ts';
import { formatMinutes } from '../../quantities/time.ts';
import type { Derived } from '../../results/derived.ts';
import type { Setting, SetUp } from '../../results/setups.ts';
import { Drawing } from '../drawing.tsx';
import { Figure } from '../figure.tsx';
import { useShow } from '../person.ts';
import { jobAddress } from '../route.ts';
import { StateMark } from '../state-mark.tsx';

/** Set-ups in the order they are made, each as its card. */
export function SetUpsPage({ id, derived }: { id: string; derived: Derived }): ReactNode {
  const { setups, partByPart, unmade } = derived.setups;
  const change = setups.reduce((sum, s) => sum + s.changeOver, 0);
  return (
    <main className="setups">
      <p className="lead">
        {setups.length === 0
          ? 'No set-ups yet.'
          : `${setups.length} ${setups.length === 1 ? 'set-up' : 'set-ups'}, ${formatMinutes(change)} of changing over; part by part it would be ${formatMinutes(partByPart)}.`}
      </p>
      {unmade.length > 0 && (
        <ul className="unmade">
          {unmade.map(u => (
            <li key={`${u.instance} ${u.cut}`}>
              <StateMark state="attend" />
              <span>
                <b>{u.instance}</b> {u.reason}. <span className="mend">{u.mend}.</span>
              </span>
            </li>
          ))}
        </ul>
      )}
      {setups.map(setup => (
        <Card key={setup.id} job={id} setup={setup} of={setups.length} />
      ))}
    </main>
  );
}

/** Parts run in a set-up, each mark once with how many. */
export function runWords(setup: SetUp): string {
  const marks = new Map<string, Set<string>>();
  for (const run of setup.runs) marks.set(run.mark, (marks.get(run.mark) ?? new Set()).add(run.instance));
  return [...marks].map(([mark, of]) => (of.size > 1 ? `${mark} (${of.size})` : mark)).join(', ');
}

export const passCount = (setup: SetUp): number =>
  setup.runs.reduce((n, r) => n + Math.max(1, r.passes.length), 0);

const capital = (text: string): string => (text[0]?.toUpperCase() ?? '') + text.slice(1);
export const settingName = (setting: Setting): string => capital(setting.name);

function Card({ job, setup, of }: { job: string; setup: SetUp; of: number }): ReactNode {
  const show = useShow();
  const drawing = useMemo(
    () => cardDrawing(setup.drawing, { width: 420, height: 300, manner: DESK, show, id: setup.id }),
    [setup, show],
  );
  return (
    <section className="setup" aria-labelledby={`setup-${setup.number}`}>
      <header>
        <p className="num">
          Set-up <b>{setup.number}</b> of {of}
        </p>
        <h2 id={`setup-${setup.number}`} className="serif">
          {setup.title}
        </h2>
        <p className="mach">
          {setup.machine}, {setup.tool}
        </p>
        <p>
          <a className="act" href={jobAddress(job, 'set-ups', setup.number)}>
            Card for the bench
          </a>
        </p>
      </header>
      <div className="settings">
        <dl>
          {setup.settings.map(setting => (
            <div key={setting.name}>
              <dt>{settingName(setting)}</dt>
              <dd>
                <SettingFigure setting={setting} />
              </dd>
              {setting.how && <dd className="how">{setting.how}</dd>}
            </div>
          ))}
        </dl>
        <p className="run">
          {setup.testPiece && (
            <>
              <b>Test piece</b> first, then{' '}
            </>
          )}
          <b>{runWords(setup)}</b>: {passCount(setup)} {passCount(setup) === 1 ? 'cut' : 'cuts'}
          {setup.kerfSide ? `; kerf ${setup.kerfSide}` : ''}
        </p>
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
      </div>
      <figure>
        <Drawing of={drawing} />
      </figure>
    </section>
  );
}

/** At the saw the trailing zero tells the precision: 45.0. */
export function SettingFigure({ setting, bare = false }: { setting: Setting; bare?: boolean }): ReactNode {
  const show = useShow();
  if (setting.value.kind === 'length' && typeof setting.value.value === 'number' && show.unit === 'mm')
    return (
      <>
        {setting.value.value.toFixed(1).replace('-', '\u2212')}
        {!bare && <span className="u">mm</span>}
      </>
    );
  return <Figure of={setting.value} bare={bare} />;
}
