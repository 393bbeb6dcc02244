import { type ReactNode, useMemo, useRef, useState } from 'react';
import { tooSmall } from '../../cutting/saw-run.ts';
import { layoutDrawing, layoutOverhang } from '../../drawings/layout.ts';
import { DESK, small } from '../../drawings/manner.ts';
import { type SawStep, sawOrder } from '../../drawings/saw-order.ts';
import { materialName } from '../../reference/material-name.ts';
import type { MaterialPlan, StockUse } from '../../results/cutting.ts';
import type { Derived } from '../../results/derived.ts';
import { showSize, showText } from '../../results/show.ts';
import { KeepLayout } from '../cutting/keep-layout.tsx';
import { BetterLayouts } from '../cutting/longer-look.tsx';
import { Mill } from '../cutting/mill.tsx';
import { SawRunOrder } from '../cutting/saw-run.tsx';
import { ToBuy } from '../cutting/to-buy.tsx';
import { Drawing } from '../drawing.tsx';
import { FigureText, Length } from '../figure.tsx';
import { useShow } from '../person.ts';
import type { JobSession, JobView } from '../session.ts';
import { StateMark } from '../state-mark.tsx';
import { useSize } from '../use-size.ts';
import { WhyNote } from '../why.tsx';

/** Layouts of every length and sheet, all to one scale, with the order of sawing beside each. */
export function CuttingPage({
  derived,
  session,
  view,
}: {
  derived: Derived;
  session: JobSession;
  view: JobView;
}): ReactNode {
  const { cutting } = derived;
  const host = useRef<HTMLElement>(null);
  const { width } = useSize(host);
  const [picked, setPicked] = useState<string>();
  const uses = cutting.materials.flatMap(m => m.uses);
  const narrow = width < 700;
  const drawing = narrow ? width - 36 : Math.max(300, Math.min(1100, width - 360)) - 64;
  const scale = Math.min(0.45, ...uses.map(u => (drawing - layoutOverhang(u, DESK)) / Math.max(1, u.length)));
  return (
    <main className="cutting" ref={host}>
      <BetterLayouts derived={derived} session={session} view={view} />
      {width > 0 &&
        cutting.materials.map(plan => (
          <Plan
            key={`${plan.material} ${plan.section}`}
            plan={plan}
            keep={use => <KeepLayout use={use} derived={derived} session={session} view={view} />}
            scale={scale}
            narrow={narrow}
            picked={picked}
            onPick={id => setPicked(id === picked ? undefined : id)}
          />
        ))}
      {cutting.materials.length === 0 && <p className="say none">Nothing to cut yet.</p>}
      <Mill derived={derived} />
      <ToBuy derived={derived} />
      <WhyNote hint={false} />
      <Legend derived={derived} />
    </main>
  );
}

/** Drawings made at once: a page of thousands would hang. */
const FIRST_SHOWN = 40;
const MOST_NAMED = 60;

function Plan({
  plan,
  keep,
  scale,
  narrow,
  picked,
  onPick,
}: {
  plan: MaterialPlan;
  keep: (use: StockUse) => ReactNode;
  scale: number;
  narrow: boolean;
  picked: string | undefined;
  onPick: (instance: string) => void;
}): ReactNode {
  const [all, setAll] = useState(false);
  const shown = all ? plan.uses : plan.uses.slice(0, FIRST_SHOWN);
  const rest = plan.uses.length - shown.length;
  return (
    <section className="material">
      {shown.map((use, i) => (
        <Stock
          key={use.id}
          plan={plan}
          keep={keep}
          use={use}
          first={i === 0}
          scale={scale}
          narrow={narrow}
          picked={picked}
          onPick={onPick}
        />
      ))}
      {rest > 0 && (
        <p className="more">
          <button type="button" className="act" onClick={() => setAll(true)}>
            Show the other {rest}
          </button>
        </p>
      )}
      <SawRunOrder plan={plan} />
      {plan.unplaced.length > 0 && (
        <div className="stock">
          <div className="dr">
            <h2>
              {materialName(plan.material)} <span className="quiet">{plan.section}</span>
            </h2>
            <ul className="unplaced">
              {plan.unplaced.slice(0, MOST_NAMED).map(({ demand, reason, mend }, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: like blanks may fail alike
                <li key={`${demand.mark} ${i}`}>
                  <b>
                    {demand.mark} {demand.name}
                  </b>{' '}
                  {reason}. <span className="mend">{mend}.</span>
                </li>
              ))}
              {plan.unplaced.length > MOST_NAMED && (
                <li>and {plan.unplaced.length - MOST_NAMED} more for the like reasons.</li>
              )}
            </ul>
          </div>
          <div className="note">{plan.uses.length === 0 && <p className="lead">{plan.words}</p>}</div>
        </div>
      )}
    </section>
  );
}

