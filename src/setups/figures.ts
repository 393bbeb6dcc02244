import { roundTo } from '../quantities/length.ts';
import { mm, q } from '../results/quantity.ts';
import type { Setting, ToolSide } from '../results/setups.ts';
import { SET_RULES, type SetRuleName } from './rules.ts';

/** Settings closer than this are one setting: no scale in the shop reads finer (mm, degrees). */
export const SAME = 0.05;

/** A figure as a card says it: one decimal, none of it lost, `18.25` keeps its second. */
export const say1 = (value: number): string => {
  const two = roundTo(value, 2);
  return Math.abs(two * 10 - Math.round(two * 10)) < 1e-6 ? two.toFixed(1) : two.toFixed(2);
};

/** A length setting with its arithmetic and the rule that made it. */
export function lengthSetting(
  name: string,
  value: number,
  how: string,
  rule: SetRuleName,
  to?: ToolSide,
): Setting {
  const clean = roundTo(value, 3);
  return { name, value: mm(clean), how, rule: SET_RULES[rule].number, ...(to ? { to } : {}) };
}

export function otherSetting(
  name: string,
  kind: 'angle' | 'count' | 'number' | 'text',
  value: number | string,
  how: string,
  rule: SetRuleName,
): Setting {
  return {
    name,
    value: q(kind, typeof value === 'number' ? roundTo(value, 3) : value),
    how,
    rule: SET_RULES[rule].number,
  };
}
