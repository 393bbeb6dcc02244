import type { FigureBook } from '../figures/book.ts';
import { clean } from '../figures/measure.ts';
import type { Size } from '../results/cuts.ts';
import { partCentre, partVolume } from '../results/part-volume.ts';
import type { Instance, PartGroup } from '../results/piece.ts';
import type { Allowance } from '../workshop/workshop.ts';
import { shapeOf, type Turnings, turnings } from './likeness.ts';
import type { JobDocument } from './schema.ts';

export interface GroupContext {
  /** The workshop's allowances by kind; the job's and the part's own win. */
  allowances: Record<'timber' | 'sheet' | 'bar' | 'tube', Allowance>;
  /** kg/m3 or undefined when the tables do not know the material. */
  density(material: string): number | undefined;
  /** Place of the neutral line in a bend, share of the bar's thickness, as the workshop has found it. */
  kFactor?: number;
}

const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** A, B ... Z without I and O, then AA, AB ... */
export const letterMark = (index: number): string =>
  (index < LETTERS.length ? '' : LETTERS[Math.floor(index / LETTERS.length) - 1]!) +
  LETTERS[index % LETTERS.length]!;

interface Bin {
  part: string;
  shape: string;
  turnings: Turnings;
  members: Instance[];
}

/** Like parts under one mark; handed ones as two groups with L and R (design, section 4.2). */
export function groupParts(
  instances: Instance[],
  document: JobDocument,
  book: FigureBook,
  context: GroupContext,
): PartGroup[] {
  const bins: Bin[] = [];
  for (const instance of instances) {
    const shape = shapeOf(instance);
    const bin = bins.find(b => b.part === instance.part && b.turnings.same.has(shape));
    if (bin) bin.members.push(instance);
    else bins.push({ part: instance.part, shape, turnings: turnings(instance), members: [instance] });
  }
  const frozen = document.marks ?? {};
  const taken = new Set(Object.values(frozen));
  const free = (function* () {
    for (let i = 0; ; i++) if (!taken.has(letterMark(i))) yield letterMark(i);
  })();
  const letters = new Map<string, string>();
  const letterOf = (part: string): string => {
    const kept = frozen[part] ?? letters.get(part) ?? free.next().value!;
    letters.set(part, kept);
    return kept;
  };
  const groups: PartGroup[] = [];
  for (const part of [...new Set(bins.map(b => b.part))]) {
    const own = bins.filter(b => b.part === part);
    const letter = letterOf(part);
    const named = new Set<Bin>();
    let variant = 0;
    for (const bin of own) {
      if (named.has(bin)) continue;
      const other = own.find(b => b !== bin && !named.has(b) && bin.turnings.mirror.has(b.shape));
      const base = variant++ === 0 ? letter : letter + String.fromCharCode(96 + variant);
      named.add(bin);
      if (other) {
        named.add(other);
        const [left, right] = bin.members.some(m => !m.mirrored) ? [bin, other] : [other, bin];
        groups.push(
          groupOf(`${base} L`, left, document, book, context, 'L'),
          groupOf(`${base} R`, right, document, book, context, 'R'),
        );
      } else groups.push(groupOf(base, bin, document, book, context));
    }
  }
  return groups;
}

function groupOf(
  mark: string,
  bin: Bin,
  document: JobDocument,
  book: FigureBook,
  context: GroupContext,
  hand?: 'L' | 'R',
): PartGroup {
  const first = bin.members[0]!;
  const volume = partVolume(first, first.cuts);
  const density = context.density(first.material);
  const own = document.parts?.[first.part];
  const mass =
    own?.mass === undefined
      ? density === undefined
        ? null
        : (volume * density) / 1e9
      : (book.number(`parts.${first.part}.mass`) ?? null);
  return {
    mark,
    part: first.part,
    name: first.name,
    kind: first.kind,
    material: first.material,
    instances: bin.members.map(m => m.id),
    size: cleanSize(first.size),
    shoulderLength: clean(first.body.length),
    blank: blankOf(first, document, book, context),
    volume,
    mass: first.kind === 'bought-in' && own?.mass === undefined ? null : mass,
    centre: partCentre(first, first.cuts),
    ...(hand ? { hand } : {}),
  };
}

const cleanSize = (s: Size): Size => ({
  length: clean(s.length),
  width: clean(s.width),
  thickness: clean(s.thickness),
});

/** Cut size plus allowances: the part's own, else the job's, else the workshop's; and the reserve of a held part. */
function blankOf(i: Instance, document: JobDocument, book: FigureBook, context: GroupContext): Size {
  if (i.kind === 'bought-in') return cleanSize(i.size);
  // A bent part is sawn as a straight bar.
  const bent = i.cuts.find(c => c.kind === 'bent');
  const straight: Size = bent ? { ...i.size, length: bent.developed, thickness: bent.stock } : i.size;
  const shop = context.allowances[i.kind];
  const job = document.allowances?.[i.kind] ?? {};
  const own = document.parts?.[i.part]?.allowance ?? {};
  const one = (which: keyof Size): number => {
    const allowance =
      own[which] !== undefined
        ? (book.number(`parts.${i.part}.allowance.${which}`) ?? 0)
        : job[which] !== undefined
          ? (book.number(`allowances.${i.kind}.${which}`) ?? 0)
          : shop[which];
    return clean(straight[which] + allowance + (i.measureFirst?.reserve[which] ?? 0));
  };
  return { length: one('length'), width: one('width'), thickness: one('thickness') };
}
