import type { Demand } from '../../src/results/cutting.ts';
import type { RackItem, Supplier, SupplierItem, Workshop } from '../../src/workshop/workshop.ts';

const none = { length: 0, width: 0, thickness: 0 };

/** A small workshop with nothing on the rack and nobody to buy from. */
export function shop(over: Partial<Workshop> = {}): Workshop {
  return {
    name: 'Test shop',
    currency: 'GBP',
    machines: [],
    blades: [
      { id: 'rip', machine: 'saw', name: 'rip 24', kerf: 2.8, diameter: 250, use: 'rip' },
      { id: 'cross', machine: 'saw', name: 'cross 60', kerf: 3.2, diameter: 250, use: 'cross' },
      { id: 'metal', machine: 'metal saw', name: 'metal band', kerf: 1.3, diameter: 0, use: 'metal' },
    ],
    cutters: [],
    drills: [],
    jigs: [],
    clamps: [],
    rack: [],
    suppliers: [],
    calendar: { week: {}, daysOff: [] },
    rates: { hour: 4000, contingency: 0, margin: 0, tax: { registered: false, rate: 0 }, consumables: 0 },
    allowances: { timber: none, sheet: none, bar: none, tube: none },
    adhesives: {},
    finishes: {},
    times: {},
    leastOffcut: { length: 300, width: 80 },
    climate: { temperature: 18, humidity: 55 },
    ...over,
  };
}

export const rackItem = (over: Partial<RackItem> & Pick<RackItem, 'id' | 'kind' | 'material'>): RackItem => ({
  label: over.id,
  length: 2400,
  width: 100,
  thickness: 50,
  round: false,
  quantity: 1,
  value: 1000,
  ...over,
});

export const forSale = (
  over: Partial<SupplierItem> & Pick<SupplierItem, 'id' | 'kind' | 'material'>,
): SupplierItem => ({
  label: over.id,
  length: 2400,
  width: 100,
  thickness: 50,
  round: false,
  price: 2000,
  ...over,
});

export const supplier = (...items: SupplierItem[]): Supplier => ({
  id: 'yard',
  name: 'The yard',
  delivery: 0,
  leadDays: 2,
  items,
});

let made = 0;
export const demand = (over: Partial<Demand>): Demand => {
  made += 1;
  return {
    mark: `P${made}`,
    instance: `p${made}`,
    name: 'part',
    length: 500,
    width: 50,
    thickness: 25,
    material: 'ash-european',
    kind: 'timber',
    round: false,
    turn: false,
    across: false,
    purpose: 'part',
    ...over,
  };
};

export const times = (n: number, over: Partial<Demand>): Demand[] =>
  Array.from({ length: n }, () => demand(over));
