import type { FigureBook } from '../figures/book.ts';
import { type Box, shiftBox } from '../geometry/box.ts';
import { add, scale, type Vec3, vec } from '../geometry/vector.ts';
import { type Cut, type LocalFace, POLYGON_AXES, type ProfileCut, type Size } from '../results/cuts.ts';
import { type Fault, fault } from '../results/fault.ts';
import type { Instance } from '../results/piece.ts';
import type { Body } from './bodies.ts';
import { copyFromId } from './copies.ts';
import { LOCAL_FACES } from './faces.ts';
import { featureCuts } from './features.ts';
import type { GroupContext } from './groups.ts';
import type { Made } from './made-joints.ts';
import type { Pairings } from './pairings.ts';
import type { JobDocument, PartDocument } from './schema.ts';
import { sectionFaults } from './section-faults.ts';

type Added = Partial<Record<LocalFace, number>>;

/** Every copy with its cut size, its joints' cuts and its features. */
export function makeInstances(
  document: JobDocument,
  pairings: Pairings,
  made: Made[],
  book: FigureBook,
  context: GroupContext,
): { instances: Instance[]; faults: Fault[] } {
  const cutsOf = new Map<string, Cut[]>();
  for (const m of made)
    for (const { instance, cut } of m.cuts) cutsOf.set(instance, [...(cutsOf.get(instance) ?? []), cut]);
  const instances: Instance[] = [];
  for (const copy of pairings.allCopies()) {
    const part = document.parts![copy.part]!;
    const sized = part.kind !== 'bought-in' || part.length !== undefined || part.at !== undefined;
    const body = sized ? pairings.body(copy) : undefined;
    if (body)
      instances.push(
        instanceOf(body, part, addedTo(copy.id, pairings, book), cutsOf.get(copy.id) ?? [], document, book),
      );
    else if (part.kind === 'bought-in') instances.push(boughtIn(copy.id, copy.part, part));
  }
  return {
    instances,
    faults: [...sectionFaults(document, book), ...addFeatures(instances, document, book, context)],
  };
}

/** An end that enters two parts side by side is lengthened once, by the most that either asks. */
function addedTo(copy: string, pairings: Pairings, book: FigureBook): Added {
  const added: Added = {};
  for (const face of LOCAL_FACES) {
    const asked = pairings.addedFigures(copy, face).map(name => book.number(name) ?? 0);
    // A weld gap sets an end back: below nothing, where no other joint lengthens it.
    const most = asked.length === 0 ? 0 : Math.max(...asked);
    if (most !== 0) added[face] = most;
  }
  return added;
}

/** Bought-in parts need no sizes: a pair of hinges is a count and a price. */
const boughtIn = (id: string, part: string, p: PartDocument): Instance => ({
  id,
  part,
  name: p.name ?? part,
  kind: 'bought-in',
  material: p.material ?? part,
  round: false,
  frame: { origin: vec(0, 0, 0), x: vec(1, 0, 0), y: vec(0, 1, 0), z: vec(0, 0, 1) },
  body: { length: 0, width: 0, thickness: 0 },
  size: { length: 0, width: 0, thickness: 0 },
  added: {},
  cuts: [],
  loose: true,
  mirrored: false,
  grain: 'length',
  show: p.show ?? true,
});

function instanceOf(
  body: Body,
  part: PartDocument,
  added: Added,
  cuts: Cut[],
  document: JobDocument,
  book: FigureBook,
): Instance {
  const { copy, size, frame } = body;
  const low = vec(added.end1 ?? 0, added.backEdge ?? 0, added.back ?? 0);
  const high = vec(added.end2 ?? 0, added.faceEdge ?? 0, added.face ?? 0);
  const grown: Size = {
    length: size.length + low.x + high.x,
    width: size.width + low.y + high.y,
    thickness: size.thickness + low.z + high.z,
  };
  const origin = add(
    frame.origin,
    add(scale(frame.x, -low.x), add(scale(frame.y, -low.y), scale(frame.z, -low.z))),
  );
  const measured = measuredOf(copy.id, copy.part, document, book);
  const held = part.measure_first;
  return {
    id: copy.id,
    part: copy.part,
    name: part.name ?? copy.part,
    kind: part.kind,
    material: part.material ?? '',
    round: part.diameter !== undefined,
    ...(part.wall === undefined ? {} : { wall: book.number(`parts.${copy.part}.wall`) ?? 0 }),
    ...(part.section === undefined ? {} : { section: part.section }),
    frame: { ...frame, origin },
    body: size,
    size: grown,
    added,
    cuts: cuts.map(c => shiftCut(c, low, high, grown)),
    ...(measured ? { measured } : {}),
    ...(held ? { measureFirst: { when: held.when, reserve: reserveOf(copy.part, book) } } : {}),
    loose: !body.placed,
    mirrored: copy.mirrored.length % 2 === 1,
    grain: part.grain ?? 'length',
    show: part.show ?? true,
  };
}

