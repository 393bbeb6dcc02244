/** What else could be bought: planed stock against sawn, the next thickness up or down, with what follows. */
import type { CuttingPlan, Demand, MaterialPlan } from '../results/cutting.ts';
import type { Operation } from '../results/operations.ts';
import type { Piece } from '../results/piece.ts';
import type { Effort } from '../results/solver.ts';
import type { CuttingDocument } from '../setting-out/cutting-schema.ts';
import type { Workshop } from '../workshop/workshop.ts';
import { collectDemands } from './demands.ts';
import { landed } from './orders.ts';
import { DEFAULT_EFFORT, planDemands } from './plan-cutting.ts';
import { wished } from './wishes.ts';

export interface BuyingChoice {
  material: string;
  what: 'all sawn' | 'all planed' | 'next thicker' | 'next thinner';
  /** Stock thickness before and after, mm, for a change of thickness. */
  from?: number;
  to?: number;
  /** Minor units, with carriage, least orders and milling at the shop's rate, of the whole job. */
  now: number;
  after: number;
  /** Milling of this material, minutes: as planned and so. */
  milling: { now: number; after: number };
  /** Blanks that this choice leaves without stock; above 0 it cannot be made as it stands. */
  short: number;
  /** What follows of it, a sentence each. */
  follows: string[];
}

interface Job {
  piece: Piece;
  operations: readonly Operation[];
  demands: readonly Demand[];
  workshop: Workshop;
  plan: CuttingPlan;
  effort: Effort;
}

/** The choices of a derived job, at the effort of a first look. */
export function choicesFor(
  derived: { piece: Piece; operations: readonly Operation[]; cutting: CuttingPlan },
  workshop: Workshop,
  wishes: CuttingDocument | undefined,
): BuyingChoice[] {
  const { piece, operations, cutting: plan } = derived;
  const demands = wished(collectDemands(piece, operations), piece, wishes);
  return buyingChoices({ piece, operations, demands, workshop, plan, effort: DEFAULT_EFFORT });
}

/** Every choice that some stock line would serve, dearest saving first. */
export function buyingChoices(job: Job): BuyingChoice[] {
  const materials = [...new Set(job.plan.materials.map(plan => plan.material))];
  const found = materials.flatMap(material => [
    ...sawnOrPlaned(job, material),
    ...otherThickness(job, material),
  ]);
  return found.sort((a, b) => a.short - b.short || a.after - a.now - (b.after - b.now));
}

const missing = (plan: CuttingPlan): number =>
  plan.materials.reduce((sum, one) => sum + one.unplaced.length, 0);

/** Facing, edging and thicknessing of one material, minutes. */
const millingOf = (operations: readonly Operation[], material: string): number =>
  ['face', 'edge', 'thickness']
    .flatMap(step => operations.filter(one => one.id === `${step}:${material}`))
    .reduce((sum, one) => sum + one.handsOn.likely, 0);

/** Share of the timber blanks of a material, by volume, that come from stock still to be planed. */
function sawnShare(plan: CuttingPlan, material: string): number {
  let sawn = 0;
  let all = 0;
  for (const use of plan.materials.filter(one => one.material === material).flatMap(one => one.uses))
    for (const placed of use.placed) {
      const volume = placed.length * placed.width * use.thickness;
      all += volume;
      if (use.kind !== 'planed length') sawn += volume;
    }
  return all > 0 ? sawn / all : 0;
}