function Stock({
  plan,
  keep,
  use,
  first,
  scale,
  narrow,
  picked,
  onPick,
}: {
  plan: MaterialPlan;
  keep: (use: StockUse) => ReactNode;
  use: StockUse;
  first: boolean;
  scale: number;
  narrow: boolean;
  picked: string | undefined;
  onPick: (instance: string) => void;
}): ReactNode {
  const show = useShow();
  const drawing = useMemo(
    () =>
      layoutDrawing(use, {
        scale,
        manner: narrow ? small(DESK) : DESK,
        show,
        ...(picked === undefined ? {} : { picked }),
      }),
    [use, scale, narrow, show, picked],
  );
  return (
    <div className="stock">
      <div className="dr">
        <h2>
          {use.label}{' '}
          <span className="quiet">
            {showSize(use, show, use.round)}, {use.from === 'rack' ? 'from the rack' : 'to buy'}
          </span>
        </h2>
        <Drawing of={drawing} onPick={onPick} />
      </div>
      <div className="note">
        {first && <p className="lead">{plan.words}</p>}
        <SawList steps={sawOrder(use, show)} />
        {tooSmall(use).map(small => (
          <p className="small" key={small.order}>
            <StateMark state="attend" word={false} /> {small.words}
          </p>
        ))}
        {use.left
          .filter(left => left.fate === 'back to the rack')
          .map(left => (
            <p className="ret" key={`${left.x} ${left.y}`}>
              <Length mm={left.length} />{' '}
              {use.round ? (
                ''
              ) : (
                <>
                  &times; <Length mm={left.narrow ?? left.width} />{' '}
                </>
              )}
              goes back
            </p>
          ))}
        {keep(use)}
      </div>
    </div>
  );
}

function SawList({ steps }: { steps: readonly SawStep[] }): ReactNode {
  return (
    <ol>
      {steps.map(step => (
        <li key={step.orders.join()}>
          <span>
            {step.verb}{' '}
            {step.settings.map((s, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: settings keep the order of sawing
              <span key={`${s.figure} ${i}`}>
                {i > 0 && '; '}
                <b>
                  <FigureText text={s.figure} />
                </b>
                {s.times}
              </span>
            ))}
          </span>
        </li>
      ))}
    </ol>
  );
}

const PROOF: Record<MaterialPlan['status'], string> = {
  'proved best': 'Proved best. No plan buys less.',
  within: 'Near the best there can be.',
  stopped: 'The best found so far.',
  none: 'No plan.',
};
const WORST_FIRST = ['none', 'stopped', 'within', 'proved best'] as const;

function Legend({ derived }: { derived: Derived }): ReactNode {
  const show = useShow();
  const { materials } = derived.cutting;
  if (materials.length === 0) return null;
  const status = WORST_FIRST.find(s => materials.some(m => m.status === s)) ?? 'none';
  const all = materials.every(m => m.status === status);
  const kerfs = [...new Set(materials.flatMap(m => m.uses.map(u => u.kerf)))].sort((a, b) => a - b);
  return (
    <div className="legend">
      <p>
        <b>{PROOF[status]}</b> {!all && 'Not every material alike: see each.'}
      </p>
      {kerfs.length > 0 && (
        <p>
          Kerf{' '}
          <b>{kerfs.map(k => showText({ kind: 'length', value: k }, { ...show, trim: false })).join(', ')}</b>
        </p>
      )}
      <p>
        Waste of what is used:{' '}
        {materials
          .filter(m => m.uses.length > 0)
          .map(m => `${materialName(m.material)} ${m.section}: ${Math.round(m.waste * 100)}\u202f%`)
          .join('; ')}
      </p>
    </div>
  );
}
