import type { ReactNode } from 'react';
import { DESK, list } from '../drawings/manner.ts';
import { STATE_WORD, stateMark } from '../drawings/marks.ts';
import type { Severity } from '../results/checks.ts';
import { Drawing } from './drawing.tsx';

/** Mark and word of a state: the colour only helps. */
export function StateMark({ state, word = true }: { state: Severity; word?: boolean }): ReactNode {
  return (
    <span className={`state ${state}`}>
      <Drawing of={MARKS[state]} hidden={word} className="mk" />
      {word && STATE_WORD[state]}
    </span>
  );
}

const mark = (state: Severity) => list(DESK, STATE_WORD[state], 16, 16, stateMark(state, [0, 0], 16));

const MARKS = {
  stop: mark('stop'),
  attend: mark('attend'),
  unknown: mark('unknown'),
  pending: mark('pending'),
  note: mark('note'),
  pass: mark('pass'),
};