const reserveOf = (part: string, book: FigureBook): Size => ({
  length: book.number(`parts.${part}.reserve.length`) ?? 0,
  width: book.number(`parts.${part}.reserve.width`) ?? 0,
  thickness: book.number(`parts.${part}.reserve.thickness`) ?? 0,
});

/** The copy's own measurement wins over its batch's. */
function measuredOf(
  copy: string,
  part: string,
  document: JobDocument,
  book: FigureBook,
): Partial<Size> | undefined {
  const found: Partial<Size> = {};
  for (const key of [part, copy])
    for (const which of ['length', 'width', 'thickness'] as const) {
      const value = book.number(`measured.${key}.${which}`);
      if (value !== undefined && document.measured?.[key]?.[which] !== undefined) found[which] = value;
    }
  return Object.keys(found).length > 0 ? found : undefined;
}

/** From the body's frame to the cut size's: everything moves up by what was added at the low faces. */
function shiftCut(cut: Cut, low: Vec3, high: Vec3, grown: Size): Cut {
  switch (cut.kind) {
    case 'tenon':
      return {
        ...cut,
        y: { low: cut.y.low + low.y, high: cut.y.high + high.y },
        z: { low: cut.z.low + low.z, high: cut.z.high + high.z },
      };
    case 'hole':
      return { ...cut, at: add(cut.at, low) };
    case 'taper':
      return { ...cut, from: cut.from + low.x, to: cut.to + low.x };
    case 'turned':
      return { ...cut, profile: cut.profile.map(p => ({ ...p, at: p.at + low.x })) };
    case 'dovetail':
    case 'curve':
    case 'cut-out':
    case 'bevel':
    case 'slant':
    case 'scribe':
      return shiftProfile(cut, low);
    case 'bent':
    case 'end-cut':
    case 'chamfer':
    case 'round-over':
      return cut;
    case 'groove':
      return { ...cut, box: within(shiftBox(cut.box, low), grown) };
    default:
      return { ...cut, box: shiftBox(cut.box, low) };
  }
}

function shiftProfile(cut: ProfileCut, low: Vec3): ProfileCut {
  const [u, v] = POLYGON_AXES[cut.axis];
  return {
    ...cut,
    from: cut.from + low[cut.axis],
    to: cut.to + low[cut.axis],
    polygon: cut.polygon.map(([a, b]) => [a + low[u], b + low[v]]),
  };
}

/** A groove that runs through goes on over tenons and haunches, as far as the wood does. */
const within = (b: Box, s: Size): Box => ({
  min: { ...b.min, x: Math.max(0, b.min.x) },
  max: { ...b.max, x: Math.min(s.length, b.max.x) },
});

function addFeatures(
  instances: Instance[],
  document: JobDocument,
  book: FigureBook,
  context: GroupContext,
): Fault[] {
  const faults: Fault[] = [];
  const byId = new Map(instances.map(i => [i.id, i]));
  for (const [id, feature] of Object.entries(document.features ?? {})) {
    const copy = copyFromId(feature.on, document.parts ?? {});
    if (!copy) {
      faults.push({
        place: `features.${id}.on`,
        fault: `there is no part called ${feature.on}`,
        mend: 'name a part of this job',
      });
      continue;
    }
    const named = copy.id !== copy.part;
    const on = instances.filter(i => (named ? i.id === copy.id : i.part === copy.part));
    // Words for faces are those of the copy that is named; the part's own name stands for its first.
    const origin = byId.get(copy.id);
    if (!origin) {
      if (named && byId.has(copy.part))
        faults.push(
          fault(
            `features.${id}.on`,
            `there is no ${copy.id}: so many are not made`,
            'name a copy that is made',
          ),
        );
      continue;
    }
    const told = new Set<string>();
    for (const instance of on) {
      const { cuts, faults: found } = featureCuts(id, feature, instance, origin, book, document, context);
      for (const f of found) {
        if (!told.has(f.place)) faults.push(f);
        told.add(f.place);
      }
      const count = instance.cuts.filter(c => c.by === id).length;
      instance.cuts.push(...cuts.map((c, i) => ({ ...c, id: `${id}.${count + i + 1}` })));
    }
  }
  return faults;
}
