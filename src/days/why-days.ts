import type { DayPlan } from '../results/days.ts';
import type { Operation } from '../results/operations.ts';
import { count, minutes, q } from '../results/quantity.ts';
import type { Source } from '../results/source.ts';
import type { Why } from '../results/why.ts';

/**
 * Why a figure of the days is what it is: `days.finish`, `days.handsOn`, `operations.ID.minutes` and
 * `operations.ID.wait`. Undefined for a path that is none of these.
 */
export function whyDays(figure: string, operations: readonly Operation[], plan: DayPlan): Why | undefined {
  if (figure === 'days.finish') return whyFinish(operations, plan);
  if (figure === 'days.handsOn') return whyHandsOn(operations, plan);
  const path = /^operations\.(.+)\.(minutes|wait)$/.exec(figure);
  const operation = path && operations.find(o => o.id === path[1]);
  if (!operation) return undefined;
  return path[2] === 'wait' ? whyWait(operation) : whyMinutes(operation);
}

function whyFinish(operations: readonly Operation[], plan: DayPlan): Why {
  const chain = plan.critical.flatMap(id => operations.filter(o => o.id === id));
  return {
    figure: 'days.finish',
    label: 'Ready',
    value: q('date', plan.finish.likely),
    how: 'computed',
    formula: 'start, then each of these as soon as the one before it, the hands and the calendar allow',
    inputs: [
      { figure: 'days.start', label: 'Start', value: q('date', plan.start), how: 'entered', inputs: [] },
      ...chain.flatMap(operation => {
        const wait = whyWait(operation);
        return wait ? [whyMinutes(operation), wait] : [whyMinutes(operation)];
      }),
    ],
  };
}

function whyHandsOn(operations: readonly Operation[], plan: DayPlan): Why {
  const changeOvers = plan.days
    .flatMap(day => day.entries)
    .reduce((sum, entry) => sum + (entry.changeOver ?? 0), 0);
  return {
    figure: 'days.handsOn',
    label: 'Hands-on work',
    value: minutes(plan.handsOnMinutes.likely),
    how: 'computed',
    formula: 'all operations + making machines ready',
    inputs: [
      ...operations.filter(o => o.handsOn.likely > 0).map(whyMinutes),
      {
        figure: 'days.changeOvers',
        label: 'Making machines ready',
        value: minutes(changeOvers),
        how: 'computed',
        inputs: [],
      },
    ],
  };
}

function whyMinutes(operation: Operation): Why {
  const { handsOn } = operation;
  const of = (label: string, value: number): Why => ({
    figure: `operations.${operation.id}.minutes.${label}`,
    label,
    value: minutes(value),
    ...sourced(handsOn.source),
    inputs: [],
  });
  return {
    figure: `operations.${operation.id}.minutes`,
    label: operation.title,
    value: minutes(handsOn.likely),
    ...sourced(handsOn.source),
    formula: handsOn.source.text,
    inputs: [
      of('low', handsOn.low),
      of('high', handsOn.high),
      ...(operation.instances.length > 0
        ? [
            {
              figure: `operations.${operation.id}.parts`,
              label: 'parts worked on',
              value: count(operation.instances.length),
              how: 'computed' as const,
              inputs: [],
            },
          ]
        : []),
    ],
  };
}

function whyWait(operation: Operation): Why | undefined {
  if (!operation.wait) return undefined;
  return {
    figure: `operations.${operation.id}.wait`,
    label: `${operation.title}: ${operation.wait.what}`,
    value: minutes(operation.wait.minutes),
    ...sourced(operation.wait.source),
    inputs: [],
  };
}

/** The maker's own word is entered or measured; all else comes from a table or a rule of thumb. */
function sourced(source: Source): Pick<Why, 'how' | 'source'> {
  const how =
    source.basis === 'measured'
      ? 'measured'
      : source.basis === 'workshop' || source.basis === 'maker'
        ? 'entered'
        : source.basis === 'computed'
          ? 'computed'
          : 'table';
  return { how, source };
}
