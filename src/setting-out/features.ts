import type { FigureBook } from '../figures/book.ts';
import { box } from '../geometry/box.ts';
import { scale, vec } from '../geometry/vector.ts';
import type { Cut, LocalFace, PocketCut, Size, Stage } from '../results/cuts.ts';
import { FACE_AXIS, ON_PART } from '../results/cuts.ts';
import { type Fault, fault } from '../results/fault.ts';
import type { Instance } from '../results/piece.ts';
import { isHigh, LOCAL_FACES, LOCAL_NORMAL, localFace, OPPOSITE, SIZE_OF_AXIS } from './faces.ts';
import type { FeatureLength } from './feature-figures.ts';
import type { FaceWord, FeatureDocument, JobDocument } from './schema.ts';
import { unsound } from './sound-cuts.ts';

interface Context {
  id: string;
  feature: FeatureDocument;
  size: Size;
  stage: Stage;
  face(word: FaceWord): LocalFace;
  /** Value of a written figure; undefined when it is not written or cannot be worked out. */
  get(field: FeatureLength | 'angle' | 'repeat.step' | 'repeat.count'): number | undefined;
  need(field: FeatureLength | 'angle'): number;
  /** Stations along the length are measured from end 1 of the body: this is where it lies in the cut size. */
  start: number;
}

/** Raised inside this file only, turned into a Fault at its end. */
class Lacking extends Error {
  readonly field: string;
  readonly mend: string;
  constructor(field: string, message: string, mend: string) {
    super(message);
    this.field = field;
    this.mend = mend;
  }
}

const base = (c: Context) => ({ by: c.id, stage: c.stage });

function pocket(
  c: Context,
  kind: PocketCut['kind'],
  face: LocalFace,
  b: ReturnType<typeof box>,
  run: 'x' | 'y' | 'z',
  through = false,
): Cut {
  return { ...base(c), id: '', kind, face, box: b, run, through, corner: 'square' };
}

/** A step along an edge: `face` is where the depth goes in, `edge` the side it is open to. */
function rebate(c: Context): Cut[] {
  const face = c.face(faceOf(c, 'face'));
  const edge = c.face(faceOf(c, 'edge'));
  if (FACE_AXIS[face] === FACE_AXIS[edge])
    throw new Lacking('edge', 'the edge lies on the same face', 'name the side the rebate is open to');
  const spans = fullSpans(c.size);
  intoFace(spans, face, c.need('depth'), c.size);
  intoFace(spans, edge, c.need('width'), c.size);
  const run = (['x', 'y', 'z'] as const).find(k => k !== FACE_AXIS[face] && k !== FACE_AXIS[edge])!;
  stopAt(c, spans, run);
  return [pocket(c, 'rebate', face, boxOf(spans), run)];
}

/** Along the grain unless `along` says where across the length it stands. */
function groove(c: Context): Cut[] {
  const face = c.face(faceOf(c, 'face'));
  const spans = fullSpans(c.size);
  intoFace(spans, face, c.need('depth'), c.size);
  const along = c.get('along');
  const across = crossAxis(face);
  const width = c.need('width');
  if (along !== undefined && FACE_AXIS[face] !== 'x') {
    spans.x = [c.start + along, c.start + along + width];
    stopAt(c, spans, across);
    return [pocket(c, 'housing', face, boxOf(spans), across)];
  }
  const from = c.get('across') ?? (c.size[SIZE_OF_AXIS[across]] - width) / 2;
  spans[across] = [from, from + width];
  const run = FACE_AXIS[face] === 'x' ? (across === 'y' ? 'z' : 'y') : 'x';
  stopAt(c, spans, run);
  return [pocket(c, 'groove', face, boxOf(spans), run)];
}

function notch(c: Context): Cut[] {
  const face = c.face(faceOf(c, 'face'));
  const spans = fullSpans(c.size);
  intoFace(spans, face, c.need('depth'), c.size);
  const along = c.start + c.need('along');
  spans.x = [along, along + c.need('width')];
  const edge = c.feature.edge === undefined ? undefined : c.face(c.feature.edge);
  if (edge) intoFace(spans, edge, c.need('size'), c.size);
  return [pocket(c, 'notch', face, boxOf(spans), crossAxis(face))];
}

