import { polygonArea } from '../geometry/polygon.ts';
import { profileSpan } from '../results/cut-shapes.ts';
import type {
  Cut,
  EdgeCut,
  EndCut,
  HoleCut,
  ProfileCut,
  Size,
  TaperCut,
  TurnedCut,
} from '../results/cuts.ts';
import { FACE_AXIS } from '../results/cuts.ts';
import { SIZE_OF_AXIS } from './faces.ts';

/** What keeps a cut from being made in a part of this size; `field` is empty or the faulty one with its dot. */
export interface Unsound {
  field: string;
  fault: string;
  mend: string;
}

const SLACK = 1e-6;
const INSIDE = 'bring it inside the part';

/** Does a cut stay within what the part is, and take something away? Undefined when it does. */
export function unsound(cut: Cut, s: Size): Unsound | undefined {
  switch (cut.kind) {
    case 'hole':
      return unsoundHole(cut, s);
    case 'taper':
      return unsoundTaper(cut, s);
    case 'chamfer':
    case 'round-over':
      return unsoundEdge(cut, s);
    case 'end-cut':
      return unsoundEnd(cut, s);
    case 'turned':
      return unsoundTurning(cut, s);
    case 'dovetail':
    case 'curve':
    case 'cut-out':
    case 'bevel':
    case 'slant':
    case 'scribe':
      return unsoundProfile(cut, s);
    default:
      return 'box' in cut ? unsoundBox(cut, s) : undefined;
  }
}

const sizes = (s: Size): string => `${s.length} x ${s.width} x ${s.thickness} mm`;

function unsoundBox(
  { kind, box: { min, max } }: Extract<Cut, { box: unknown }>,
  s: Size,
): Unsound | undefined {
  if ((['x', 'y', 'z'] as const).some(k => min[k] < -SLACK || max[k] > s[SIZE_OF_AXIS[k]] + SLACK))
    return { field: '', fault: `the ${kind} runs out of the part (${sizes(s)})`, mend: INSIDE };
  return (['x', 'y', 'z'] as const).some(k => max[k] - min[k] <= 0)
    ? { field: '', fault: `the ${kind} has no size`, mend: INSIDE }
    : undefined;
}

/** The centre must lie on the face; a hole over an edge is a scallop and may be meant. */
function unsoundHole(cut: HoleCut, s: Size): Unsound | undefined {
  const off = (['x', 'y', 'z'] as const).find(
    k => k !== FACE_AXIS[cut.face] && (cut.at[k] < -SLACK || cut.at[k] > s[SIZE_OF_AXIS[k]] + SLACK),
  );
  if (off)
    return {
      field: off === 'x' ? '.along' : '.across',
      fault: `the hole stands at ${Math.round(cut.at[off] * 100) / 100} mm, beside the part (${sizes(s)})`,
      mend: INSIDE,
    };
  const whole = s[SIZE_OF_AXIS[FACE_AXIS[cut.face]]];
  const straight = Math.abs(cut.direction[FACE_AXIS[cut.face]]) > 1 - SLACK;
  if (straight && cut.depth > whole + SLACK)
    return {
      field: '.depth',
      fault: `a hole of ${cut.depth} mm is deeper than the part, ${whole}`,
      mend: `give less than ${whole} mm, or leave the depth out for a hole right through`,
    };
  const sink = cut.countersink;
  if (!sink) return undefined;
  if (sink.diameter <= cut.diameter)
    return {
      field: '.size',
      fault: `a head of ${sink.diameter} mm is no wider than its hole of ${cut.diameter}`,
      mend: 'give the diameter of the head',
    };
  return sink.angle > 0 && sink.angle < 180
    ? undefined
    : {
        field: '.angle',
        fault: `a countersink of ${sink.angle} degrees cannot be cut`,
        mend: 'give 60, 82, 90 or 120 deg',
      };
}

/** The waste must lie within the part: what stands over is nobody's to cut. */
function unsoundProfile(cut: ProfileCut, s: Size): Unsound | undefined {
  const over = (['x', 'y', 'z'] as const).some(k => {
    const [low, high] = profileSpan(cut, k);
    return low < -SLACK || high > s[SIZE_OF_AXIS[k]] + SLACK;
  });
  if (over) return { field: '', fault: `the ${cut.kind} runs out of the part (${sizes(s)})`, mend: INSIDE };
  return polygonArea(cut.polygon) < SLACK || cut.to - cut.from < SLACK
    ? { field: '', fault: `the ${cut.kind} has no size`, mend: INSIDE }
    : undefined;
}

function unsoundTurning(cut: TurnedCut, s: Size): Unsound | undefined {
  const most = Math.min(s.width, s.thickness);
  const wrong = cut.profile.find(p => p.diameter <= 0 || p.diameter > most + SLACK);
  if (wrong)
    return {
      field: '.points',
      fault: `a turned diameter of ${wrong.diameter} mm does not come out of ${most} mm`,
      mend: `give more than 0 and at most ${most} mm`,
    };
  return cut.profile.some(p => p.at < -SLACK || p.at > s.length + SLACK)
    ? { field: '.points', fault: `the outline runs off the part (${sizes(s)})`, mend: INSIDE }
    : undefined;
}

function unsoundTaper(cut: TaperCut, s: Size): Unsound | undefined {
  const deep = s[SIZE_OF_AXIS[FACE_AXIS[cut.face]]];
  if (cut.amount >= deep - SLACK)
    return {
      field: '.amount',
      fault: `a taper of ${cut.amount} mm leaves nothing of ${deep}`,
      mend: `give less than ${deep} mm`,
    };
  return cut.from < -SLACK || cut.from > s.length + SLACK || Math.abs(cut.to - cut.from) < SLACK
    ? {
        field: '.start',
        fault: `the taper starts at its thin end or beside the part (${sizes(s)})`,
        mend: 'give start from end 1, and the end that is thin',
      }
    : undefined;
}

function unsoundEdge(cut: EdgeCut, s: Size): Unsound | undefined {
  const room = Math.min(...cut.edges.flatMap(e => [e.a, e.b]).map(f => s[SIZE_OF_AXIS[FACE_AXIS[f]]]));
  return cut.size > room + SLACK
    ? {
        field: '.size',
        fault: `the ${cut.kind} of ${cut.size} mm is larger than the part's ${room}`,
        mend: `give ${room} mm or less`,
      }
    : undefined;
}

function unsoundEnd(cut: EndCut, s: Size): Unsound | undefined {
  const angle = Math.max(Math.abs(cut.mitre), Math.abs(cut.bevel));
  const run = Math.tan((angle * Math.PI) / 180) * (cut.mitre === 0 ? s.thickness : s.width);
  return angle >= 90 || run > s.length + SLACK
    ? {
        field: '.angle',
        fault: `an end cut at ${angle} degrees from square runs off the part (${sizes(s)})`,
        mend: 'give degrees from square, 45 for a usual mitre',
      }
    : undefined;
}
