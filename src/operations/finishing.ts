import { FINISHES } from '../reference/finishes.ts';
import type { FinishRecipe, FinishStep } from '../results/commission.ts';
import { type Fault, fault } from '../results/fault.ts';
import type { Spell } from '../results/operations.ts';
import type { Outwork } from '../results/piece.ts';
import { finishedM2, type Made } from './assemblies.ts';
import type { CutGroup } from './cuts.ts';
import { waitForWork } from './finish-order.ts';
import { type ProductTimes, productTimes } from './finish-times.ts';
import type { OrderOfWork } from './order-of-work.ts';
import { cautionBy } from './order-rules.ts';
import { sandWork, usualGrits } from './sanding.ts';
import { spellOf, type Wait } from './times.ts';
import { lengthM, type View } from './view.ts';
import { awayFor } from './welding.ts';

/** First and last operations of a recipe: what waits for it, and what it waits for. */
export interface Finished {
  recipe: FinishRecipe;
  /** Begins it, sanding included. */
  begins: string[];
  /** The first step that puts something on. */
  firstCoat: string | undefined;
  /** Dry enough to handle. */
  dry: string | undefined;
  /** Hard enough to wrap. */
  cured: string | undefined;
}

interface Step {
  id: string;
  step: FinishStep;
  times: ProductTimes | undefined;
}

const PUTS_ON: readonly FinishStep['kind'][] = ['stain', 'ink', 'coat', 'seal', 'polish'];

/** Finish recipes step by step, before the glue-up or after it. Unknown products come back as faults. */
export function addFinishes(
  view: View,
  work: OrderOfWork,
  made: Made,
  groups: readonly CutGroup[],
): { finished: Finished[]; faults: Fault[] } {
  const faults: Fault[] = [];
  const finished = view.commission.finishes
    .filter(recipe => recipe.instances.length > 0 && (recipe.steps.length > 0 || recipe.outwork))
    .map(recipe =>
      recipe.outwork
        ? givenOut(view, work, made, groups, recipe, recipe.outwork)
        : addRecipe(view, work, made, groups, recipe, faults),
    );
  return { finished, faults };
}

/** A coat put on by somebody else: one errand and the days it is away. */
function givenOut(
  view: View,
  work: OrderOfWork,
  made: Made,
  groups: readonly CutGroup[],
  recipe: FinishRecipe,
  outwork: Outwork,
): Finished {
  const id = work.add({
    id: `finish:${recipe.id}:away`,
    kind: 'finish',
    title: `${recipe.name} by ${outwork.by}`,
    instances: recipe.instances,
    handsOn: spellOf(view.workshop, [{ key: 'take-outwork', times: 1 }]),
    ...awayFor(outwork),
    cautions: [
      'Its drawing goes with it: threads, bores and faces that are glued or bolted are masked',
      'Holes drilled and welds dressed before it leaves: the coat is not cut afterwards',
      ...(outwork.note === undefined ? [] : [outwork.note]),
    ],
  });
  const begins = [id];
  waitForWork(view, work, made, groups, recipe, { begins, firstCoat: id, dry: id });
  return { recipe, begins, firstCoat: id, dry: id, cured: undefined };
}

function addRecipe(
  view: View,
  work: OrderOfWork,
  made: Made,
  groups: readonly CutGroup[],
  recipe: FinishRecipe,
  faults: Fault[],
): Finished {
  const copies = recipe.instances
    .flatMap(id => view.instances.get(id) ?? [])
    .filter(copy => copy.kind !== 'bought-in');
  const wood = copies.filter(copy => !view.partOf.get(copy.id)?.metal);
  const area = finishedM2(view, recipe.instances);
  const steps = namedSteps(recipe).map(({ id, step }) => addStep(view, work, recipe, id, step, area, faults));
  const sanding = steps.filter(s => s.step.kind === 'prepare').map(s => s.id);
  const coats = steps.filter(s => PUTS_ON.includes(s.step.kind));
  const wet = steps.filter(s => s.step.kind !== 'prepare').map(s => s.id);
  if (sanding.length === 0 && wood.length > 0) sanding.push(usualSanding(view, work, recipe, wood));
  if (sanding[0] && wet[0] && steps[0]?.step.kind !== 'prepare') work.link(sanding, wet[0], 73);
  linkSteps(work, steps);
  const firstCoat = coats[0]?.id;
  if (firstCoat && wood.length > 0)
    breakEdges(view, work, recipe, wood, sanding, firstCoat, wet[0] ?? firstCoat);
  if (firstCoat && recipe.sample?.asked && !recipe.sample.agreed) sample(view, work, recipe, firstCoat);
  const begins = [...sanding.slice(0, 1), ...(sanding.length === 0 ? wet.slice(0, 1) : [])];
  const dry = steps.at(-1)?.id;
  const cured = dry && cure(view, work, recipe, coats.at(-1), dry);
  waitForWork(view, work, made, groups, recipe, { begins, firstCoat, dry });
  return { recipe, begins, firstCoat, dry, cured };
}

