import {
  createContext,
  type ReactNode,
  useCallback,
  useContext,
  useEffect,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import type { Quantity } from '../results/quantity.ts';
import { showText } from '../results/show.ts';
import type { Why } from '../results/why.ts';
import { Figure } from './figure.tsx';
import { useShow } from './person.ts';

interface Asking {
  /** Path of the figure asked about. */
  asked: string | undefined;
  answer: Why | undefined;
  /** The answer has not come yet. */
  waiting: boolean;
  /** Another one after every derivation. */
  results: unknown;
  ask: (figure: string) => void;
  forget: () => void;
}

const WhyContext = createContext<Asking>({
  asked: undefined,
  answer: undefined,
  waiting: false,
  results: undefined,
  ask: () => undefined,
  forget: () => undefined,
});

/** Holds the one question a page has open. `results` changes when figures do, and the question is put again. */
export function WhyProvider({
  why,
  results,
  children,
}: {
  why: (figure: string) => Promise<Why | undefined>;
  results: unknown;
  children: ReactNode;
}): ReactNode {
  const [asked, setAsked] = useState<string>();
  const [answer, setAnswer] = useState<Why>();
  const [waiting, setWaiting] = useState(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: new results put the question again
  useEffect(() => {
    if (asked === undefined) return;
    let current = true;
    setWaiting(true);
    why(asked)
      .catch(() => undefined)
      .then(found => {
        if (!current) return;
        setAnswer(found);
        setWaiting(false);
      });
    return () => {
      current = false;
    };
  }, [asked, results, why]);
  const ask = useCallback(
    (figure: string) => setAsked(before => (before === figure ? undefined : figure)),
    [],
  );
  const forget = useCallback(() => setAsked(undefined), []);
  const value = useMemo(
    () => ({ asked, answer: asked === undefined ? undefined : answer, waiting, results, ask, forget }),
    [asked, answer, waiting, results, ask, forget],
  );
  return <WhyContext value={value}>{children}</WhyContext>;
}

/** A figure that can be pressed. It takes a dotted underline; the answer stands in the page's footnote. */
export function Asked({ figure, children }: { figure: string; children: ReactNode }): ReactNode {
  const { asked, ask, results } = useContext(WhyContext);
  const button = useRef<HTMLButtonElement>(null);
  const shown = useRef<{ results: unknown; text: string }>(undefined);
  // What an edit moved is underlined in pencil until the next one.
  useLayoutEffect(() => {
    const text = button.current?.textContent ?? '';
    const before = shown.current;
    if (before?.results !== results)
      button.current?.toggleAttribute('data-changed', before !== undefined && before.text !== text);
    shown.current = { results, text };
  });
  return (
    <button
      ref={button}
      type="button"
      className="ask"
      aria-pressed={asked === figure}
      data-figure={figure}
      onClick={event => {
        event.stopPropagation();
        ask(figure);
      }}
    >
      {children}
    </button>
  );
}

/** The footnote: why the pressed figure is what it is, in sentences, and all of it on request. */
export function WhyNote({ hint = true }: { hint?: boolean }): ReactNode {
  const { asked, answer, waiting, forget } = useContext(WhyContext);
  const [all, setAll] = useState(false);
  const note = useRef<HTMLElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new question starts folded
  useEffect(() => setAll(false), [asked]);
  const answered = answer !== undefined;
  useEffect(() => {
    if (answered) note.current?.scrollIntoView({ block: 'nearest' });
  }, [answered]);
  const close = (): void => {
    forget();
    document.querySelector<HTMLElement>(`.ask[data-figure="${CSS.escape(asked ?? '')}"]`)?.focus();
  };
  if (asked === undefined)
    return hint ? <p className="why say quiet">Press a figure to see why it is so.</p> : null;
  return (
    <section ref={note} className="why say" aria-label="Why" aria-live="polite">
      {answer ? (
        <>
          <p>
            <b>Why {answer.value ? <Figure of={answer.value} /> : 'nothing'}?</b>{' '}
            <WhyWords why={answer} inputs={!all} />{' '}
            {answer.inputs.length > 0 && (
              <button type="button" className="link" aria-expanded={all} onClick={() => setAll(!all)}>
                {all ? 'Less' : 'All of it'}
              </button>
            )}{' '}
            <button type="button" className="link" onClick={close}>
              Close
            </button>
          </p>
          {all && <WhyTree inputs={answer.inputs} />}
        </>
      ) : (
        <p>{waiting ? 'Working it out.' : 'Nothing more is known about this figure.'}</p>
      )}
    </section>
  );
}

const HOW: Record<Why['how'], string> = {
  entered: 'you entered it',
  expression: 'worked out from an expression',
  rule: 'by a rule of the trade',
  table: 'read from a table',
  measured: 'measured',
  computed: 'worked out',
  missing: 'a value is missing',
};

const sentence = (text: string): string => {
  const trimmed = text.trim();
  if (trimmed === '') return '';
  const first = trimmed[0]!.toUpperCase() + trimmed.slice(1);
  return /[.:;]$/.test(first) ? first : `${first}.`;
};

/** Label, formula, rule and source of one step; its figures too where they are not listed below it. */
function WhyWords({ why, inputs: listed = false }: { why: Why; inputs?: boolean }): ReactNode {
  const show = useShow();
  const given = (q: Quantity | undefined): string => (q ? showText(q, show) : 'not known');
  const inputs = listed ? why.inputs.map(i => `${i.label} ${given(i.value)}`).join(', ') : '';
  const lead = why.formula ? `${why.label} = ${why.formula}` : `${why.label}: ${HOW[why.how]}`;
  return (
    <>
      {sentence(lead)} {inputs && sentence(inputs)}{' '}
      {why.rule && (
        <span>
          {sentence(why.rule.says)} <span className="quiet">{why.rule.number}</span>{' '}
        </span>
      )}
      {why.source && (
        <span className="quiet">{sentence(sourceWords(why.source.text, why.source.basis))}</span>
      )}
    </>
  );
}

/** A source that is only remembered says so, once. */
export const sourceWords = (text: string, basis: string): string =>
  basis === 'memory' && !/remembered/.test(text) ? `${text}, remembered and not checked` : text;

function WhyTree({ inputs, depth = 0 }: { inputs: readonly Why[]; depth?: number }): ReactNode {
  if (inputs.length === 0 || depth > 30) return null;
  return (
    <ul className="whytree">
      {inputs.map((input, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an answer is shown whole and never reordered
        <li key={`${input.figure} ${i}`}>
          <b>{input.value ? <Figure of={input.value} /> : 'not known'}</b> <WhyWords why={input} />
          <WhyTree inputs={input.inputs} depth={depth + 1} />
        </li>
      ))}
    </ul>
  );
}
