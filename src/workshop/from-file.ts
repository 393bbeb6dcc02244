import { MACHINE_FILES } from './machines/index.ts';
import type { WorkshopRead } from './schema.ts';
import type { Workshop } from './workshop.ts';

const DAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
const USUAL_HOURS = [
  { from: 8 * 60, to: 12 * 60 + 30 },
  { from: 13 * 60 + 15, to: 17 * 60 },
];
const ALLOWANCE = {
  timber: { length: 20, width: 5, thickness: 3 },
  sheet: { length: 0, width: 0, thickness: 0 },
  bar: { length: 5, width: 0, thickness: 0 },
  tube: { length: 5, width: 0, thickness: 0 },
};

const defined = <T extends object>(o: T): { [K in keyof T]: Exclude<T[K], undefined> } =>
  Object.fromEntries(Object.entries(o).filter(([, v]) => v !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>;
  };

type StockRead = Pick<
  NonNullable<WorkshopRead['rack']>[string],
  'material' | 'label' | 'length' | 'width' | 'thickness' | 'diameter' | 'wall' | 'section' | 'grade'
>;

/** What the rack and a supplier say of a piece of stock alike. */
const stockOf = <K extends string>(s: StockRead & { id: string; kind: K }) => ({
  id: s.id,
  kind: s.kind,
  material: s.material,
  label: s.label ?? s.id,
  length: s.length,
  width: s.diameter ?? s.width ?? s.thickness ?? 0,
  thickness: s.diameter ?? s.thickness ?? s.width ?? 0,
  round: s.diameter !== undefined,
  wall: s.wall,
  section: s.section,
  grade: s.grade,
});

/** From the file's own words to millimetres, minutes and minor units, with defaults filled in. */
export function workshopFrom(r: WorkshopRead): Workshop {
  const list = <T extends object>(of: Record<string, T> | undefined) =>
    Object.entries(of ?? {}).map(([id, item]) => ({ id, ...item }));
  return {
    name: r.name,
    currency: r.currency ?? 'GBP',
    machines: list(r.machines).map(m =>
      defined({
        id: m.id,
        kind: m.kind,
        name: m.name ?? m.id,
        maxDepth: m.max_depth,
        fence: m.fence,
        maxTilt: m.max_tilt,
        shortest: m.shortest,
        widest: m.widest,
        longest: m.longest,
        speed: m.speed,
        // Minutes to change a machine are remembered until the maker gives his own.
        change: {
          ...MACHINE_FILES[m.kind].change,
          ...defined(m.change ?? {}),
          measured: m.change !== undefined,
        },
      }),
    ) as Workshop['machines'],
    blades: list(r.blades).map(({ max_speed: maxSpeed, ...b }) =>
      defined({ ...b, name: b.name ?? b.id, maxSpeed }),
    ) as Workshop['blades'],
    cutters: list(r.cutters).map(c =>
      defined({
        id: c.id,
        name: c.name ?? c.id,
        kind: c.kind,
        diameter: c.diameter,
        depth: c.depth,
        angle: c.angle,
        shank: c.shank ?? 8,
        bearing: c.bearing ?? false,
        maxSpeed: c.max_speed,
      }),
    ) as Workshop['cutters'],
    drills: list(r.drills).map(d => ({ ...d, name: d.name ?? d.id, depth: d.depth ?? 80 })),
    jigs: list(r.jigs).map(j => ({ ...j, name: j.name ?? j.id, offset: j.offset ?? 0 })),
    clamps: r.clamps ?? [],
    rack: list(r.rack).map(i =>
      defined({
        ...stockOf(i),
        quantity: i.quantity ?? 1,
        measuredThickness: i.measured,
        widthFar: i.width_far,
        avoid: i.avoid,
        photo: i.photo,
        moisture: i.moisture,
        value: i.value ?? 0,
      }),
    ) as Workshop['rack'],
    suppliers: list(r.suppliers).map(s => ({
      id: s.id,
      name: s.name,
      delivery: s.delivery ?? 0,
      ...(s.minimum === undefined ? {} : { minimum: s.minimum }),
      leadDays: s.lead_days ?? 0,
      items: list(s.items).map(i =>
        defined({
          ...stockOf(i),
          price: i.price,
        }),
      ) as Workshop['suppliers'][number]['items'],
    })),
    calendar: {
      week: Object.fromEntries(
        DAYS.map((d, n) => [n + 1, r.hours === undefined ? (n < 5 ? USUAL_HOURS : []) : (r.hours[d] ?? [])]),
      ),
      daysOff: r.days_off ?? [],
    },
    rates: {
      hour: r.rates?.hour ?? 0,
      contingency: r.rates?.contingency ?? 0,
      margin: r.rates?.margin ?? 0,
      tax: r.rates?.tax ?? { registered: false, rate: 0 },
      consumables: r.rates?.consumables ?? 0,
    },
    ...(r.k_factor === undefined ? {} : { kFactor: r.k_factor }),
    allowances: { ...ALLOWANCE, ...defined(r.allowances ?? {}) },
    adhesives: Object.fromEntries(
      Object.entries(r.adhesives ?? {}).map(([id, a]) => [
        id,
        defined({
          like: a.like,
          name: a.name,
          openMinutes: a.open,
          clampMinutes: a.clamp,
          cureMinutes: a.cure,
          pricePerKg: a.price_per_kg,
        }),
      ]),
    ) as Workshop['adhesives'],
    finishes: Object.fromEntries(
      Object.entries(r.finishes ?? {}).map(([id, f]) => [
        id,
        defined({
          like: f.like,
          name: f.name,
          recoatMinutes: f.recoat,
          recoatWithinMinutes: f.recoat_within,
          cureMinutes: f.cure,
          spread: f.spread,
          pricePerLitre: f.price_per_litre,
        }),
      ]),
    ) as Workshop['finishes'],
    times: Object.fromEntries(
      Object.entries(r.times ?? {}).map(([id, t]) => [
        id,
        {
          low: t.low,
          likely: t.likely,
          high: t.high,
          source: { text: t.note ?? 'the workshop file', basis: 'workshop' as const },
        },
      ]),
    ),
    leastOffcut: r.least_offcut ?? { length: 300, width: 50 },
    climate: r.climate ?? { temperature: 18, humidity: 55 },
  };
}
