import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import type { EditOperation, JsonObject } from '../../job/edits.ts';
import type { Check, Mend } from '../../results/checks.ts';
import { Figure, Sentence } from '../figure.tsx';
import type { JobSession } from '../session.ts';
import { StateMark } from '../state-mark.tsx';
import { Asked, sourceWords } from '../why.tsx';
import { parameterEdit } from './parameter-field.tsx';

export function ChecksList({
  checks,
  session,
  document,
  full = false,
}: {
  checks: readonly Check[];
  session: JobSession;
  document: JsonObject;
  /** With limit and source, as on the page of checks. */
  full?: boolean;
}): ReactNode {
  return (
    <ol className={full ? 'check-list full' : 'check-list'}>
      {checks.map((check, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: one check may speak twice of one subject
        <li key={`${check.check} ${check.subject} ${i}`}>
          <StateMark state={check.severity} />
          <div>
            <h3 className="serif">{check.title}</h3>
            <p>
              <Sentence say={check.say} />
            </p>
            {full && <Judged check={check} />}
            {check.remedy && check.severity !== 'pass' && (full || !check.mend) && (
              <p className="remedy">{check.remedy}</p>
            )}
            {check.mend && check.severity !== 'pass' && (
              <Button className="btn" onPress={() => void session.commit(mendEdit(document, check.mend!))}>
                {check.mend.label}
              </Button>
            )}
          </div>
        </li>
      ))}
    </ol>
  );
}

/** The edit that clears a check. A parameter's figure is written with its unit: the file may count in another. */
const mendEdit = (document: JsonObject, mend: Mend): EditOperation[] =>
  mend.edit
    ? [{ path: mend.edit.path, value: mend.edit.value }]
    : parameterEdit(document, mend.parameter, `${mend.value} mm`);

/** Figure against limit, and whose word the limit is. */
function Judged({ check }: { check: Check }): ReactNode {
  const { figure, limit, unit } = check;
  return (
    <p className="judged quiet">
      {figure !== null && (
        <>
          Figure{' '}
          <b>
            <Asked figure={`checks.${check.check}:${check.subject}`}>
              <Figure of={{ kind: unit, value: figure }} />
            </Asked>
          </b>
          {limit === null ? '. ' : ', '}
        </>
      )}
      {limit !== null && (
        <>
          limit{' '}
          <b>
            <Figure of={{ kind: unit, value: limit }} />
          </b>
          .{' '}
        </>
      )}
      {sourceWords(check.source, check.basis)}
    </p>
  );
}
