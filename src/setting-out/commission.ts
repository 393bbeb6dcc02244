import type { Figure, FigureBook } from '../figures/book.ts';
import { FigureFault } from '../figures/evaluate.ts';
import { nearest } from '../figures/nearest.ts';
import type { LengthUnit } from '../quantities/length.ts';
import { parseMinutes } from '../quantities/time.ts';
import type { Commission, FinishRecipe, FinishStep, Site } from '../results/commission.ts';
import { type Fault, fault } from '../results/fault.ts';
import type { Instance } from '../results/piece.ts';
import type { BoughtIn } from '../results/price.ts';
import { copyFromId } from './copies.ts';
import { enteredFigure } from './entered.ts';
import { money } from './money.ts';
import { readOutwork } from './outwork.ts';
import type { FinishDocument, JobDocument } from './schema.ts';

/** Figures written outside the parts: doors, measurements, the job's own allowances. */
export function otherFigures(
  document: JobDocument,
  unit: LengthUnit,
  resolve: (name: string) => string,
): Figure[] {
  const figures: Figure[] = [];
  const add = (name: string, label: string, text: string | number | undefined): void => {
    if (text !== undefined)
      figures.push(sized(enteredFigure(name, label, name, text, 'length', unit, resolve)));
  };
  for (const [id, door] of Object.entries(document.site?.doors ?? {})) {
    add(`site.doors.${id}.width`, `${door.name ?? id}, clear width`, door.width);
    add(`site.doors.${id}.height`, `${door.name ?? id}, clear height`, door.height);
  }
  for (const group of ['measured', 'allowances'] as const)
    for (const [key, sizes] of Object.entries(document[group] ?? {}))
      for (const which of ['length', 'width', 'thickness'] as const)
        add(
          `${group}.${key}.${which}`,
          `${key}, ${group === 'measured' ? 'measured' : 'allowance in'} ${which}`,
          sizes?.[which],
        );
  for (const [id, pair] of Object.entries(document.agree ?? {}))
    for (const which of ['figure', 'with'] as const)
      figures.push(
        enteredFigure(
          `agree.${id}.${which}`,
          `${pair.label ?? id}, ${which}`,
          `agree.${id}.${which}`,
          pair[which],
          'length',
          unit,
          resolve,
        ),
      );
  return figures.map(f => (f.name.startsWith('measured.') ? { ...f, how: 'measured' as const } : f));
}

/** Doors and measurements are above nothing; an allowance may be nothing. */
function sized(figure: Figure): Figure {
  const allowance = figure.name.startsWith('allowances.');
  return {
    ...figure,
    compute: read => {
      const value = figure.compute(read);
      if (value.type === 'number' && (allowance ? value.value < 0 : value.value <= 0))
        throw new FigureFault(
          `this comes to ${value.value} mm`,
          allowance ? 'an allowance is 0 or more' : 'it must be above 0',
        );
      return value;
    },
  };
}

/** What the job says beyond the piece: site, times, finishes, price inputs. */
export function readCommission(
  document: JobDocument,
  instances: Instance[],
  book: FigureBook,
): { commission: Commission; faults: Fault[] } {
  const faults: Fault[] = [];
  const made = new Set(instances.flatMap(i => [i.id, i.part]));
  for (const key of Object.keys(document.measured ?? {}))
    if (!made.has(key) && !Object.hasOwn(document.parts ?? {}, key))
      faults.push(
        fault(
          `measured.${key}`,
          `there is no part called ${key}`,
          hint(key, Object.keys(document.parts ?? {})),
        ),
      );
  const site = readSite(document, book);
  const finishes = Object.entries(document.finishes ?? {}).map(([id, f]) =>
    readFinish(id, f, document, instances, faults),
  );
  const commission: Commission = {
    title: document.title,
    number: document.number === undefined ? '' : String(document.number),
    ...(document.client === undefined ? {} : { client: document.client }),
    brief: document.brief ?? '',
    ...(document.agree === undefined
      ? {}
      : {
          agreements: Object.entries(document.agree).map(
            ([key, pair]): NonNullable<Commission['agreements']>[number] => ({
              id: key,
              label: pair.label ?? key,
              figure: book.number(`agree.${key}.figure`),
              other: book.number(`agree.${key}.with`),
              written: [String(pair.figure), String(pair.with)],
            }),
          ),
        }),
    ...(site ? { site } : {}),
    ...(document.start === undefined ? {} : { start: document.start }),
    ...(document.deadline === undefined ? {} : { deadline: document.deadline }),
    finishes,
    price: {
      ...(document.price?.margin === undefined ? {} : { margin: document.price.margin }),
      ...(document.price?.contingency === undefined ? {} : { contingency: document.price.contingency }),
      extras: Object.entries(document.price?.extras ?? {}).map(([id, e]) => ({
        id,
        label: e.label,
        amount: money(`price.extras.${id}.amount`, e.amount, faults),
      })),
      extraHours: Object.entries(document.price?.hours ?? {}).map(([id, h]) => ({
        id,
        label: h.label,
        hours: h.hours,
      })),
    },
    ...(document.moisture === undefined ? {} : { moistureAtMaking: document.moisture }),
  };
  return { commission, faults };
}

