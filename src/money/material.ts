/** What the material of a job costs: stock with its waste, delivery, bought-in parts, glue, finish. */
import { adhesive } from '../reference/adhesives.ts';
import { finishProduct } from '../reference/finishes.ts';
import { materialDensity } from '../reference/materials.ts';
import { middle, sourceOf } from '../reference/sourced.ts';
import type { CuttingPlan, StockUse } from '../results/cutting.ts';
import type { PriceLine } from '../results/price.ts';
import type { Source } from '../results/source.ts';
import { finishLitres, glueGrams } from '../timber/coverage.ts';
import type { Workshop } from '../workshop/workshop.ts';
import { lineAmount, sum, toMinor } from './amounts.ts';
import type { PriceInput } from './input.ts';
import { MON_1, MON_2 } from './rules.ts';
import { surfaceM2 } from './surface.ts';
import { money, percent } from './words.ts';

/** Words to an id that may stand in a figure path. */
export const lineId = (...words: string[]): string =>
  words
    .join('-')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');

/** Share of a length or sheet that goes back to the rack, 0 to 1. */
export function returnedShare(use: StockUse): number {
  const whole = use.length * use.width;
  const back = sum(use.left.filter(l => l.fate === 'back to the rack').map(l => l.length * l.width));
  return whole > 0 ? Math.min(1, back / whole) : 0;
}

/** What one length or sheet costs the job, minor units. */
export const chargeFor = (use: StockUse): number =>
  use.from === 'buy' ? use.price : toMinor(use.price * (1 - returnedShare(use)));

const used = (cutting: CuttingPlan): StockUse[] =>
  cutting.materials.flatMap(m => m.uses).filter(u => u.placed.length > 0);

/** One line for each material. */
export function stockLines({ cutting, workshop }: PriceInput): PriceLine[] {
  const uses = used(cutting);
  const materials = [...new Set(uses.map(u => u.material))];
  return materials.map(material => {
    const of = uses.filter(u => u.material === material);
    const bought = of.filter(u => u.from === 'buy');
    return {
      id: lineId('stock', material),
      label: materialDensity(material)?.name ?? material,
      amount: sum(of.map(chargeFor)),
      how: howBought(bought.length, of.length - bought.length),
      source: MON_1.source,
      inputs: of.map(use => ({
        label: use.label,
        value: money(chargeFor(use), workshop.currency),
        from: use.from === 'buy' ? `bought, ${use.supplier ?? 'supplier'}` : rackWords(use),
      })),
    };
  });
}

const howBought = (bought: number, rack: number): string =>
  [bought > 0 ? `${bought} bought whole` : '', rack > 0 ? `${rack} from the rack less what goes back` : '']
    .filter(Boolean)
    .join(', ');

const rackWords = (use: StockUse): string => {
  const back = returnedShare(use);
  return back > 0 ? `rack, ${percent(back)} goes back` : 'rack';
};

/** Carriage, once for each supplier that something is bought from. */
export function deliveryLine({ cutting, workshop }: PriceInput): PriceLine[] {
  const names = new Set(cutting.buy.filter(b => b.quantity > 0).map(b => b.supplier));
  const from = workshop.suppliers.filter(s => names.has(s.id) || names.has(s.name));
  const amount = sum(from.map(s => s.delivery));
  if (amount === 0) return [];
  return [
    {
      id: 'delivery-of-stock',
      label: 'Delivery of stock',
      amount,
      how: 'once for each supplier',
      source: { text: "supplier's charge", basis: 'workshop' },
      inputs: from.map(s => ({
        label: s.name,
        value: money(s.delivery, workshop.currency),
        from: `suppliers.${s.id}.delivery`,
      })),
    },
  ];
}

export function boughtInLine({ boughtIn = [], workshop }: PriceInput): PriceLine[] {
  const priced = boughtIn.filter(b => b.price !== null);
  if (priced.length === 0) return [];
  return [
    {
      id: 'bought-in',
      label: 'Bought-in parts',
      amount: sum(priced.map(b => lineAmount(b.quantity, b.price ?? 0))),
      how: 'quantity x price of one',
      source: { text: 'the setting-out', basis: 'maker' },
      inputs: priced.map(b => ({
        label: `${b.quantity} x ${b.name}`,
        value: money(lineAmount(b.quantity, b.price ?? 0), workshop.currency),
        from: `parts.${b.part}.price`,
      })),
    },
  ];
}

