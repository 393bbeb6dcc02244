import { parseLength, roundTo } from '../../quantities/length.ts';
import type { ParameterValue } from '../../results/derived.ts';
import { type ShowOptions, showQuantity } from '../../results/show.ts';

/** What was typed, as it goes into the job file, or what is wrong with it. */
export type Entry = { ok: true; value: string | number } | { ok: false; fault: string; mend: string };

type Unit = 'mm' | 'cm' | 'in';
/** Unit a bare number of the job file is in. */
export type FileUnit = 'mm' | 'cm' | 'm' | 'in';

/** The text a field starts from: the figure alone, in the person's unit, or the expression as written. */
export function fieldText(parameter: ParameterValue, show: ShowOptions): string {
  if (!parameter.value) return parameter.text;
  if (parameter.choices) return String(parameter.value.value);
  return showQuantity(parameter.value, show).figure;
}

const EXPRESSION = /[A-Za-z_]\w*|[()*]|[+/-]\s*\d/;

/**
 * Reads what was typed. A length without a unit takes the person's; it is written so that the file, which
 * may use another unit, means the same. What is no quantity is taken as an expression of the job file.
 */
export function readEntry(typed: string, parameter: ParameterValue, unit: Unit, file: FileUnit): Entry {
  const text = typed.trim();
  if (text === '') return { ok: false, fault: 'nothing is written', mend: 'write a figure, or press Escape' };
  if (parameter.value?.kind !== 'length') return readPlain(text, parameter);
  const read = parseLength(text, unit);
  if (!read.ok) {
    if (EXPRESSION.test(text) && !/\d,\d/.test(text)) return { ok: true, value: text };
    return { ok: false, fault: read.fault, mend: `write ${read.expected}` };
  }
  const wrong = outside(read.value, parameter);
  if (wrong) return { ok: false, fault: wrong, mend: 'write one inside these, or change the limit' };
  const bare = /^[-\u2212]?\d*\.?\d+$/.test(text);
  if (bare && unit === file) return { ok: true, value: Number(text.replace('\u2212', '-')) };
  const unitless = !/[a-z"']/i.test(text);
  return { ok: true, value: unitless ? `${text.replace('\u2212', '-')} ${unit}` : text };
}

function outside(mm: number, { min, max }: ParameterValue): string | undefined {
  if (min !== undefined && mm < min - 1e-9) return `the least is ${roundTo(min, 2)} mm`;
  if (max !== undefined && mm > max + 1e-9) return `the most is ${roundTo(max, 2)} mm`;
  return undefined;
}

function readPlain(text: string, parameter: ParameterValue): Entry {
  if (parameter.choices && !parameter.choices.includes(text))
    return { ok: false, fault: `"${text}" is not one of the choices`, mend: parameter.choices.join(', ') };
  const plain = text.replace('\u2212', '-').replace(/\s*(deg|degrees|\u00b0)$/i, '');
  if (/^-?\d*\.?\d+$/.test(plain)) {
    const value = Number(plain);
    const { min, max } = parameter;
    if (min !== undefined && value < min)
      return { ok: false, fault: `the least is ${min}`, mend: 'write more' };
    if (max !== undefined && value > max)
      return { ok: false, fault: `the most is ${max}`, mend: 'write less' };
    return { ok: true, value: /deg|\u00b0/i.test(text) ? `${plain} deg` : value };
  }
  return { ok: true, value: text };
}

/** One step up or down from what is typed: 1 mm, 1/16 in, 1; ten of them with Shift. Stays inside the limits. */
export function stepped(
  typed: string,
  parameter: ParameterValue,
  show: ShowOptions,
  steps: number,
): string | undefined {
  const unit = show.unit === 'in' || show.unit === 'cm' ? show.unit : 'mm';
  const kind = parameter.value?.kind;
  if (kind === 'length') {
    const read = parseLength(typed, unit);
    if (!read.ok) return undefined;
    const by = unit === 'in' ? 25.4 / 16 : 1;
    const value = held((Math.round(read.value / by + 1e-9) + steps) * by, parameter);
    return showQuantity({ kind: 'length', value }, show).figure;
  }
  const value = Number(typed.replace('\u2212', '-'));
  if (parameter.choices || Number.isNaN(value)) return undefined;
  return String(held(value + steps, parameter));
}

const held = (value: number, { min, max }: ParameterValue): number =>
  Math.min(max ?? Number.POSITIVE_INFINITY, Math.max(min ?? Number.NEGATIVE_INFINITY, value));