/** `finish:<recipe>:<name of the step>`; a name used twice is counted. */
function namedSteps(recipe: FinishRecipe): { id: string; step: FinishStep }[] {
  const seen = new Set<string>();
  return recipe.steps.map(step => {
    const name = (step.name || step.kind).toLowerCase().replace(/[^a-z0-9]+/g, '-');
    let own = name;
    for (let count = 2; seen.has(own); count++) own = `${name}-${count}`;
    seen.add(own);
    return { id: `finish:${recipe.id}:${own}`, step };
  });
}

function addStep(
  view: View,
  work: OrderOfWork,
  recipe: FinishRecipe,
  id: string,
  step: FinishStep,
  area: number,
  faults: Fault[],
): Step {
  const times = step.product === undefined ? undefined : productTimes(view.workshop, step.product);
  if (step.product !== undefined && !times) faults.push(unknownProduct(view, recipe, step));
  const wait = waitOf(step, times);
  const puts = PUTS_ON.includes(step.kind);
  const sands = step.kind === 'prepare' || step.kind === 'sand back';
  work.add({
    id,
    kind: sands ? 'sand' : 'finish',
    title: `${step.name || step.kind}: ${recipe.name}`,
    instances: recipe.instances,
    handsOn: minutesOf(view, recipe, step, times, area),
    ...(wait ? { wait: { what: 'dry', ...wait } } : {}),
    cautions: [
      ...(puts ? [cautionBy(58)] : []),
      ...(puts && times?.ragsHeat ? [cautionBy(60)] : []),
      ...(puts ? (times?.cautions ?? []) : []),
      ...(puts && !wait ? ['No drying time is known: the tin says how long'] : []),
      ...(sands ? ['Dust: extraction and a mask'] : []),
    ],
  });
  return { id, step, times };
}

function unknownProduct(view: View, recipe: FinishRecipe, step: FinishStep): Fault {
  const known = [...Object.keys(view.workshop.finishes), ...FINISHES.nearest(step.product!)];
  return fault(
    `finishes.${recipe.id}.${step.name || step.kind}`,
    `no finish is called "${step.product}"`,
    known.length > 0
      ? `nearest: ${known.slice(0, 4).join(', ')}`
      : 'enter it under finishes in the workshop file',
    "a finish of the tables or of the workshop's own",
  );
}

/** The maker's figure of the step wins, then the product's. */
function waitOf(step: FinishStep, times: ProductTimes | undefined): Wait | undefined {
  if (step.waitMinutes !== undefined)
    return { minutes: step.waitMinutes, text: 'the recipe says', basis: 'maker' };
  return PUTS_ON.includes(step.kind) ? times?.recoat : undefined;
}

function minutesOf(
  view: View,
  recipe: FinishRecipe,
  step: FinishStep,
  times: ProductTimes | undefined,
  area: number,
): Spell {
  const { workshop } = view;
  if (step.minutesPerM2 !== undefined) {
    const minutes = step.minutesPerM2 * area;
    const text = `${step.minutesPerM2} min a m2 x ${Math.round(area * 100) / 100}`;
    return { low: minutes, likely: minutes, high: minutes, source: { text, basis: 'maker' } };
  }
  const copies = recipe.instances
    .flatMap(id => view.instances.get(id) ?? [])
    .filter(copy => copy.kind !== 'bought-in');
  const wood = copies.filter(copy => !view.partOf.get(copy.id)?.metal);
  switch (step.kind) {
    case 'prepare': {
      // What was sanded inside before the glue-up is not sanded again.
      const share = recipe.when === 'after glue-up' ? 0.5 : 1;
      const bars = copies.filter(copy => !wood.includes(copy));
      return spellOf(workshop, [...sandWork(wood, share), { key: 'draw-file-bar', times: lengthM(bars) }]);
    }
    case 'raise grain':
      return spellOf(workshop, [{ key: 'raise-grain', times: area }]);
    case 'sand back':
      return spellOf(workshop, [{ key: 'denib', times: area }]);
    case 'wait':
      return spellOf(workshop, []);
    case 'stain':
      return spellOf(workshop, [{ key: 'coat-stain', times: area }]);
    case 'ink':
      return spellOf(workshop, [{ key: 'coat-ink', times: area }]);
    case 'polish':
      return spellOf(workshop, [{ key: times?.work ?? 'coat-wax', times: area }]);
    case 'coat':
    case 'seal': {
      if (times?.work === 'seal-end-grain')
        return spellOf(workshop, [{ key: 'seal-end-grain', times: 2 * copies.length }]);
      const session = times?.work === 'coat-spray' ? [{ key: 'spray-gun-session', times: 1 }] : [];
      return spellOf(workshop, [{ key: times?.work ?? 'coat-varnish', times: area }, ...session]);
    }
  }
}

