import type { ReactNode } from 'react';
import type { Derived } from '../../results/derived.ts';
import { isAt, type JobSession, type JobView } from '../session.ts';
import { UndoRedo } from '../shell/title-block.tsx';
import { ParameterField } from './parameter-field.tsx';

/** The named sizes of the setting-out, in its own order: entered ones in pencil, worked out ones in ink. */
export function Parameters({
  session,
  view,
  derived,
}: {
  session: JobSession;
  view: JobView;
  derived: Derived;
}): ReactNode {
  const faults = [...view.typedFaults, ...derived.faults];
  const faultsOf = (id: string) => faults.filter(f => isAt(f.place, `parameters.${id}`));
  return (
    <section className="par" aria-labelledby="sizes">
      <h2 id="sizes">
        Sizes you may change
        <span className="row phone-only">
          <UndoRedo session={session} view={view} />
        </span>
      </h2>
      {derived.parameters.length === 0 && <p className="say">This setting-out has no named sizes yet.</p>}
      <div className="pars">
        {derived.parameters.map(parameter => (
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
