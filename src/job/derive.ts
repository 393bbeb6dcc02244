import { expandBuilders } from '../builders/expand.ts';
import { runChecks } from '../checks/index.ts';
import { planCutting } from '../cutting/plan-cutting.ts';
import { unknownNames } from '../cutting/wishes.ts';
import { planDays } from '../days/plan-days.ts';
import { nearest } from '../figures/nearest.ts';
import { JOINT_CATALOGUE } from '../joints/index.ts';
import { priceJob } from '../money/index.ts';
import { planOperations } from '../operations/plan-operations.ts';
import { materialDensity, nearestMaterials } from '../reference/materials.ts';
import type { Derived } from '../results/derived.ts';
import { type Fault, fault } from '../results/fault.ts';
import type { Effort } from '../results/solver.ts';
import type { Why } from '../results/why.ts';
import type { JobDocument } from '../setting-out/schema.ts';
import { setOut } from '../setting-out/set-out.ts';
import { planSetUps } from '../setups/plan-set-ups.ts';
import { readStanding } from '../setups/standing.ts';
import { trialFaults, withTrials } from '../setups/trials.ts';
import type { Workshop } from '../workshop/workshop.ts';
import { orderNotes } from './order-words.ts';
import { overruled } from './overruled.ts';
import { whyOf } from './why.ts';

export interface DeriveOptions {
  /** ISO date: the start of work where the job names none. */
  today: string;
  effort?: Effort;
}

export interface Deriving {
  derived: Derived;
  /** Explains a figure by its path; undefined for a path that names none. */
  why(figure: string): Why | undefined;
}

/** Iterations that keep a shop-size job well under the budget of design section 10. */
export const FIRST_LOOK: Effort = { seed: 1, iterations: 120 };

/**
 * Everything that follows from a job and a workshop, in the order of design section 1. Synchronous, without
 * kernels, clock or chance: the same on the command line, on the server and in the browser.
 */
export function deriveJob(written: JobDocument, workshop: Workshop, options: DeriveOptions): Deriving {
  const { document, faults: builderFaults, placeOf } = expandBuilders(written);
  const effort = options.effort ?? FIRST_LOOK;
  const { piece, commission, parameters, boughtIn, book, faults } = setOut(document, JOINT_CATALOGUE, {
    allowances: workshop.allowances,
    density,
    ...(workshop.kFactor === undefined ? {} : { kFactor: workshop.kFactor }),
  });
  const { operations, faults: orderFaults } = planOperations(piece, commission, workshop, document.overruled);
  const cutting = planCutting(piece, operations, workshop, effort, document.cutting);
  const unit = document.units ?? 'mm';
  const { standing, faults: standingFaults } = readStanding(document.standing, workshop, unit);
  const planned = planSetUps(piece, operations, workshop, effort, standing);
  const setups = { ...planned, setups: withTrials(planned.setups, document.trials, unit) };
  const start = `${commission.start ?? options.today}T08:00`;
  const days = planDays(
    operations,
    setups,
    workshop,
    { start, ...(commission.deadline ? { deadline: commission.deadline } : {}) },
    effort,
  );
  const found = { piece, commission, operations, cutting, setups, days, workshop };
  const checks = [...overruled(runChecks(found), document.overruled ?? {}), ...orderNotes(operations)];
  const price = priceJob({ ...found, boughtIn });
  const derived: Derived = {
    title: document.title,
    // What a builder works out beside the maker's own figures is asked for by its why.
    parameters: parameters.filter(p => Object.hasOwn(written.parameters ?? {}, p.id)),
    piece,
    operations,
    cutting,
    setups,
    days,
    checks,
    price,
    faults: [
      ...trialFaults(document.trials, unit),
      ...standingFaults,
      ...cuttingFaults(piece, document.cutting),
      ...builderFaults,
      ...[...faults, ...misspelt(document, workshop), ...orderFaults].map(f =>
        atBuilder(f, placeOf(f.place)),
      ),
    ],
  };
  return { derived, why: figure => whyOf(figure, { derived, book, commission, workshop, boughtIn }) };
}

/** What is said about cutting and names no part. */
const cuttingFaults = (piece: Derived['piece'], wishes: JobDocument['cutting']): Fault[] =>
  unknownNames(piece, wishes).map(({ place, name }) =>
    fault(place, `no part is called ${name}`, `name one of ${partNames(piece).slice(0, 6).join(', ')}`),
  );

const partNames = (piece: Derived['piece']): string[] => [...new Set(piece.instances.map(i => i.part))];

/** A fault within what a builder made is told at the builder, with the built thing named. */
const atBuilder = (f: Fault, place: string): Fault =>
  place === f.place ? f : { ...f, place, fault: `${f.place.split('.').slice(1).join(', ')}: ${f.fault}` };

/** A material that neither the tables nor the workshop know, but which is nearly one they do. */
function misspelt(document: JobDocument, workshop: Workshop): Fault[] {
  const own = new Set([...workshop.rack, ...workshop.suppliers.flatMap(s => s.items)].map(i => i.material));
  return Object.entries(document.parts ?? {}).flatMap(([id, { kind, material }]) => {
    if (kind === 'bought-in' || material === undefined || own.has(material) || materialDensity(material))
      return [];
    const near = nearest(material, [...own, ...nearestMaterials(material)]);
    return near
      ? [fault(`parts.${id}.material`, `no material is called ${material}`, `did you mean ${near}?`)]
      : [];
  });
}

/** Middle of the band the tables give; the workshop's scales win where a mass is entered. */
function density(material: string): number | undefined {
  const found = materialDensity(material);
  return found && (found.densityKgM3.low + found.densityKgM3.high) / 2;
}