/** Step after step, each pair by the rule that speaks of it, and the trade's own order over the whole. */
function linkSteps(work: OrderOfWork, steps: readonly Step[]): void {
  steps.forEach((here, k) => {
    const next = steps[k + 1];
    if (!next) return;
    work.link(here.id, next.id, stepRule(here.step.kind, next.step.kind));
    const within = windowOf(here);
    if (within && PUTS_ON.includes(here.step.kind) && PUTS_ON.includes(next.step.kind))
      work.within(here.id, next.id, within);
  });
  const of = (...kinds: FinishStep['kind'][]): string[] =>
    steps.filter(s => kinds.includes(s.step.kind)).map(s => s.id);
  const colour = of('stain', 'ink');
  const grain = of('raise grain');
  work.link(grain, colour, 42);
  const sealers = of('seal');
  const films = steps.filter(s => s.step.kind === 'coat').map(s => s.id);
  work.link(colour, [...sealers, ...films], 57);
}

function stepRule(here: FinishStep['kind'], next: FinishStep['kind']): number {
  if (here === 'prepare' && next === 'prepare') return 39;
  if (here === 'raise grain' && (next === 'stain' || next === 'ink')) return 42;
  if (here === 'coat' && next === 'coat') return 59;
  const colours = here === 'stain' || here === 'ink' || here === 'seal';
  if (colours && (next === 'seal' || next === 'coat')) return 57;
  return 73;
}

/** From the end of the wait: the recipe's own, else the product's (which counts from the coat) less the wait. */
function windowOf({ step, times }: Step): Wait | undefined {
  if (step.withinMinutes !== undefined)
    return { minutes: step.withinMinutes, text: 'the recipe says', basis: 'maker' };
  if (!times?.within) return undefined;
  const waited = step.waitMinutes ?? times.recoat?.minutes ?? 0;
  return { ...times.within, minutes: Math.max(0, times.within.minutes - waited) };
}

function usualSanding(
  view: View,
  work: OrderOfWork,
  recipe: FinishRecipe,
  wood: Parameters<typeof sandWork>[0],
): string {
  const grits = usualGrits(recipe);
  const share = recipe.when === 'after glue-up' ? 0.5 : 1;
  return work.add({
    id: `prepare:${recipe.id}`,
    kind: 'sand',
    title: `Sand to P${grits.at(-1)} for ${recipe.name}`,
    grits,
    instances: wood.map(copy => copy.id),
    handsOn: spellOf(view.workshop, sandWork(wood, share * grits.length)),
    cautions: ['Dust: extraction and a mask'],
  });
}

/** The four long arrises of every wooden part. */
function breakEdges(
  view: View,
  work: OrderOfWork,
  recipe: FinishRecipe,
  wood: Parameters<typeof lengthM>[0],
  sanding: readonly string[],
  firstCoat: string,
  firstWet: string,
): void {
  const square = wood.filter(copy => !copy.round);
  if (square.length === 0) return;
  const id = work.add({
    id: `edges:${recipe.id}`,
    kind: 'sand',
    title: `Break the edges for ${recipe.name}`,
    instances: square.map(copy => copy.id),
    handsOn: spellOf(view.workshop, [{ key: 'break-edges', times: 4 * lengthM(square) }]),
  });
  work.link(sanding, id, 43);
  work.link(id, [...new Set([firstWet, firstCoat])], 43);
}

function sample(view: View, work: OrderOfWork, recipe: FinishRecipe, firstCoat: string): void {
  const id = work.add({
    id: `sample:${recipe.id}`,
    kind: 'finish',
    title: `Sample of ${recipe.name} for the client`,
    instances: [],
    handsOn: spellOf(view.workshop, [{ key: 'finish-sample', times: 1 }]),
    cautions: ["The first coat waits for the client's word, which no plan knows"],
  });
  const materials = new Set(recipe.instances.flatMap(i => view.instances.get(i)?.material ?? []));
  for (const material of materials) work.link([`rip:${material}`, `crosscut:${material}`], id, 68);
  work.link(id, firstCoat, 56);
}

/** What is left of the hardening after the last step's own wait. */
function cure(
  view: View,
  work: OrderOfWork,
  recipe: FinishRecipe,
  last: Step | undefined,
  dry: string,
): string {
  const hard = last?.times?.cure;
  if (!last || !hard) return dry;
  const waited = last.step.waitMinutes ?? last.times?.recoat?.minutes ?? 0;
  if (hard.minutes <= waited) return dry;
  const id = work.add({
    id: `cure:${recipe.id}`,
    kind: 'finish',
    title: `Let ${recipe.name} harden`,
    instances: recipe.instances,
    handsOn: spellOf(view.workshop, []),
    wait: { what: 'cure', ...hard, minutes: hard.minutes - waited },
  });
  work.link(dry, id, 62);
  return id;
}
