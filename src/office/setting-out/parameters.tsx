import type { ReactNode } from 'react';
import type { Derived } from '../../results/derived.ts';
import type { JobSession, JobView } from '../session.ts';
import { UndoRedo } from '../shell/title-block.tsx';
import { ParameterField } from './parameter-field.tsx';

/** The sizes of the setting-out: those that may be typed over first, those worked out after them. */
export function Parameters({
  session,
  view,
  derived,
}: {
  session: JobSession;
  view: JobView;
  derived: Derived;
}): ReactNode {
  const sorted = [...derived.parameters].sort((a, b) => Number(b.entered) - Number(a.entered));
  const faultsOf = (id: string) =>
    derived.faults.filter(f => f.place === `parameters.${id}` || f.place.startsWith(`parameters.${id}.`));
  return (
    <section className="par" aria-labelledby="sizes">
      <h2 id="sizes">
        Sizes you may change
        <span className="row phone-only">
          <UndoRedo session={session} view={view} />
        </span>
      </h2>
      {sorted.length === 0 && <p className="say">This setting-out has no named sizes yet.</p>}
      <div className="pars">
        {sorted.map(parameter => (
          <ParameterField
            key={parameter.id}
            parameter={parameter}
            document={view.state!.document}
            faults={faultsOf(parameter.id)}
            behind={view.behind}
            preview={operations => session.preview(operations)}
            commit={operations => void session.commit(operations)}
            settle={() => session.settle()}
          />
        ))}
      </div>
    </section>
  );
}
