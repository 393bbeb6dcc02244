import type { FigureBook } from '../figures/book.ts';
import { toQuantity } from '../figures/measure.ts';
import { lengthText } from '../quantities/length.ts';
import type { Commission } from '../results/commission.ts';
import type { ParameterValue } from '../results/derived.ts';
import { extentOf } from '../results/extent.ts';
import { type Fault, fault } from '../results/fault.ts';
import type { Piece } from '../results/piece.ts';
import type { BoughtIn } from '../results/price.ts';
import { makeAssemblies } from './assemblies.ts';
import { otherFigures, readBoughtIn, readCommission } from './commission.ts';
import { isBare } from './entered.ts';
import { buildGraph, parameterKind, parameterParts } from './graph.ts';
import { type GroupContext, groupParts } from './groups.ts';
import { makeInstances } from './instances.ts';
import type { JointCatalogue } from './joint-type.ts';
import { makeJoints } from './made-joints.ts';
import { placeFaults } from './place-faults.ts';
import type { JobDocument } from './schema.ts';

export interface SetOut {
  piece: Piece;
  commission: Commission;
  parameters: ParameterValue[];
  boughtIn: BoughtIn[];
  /** The graph itself, for "why"; it never crosses a worker boundary. */
  book: FigureBook;
  faults: Fault[];
}

/** From the setting-out to exact parts: evaluates the graph, pairs joints, cuts features, groups like parts. */
export function setOut(document: JobDocument, catalogue: JointCatalogue, context: GroupContext): SetOut {
  const { book, pairings, resolve, unit } = buildGraph(document, catalogue);
  for (const figure of otherFigures(document, unit, resolve)) book.define(figure);
  const written = book.names();
  const { made, faults: jointFaults } = makeJoints(document, pairings, book);
  const { instances, faults: featureFaults } = makeInstances(document, pairings, made, book, context);
  pairings.checkCounts();
  const joints = made.map(m => m.joint);
  const { assemblies, faults: assemblyFaults } = makeAssemblies(document, instances, joints);
  const { commission, faults: commissionFaults } = readCommission(document, instances, book);
  const { boughtIn, faults: priceFaults } = readBoughtIn(document, instances);
  for (const recipe of commission.finishes)
    for (const instance of instances)
      if (recipe.instances.includes(instance.id)) instance.finish ??= recipe.id;
  const groups = groupParts(instances, document, book, context);
  // Everything written is asked for once, so that every fault is told, also of figures nothing uses.
  for (const name of written) if (needed(name, document)) book.outcome(name);
  const faults = unique([
    ...placeFaults(document, book),
    ...book.faults(),
    ...pairings.faults(),
    ...jointFaults,
    ...featureFaults,
    ...assemblyFaults,
    ...commissionFaults,
    ...priceFaults,
    ...limitFaults(document, book),
  ]);
  return {
    piece: {
      instances,
      groups,
      joints,
      assemblies,
      bounds: extentOf(instances.filter(i => !i.loose && i.size.length > 0)),
      faults,
    },
    commission,
    boughtIn,
    parameters: parameterValues(document, book),
    book,
    faults,
  };
}

/** Bought-in parts may leave sizes and places out; loose parts have no place. */
function needed(name: string, document: JobDocument): boolean {
  const [group, id = '', ...rest] = name.split('.');
  if (group !== 'parts') return true;
  const part = document.parts?.[id];
  if (!part) return false;
  const what = rest.join('.');
  if (what.startsWith('body.')) return part.kind !== 'bought-in' || part[rest[1] as 'length'] !== undefined;
  return part.at !== undefined || !/^(left|right|front|back|bottom|top|centre_[xyz])$/.test(what);
}

function limitFaults(document: JobDocument, book: FigureBook): Fault[] {
  return Object.entries(document.parameters ?? {}).flatMap(([id, p]) => {
    const value = book.number(`parameters.${id}`);
    if (typeof p !== 'object' || value === undefined) {
      const word = book.word(`parameters.${id}`);
      return typeof p === 'object' && p.choices && word !== undefined && !p.choices.includes(word)
        ? [fault(`parameters.${id}`, `${word} is not one of the choices`, `choose ${p.choices.join(', ')}`)]
        : [];
    }
    const min = p.min === undefined ? undefined : book.number(`limits.${id}.min`);
    const max = p.max === undefined ? undefined : book.number(`limits.${id}.max`);
    const kind = parameterKind(p);
    const named = p.label === undefined ? '' : `${p.label}: `;
    const shown = (v: number): string =>
      kind === 'length' ? lengthText(v, document.units ?? 'mm') : `${v}${kind === 'angle' ? ' deg' : ''}`;
    if (min !== undefined && value < min)
      return [
        fault(
          `parameters.${id}`,
          `${named}${shown(value)} is under the least, ${shown(min)}`,
          `give ${shown(min)} or more`,
        ),
      ];
    return max !== undefined && value > max
      ? [
          fault(
            `parameters.${id}`,
            `${named}${shown(value)} is over the most, ${shown(max)}`,
            `give ${shown(max)} or less`,
          ),
        ]
      : [];
  });
}

function parameterValues(document: JobDocument, book: FigureBook): ParameterValue[] {
  const unit = document.units ?? 'mm';
  return Object.entries(document.parameters ?? {}).map(([id, p]) => {
    const { value, label, choices } = parameterParts(p) as {
      value: string | number;
      label?: string;
      choices?: string[];
    };
    const measure = book.value(`parameters.${id}`);
    const kind = parameterKind(p);
    const min = book.number(`limits.${id}.min`);
    const max = book.number(`limits.${id}.max`);
    return {
      id,
      label: label ?? id,
      value: measure && toQuantity(measure),
      text: String(value),
      entered: kind === 'text' ? choices !== undefined : isBare(value, kind, unit),
      ...(choices ? { choices } : {}),
      ...(min === undefined ? {} : { min }),
      ...(max === undefined ? {} : { max }),
    };
  });
}

const unique = (faults: Fault[]): Fault[] => [
  ...new Map(faults.map(f => [`${f.place}|${f.fault}`, f])).values(),
];
