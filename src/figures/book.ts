import type { Fault } from '../results/fault.ts';
import type { QuantityKind } from '../results/quantity.ts';
import type { Rule, Source } from '../results/source.ts';
import type { Why } from '../results/why.ts';
import { FigureFault, type Read, Withheld } from './evaluate.ts';
import { type Measure, toQuantity } from './measure.ts';

/** How one named figure comes to be. */
export interface Figure {
  name: string;
  label: string;
  /** Path in the file for errors; the figure's own name when it stands in no file. */
  place: string;
  kind: QuantityKind;
  how: Why['how'];
  formula?: string;
  rule?: Rule;
  source?: Source;
  compute(read: Read): Measure;
}

export type Outcome = { ok: true; value: Measure } | { ok: false; fault?: Fault; because: string };

/** Figures on the call stack at once; each may hold an expression of the greatest depth. */
const DEEPEST = 80;

/** Thrown to the outermost call only: the figure named must be worked out first. */
class TooDeep extends Error {}

const circle = (loop: readonly string[]): FigureFault =>
  new FigureFault(
    `the figures need each other in a circle: ${loop.join(' -> ')}`,
    'type a figure for one of them',
  );

/**
 * The graph of named figures (design, section 4.1). Figures are worked out when first asked for and kept;
 * cycles are named in full; a faulty figure blocks what needs it and is told once.
 * `late` may supply figures that exist only once others are known (copies, joints).
 */
export class FigureBook {
  private readonly figures = new Map<string, Figure>();
  private readonly outcomes = new Map<string, Outcome>();
  private readonly under: string[] = [];
  private readonly late: (name: string) => Figure | undefined;
  private readonly unknown: (name: string) => FigureFault;

  constructor(
    late: (name: string) => Figure | undefined = () => undefined,
    unknown: (name: string) => FigureFault = name =>
      new FigureFault(`there is no figure ${name}`, 'check the name'),
  ) {
    this.late = late;
    this.unknown = unknown;
  }

  define(figure: Figure): void {
    this.figures.set(figure.name, figure);
  }

  find(name: string): Figure | undefined {
    const known = this.figures.get(name) ?? this.late(name);
    if (known && !this.figures.has(name)) this.figures.set(name, known);
    return known;
  }

  outcome(name: string): Outcome {
    if (this.under.length > 0) return this.settle(name);
    // A long chain is worked out from its far end in pieces, so that no chain outgrows the call stack.
    const waiting = [name];
    for (;;) {
      try {
        const outcome = this.settle(waiting.at(-1)!);
        waiting.pop();
        if (waiting.length === 0) return outcome;
      } catch (error) {
        if (!(error instanceof TooDeep)) throw error;
        if (waiting.includes(error.message)) this.outcomes.set(error.message, this.longCircle(waiting));
        else waiting.push(error.message);
      }
    }
  }

  private settle(name: string): Outcome {
    const kept = this.outcomes.get(name);
    if (kept) return kept;
    const figure = this.find(name);
    if (!figure) return { ok: false, because: name };
    const at = this.under.indexOf(name);
    if (at >= 0) throw circle([...this.under.slice(at), name]);
    if (this.under.length >= DEEPEST) throw new TooDeep(name);
    this.under.push(name);
    try {
      const outcome = this.work(figure, n => this.need(n));
      this.outcomes.set(name, outcome);
      return outcome;
    } finally {
      this.under.pop();
    }
  }

  /** A circle longer than the depth of one piece: some of its figures stand for it. */
  private longCircle(through: readonly string[]): Outcome {
    const because = through[0]!;
    const { message, mend } = circle([...through, because]);
    return {
      ok: false,
      because,
      fault: { place: this.find(because)?.place ?? because, fault: message, mend },
    };
  }

  private need(name: string): Measure {
    const figure = this.find(name);
    if (!figure) throw this.unknown(name);
    const outcome = this.settle(name);
    if (outcome.ok) return outcome.value;
    throw new Withheld(name);
  }

  private work(figure: Figure, read: Read): Outcome {
    try {
      return { ok: true, value: figure.compute(read) };
    } catch (error) {
      if (error instanceof Withheld) return { ok: false, because: error.message };
      if (error instanceof FigureFault)
        return {
          ok: false,
          because: figure.name,
          fault: { place: figure.place, fault: error.message, mend: error.mend },
        };
      throw error;
    }
  }

  /** Value, or undefined when it cannot be worked out (the faults say why). */
  value(name: string): Measure | undefined {
    const outcome = this.outcome(name);
    return outcome.ok ? outcome.value : undefined;
  }

  number(name: string): number | undefined {
    const value = this.value(name);
    return value?.type === 'number' ? value.value : undefined;
  }

  word(name: string): string | undefined {
    const value = this.value(name);
    return value?.type === 'text' ? value.value : undefined;
  }

  /** Every fault met so far, each once. */
  faults(): Fault[] {
    return [...this.outcomes.values()].flatMap(o => (!o.ok && o.fault ? [o.fault] : []));
  }

  names(): string[] {
    return [...this.figures.keys()];
  }

  /**
   * Re-runs what made the figure and notes what it read: nothing is stored (design, section 4.1). A figure that
   * several others read is explained once, where it stands nearest to the one asked for.
   */
  why(name: string): Why | undefined {
    const first = this.explained(name);
    if (!first) return undefined;
    const told = new Set([name]);
    const open = [first];
    for (let at = 0; at < open.length; at++) {
      const { why, read } = open[at]!;
      for (const input of read) {
        const next = this.explained(input);
        if (!next) continue;
        why.inputs.push(next.why);
        if (told.has(input)) continue;
        told.add(input);
        open.push(next);
      }
    }
    return first.why;
  }

  private explained(name: string): { why: Why; read: string[] } | undefined {
    const figure = this.find(name);
    if (!figure) return undefined;
    const outcome = this.outcome(name);
    const read: string[] = [];
    this.work(figure, n => {
      if (!read.includes(n)) read.push(n);
      return this.need(n);
    });
    const why: Why = {
      figure: name,
      label: figure.label,
      value: outcome.ok ? toQuantity(outcome.value) : undefined,
      how: outcome.ok ? figure.how : 'missing',
      ...(figure.formula === undefined ? {} : { formula: figure.formula }),
      ...(figure.rule === undefined ? {} : { rule: figure.rule }),
      ...(figure.source === undefined ? {} : { source: figure.source }),
      inputs: [],
    };
    return { why, read };
  }
}