const hint = (word: string, known: Iterable<string>): string => {
  const near = nearest(word, known);
  return near ? `did you mean ${near}?` : 'name a part of this job';
};

function readSite(document: JobDocument, book: FigureBook): Site | undefined {
  const site = document.site;
  if (!site) return undefined;
  return {
    name: site.name,
    ...(site.humidity ? { humidity: site.humidity } : {}),
    ...(site.temperature ? { temperature: site.temperature } : {}),
    doors: Object.entries(site.doors ?? {}).map(([id, d]) => ({
      name: d.name ?? id,
      width: book.number(`site.doors.${id}.width`) ?? 0,
      height: book.number(`site.doors.${id}.height`) ?? 0,
    })),
  };
}

function readFinish(
  id: string,
  finish: FinishDocument,
  document: JobDocument,
  instances: Instance[],
  faults: Fault[],
): FinishRecipe {
  const place = `finishes.${id}`;
  const covered = finish.on.flatMap(name => {
    if (name === 'all') return instances.filter(i => i.kind !== 'bought-in').map(i => i.id);
    const copy = copyFromId(name, document.parts ?? {});
    if (!copy) {
      faults.push(
        fault(
          `${place}.on`,
          `there is no part called ${name}`,
          hint(name, Object.keys(document.parts ?? {})),
          'part ids, or all',
        ),
      );
      return [];
    }
    if (copy.id === copy.part) return instances.filter(i => i.part === copy.part).map(i => i.id);
    if (instances.some(i => i.id === name)) return [name];
    faults.push(
      fault(`${place}.on`, `there is no ${name}: so many are not made`, 'name a copy that is made'),
    );
    return [];
  });
  const spell = (where: string, text: string | undefined): number | undefined => {
    if (text === undefined) return undefined;
    const parsed = parseMinutes(text);
    if (parsed.ok) return parsed.value;
    faults.push(fault(where, parsed.fault, `write ${parsed.expected}`));
    return undefined;
  };
  if (finish.outwork && finish.steps)
    faults.push(
      fault(`${place}.steps`, 'a finish given out has no steps here', 'take the steps away, or the outwork'),
    );
  if (!finish.outwork && !finish.steps)
    faults.push(
      fault(`${place}.steps`, 'no steps are named', 'list the steps, or who does it under outwork'),
    );
  const steps = Object.entries(finish.steps ?? {}).map(([key, s]): FinishStep => {
    const wait = spell(`${place}.steps.${key}.wait`, s.wait);
    const within = spell(`${place}.steps.${key}.within`, s.within);
    return {
      kind: s.kind,
      name: s.name ?? key,
      ...(s.product === undefined ? {} : { product: s.product }),
      ...(s.grit === undefined ? {} : { grit: s.grit }),
      ...(s.minutes_per_m2 === undefined ? {} : { minutesPerM2: s.minutes_per_m2 }),
      ...(wait === undefined ? {} : { waitMinutes: wait }),
      ...(within === undefined ? {} : { withinMinutes: within }),
    };
  });
  return {
    id,
    name: finish.name ?? id,
    steps,
    instances: [...new Set(covered)],
    when: finish.when ?? 'after glue-up',
    ...(finish.outwork ? { outwork: readOutwork(`${place}.outwork`, finish.outwork, faults) } : {}),
    ...(finish.sample
      ? {
          sample: {
            asked: finish.sample.asked,
            ...(finish.sample.agreed ? { agreed: finish.sample.agreed } : {}),
          },
        }
      : {}),
  };
}

/** Bought-in parts with what the setting-out says they cost; null where it says nothing. */
export function readBoughtIn(
  document: JobDocument,
  instances: Instance[],
): { boughtIn: BoughtIn[]; faults: Fault[] } {
  const faults: Fault[] = [];
  const boughtIn = Object.entries(document.parts ?? {})
    .filter(([, p]) => p.kind === 'bought-in')
    .map(([part, p]) => ({
      part,
      name: p.name ?? part,
      quantity: instances.filter(i => i.part === part).length,
      price: p.price === undefined ? null : money(`parts.${part}.price`, p.price, faults),
    }));
  return { boughtIn, faults };
}
