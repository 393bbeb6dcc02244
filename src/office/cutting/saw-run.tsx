import { type ReactNode, useMemo } from 'react';
import { sawRunLines } from '../../drawings/saw-run-words.ts';
import { materialName } from '../../reference/material-name.ts';
import type { MaterialPlan } from '../../results/cutting.ts';
import { FigureText } from '../figure.tsx';
import { useShow } from '../person.ts';

/** The order at the saw when all stock of a material is sawn in one go: a fence set once serves all. */
export function SawRunOrder({ plan }: { plan: MaterialPlan }): ReactNode {
  const show = useShow();
  const run = useMemo(() => sawRunLines(plan, show), [plan, show]);
  if (!run || run.settings >= run.apart) return null;
  return (
    <details className="run">
      <summary>
        {materialName(plan.material)} in one go: <b>{run.settings}</b> settings instead of <b>{run.apart}</b>
      </summary>
      <ol>
        {run.lines.map((line, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the steps keep the order of sawing
          <li key={i}>
            <span>
              {line.verb}{' '}
              <b>
                <FigureText text={line.figure} />
              </b>{' '}
              <span className="quiet">on {line.on}</span>
            </span>
          </li>
        ))}
      </ol>
    </details>
  );
}
