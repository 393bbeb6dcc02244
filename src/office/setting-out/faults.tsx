import type { ReactNode } from 'react';
import type { Fault } from '../../results/fault.ts';

const SHOWN = 4;

const capital = (text: string): string => (text[0]?.toUpperCase() ?? '') + text.slice(1);

/** What is wrong in the setting-out: place, fault and mend. What could be derived is shown all the same. */
export function Faults({ faults }: { faults: readonly Fault[] }): ReactNode {
  if (faults.length === 0) return null;
  return (
    <section className="faults" aria-labelledby="faults">
      <h2 id="faults">
        To mend <span className="quiet">{faults.length}</span>
      </h2>
      <ul>
        {faults.slice(0, SHOWN).map(fault => (
          <li key={`${fault.place} ${fault.fault}`}>
            <b>
              {fault.place}
              {fault.line !== undefined && <span className="quiet"> line {fault.line}</span>}
            </b>{' '}
            {capital(fault.fault)}. <span className="mend">{capital(fault.mend)}.</span>
          </li>
        ))}
      </ul>
      {faults.length > SHOWN && <p className="quiet">and {faults.length - SHOWN} more</p>}
    </section>
  );
}
