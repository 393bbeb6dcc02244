import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef, useState } from 'react';
import type { EditOperation, Json, JsonObject } from '../../job/edits.ts';
import type { ParameterValue } from '../../results/derived.ts';
import type { Fault } from '../../results/fault.ts';
import { usePerson, useShow } from '../person.ts';
import { Asked } from '../why.tsx';
import { type Entry, type FileUnit, fieldText, readEntry, stepped } from './entry.ts';

export interface ParameterFieldProps {
  parameter: ParameterValue;
  document: JsonObject;
  /** Faults of the last derivation that stand at this parameter. */
  faults: readonly Fault[];
  /** Results are still on their way. */
  behind: boolean;
  preview: (operations: readonly EditOperation[]) => void;
  commit: (operations: readonly EditOperation[]) => void;
  settle: () => void;
}

/** The edit that gives a parameter another value, whichever way the file writes it. */
export function parameterEdit(document: JsonObject, id: string, value: Json): EditOperation[] {
  const all = document.parameters;
  const now = isRecord(all) ? all[id] : undefined;
  const whole = isRecord(now);
  return [{ path: whole ? ['parameters', id, 'value'] : ['parameters', id], value }];
}

const isRecord = (value: Json | undefined): value is JsonObject =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

export const fileUnit = (document: JsonObject): FileUnit => {
  const { units } = document;
  return units === 'cm' || units === 'm' || units === 'in' ? units : 'mm';
};

/**
 * A size the maker may type over; results follow while it is typed. Enter keeps it, Escape restores it. One
 * that is worked out shows its figure in ink and, when it is entered, the expression it is worked out by.
 */
export function ParameterField(props: ParameterFieldProps): ReactNode {
  const { choices } = props.parameter;
  return choices ? <ChoiceField {...props} choices={choices} /> : <TypedField {...props} />;
}

/** The name answers why; the value is typed. */
function Name({ parameter, id }: { parameter: ParameterValue; id: string }): ReactNode {
  return (
    <span className="name" id={id}>
      <Asked figure={`parameters.${parameter.id}`}>{parameter.label}</Asked>
    </span>
  );
}

function ChoiceField(props: ParameterFieldProps & { choices: readonly string[] }): ReactNode {
  const { parameter, document, commit, choices } = props;
  const nameId = useId();
  return (
    <div className="par-field">
      <Name parameter={parameter} id={nameId} />
      <select
        aria-labelledby={nameId}
        value={String(parameter.value?.value ?? parameter.text)}
        onChange={event => commit(parameterEdit(document, parameter.id, event.target.value))}
      >
        {choices.map(choice => (
          <option key={choice}>{choice}</option>
        ))}
      </select>
    </div>
  );
}

function TypedField({
  parameter,
  document,
  faults,
  behind,
  preview,
  commit,
  settle,
}: ParameterFieldProps): ReactNode {
  const show = useShow();
  const { unit } = usePerson();
  const [typed, setTyped] = useState<string>();
  const [inside, setInside] = useState(false);
  /** Enter was pressed while results of what was typed are still on their way. */
  const [asked, setAsked] = useState(false);
  const kept = inside && !parameter.entered ? parameter.text : fieldText(parameter, show);
  const start = useRef(kept);
  const errorId = useId();
  const nameId = useId();
  const text = typed ?? kept;
  const read = (now: string): Entry => readEntry(now, parameter, unit, fileUnit(document));
  const entry = typed === undefined ? undefined : read(typed);
  const trouble = troubleWords(entry, typed === undefined && behind ? [] : faults);

  const type = (now: string): void => {
    setTyped(now);
    setAsked(false);
    const next = read(now);
    if (next.ok) preview(parameterEdit(document, parameter.id, next.value));
  };
  const keep = (): void => {
    if (typed === undefined) return;
    const last = read(typed);
    // What cannot be read, or what the results refuse, stays in the field with its mend; nothing is lost.
    if (!last.ok) return;
    if (behind) {
      setAsked(true);
      return;
    }
    setAsked(false);
    if (faults.length > 0) return;
    setTyped(undefined);
    if (typed.trim() === start.current) settle();
    else commit(parameterEdit(document, parameter.id, last.value));
  };
  const restore = (): void => {
    setAsked(false);
    setTyped(undefined);
    settle();
  };
  const press = (event: KeyboardEvent<HTMLInputElement>): void => {
    if (event.key === 'Enter') keep();
    else if (event.key === 'Escape') restore();
    else if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
      const steps = (event.key === 'ArrowUp' ? 1 : -1) * (event.shiftKey ? 10 : 1);
      const next = stepped(text, parameter, show, steps);
      if (next === undefined) return;
      event.preventDefault();
      type(next);
    }
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: once the results are here, and only then
  useEffect(() => {
    if (asked && !behind) keep();
  }, [asked, behind]);
  // A field that goes before the results come keeps what was asked for: nothing entered is lost.
  const leave = useRef<() => void>(() => undefined);
  leave.current = () => {
    const last = asked && typed !== undefined ? read(typed) : undefined;
    if (last?.ok) commit(parameterEdit(document, parameter.id, last.value));
  };
  useEffect(() => () => leave.current(), []);
  useEffect(() => {
    if (typed === undefined) start.current = kept;
  }, [typed, kept]);
  const unitWord = parameter.value?.kind === 'angle' ? '°' : undefined;
  return (
    <div
      className={fieldClass(
        trouble !== undefined,
        typed !== undefined || parameter.entered,
        text.length > 12,
      )}
    >
      <Name parameter={parameter} id={nameId} />
      <span className="value">
        <input
          value={text}
          size={Math.max(4, text.length)}
          inputMode="text"
          autoComplete="off"
          spellCheck={false}
          data-typing={typed !== undefined}
          data-parameter={parameter.id}
          aria-labelledby={nameId}
          aria-invalid={trouble !== undefined}
          aria-describedby={trouble ? errorId : undefined}
          onChange={event => type(event.target.value)}
          onKeyDown={press}
          onFocus={event => {
            setInside(true);
            event.target.select();
          }}
          onBlur={() => {
            setInside(false);
            keep();
          }}
        />
        {unitWord}
      </span>
      {trouble && (
        <span className="mend" id={errorId} role="alert">
          {trouble}
        </span>
      )}
    </div>
  );
}

const fieldClass = (wrong: boolean, yours: boolean, long: boolean): string =>
  `par-field${wrong ? ' wrong' : ''}${yours ? '' : ' der'}${long ? ' long' : ''}`;

function troubleWords(entry: Entry | undefined, faults: readonly Fault[]): string | undefined {
  if (entry && !entry.ok) return `${capital(entry.fault)}: ${entry.mend}.`;
  const [fault] = faults;
  return fault && `${capital(fault.fault)}: ${fault.mend}.`;
}

const capital = (text: string): string => (text[0]?.toUpperCase() ?? '') + text.slice(1);