function sawnOrPlaned(job: Job, material: string): BuyingChoice[] {
  const { workshop, demands, plan, effort, operations } = job;
  const timber = demands.some(one => one.material === material && one.kind === 'timber');
  if (!timber) return [];
  const whole = millingOf(operations, material);
  return (['board', 'planed length'] as const).flatMap(kind => {
    const other = kind === 'board' ? 'planed length' : 'board';
    const sells = workshop.suppliers.some(one =>
      one.items.some(item => item.material === material && item.kind === kind),
    );
    const used = plan.materials.some(one =>
      one.uses.some(use => use.material === material && use.kind === other),
    );
    if (!sells || !used) return [];
    const only: Workshop = {
      ...workshop,
      rack: workshop.rack.filter(item => item.material !== material || item.kind !== other),
      suppliers: workshop.suppliers.map(one => ({
        ...one,
        items: one.items.filter(item => item.material !== material || item.kind !== other),
      })),
    };
    const then = planDemands(demands, only, effort);
    const milling = { now: whole * sawnShare(plan, material), after: whole * sawnShare(then, material) };
    const rate = workshop.rates.hour / 60;
    return [
      {
        material,
        what: kind === 'board' ? ('all sawn' as const) : ('all planed' as const),
        now: Math.round(landed(plan) + milling.now * rate),
        after: Math.round(landed(then) + milling.after * rate),
        milling,
        short: missing(then) - missing(plan),
        follows:
          kind === 'board'
            ? ['Facing, edging and thicknessing are done here, with a rest between.']
            : ['Planed stock is not flattened again: what has moved since stays so.'],
      },
    ];
  });
}

function otherThickness(job: Job, material: string): BuyingChoice[] {
  const plans = job.plan.materials.filter(one => one.material === material && one.uses.length > 0);
  return plans.flatMap(plan => {
    const kinds = new Set(plan.uses.map(use => use.kind));
    const sold = job.workshop.suppliers
      .flatMap(one => one.items)
      .filter(item => item.material === material && !item.round && kinds.has(item.kind));
    const held = [...new Set(plan.uses.filter(use => !use.round).map(use => use.thickness))];
    if (plan.kind === 'bar' || plan.kind === 'tube') return [];
    return held.flatMap(from => {
      const above = sold.map(item => item.thickness).filter(t => t > from + 0.05);
      const below = sold.map(item => item.thickness).filter(t => t < from - 0.05);
      const next = [
        ...(above.length > 0 ? [{ what: 'next thicker' as const, to: Math.min(...above) }] : []),
        ...(below.length > 0 ? [{ what: 'next thinner' as const, to: Math.max(...below) }] : []),
      ];
      return next.map(one => changed(job, plan, from, one));
    });
  });
}

function changed(
  { piece, demands, workshop, plan, effort }: Job,
  of: MaterialPlan,
  from: number,
  { what, to }: { what: 'next thicker' | 'next thinner'; to: number },
): BuyingChoice {
  const on = new Set(
    of.uses.filter(use => use.thickness === from).flatMap(use => use.placed.map(one => one.instance)),
  );
  const by = to - from;
  const other = demands.map(one =>
    on.has(one.instance) ? { ...one, thickness: one.kind === 'sheet' ? to : one.thickness + by } : one,
  );
  const then = planDemands(other, workshop, effort);
  const parts = piece.instances.filter(one => on.has(one.id));
  const thin = parts.filter(one => one.size.thickness + by <= 0);
  const joints = piece.joints.filter(joint => joint.instances.some(id => on.has(id)));
  const mass = piece.groups.reduce((sum, group) => {
    const n = group.instances.filter(id => on.has(id)).length;
    return sum + (n * (group.mass ?? 0) * by) / Math.max(1e-9, group.size.thickness);
  }, 0);
  const more = by > 0 ? 'thicker' : 'thinner';
  return {
    material: of.material,
    what,
    from,
    to,
    now: landed(plan),
    after: landed(then),
    milling: { now: 0, after: 0 },
    short: missing(then) - missing(plan) + thin.length,
    follows: [
      `${parts.length} ${parts.length === 1 ? 'part comes' : 'parts come'} ${round(Math.abs(by))} mm ${more}.`,
      ...(joints.length > 0
        ? [
            `${joints.length} ${joints.length === 1 ? 'joint follows' : 'joints follow'}: look at tenons, grooves and shoulders again.`,
          ]
        : []),
      `The piece weighs ${round(Math.abs(mass))} kg ${by > 0 ? 'more' : 'less'}.`,
    ],
  };
}

const round = (value: number): number => Math.round(value * 10) / 10;