/** Work given out, each at its own price; one without a price is told and counts nothing. */
export function outworkLines({ piece, commission, workshop }: PriceInput): PriceLine[] {
  const given = [
    ...piece.assemblies.map(a => ({ of: a, at: `assemblies.${a.id}`, what: ', welding' })),
    ...commission.finishes.map(f => ({ of: f, at: `finishes.${f.id}`, what: '' })),
  ];
  return given.flatMap(({ of, at, what }): PriceLine[] => {
    const { outwork } = of;
    if (!outwork) return [];
    return [
      {
        id: `outwork.${at}`,
        label: `${of.name}${what}`,
        amount: outwork.price ?? 0,
        how: outwork.price === null ? `${outwork.by} has named no price yet` : `${outwork.by}'s price`,
        source: { text: 'the setting-out', basis: 'maker' },
        inputs: [
          {
            label: outwork.by,
            value: money(outwork.price ?? 0, workshop.currency),
            from: `${at}.outwork.price`,
          },
        ],
      },
    ];
  });
}

interface Spread {
  name: string;
  quantity: number;
  unit: 'g' | 'ml';
  amount: number;
  from: string;
  source: Source;
}

/** Glue whose price the workshop knows: joint area by the middle of the table's spread, on one face. */
function glueOf(key: string, areaMm2: number, workshop: Workshop): Spread[] {
  const own = workshop.adhesives[key];
  const spread = adhesive(own?.like ?? key)?.spreadGPerM2;
  if (own?.pricePerKg === undefined || !spread || areaMm2 <= 0) return [];
  const grams = glueGrams(areaMm2 / 1e6, middle(spread));
  return [
    {
      name: own.name,
      quantity: grams,
      unit: 'g',
      amount: lineAmount(grams, own.pricePerKg, 1000),
      from: `adhesives.${key}`,
      source: sourceOf(spread),
    },
  ];
}

function glues({ piece, workshop }: PriceInput): Spread[] {
  const areas = new Map<string, number>();
  for (const joint of piece.joints) {
    if (joint.dry) continue;
    const key = joint.bond?.adhesive || piece.assemblies.find(a => a.joints.includes(joint.id))?.glue;
    if (key !== undefined) areas.set(key, (areas.get(key) ?? 0) + sum(joint.glue.map(g => g.area)));
  }
  return [...areas].flatMap(([key, area]) => glueOf(key, area, workshop));
}

/** Finish whose price the workshop knows: litres = area x coats / spread x 1.1. */
function finishes({ piece, commission, workshop }: PriceInput): Spread[] {
  return commission.finishes.flatMap(recipe => {
    const covered = piece.instances.filter(i => recipe.instances.includes(i.id));
    const area = sum(covered.map(surfaceM2));
    const products = [...new Set(recipe.steps.flatMap(s => (s.product === undefined ? [] : [s.product])))];
    return products.flatMap(key => {
      const own = workshop.finishes[key];
      const table = finishProduct(own?.like ?? key)?.spreadM2PerL;
      const spread = own?.spread ?? (table ? middle(table) : undefined);
      if (own?.pricePerLitre === undefined || spread === undefined || area <= 0) return [];
      const coats = recipe.steps.filter(s => s.product === key).length;
      const litres = finishLitres(area, coats, spread);
      return [
        {
          name: own.name,
          quantity: litres * 1000,
          unit: 'ml' as const,
          amount: lineAmount(litres, own.pricePerLitre),
          from: `finishes.${key}`,
          source:
            own.spread !== undefined || !table
              ? { text: 'spread by the workshop', basis: 'workshop' as const }
              : sourceOf(table),
        },
      ];
    });
  });
}

function spreadLine(id: string, label: string, how: string, of: Spread[], currency: string): PriceLine[] {
  if (of.length === 0) return [];
  return [
    {
      id,
      label,
      amount: sum(of.map(s => s.amount)),
      how,
      source: of[0]!.source,
      inputs: of.map(s => ({
        label: `${s.name}, ${Math.ceil(s.quantity)} ${s.unit}`,
        value: money(s.amount, currency),
        from: s.from,
      })),
    },
  ];
}

export function glueLine(input: PriceInput): PriceLine[] {
  return spreadLine('glue', 'Glue', 'joint area x spread', glues(input), input.workshop.currency);
}

export function finishLine(input: PriceInput): PriceLine[] {
  const how = 'area x coats / spread x 1.1';
  return spreadLine('finish', 'Finish', how, finishes(input), input.workshop.currency);
}

/** Abrasives, rags and whatever has no price of its own, as a share of the stock. */
export function consumablesLine(stock: readonly PriceLine[], { workshop }: PriceInput): PriceLine[] {
  const share = workshop.rates.consumables;
  const base = sum(stock.map(l => l.amount));
  const amount = lineAmount(base, share);
  if (amount === 0) return [];
  return [
    {
      id: 'consumables',
      label: 'Abrasives, rags and small things',
      amount,
      how: `${percent(share)} of stock ${money(base, workshop.currency)}`,
      source: MON_2.source,
      inputs: [
        { label: 'Stock', value: money(base, workshop.currency), from: 'offer.lines' },
        { label: 'Share', value: percent(share), from: 'rates.consumables' },
      ],
    },
  ];
}
