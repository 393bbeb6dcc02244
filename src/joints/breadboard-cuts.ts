import { type Box, box } from '../geometry/box.ts';
import { scale } from '../geometry/vector.ts';
import type { EndName } from '../results/cuts.ts';
import { LOCAL_NORMAL } from '../setting-out/faces.ts';
import type { CutDraft, MakeContext } from '../setting-out/joint-type.ts';
import { axisAlong, faceOf, pointAcross, type RoleCut } from './fixing.ts';
import { across, isHigh, longAxis, SIZE_OF_AXIS, sunk, withSpan } from './shape.ts';

/** Cuts of a breadboard end in one board of the panel and in the end piece. Body frames, mm. */

export interface Tenon {
  /** Across the board, from its back edge. */
  low: number;
  high: number;
  /** Middle of the tenon from the middle of the whole panel. */
  fromMiddle: number;
  /** The one nearest the middle of the panel, if that lies in this board. */
  glued: boolean;
}

export function tenonsOf(c: MakeContext): Tenon[] {
  const { min, max } = c.contact.inFrom;
  const n = Math.max(1, Math.round(c.figure('tenons')));
  const width = c.figure('tenon.width');
  const panel = c.panel('from');
  const middle = (panel.min.y + panel.max.y) / 2;
  const each = (max.y - min.y) / n;
  const centres = Array.from({ length: n }, (_, k) => min.y + (k + 0.5) * each);
  const nearest = centres.reduce((a, b) => (Math.abs(b - middle) < Math.abs(a - middle) - 1e-6 ? b : a));
  // Of an even number of boards the first that holds the middle on its edge is glued.
  const here = middle > min.y + 1e-6 && middle <= max.y + 1e-6;
  return centres.map(at => ({
    low: at - width / 2,
    high: at + width / 2,
    fromMiddle: Math.abs(at - middle),
    glued: here && at === nearest,
  }));
}

export function breadboardCuts(c: MakeContext, tenons: readonly Tenon[]) {
  const { contact, from, into } = c;
  const [tongue, length, deeper] = [c.figure('tongue.length'), c.figure('tenon.length'), c.figure('deeper')];
  const thick = from.body.thickness;
  const cheek = (thick - c.figure('tongue.thickness')) / 2;
  const end = contact.fromFace as EndName;
  const slice = (low: number, high: number, from_: number, to: number): Box => {
    const base = isHigh(end) ? from.body.length : 0;
    const out = isHigh(end) ? 1 : -1;
    return box(base + out * from_, low, cheek, base + out * to, high, thick - cheek);
  };
  const clearance = c.figure('fit');
  const tenon: CutDraft = {
    kind: 'tenon',
    end,
    length,
    y: { low: 0, high: 0 },
    z: { low: cheek, high: cheek },
    cheeks: 'z',
    through: false,
    clearance,
  };
  const edges = [0, ...tenons.flatMap(t => [t.low, t.high]), from.body.width];
  const between: RoleCut[] = Array.from({ length: tenons.length + 1 }, (_, k) => ({
    role: 'from' as const,
    cut: {
      kind: 'notch' as const,
      face: end,
      box: withSpan(slice(edges[2 * k]!, edges[2 * k + 1]!, tongue, length), 'z', 0, thick),
      run: 'z' as const,
      through: false,
      corner: 'square' as const,
    },
  }));
  const mortises = tenons.map(t => mortise(c, slice(t.low, t.high, 0, length), t, length + deeper));
  const pegs = tenons.flatMap(t => peg(c, t, (tongue + length) / 2));
  const cuts: RoleCut[] = [
    { role: 'from', cut: tenon },
    { role: 'into', cut: groove(c, slice(0, from.body.width, 0, tongue), tongue + deeper) },
    ...between,
    ...mortises,
    ...pegs,
  ];
  return { cuts, mates: [[0, 1]] as [number, number][] };

  function mortise(ctx: MakeContext, here: Box, t: Tenon, depth: number): RoleCut {
    const there = sunk(across(ctx, 'from', here), contact.intoFace, into.body, depth);
    const run = axisAlong(into.frame, from.frame.y)!.axis;
    const play = t.glued ? 0 : ctx.figure('play');
    return {
      role: 'into',
      cut: {
        kind: 'mortise',
        face: contact.intoFace,
        box: withSpan(there, run, there.min[run] - play, there.max[run] + play),
        run,
        through: false,
        corner: 'square',
        clearance,
      },
    };
  }
}

/** The groove goes on to the ends of the end piece from the outer boards of the panel. */
function groove(c: MakeContext, tongue: Box, depth: number): CutDraft {
  const { contact, from, into } = c;
  const panel = c.panel('from');
  let there = sunk(across(c, 'from', tongue), contact.intoFace, into.body, depth);
  const { axis: run, sign } = axisAlong(into.frame, from.frame.y)!;
  const whole = into.body[SIZE_OF_AXIS[run]];
  const first = panel.min.y > -0.05;
  const last = panel.max.y < from.body.width + 0.05;
  const [toLow, toHigh] = sign > 0 ? [first, last] : [last, first];
  there = withSpan(there, run, toLow ? 0 : there.min[run], toHigh ? whole : there.max[run]);
  return {
    kind: 'groove',
    face: contact.intoFace,
    box: there,
    run: longAxis(there, contact.intoFace),
    through: false,
    corner: 'square',
    clearance: c.figure('fit'),
  };
}

/** A peg through the end piece and a tenon: bored in the one, bored or slotted in the other. */
function peg(c: MakeContext, t: Tenon, out: number): RoleCut[] {
  const { contact, from, into } = c;
  const x = isHigh(contact.fromFace) ? from.body.length + out : -out;
  const middle = (t.low + t.high) / 2;
  const at = { x, y: middle, z: from.body.thickness };
  const there = pointAcross(c, 'from', at);
  const { axis, sign } = axisAlong(into.frame, from.frame.z)!;
  const face = faceOf(axis, sign > 0);
  const whole = into.body[SIZE_OF_AXIS[axis]];
  const diameter = c.figure('peg.diameter');
  const play = t.glued ? 0 : c.figure('play');
  return [
    {
      role: 'from',
      cut: {
        kind: 'hole',
        role: 'dowel',
        face: 'face',
        at,
        direction: scale(LOCAL_NORMAL.face, -1),
        diameter,
        depth: from.body.thickness,
        through: true,
        ...(play > 0 ? { slot: { travel: 2 * play, along: 'y' as const } } : {}),
      },
    },
    {
      role: 'into',
      cut: {
        kind: 'hole',
        role: 'dowel',
        face,
        at: { ...there, [axis]: isHigh(face) ? whole : 0 },
        direction: scale(LOCAL_NORMAL[face], -1),
        diameter,
        depth: whole,
        through: true,
      },
    },
  ];
}
