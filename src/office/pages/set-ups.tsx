import { type ReactNode, useLayoutEffect, useRef } from 'react';
import { formatMinutes } from '../../quantities/time.ts';
import type { Derived } from '../../results/derived.ts';
import type { SetUp, SetUpPlan } from '../../results/setups.ts';
import { jobAddress } from '../route.ts';
import type { JobSession } from '../session.ts';
import { SetUpCard } from '../set-ups/card.tsx';
import { type Ticks, useTicks } from '../set-ups/ticks.ts';
import { runWords } from '../set-ups/words.ts';
import { StateMark } from '../state-mark.tsx';

/** Set-ups in the order they are made, and the card of one. */
export function SetUpsPage({
  id,
  derived,
  card,
  session,
}: {
  id: string;
  derived: Derived;
  card: number | undefined;
  session: JobSession;
}): ReactNode {
  const ticks = useTicks(id);
  const { setups } = derived.setups;
  const shown = setups.find(s => s.number === card) ?? setups.find(s => ticks.of(s) !== 'done') ?? setups[0];
  return (
    <main className="setups">
      <section className="order" aria-labelledby="order">
        <h2 id="order">
          In this order <span className="quiet">{orderWords(derived.setups)}</span>
        </h2>
        <Unmade plan={derived.setups} />
        <Asks plan={derived.setups} />
        <Order job={id} setups={setups} shown={shown} ticks={ticks} />
      </section>
      {shown ? (
        <SetUpCard key={shown.id} setup={shown} of={setups.length} ticks={ticks} session={session} />
      ) : (
        <p className="say none">No set-ups yet.</p>
      )}
    </main>
  );
}

function orderWords({ setups, partByPart }: SetUpPlan): string {
  const change = setups.reduce((sum, s) => sum + s.changeOver, 0);
  const saved = partByPart > change ? `, part by part ${formatMinutes(partByPart)}` : '';
  return `${formatMinutes(change)} of changing over${saved}`;
}

function Order({
  job,
  setups,
  shown,
  ticks,
}: {
  job: string;
  setups: readonly SetUp[];
  shown: SetUp | undefined;
  ticks: Ticks;
}): ReactNode {
  const list = useRef<HTMLOListElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the shown one comes into sight when it changes
  useLayoutEffect(() => {
    const on = list.current?.querySelector<HTMLElement>('[aria-current]');
    const box = list.current;
    if (!on || !box || box.scrollHeight <= box.clientHeight) return;
    const top = on.offsetTop - box.offsetTop;
    if (top < box.scrollTop || top + on.offsetHeight > box.scrollTop + box.clientHeight)
      box.scrollTop = top - box.clientHeight / 3;
  }, [shown?.id]);
  return (
    <ol ref={list}>
      {setups.map((setup, i) => {
        const state = ticks.of(setup);
        const machine = setup.machine !== setups[i - 1]?.machine;
        return (
          <li key={setup.id} className={machine ? 'new' : ''}>
            {machine && <h3>{setup.machine}</h3>}
            <a
              href={jobAddress(job, 'set-ups', setup.number)}
              aria-current={setup === shown ? 'true' : undefined}
              className={state === 'done' ? 'done' : ''}
            >
              <span className="n">{setup.number}</span>
              <span>
                {setup.title} <span className="quiet">{runWords(setup)}</span>
              </span>
              <span className="n quiet">
                {state === 'done' ? <StateMark state="pass" word={false} /> : formatMinutes(setup.minutes)}
              </span>
            </a>
          </li>
        );
      })}
    </ol>
  );
}

/** What the workshop file leaves open about machines of these set-ups: folded away, it is no fault. */
function Asks({ plan }: { plan: SetUpPlan }): ReactNode {
  const { asks = [] } = plan;
  if (asks.length === 0) return null;
  return (
    <details className="asks">
      <summary>
        {asks.length === 1 ? 'One thing' : `${asks.length} things`} to write into the workshop file
      </summary>
      <ul>
        {asks.map(a => (
          <li key={`${a.machine} ${a.asks}`}>
            <b>{a.machine}</b>: {a.asks}. <span className="quiet">Needed for {a.because}.</span>
          </li>
        ))}
      </ul>
    </details>
  );
}

function Unmade({ plan }: { plan: SetUpPlan }): ReactNode {
  if (plan.unmade.length === 0) return null;
  return (
    <ul className="unmade">
      {plan.unmade.map(u => (
        <li key={`${u.instance} ${u.cut}`}>
          <StateMark state="attend" word={false} />
          <span>
            <b>{u.instance}</b> {u.reason}. <span className="mend">{u.mend}.</span>
          </span>
        </li>
      ))}
    </ul>
  );
}
