import { box } from '../geometry/box.ts';
import { type Axis, scale, vec } from '../geometry/vector.ts';
import {
  type Cut,
  FACE_AXIS,
  type LocalFace,
  POLYGON_AXES,
  type PocketCut,
  type Size,
} from '../results/cuts.ts';
import { isHigh, LOCAL_FACES, LOCAL_NORMAL, SIZE_OF_AXIS } from './faces.ts';
import { base, type Context, faceOf, Lacking } from './feature-context.ts';

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
export function rebate(c: Context): Cut[] {
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
export function groove(c: Context): Cut[] {
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

export function notch(c: Context): Cut[] {
  const face = c.face(faceOf(c, 'face'));
  const spans = fullSpans(c.size);
  intoFace(spans, face, c.need('depth'), c.size);
  const along = c.start + c.need('along');
  spans.x = [along, along + c.need('width')];
  const edge = c.feature.edge === undefined ? undefined : c.face(c.feature.edge);
  if (edge) intoFace(spans, edge, c.need('size'), c.size);
  return [pocket(c, 'notch', face, boxOf(spans), crossAxis(face))];
}

export function hole(c: Context): Cut[] {
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

export function edgeWork(c: Context, kind: 'chamfer' | 'round-over'): Cut[] {
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
  if (kind === 'chamfer' && (c.feature.from !== undefined || c.feature.to !== undefined))
    return edges.map(e => stoppedChamfer(c, e, size));
  return [{ ...base(c), id: '', kind, edges, size }];
}

/** A chamfer that does not run its whole arris: `from` and `to` are stations along it. */
function stoppedChamfer(c: Context, e: { a: LocalFace; b: LocalFace }, size: number): Cut {
  const axis = (['x', 'y', 'z'] as const).find(k => k !== FACE_AXIS[e.a] && k !== FACE_AXIS[e.b])!;
  const spans = fullSpans(c.size);
  stopAt(c, spans, axis);
  const [first, second] = POLYGON_AXES[axis];
  const corner = (k: Axis): [number, number] => {
    const high = isHigh(FACE_AXIS[e.a] === k ? e.a : e.b);
    const at = high ? c.size[SIZE_OF_AXIS[k]] : 0;
    return [at, high ? at - size : at + size];
  };
  const [[u, inU], [v, inV]] = [corner(first), corner(second)];
  return {
    ...base(c),
    id: '',
    kind: 'bevel',
    face: e.a,
    axis,
    from: spans[axis][0],
    to: spans[axis][1],
    polygon: [
      [u, v],
      [inU, v],
      [u, inV],
    ],
    through: false,
  };
}

export function taper(c: Context): Cut[] {
  const face = c.face(faceOf(c, 'face'));
  if (face === 'end1' || face === 'end2')
    throw new Lacking('face', 'an end cannot be tapered', 'name a long face');
  const start = c.start + (c.get('start') ?? 0);
  const to = c.feature.end === 'end1' ? 0 : c.size.length;
  return [{ ...base(c), id: '', kind: 'taper', face, from: start, to, amount: c.need('amount') }];
}

export function mitre(c: Context): Cut[] {
  const end = c.feature.end;
  if (!end) throw new Lacking('end', 'no end is named', 'give end: end1 or end2');
  const face = c.feature.face === undefined ? 'faceEdge' : c.face(c.feature.face);
  const angle = c.need('angle') * (isHigh(face) ? 1 : -1);
  const bevel = FACE_AXIS[face] === 'z';
  const tilt = c.get('tilt') ?? 0;
  const [onFace, across] = bevel ? [tilt, angle] : [angle, tilt];
  return [{ ...base(c), id: '', kind: 'end-cut', end, mitre: onFace, bevel: across }];
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