function hole(c: Context): Cut[] {
  const face = c.face(faceOf(c, 'face'));
  const axis = FACE_AXIS[face];
  const whole = c.size[SIZE_OF_AXIS[axis]];
  const depth = c.get('depth');
  const count = c.get('repeat.count') ?? 1;
  const step = c.get('repeat.step') ?? 0;
  const sink = c.feature.type === 'countersink' ? c.need('size') : c.get('size');
  const travel = c.get('travel');
  return Array.from({ length: count }, (_, i): Cut => {
    const along = c.start + (c.get('along') ?? 0) + i * step;
    const across = c.get('across');
    const at = vec(along, across ?? c.size.width / 2, c.size.thickness / 2);
    if (axis === 'y') at.z = across ?? c.size.thickness / 2;
    if (axis === 'x') {
      at.y = across ?? c.size.width / 2;
      at.x = 0;
    }
    at[axis] = isHigh(face) ? whole : 0;
    return {
      ...base(c),
      id: '',
      kind: 'hole',
      role: travel === undefined ? 'plain' : 'slot',
      face,
      at,
      direction: scale(LOCAL_NORMAL[face], -1),
      diameter: c.need('diameter'),
      depth: depth ?? whole,
      through: depth === undefined || depth >= whole,
      ...(sink === undefined ? {} : { countersink: { diameter: sink, angle: c.get('angle') ?? 90 } }),
      ...(travel === undefined ? {} : { slot: { travel, along: crossAxis(face) } }),
    };
  });
}

function edgeWork(c: Context, kind: 'chamfer' | 'round-over'): Cut[] {
  const size = c.need('size');
  const named = c.feature.edges?.map(([a, b]) => ({ a: c.face(a), b: c.face(b) }));
  const end = c.feature.end;
  const around = end ? LOCAL_FACES.filter(f => FACE_AXIS[f] !== 'x').map(b => ({ a: end, b })) : undefined;
  const edges = named ?? around;
  if (!edges) throw new Lacking('edges', 'no edge is named', 'list edges as pairs of faces, or name an end');
  if (edges.some(e => FACE_AXIS[e.a] === FACE_AXIS[e.b]))
    throw new Lacking(
      'edges',
      'two faces that do not meet are named',
      'an edge is where two faces meet, such as [front, top]',
    );
  return [{ ...base(c), id: '', kind, edges, size }];
}

function taper(c: Context): Cut[] {
  const face = c.face(faceOf(c, 'face'));
  if (face === 'end1' || face === 'end2')
    throw new Lacking('face', 'an end cannot be tapered', 'name a long face');
  const start = c.start + (c.get('start') ?? 0);
  const to = c.feature.end === 'end1' ? 0 : c.size.length;
  return [{ ...base(c), id: '', kind: 'taper', face, from: start, to, amount: c.need('amount') }];
}

function mitre(c: Context): Cut[] {
  const end = c.feature.end;
  if (!end) throw new Lacking('end', 'no end is named', 'give end: end1 or end2');
  const face = c.feature.face === undefined ? 'faceEdge' : c.face(c.feature.face);
  const angle = c.need('angle') * (isHigh(face) ? 1 : -1);
  const bevel = FACE_AXIS[face] === 'z';
  return [{ ...base(c), id: '', kind: 'end-cut', end, mitre: bevel ? 0 : angle, bevel: bevel ? angle : 0 }];
}

type Spans = Record<'x' | 'y' | 'z', [number, number]>;
const fullSpans = (s: Size): Spans => ({ x: [0, s.length], y: [0, s.width], z: [0, s.thickness] });
const boxOf = (s: Spans) => box(s.x[0], s.y[0], s.z[0], s.x[1], s.y[1], s.z[1]);

function intoFace(spans: Spans, face: LocalFace, depth: number, size: Size): void {
  const axis = FACE_AXIS[face];
  const whole = size[SIZE_OF_AXIS[axis]];
  spans[axis] = isHigh(face) ? [whole - depth, whole] : [0, depth];
}

function stopAt(c: Context, spans: Spans, run: 'x' | 'y' | 'z'): void {
  const shift = run === 'x' ? c.start : 0;
  const from = c.get('from');
  const to = c.get('to');
  if (from !== undefined) spans[run][0] = from + shift;
  if (to !== undefined) spans[run][1] = to + shift;
}

/** The axis that lies in a face and is not the grain: the width, or the thickness on an edge. */
const crossAxis = (face: LocalFace): 'y' | 'z' => (FACE_AXIS[face] === 'y' ? 'z' : 'y');

function faceOf(c: Context, field: 'face' | 'edge'): FaceWord {
  const word = c.feature[field];
  if (word === undefined)
    throw new Lacking(
      field,
      `no ${field} is named`,
      `give ${field}: left, right, front, back, bottom or top`,
    );
  return word;
}

