import type { ReactNode } from 'react';
import { formatMoney } from '../quantities/money.ts';
import type { Say } from '../results/message.ts';
import type { Quantity } from '../results/quantity.ts';
import { fillSay, type Shown, showQuantity } from '../results/show.ts';
import { useShow } from './person.ts';

const FRACTION = /^(.*?)(\d+\/\d+)$/;

/** Figures with fractions set as fractions: only the fraction takes the feature. */
export function FigureText({ text }: { text: string }): ReactNode {
  const match = FRACTION.exec(text);
  if (!match) return text;
  return (
    <>
      {match[1]?.trim()}
      <span className="frac">{match[2]}</span>
    </>
  );
}

/** A figure and its unit, the unit smaller after a thin gap. */
export function ShownFigure({ shown, bare = false }: { shown: Shown; bare?: boolean }): ReactNode {
  if (bare || shown.unit === '') return <FigureText text={shown.figure} />;
  return (
    <>
      <FigureText text={shown.figure} />
      {shown.close ? (
        <span className="close">
          {shown.unit === '°' ? '' : '\u202f'}
          {shown.unit}
        </span>
      ) : (
        <span className="u">{shown.unit}</span>
      )}
    </>
  );
}

/** A quantity in the person's own units. `bare` leaves the unit to the heading of the column. */
export function Figure({ of, bare = false }: { of: Quantity; bare?: boolean }): ReactNode {
  return <ShownFigure shown={showQuantity(of, useShow())} bare={bare} />;
}

export function Length({ mm, bare = true }: { mm: number; bare?: boolean }): ReactNode {
  return <Figure of={{ kind: 'length', value: mm }} bare={bare} />;
}

/** An amount; `round` leaves out the pence where there are none. */
export function Money({ minor, round = false }: { minor: number; round?: boolean }): ReactNode {
  return formatMoney(minor, useShow().currency, !round || minor % 100 !== 0);
}

/** A sentence with its figures strong; names and other words stay plain. */
export function Sentence({ say }: { say: Say }): ReactNode {
  const show = useShow();
  return fillSay(say, show).map((run, i) =>
    'words' in run || say.values[run.name]?.kind === 'text' ? (
      // biome-ignore lint/suspicious/noArrayIndexKey: the runs of one sentence never move
      <span key={i}>{'words' in run ? run.words : run.figure.figure}</span>
    ) : (
      // biome-ignore lint/suspicious/noArrayIndexKey: the runs of one sentence never move
      <b key={i}>
        <ShownFigure shown={run.figure} />
      </b>
    ),
  );
}
