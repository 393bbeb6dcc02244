import type { ReactNode } from 'react';
import { formatHours } from '../../quantities/time.ts';
import type { Derived } from '../../results/derived.ts';
import type { PriceLine } from '../../results/price.ts';
import { Money } from '../figure.tsx';
import { Asked, sourceWords, WhyNote } from '../why.tsx';

/** How the offer is made up, line by line. */
export function PricePage({ derived }: { derived: Derived }): ReactNode {
  const { price } = derived;
  return (
    <main className="price">
      <section aria-labelledby="price">
        <h2 id="price">
          What it costs{' '}
          <span className="quiet">
            {formatHours(price.hours.likely * 60)} likely, {formatHours(price.hours.low * 60)} to{' '}
            {formatHours(price.hours.high * 60)}
          </span>
        </h2>
        <table>
          <thead>
            <tr>
              <th scope="col">Line</th>
              <th scope="col">How</th>
              <th scope="col" className="n">
                Amount
              </th>
            </tr>
          </thead>
          <tbody>
            {price.lines.map(line => (
              <Line key={line.id} line={line} />
            ))}
          </tbody>
          <tfoot>
            <tr>
              <td>Before tax</td>
              <td />
              <td className="n fig">
                <Asked figure="offer.net">
                  <Money minor={price.net} />
                </Asked>
              </td>
            </tr>
            <tr>
              <td>Tax</td>
              <td>{price.tax === 0 ? 'none is charged' : ''}</td>
              <td className="n">
                <Asked figure="offer.tax">
                  <Money minor={price.tax} />
                </Asked>
              </td>
            </tr>
            <tr className="total">
              <td>{derived.faults.length > 0 ? 'Of what could be worked out' : 'Offer'}</td>
              <td>
                likely; <Money minor={price.low} /> to <Money minor={price.high} />
              </td>
              <td className="n">
                <Asked figure="offer.total">
                  <Money minor={price.total} />
                </Asked>
              </td>
            </tr>
          </tfoot>
        </table>
        <WhyNote />
      </section>
    </main>
  );
}

function Line({ line }: { line: PriceLine }): ReactNode {
  return (
    <tr>
      <th scope="row">{line.label}</th>
      <td className="how">
        {line.how}
        {line.source.basis === 'memory' && (
          <span className="quiet"> {sourceWords(line.source.text, line.source.basis)}</span>
        )}
      </td>
      <td className="n fig">
        <Asked figure={`offer.lines.${line.id}`}>
          <Money minor={line.amount} />
        </Asked>
      </td>
    </tr>
  );
}
