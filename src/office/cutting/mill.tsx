import { type ReactNode, useMemo } from 'react';
import { millLists } from '../../cutting/mill-lists.ts';
import { formatMinutes } from '../../quantities/time.ts';
import type { Derived } from '../../results/derived.ts';
import { Length } from '../figure.tsx';

/** Timber in two goes: out of the boards with its allowances, then, rested, to size. */
export function Mill({ derived }: { derived: Derived }): ReactNode {
  const lists = useMemo(
    () => millLists(derived.cutting, derived.piece, derived.operations),
    [derived.cutting, derived.piece, derived.operations],
  );
  if (lists.rough.length === 0) return null;
  const minutes = lists.rest.map(rest => rest.minutes);
  return (
    <section className="mill" aria-labelledby="mill">
      <h2 id="mill">Milling</h2>
      <div className="lists">
        <table>
          <caption>Rough-mill, out of the boards: cross-cut, then rip</caption>
          <thead>
            <tr>
              <th scope="col">Part</th>
              <th scope="col">From</th>
              <th scope="col" className="n">
                No.
              </th>
              <th scope="col" className="n">
                Length
              </th>
              <th scope="col" className="n">
                Width
              </th>
            </tr>
          </thead>
          <tbody>
            {lists.rough.map(row => (
              <tr key={`${row.use} ${row.mark} ${row.length} ${row.width}`}>
                <td>
                  <b>{row.mark}</b> {row.name}
                </td>
                <td>{row.label}</td>
                <td className="n">{row.number}</td>
                <td className="n fig">
                  <Length mm={row.length} />
                </td>
                <td className="n fig">
                  <Length mm={row.width} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
        <table>
          <caption>
            Final-mill, to size
            {minutes.length > 0 && `, after ${formatMinutes(Math.max(...minutes))} in stick`}
          </caption>
          <thead>
            <tr>
              <th scope="col">Part</th>
              <th scope="col" className="n">
                No.
              </th>
              <th scope="col" className="n">
                Length
              </th>
              <th scope="col" className="n">
                Width
              </th>
              <th scope="col" className="n">
                Thick
              </th>
            </tr>
          </thead>
          <tbody>
            {lists.final.map(row => (
              <tr key={row.mark}>
                <td>
                  <b>{row.mark}</b> {row.name}
                </td>
                <td className="n">{row.number}</td>
                {row.size ? (
                  [row.size.length, row.size.width, row.size.thickness].map((size, i) => (
                    // biome-ignore lint/suspicious/noArrayIndexKey: length, width, thickness in their order
                    <td className="n fig" key={i}>
                      <Length mm={size} />
                    </td>
                  ))
                ) : (
                  <td className="n" colSpan={3}>
                    after {row.waits}
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
