import type { ReactNode } from 'react';
import type { Derived } from '../../results/derived.ts';
import type { Instance, PartGroup } from '../../results/piece.ts';
import { Figure, Length } from '../figure.tsx';
import { useShow } from '../person.ts';
import { massOf } from '../shell/title-block.tsx';
import { Asked } from '../why.tsx';

/** Parts by mark: what is cut, how often, how large, how heavy. */
export function PartsTable({
  derived,
  picked,
  onPick,
}: {
  derived: Derived;
  picked: PartGroup | undefined;
  onPick: (group: PartGroup) => void;
}): ReactNode {
  const show = useShow();
  const { groups, instances } = derived.piece;
  const byId = new Map(instances.map(i => [i.id, i]));
  return (
    <section className="parts" aria-labelledby="parts">
      <h2 id="parts">
        Parts{' '}
        <span className="quiet">
          {instances.length} pieces, cut sizes in {show.unit === 'in' ? 'inches' : show.unit}
        </span>
      </h2>
      <table>
        <thead>
          <tr>
            <th scope="col">Mark</th>
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
            <th scope="col" className="n kg">
              kg each
            </th>
          </tr>
        </thead>
        <tbody>
          {groups.map(group => (
            <Row
              key={group.mark}
              group={group}
              first={byId.get(group.instances[0] ?? '')}
              on={picked?.mark === group.mark}
              onPick={onPick}
            />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <td />
            <td>All parts</td>
            <td className="n">{instances.length}</td>
            <td colSpan={3} />
            <td className="n fig kg">
              <Figure of={{ kind: 'mass', value: massOf(derived).mass }} bare />
            </td>
          </tr>
        </tfoot>
      </table>
    </section>
  );
}

function Row({
  group,
  first,
  on,
  onPick,
}: {
  group: PartGroup;
  first: Instance | undefined;
  on: boolean;
  onPick: (group: PartGroup) => void;
}): ReactNode {
  const held = first?.measureFirst;
  const path = `parts.${group.part}`;
  // Screws, hinges and slides are a count and a price.
  const unsized = group.kind === 'bought-in' && group.size.length === 0;
  return (
    <tr className={on ? 'on' : ''} onClick={() => onPick(group)}>
      <th scope="row">{group.mark}</th>
      <td>
        <button
          type="button"
          className="pick"
          aria-pressed={on}
          onClick={event => {
            event.stopPropagation();
            onPick(group);
          }}
        >
          {group.name}
        </button>
        {held && <span className="held">held until {held.when}</span>}
      </td>
      <td className="n">{group.instances.length}</td>
      {unsized ? (
        <td className="n quiet" colSpan={3}>
          bought
        </td>
      ) : (
        <td className="n fig">
          <Asked figure={`${path}.length`}>
            <Length mm={group.size.length} />
          </Asked>
        </td>
      )}
      {unsized ? null : first?.round ? (
        <td className="n" colSpan={2}>
          <Asked figure={`${path}.width`}>
            <Length mm={group.size.width} /> dia
          </Asked>
        </td>
      ) : (
        <>
          <td className="n">
            <Asked figure={`${path}.width`}>
              <Length mm={group.size.width} />
            </Asked>
          </td>
          <td className="n">
            <Asked figure={`${path}.thickness`}>
              <Length mm={group.size.thickness} />
            </Asked>
          </td>
        </>
      )}
      <td className="n quiet kg">
        {group.mass === null ? (
          'not known'
        ) : (
          <Asked figure={`${path}.mass`}>
            <Figure of={{ kind: 'mass', value: group.mass }} bare />
          </Asked>
        )}
      </td>
    </tr>
  );
}
