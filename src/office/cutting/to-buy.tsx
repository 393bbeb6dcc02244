import type { ReactNode } from 'react';
import { boughtFigures } from '../../cutting/orders.ts';
import { materialName } from '../../reference/material-name.ts';
import type { Derived } from '../../results/derived.ts';
import { Money } from '../figure.tsx';

/** What is bought, with carriage and least orders, and what becomes of it. */
export function ToBuy({ derived }: { derived: Derived }): ReactNode {
  const { buy, orders } = derived.cutting;
  if (buy.length === 0) return null;
  const goods = buy.reduce((sum, line) => sum + line.price, 0);
  const extra = orders.flatMap(order => [
    ...(order.delivery > 0 ? [{ what: 'Carriage', ...order, amount: order.delivery }] : []),
    ...(order.shortfall > 0
      ? [{ what: 'Made up to the least order', ...order, amount: order.shortfall }]
      : []),
  ]);
  const all = goods + extra.reduce((sum, line) => sum + line.amount, 0);
  return (
    <section className="tobuy" aria-labelledby="tobuy">
      <h2 id="tobuy">To buy</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">Item</th>
            <th scope="col">From</th>
            <th scope="col" className="n">
              No.
            </th>
            <th scope="col" className="n">
              Each
            </th>
            <th scope="col" className="n">
              Price
            </th>
          </tr>
        </thead>
        <tbody>
          {buy.map(line => (
            <tr key={`${line.item} ${line.supplier}`}>
              <td>{line.item}</td>
              <td>{line.supplier}</td>
              <td className="n">{line.quantity}</td>
              <td className="n">
                <Money minor={line.unitPrice} />
              </td>
              <td className="n fig">
                <Money minor={line.price} />
              </td>
            </tr>
          ))}
          {extra.map(line => (
            <tr key={`${line.what} ${line.supplier}`}>
              <td>{line.what}</td>
              <td>{line.supplier}</td>
              <td />
              <td />
              <td className="n fig">
                <Money minor={line.amount} />
              </td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <td>All of it</td>
            <td />
            <td />
            <td />
            <td className="n fig">
              <Money minor={all} />
            </td>
          </tr>
        </tfoot>
      </table>
      <ul className="bought">
        {boughtFigures(derived.cutting).map(one => (
          <li key={`${one.material} ${one.section}`}>
            {materialName(one.material)} {one.section}: {Math.round(one.waste * 100)}
            {'\u202f'}% of what is bought is waste
            {one.leftValue > 0 && (
              <>
                ; offcuts worth <Money minor={one.leftValue} /> stay
              </>
            )}
            .
          </li>
        ))}
      </ul>
    </section>
  );
}
