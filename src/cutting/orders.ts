/** What is ordered from whom: goods, carriage, least orders; and the cheapest set of suppliers. */
import type { CuttingPlan, Demand, SupplierOrder } from '../results/cutting.ts';
import type { Workshop } from '../workshop/workshop.ts';

/** One order a supplier, minor units. Goods below the least order are made up to it. */
export function ordersOf(plan: Pick<CuttingPlan, 'buy'>, workshop: Workshop): SupplierOrder[] {
  return workshop.suppliers.flatMap(supplier => {
    const goods = plan.buy
      .filter(line => line.supplier === supplier.name)
      .reduce((sum, line) => sum + line.price, 0);
    if (!plan.buy.some(line => line.supplier === supplier.name)) return [];
    const shortfall = Math.max(0, (supplier.minimum ?? 0) - goods);
    return [
      {
        supplier: supplier.name,
        goods,
        delivery: supplier.delivery,
        shortfall,
        total: goods + supplier.delivery + shortfall,
      },
    ];
  });
}

/** Stock with carriage and what least orders add, minor units. */
export const landed = (plan: CuttingPlan): number =>
  plan.cost + plan.orders.reduce((sum, order) => sum + order.delivery + order.shortfall, 0);

const missing = (plan: CuttingPlan): number =>
  plan.materials.reduce((sum, material) => sum + material.unplaced.length, 0);

/**
 * Drops suppliers one by one while the whole, carriage and least orders with it, comes cheaper and as many
 * blanks are placed (CUT-14). Every set tried is planned whole; sets that would leave a blank without stock
 * are passed over by `canDo` before anything is planned.
 */
export function cheapestSet(
  plan: CuttingPlan,
  demands: readonly Demand[],
  workshop: Workshop,
  replan: (demands: readonly Demand[], workshop: Workshop) => CuttingPlan,
  canDo: (demands: readonly Demand[], workshop: Workshop) => number,
): CuttingPlan {
  let best = plan;
  let shop = workshop;
  for (;;) {
    const without = best.orders.map(order => ({
      ...shop,
      suppliers: shop.suppliers.filter(supplier => supplier.name !== order.supplier),
    }));
    const found = without
      .filter(smaller => best.orders.length > 1 && canDo(demands, smaller) <= missing(best))
      .map(smaller => ({ smaller, plan: replan(demands, smaller) }))
      .filter(one => missing(one.plan) <= missing(best) && landed(one.plan) < landed(best))
      .sort((a, b) => landed(a.plan) - landed(b.plan))[0];
    if (!found) return best;
    best = found.plan;
    shop = found.smaller;
  }
}

/** What is bought of one material and what becomes of it. */
export interface BoughtFigures {
  material: string;
  section: string;
  /** Minor units. */
  price: number;
  /** Share of the volume bought that is neither blank nor offcut to keep, 0 to 1. */
  waste: number;
  /** What the offcuts to keep are worth, at the price they were bought for by their share of it. */
  leftValue: number;
}

export function boughtFigures(plan: CuttingPlan): BoughtFigures[] {
  return plan.materials.flatMap(({ material, section, uses }) => {
    const bought = uses.filter(use => use.from === 'buy');
    if (bought.length === 0) return [];
    let volume = 0;
    let used = 0;
    let leftValue = 0;
    for (const use of bought) {
      const whole = use.length * use.width;
      const back = use.left
        .filter(left => left.fate === 'back to the rack')
        .reduce((sum, left) => sum + left.length * left.width, 0);
      const blanks = use.placed.reduce((sum, placed) => sum + placed.length * placed.width, 0);
      volume += whole * use.thickness;
      used += (blanks + back) * use.thickness;
      leftValue += Math.round((use.price * back) / whole);
    }
    const price = bought.reduce((sum, use) => sum + use.price, 0);
    return [{ material, section, price, waste: Math.max(0, 1 - used / volume), leftValue }];
  });
}
