import type { Node } from './expression.ts';
import {
  ANGLE,
  clean,
  combine,
  dimensionName,
  type Measure,
  numberOf,
  PLAIN,
  sameDimension,
} from './measure.ts';

/** Thrown inside the graph only; the book turns it into a Fault with its place. */
export class FigureFault extends Error {
  readonly mend: string;
  constructor(fault: string, mend: string) {
    super(fault);
    this.mend = mend;
  }
}

/** Thrown inside the graph when a figure cannot be worked out for a reason that is already told elsewhere. */
export class Withheld extends Error {}

type Num = Extract<Measure, { type: 'number' }>;
export type Read = (name: string) => Measure;

const truth = (value: boolean): Measure => ({ type: 'truth', value });

function num(m: Measure, what: string): Num {
  if (m.type !== 'number')
    throw new FigureFault(
      `${what} is ${dimensionName(m)}, where a number is needed`,
      'use a number or a length',
    );
  return m;
}

function alike(a: Num, b: Num, sign: string): void {
  if (sameDimension(a.dimension, b.dimension)) return;
  const bare = sameDimension(a.dimension, PLAIN) ? a : sameDimension(b.dimension, PLAIN) ? b : undefined;
  const mend = bare ? `write the unit: ${bare.value} mm` : 'bring both sides to the same kind';
  throw new FigureFault(`${dimensionName(a)} ${sign} ${dimensionName(b)} has no meaning`, mend);
}

function binary(operator: string, left: Measure, right: Measure): Measure {
  if (operator === '==' || operator === '!=') {
    if (left.type !== right.type)
      throw new FigureFault(
        `${dimensionName(left)} cannot be compared with ${dimensionName(right)}`,
        'compare like with like',
      );
    if (left.type === 'number') alike(left, right as Num, operator);
    return truth((left.value === right.value) === (operator === '=='));
  }
  const a = num(left, 'the left side');
  const b = num(right, 'the right side');
  switch (operator) {
    case '+':
    case '-':
      alike(a, b, operator === '+' ? 'plus' : 'minus');
      return numberOf(clean(operator === '+' ? a.value + b.value : a.value - b.value), a.dimension);
    case '*':
      return numberOf(clean(a.value * b.value), combine(a.dimension, b.dimension, 1));
    case '/':
      if (b.value === 0)
        throw new FigureFault('this divides by nothing', 'make the lower figure other than 0');
      return numberOf(clean(a.value / b.value), combine(a.dimension, b.dimension, -1));
    default:
      alike(a, b, operator);
      if (operator === '<') return truth(a.value < b.value);
      if (operator === '>') return truth(a.value > b.value);
      return truth(operator === '<=' ? a.value <= b.value : a.value >= b.value);
  }
}

const RADIANS = Math.PI / 180;
const turned = (m: Num): number => {
  if (!sameDimension(m.dimension, ANGLE) && !sameDimension(m.dimension, PLAIN))
    throw new FigureFault(`an angle is needed, this is ${dimensionName(m)}`, 'write degrees: 5 deg');
  return m.value * RADIANS;
};
const plain = (m: Num, of: string): number => {
  if (!sameDimension(m.dimension, PLAIN))
    throw new FigureFault(
      `${of} needs a plain number, this is ${dimensionName(m)}`,
      'divide by a length first, as in (width / 90 mm)',
    );
  return m.value;
};

function rounded(name: string, args: Num[]): Measure {
  const [value, step] = args;
  const how = name === 'ceil' ? Math.ceil : name === 'floor' ? Math.floor : Math.round;
  if (step === undefined) {
    if (!sameDimension(value!.dimension, PLAIN))
      throw new FigureFault(`${name} of ${dimensionName(value!)} needs a step`, `write ${name}(x, 1 mm)`);
    return numberOf(how(clean(value!.value)), PLAIN);
  }
  alike(value!, step, `${name} to`);
  if (step.value <= 0) throw new FigureFault(`the step of ${name} is ${step.value}`, 'give a step above 0');
  return numberOf(clean(how(clean(value!.value / step.value)) * step.value), value!.dimension);
}

interface Known {
  least: number;
  most: number;
  run(args: Num[]): Measure;
}

