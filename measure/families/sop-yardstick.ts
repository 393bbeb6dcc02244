/**
 * The same instances by a general-purpose solver (HiGHS, in development only), as a yardstick: an integer programme
 * of steps and places, Miller, Tucker and Zemlin 1960 with the lifting of Desrochers and Laporte 1991.
 */
import load from 'highs';
import { closePrecedence, NEVER, type Sop, sharpen } from '../../src/setups/ordering/sop.ts';

/** More nodes than these it is not asked for: it finds no order at all in a minute. */
export const YARDSTICK_NODES = 60;

export interface Yardstick {
  /** Nothing when it found no order in its time. */
  value?: number;
  bound: number;
  seconds: number;
}

/**
 * LP text: `x_u_v` says that v follows u, `p_v` the place of v. Steps that no order can take are left out, as for
 * our own search.
 */
export function programmeOf(sop: Sop): string {
  const { n } = sop;
  const { cost } = sharpen(sop, closePrecedence(n, sop.before));
  const nodes = Array.from({ length: n }, (_, v) => v);
  const allowed = (u: number, v: number): boolean => u !== v && v !== 0 && cost[u * n + v]! < NEVER;
  const steps = nodes.flatMap(u => nodes.filter(v => allowed(u, v)).map(v => [u, v] as const));
  const x = (u: number, v: number): string => `x_${u}_${v}`;
  const sum = (list: readonly string[]): string => list.join('\n + ');
  const rows = [
    ...nodes.slice(1).map(v => `${sum(nodes.filter(u => allowed(u, v)).map(u => x(u, v)))} = 1`),
    ...nodes.flatMap(u => {
      const out = nodes.filter(v => allowed(u, v)).map(v => x(u, v));
      return out.length > 0 ? [`${sum(out)} <= 1`] : [];
    }),
    ...steps.flatMap(([u, v]) => {
      if (u === 0) return [];
      const back = allowed(v, u) ? ` + ${n - 3} ${x(v, u)}` : '';
      return [`p_${u} - p_${v} + ${n - 1} ${x(u, v)}${back} <= ${n - 2}`];
    }),
    ...nodes.flatMap(v => sop.before[v]!.map(u => `p_${v} - p_${u} >= 1`)),
  ];
  const goal = steps.map(([u, v]) => `${cost[u * n + v]} ${x(u, v)}`);
  const places = nodes.slice(1).map(v => `1 <= p_${v} <= ${n - 1}`);
  return [
    `Minimize\n obj: ${sum(goal)}`,
    `Subject To\n${rows.map((row, i) => ` r${i}: ${row}`).join('\n')}`,
    `Bounds\n${places.join('\n')}`,
    `Binary\n${steps.map(([u, v]) => x(u, v)).join('\n')}`,
    'End',
  ].join('\n');
}

/** @param seconds its time limit, which it may pass a little */
export async function yardstick(sop: Sop, seconds: number): Promise<Yardstick> {
  const began = performance.now();
  const highs = await load();
  const model = highs.createModel({ format: 'lp', data: programmeOf(sop) });
  try {
    model.options.set('output_flag', false);
    model.options.set('time_limit', seconds);
    model.run();
    const bound = Number(model.info.get('mip_dual_bound'));
    const found = Number(model.info.get('primal_solution_status')) === 2;
    const value = found ? model.getObjectiveValue() : undefined;
    return {
      bound,
      seconds: (performance.now() - began) / 1000,
      ...(value === undefined ? {} : { value: Math.round(value) }),
    };
  } finally {
    model.dispose();
  }
}
