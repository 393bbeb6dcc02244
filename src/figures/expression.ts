import jsep from 'jsep';
import { type LengthUnit, parseLength } from '../quantities/length.ts';
import { ANGLE, LENGTH, MASS, type Measure, numberOf, PLAIN } from './measure.ts';

/** The closed set of things an expression may be made of; everything else is refused by name. */
export type Node =
  | { node: 'value'; value: Measure }
  | { node: 'name'; name: string }
  | { node: 'unary'; operator: '-' | '!'; of: Node }
  | { node: 'binary'; operator: string; left: Node; right: Node }
  | { node: 'choice'; test: Node; yes: Node; no: Node }
  | { node: 'call'; name: string; args: Node[] };

export type ParsedExpression = { ok: true; node: Node } | { ok: false; fault: string; mend: string };

const LONGEST = 400;
const MOST_NODES = 200;
const DEEPEST = 40;
const BINARY = new Set(['+', '-', '*', '/', '<', '>', '<=', '>=', '==', '!=', '&&', '||']);
const UNITS: Record<string, { dimension: typeof LENGTH; factor: number }> = {
  deg: { dimension: ANGLE, factor: 1 },
  kg: { dimension: MASS, factor: 1 },
  g: { dimension: MASS, factor: 0.001 },
};
const NUMBER = String.raw`(?:\d+(?:\.\d+)?|\.\d+)`;
const FRACTION = String.raw`(?:\d+[ -])?\d+\/\d+`;
const INCH = String.raw`(?:in\b|")`;
/** Longest first: feet and inches, inches with fractions, then a number with a unit. */
const LITERAL = new RegExp(
  String.raw`'[^'\d][^']*'|(?<![\w.$])(?:${NUMBER}(?:'|\s*ft\b)(?:\s*(?:${FRACTION}|${NUMBER})\s*${INCH})?|(?:${FRACTION}|${NUMBER})\s*${INCH}|${NUMBER}\s*(?:mm|cm|m|kg|g|deg)\b|${NUMBER}\s*\u00b0)`,
  'g',
);

class Refusal extends Error {
  readonly mend: string;
  constructor(fault: string, mend: string) {
    super(fault);
    this.mend = mend;
  }
}

function literal(text: string): Measure {
  const unit = /(kg|g|deg|\u00b0)$/.exec(text)?.[1];
  if (unit !== undefined) {
    const { dimension, factor } = UNITS[unit === '\u00b0' ? 'deg' : unit]!;
    return numberOf(Number.parseFloat(text) * factor, dimension);
  }
  const length = parseLength(text);
  if (!length.ok) throw new Refusal(length.fault, `write ${length.expected}`);
  return numberOf(length.value, LENGTH);
}

/** Quantities are taken out before the expression parser sees the text (design, section 5). */
function takeQuantities(text: string): { text: string; values: Measure[] } {
  const values: Measure[] = [];
  const rest = text.replace(LITERAL, found => {
    if (found.startsWith("'")) return found;
    values.push(literal(found));
    return ` $${values.length - 1} `;
  });
  return { text: rest, values };
}

function memberName(e: jsep.Expression): string {
  if (e.type === 'Identifier') return (e as jsep.Identifier).name;
  if (e.type === 'MemberExpression') {
    const m = e as jsep.MemberExpression;
    if (!m.computed) return `${memberName(m.object)}.${memberName(m.property)}`;
  }
  throw new Refusal('a name may only be words joined by full stops', 'write it like rail.length');
}

export function parseExpression(source: string): ParsedExpression {
  if (source.length > LONGEST)
    return {
      ok: false,
      fault: 'the expression is too long',
      mend: `keep it under ${LONGEST} characters; give parts of it a parameter of their own`,
    };
  let nodes = 0;
  try {
    const { text, values } = takeQuantities(source);
    const walk = (e: jsep.Expression, depth: number): Node => {
      if (++nodes > MOST_NODES || depth > DEEPEST)
        throw new Refusal('the expression is too deep', 'split it over several parameters');
      switch (e.type) {
        case 'Literal': {
          const value = (e as jsep.Literal).value;
          if (typeof value === 'number') return { node: 'value', value: numberOf(value, PLAIN) };
          if (typeof value === 'string') return { node: 'value', value: { type: 'text', value } };
          if (typeof value === 'boolean') return { node: 'value', value: { type: 'truth', value } };
          throw new Refusal('this is not a number or a word', 'write a number, a quantity or a quoted word');
        }
        case 'Identifier':
        case 'MemberExpression': {
          const name = memberName(e);
          const quantity = /^\$(\d+)$/.exec(name);
          if (quantity) return { node: 'value', value: values[Number(quantity[1])]! };
          return { node: 'name', name };
        }
        case 'UnaryExpression': {
          const u = e as jsep.UnaryExpression;
          if (u.operator === '+') return walk(u.argument, depth + 1);
          if (u.operator !== '-' && u.operator !== '!')
            throw new Refusal(`the sign ${u.operator} is not known here`, 'use + - * / and parentheses');
          return { node: 'unary', operator: u.operator, of: walk(u.argument, depth + 1) };
        }
        case 'BinaryExpression': {
          const b = e as jsep.BinaryExpression;
          if (!BINARY.has(b.operator))
            throw new Refusal(`the sign ${b.operator} is not known here`, 'use + - * / < > <= >= == !=');
          return {
            node: 'binary',
            operator: b.operator,
            left: walk(b.left, depth + 1),
            right: walk(b.right, depth + 1),
          };
        }
        case 'ConditionalExpression': {
          const c = e as jsep.ConditionalExpression;
          return {
            node: 'choice',
            test: walk(c.test, depth + 1),
            yes: walk(c.consequent, depth + 1),
            no: walk(c.alternate, depth + 1),
          };
        }
        case 'CallExpression': {
          const c = e as jsep.CallExpression;
          return { node: 'call', name: memberName(c.callee), args: c.arguments.map(a => walk(a, depth + 1)) };
        }
        default:
          throw new Refusal(
            'this cannot be read as one expression',
            'write one sum, such as (width - 2 * leg) / 3',
          );
      }
    };
    return { ok: true, node: walk(jsep(text), 0) };
  } catch (error) {
    if (error instanceof Refusal) return { ok: false, fault: error.message, mend: error.mend };
    const message = error instanceof Error ? error.message.replace(/ at character \d+$/, '') : String(error);
    return {
      ok: false,
      fault: `"${source}" cannot be read: ${message.toLowerCase()}`,
      mend: 'check signs and parentheses',
    };
  }
}

/** A bare number or a plain quantity, in the file's unit; undefined when it is an expression. */
export function plainLength(source: string, unit: LengthUnit): Measure | undefined {
  const length = parseLength(source, unit);
  return length.ok ? numberOf(length.value, LENGTH) : undefined;
}