const extreme = (pick: (...n: number[]) => number): Known => ({
  least: 1,
  most: 20,
  run: args => {
    for (const a of args) alike(args[0]!, a, 'beside');
    return numberOf(pick(...args.map(a => a.value)), args[0]!.dimension);
  },
});
const trig = (f: (x: number) => number): Known => ({
  least: 1,
  most: 1,
  run: ([a]) => numberOf(clean(f(turned(a!))), PLAIN),
});
const inverse = (name: string, f: (x: number) => number): Known => ({
  least: 1,
  most: 1,
  run: ([a]) => {
    const value = f(plain(a!, name));
    if (!Number.isFinite(value))
      throw new FigureFault(`${name} of ${a!.value} does not exist`, 'the figure must lie between -1 and 1');
    return numberOf(clean(value / RADIANS), ANGLE);
  },
});

const FUNCTIONS: Record<string, Known> = {
  min: extreme(Math.min),
  max: extreme(Math.max),
  round: { least: 1, most: 2, run: args => rounded('round', args) },
  ceil: { least: 1, most: 2, run: args => rounded('ceil', args) },
  floor: { least: 1, most: 2, run: args => rounded('floor', args) },
  abs: { least: 1, most: 1, run: ([a]) => numberOf(Math.abs(a!.value), a!.dimension) },
  sqrt: {
    least: 1,
    most: 1,
    run: ([a]) => {
      if (a!.value < 0)
        throw new FigureFault(
          `the square root of ${a!.value} does not exist`,
          'the figure must not be below 0',
        );
      const d = a!.dimension;
      const half = { length: d.length / 2, angle: d.angle / 2, mass: d.mass / 2, money: d.money / 2 };
      return numberOf(clean(Math.sqrt(a!.value)), half);
    },
  },
  sin: trig(Math.sin),
  cos: trig(Math.cos),
  tan: trig(Math.tan),
  asin: inverse('asin', Math.asin),
  acos: inverse('acos', Math.acos),
  atan: inverse('atan', Math.atan),
};

export const FUNCTION_NAMES: readonly string[] = Object.keys(FUNCTIONS);

/** Evaluates an expression; names are read through `read`, which also tells the tracer. */
export function evaluate(node: Node, read: Read): Measure {
  switch (node.node) {
    case 'value':
      return node.value;
    case 'name':
      return read(node.name);
    case 'unary': {
      const of = evaluate(node.of, read);
      if (node.operator === '!') {
        if (of.type !== 'truth')
          throw new FigureFault(`"not" of ${dimensionName(of)} has no meaning`, 'use it before a comparison');
        return truth(!of.value);
      }
      const n = num(of, 'the figure after the minus');
      return numberOf(-n.value || 0, n.dimension);
    }
    case 'choice': {
      const test = evaluate(node.test, read);
      if (test.type !== 'truth')
        throw new FigureFault(
          `the question before ? is ${dimensionName(test)}`,
          'ask a comparison, as in width > 900 mm ? 3 : 2',
        );
      return evaluate(test.value ? node.yes : node.no, read);
    }
    case 'binary':
      if (node.operator === '&&' || node.operator === '||') {
        const left = evaluate(node.left, read);
        if (left.type !== 'truth')
          throw new FigureFault(`${dimensionName(left)} is not a yes or no`, 'join comparisons only');
        if (left.value === (node.operator === '||')) return left;
        return evaluate(node.right, read);
      }
      return binary(node.operator, evaluate(node.left, read), evaluate(node.right, read));
    case 'call': {
      const known = Object.hasOwn(FUNCTIONS, node.name) ? FUNCTIONS[node.name] : undefined;
      if (!known)
        throw new FigureFault(`there is no ${node.name}(...)`, `known are ${FUNCTION_NAMES.join(', ')}`);
      if (node.args.length < known.least || node.args.length > known.most)
        throw new FigureFault(
          `${node.name} takes ${known.least === known.most ? known.least : `${known.least} to ${known.most}`} figures, not ${node.args.length}`,
          `mend the list in ${node.name}(...)`,
        );
      return known.run(node.args.map((a, i) => num(evaluate(a, read), `figure ${i + 1} of ${node.name}`)));
    }
  }
}