const MAKERS: Record<FeatureDocument['type'], (c: Context) => Cut[]> = {
  rebate,
  groove,
  notch,
  hole,
  countersink: hole,
  chamfer: c => edgeWork(c, 'chamfer'),
  'round-over': c => edgeWork(c, 'round-over'),
  taper,
  mitre,
};

/** Cuts of a feature on one copy, in its cut-size frame. Mirrored copies get the mirror image. */
export function featureCuts(
  id: string,
  feature: FeatureDocument,
  instance: Instance,
  origin: Instance,
  book: FigureBook,
  document: JobDocument,
): { cuts: Cut[]; faults: Fault[] } {
  if (feature.after !== undefined && !knowsAssembly(feature.after, document))
    return {
      cuts: [],
      faults: [
        fault(
          `features.${id}.after`,
          `there is no assembly called ${feature.after}`,
          'name an assembly of this job',
        ),
      ],
    };
  const context: Context = {
    id,
    feature,
    size: instance.size,
    stage: feature.after === undefined ? ON_PART : { when: 'after', assembly: feature.after },
    face: word => localFace(word, origin.frame),
    get: field => sound(field, book.number(`features.${id}.${field}`)),
    need: field => {
      const value = sound(field, book.number(`features.${id}.${field}`));
      if (value === undefined) throw new Lacking(field, `${field} is not given`, `give ${field}`);
      return value;
    },
    start: instance.added.end1 ?? 0,
  };
  try {
    const cuts = MAKERS[feature.type](context);
    const wrong = cuts.map(c => unsound(c, instance.size)).find(Boolean);
    if (wrong) return { cuts: [], faults: [fault(`features.${id}${wrong.field}`, wrong.fault, wrong.mend)] };
    return {
      cuts: instance.mirrored === origin.mirrored ? cuts : cuts.map(c => mirrorCut(c, instance.size)),
      faults: [],
    };
  } catch (error) {
    if (!(error instanceof Lacking)) throw error;
    const own = book.outcome(`features.${id}.${error.field}`);
    const told = !own.ok && own.because !== `features.${id}.${error.field}`;
    return {
      cuts: [],
      faults:
        !own.ok && (told || own.fault)
          ? []
          : [fault(`features.${id}.${error.field}`, error.message, error.mend)],
    };
  }
}

const knowsAssembly = (id: string, document: JobDocument): boolean =>
  Object.entries(document.assemblies ?? {}).some(
    ([a, d]) => a === id || (d.mirror !== undefined && `${a}_${d.mirror}` === id),
  );

const ABOVE_NOTHING: readonly string[] = ['width', 'depth', 'size', 'diameter', 'amount'];

/** A size of nothing or less is no size; a count is a whole number. */
function sound(field: string, value: number | undefined): number | undefined {
  if (value === undefined) return undefined;
  if (ABOVE_NOTHING.includes(field) && value <= 0)
    throw new Lacking(field, `${field} comes to ${value} mm`, 'it must be above 0');
  if (field === 'travel' && value < 0)
    throw new Lacking(field, `${field} comes to ${value} mm`, 'it must not be below 0');
  if (field === 'repeat.count' && (!Number.isInteger(value) || value < 0 || value > MOST_REPEATS))
    throw new Lacking(field, `the count comes to ${value}`, `give a whole number from 0 to ${MOST_REPEATS}`);
  return value;
}

const MOST_REPEATS = 200;

const swapEdge = (f: LocalFace): LocalFace => (FACE_AXIS[f] === 'y' ? OPPOSITE[f] : f);

/** The same cut on the mirror-image part: back edge and face edge change over. */
export function mirrorCut(cut: Cut, size: Size): Cut {
  const w = size.width;
  switch (cut.kind) {
    case 'tenon':
      return { ...cut, y: { low: cut.y.high, high: cut.y.low } };
    case 'end-cut':
      return { ...cut, mitre: -cut.mitre || 0 };
    case 'hole':
      return {
        ...cut,
        face: swapEdge(cut.face),
        at: { ...cut.at, y: w - cut.at.y },
        direction: { ...cut.direction, y: -cut.direction.y || 0 },
      };
    case 'chamfer':
    case 'round-over':
      return { ...cut, edges: cut.edges.map(e => ({ a: swapEdge(e.a), b: swapEdge(e.b) })) };
    case 'taper':
      return { ...cut, face: swapEdge(cut.face) as typeof cut.face };
    default:
      return {
        ...cut,
        face: swapEdge(cut.face),
        box: box(
          cut.box.min.x,
          w - cut.box.max.y,
          cut.box.min.z,
          cut.box.max.x,
          w - cut.box.min.y,
          cut.box.max.z,
        ),
      };
  }
}
