import type { ProfileCut } from '../../results/cuts.ts';
import { mm } from '../../results/quantity.ts';
import { MACHINE_FILES } from '../../workshop/machines/index.ts';
import { lengthSetting, otherSetting, say1 } from '../figures.ts';
import { type Method, made, refuse, type Task } from '../method.ts';
import { slotMoves } from '../pocket.ts';
import { ALONG_FEED, section } from '../section.ts';
import { beyond, machineOf } from '../shop.ts';
import {
  distanceFrom,
  FACE_WORDS,
  FACES,
  faceAxis,
  nominal,
  opposite,
  otherAxis,
  trueSize,
} from '../sizes.ts';
import { isMetal, routerTurns } from '../speeds.ts';

/** Degrees that a cutter may differ from the drawn slope before the two halves show it (common practice). */
const SLOPE_PLAY = 0.4;

interface Way {
  entry: ReturnType<typeof faceOfCut>;
  against: keyof typeof FACE_WORDS;
  end: keyof typeof FACE_WORDS;
  depth: number;
  /** Bottom of the way, from `against`. */
  near: number;
  far: number;
  slope: number;
  runsOut: boolean;
  start: number;
  finish: number;
}

const faceOfCut = (cut: ProfileCut) => cut.face;

/** A dovetailed way that runs along its axis: narrow at the face, wide at the bottom, both sides of one slope. */
function wayOf(task: Task<ProfileCut>): Way | undefined {
  const { cut, instance } = task;
  const deep = faceAxis(cut.face);
  if (cut.polygon.length !== 4 || deep === cut.axis) return undefined;
  const across = otherAxis(cut.axis, deep);
  const first = { x: 'y', y: 'z', z: 'x' }[cut.axis];
  const at = (p: [number, number], axis: string): number => (axis === first ? p[0] : p[1]);
  const against = FACES[across].high;
  const corners = cut.polygon.map(p => ({
    s: distanceFrom(instance, against, at(p, across)),
    d: distanceFrom(instance, cut.face, at(p, deep)),
  }));
  const depth = Math.max(...corners.map(c => c.d));
  const bottom = corners.filter(c => c.d > depth - 0.01).map(c => c.s);
  const mouth = corners.filter(c => c.d < 0.01).map(c => c.s);
  if (bottom.length !== 2 || mouth.length !== 2) return undefined;
  const [near, far] = [Math.min(...bottom), Math.max(...bottom)];
  const slopes = [Math.min(...mouth) - near, far - Math.max(...mouth)].map(
    v => (Math.atan2(v, depth) * 180) / Math.PI,
  );
  if (slopes.some(v => v < 2) || Math.abs(slopes[0]! - slopes[1]!) > 0.05) return undefined;
  const end = cut.axis === 'x' ? ('end1' as const) : FACES[cut.axis].high;
  const run = [distanceFrom(instance, end, cut.from), distanceFrom(instance, end, cut.to)];
  const whole = nominal(instance, cut.axis);
  const [start, finish] = [Math.max(0, Math.min(...run)), Math.min(whole, Math.max(...run))];
  return {
    entry: cut.face,
    against,
    end,
    depth,
    near,
    far,
    slope: slopes[0]!,
    runsOut: start < 0.01 && finish > whole - 0.01,
    start,
    finish,
  };
}

/** A dovetailed way by a router with a dovetail cutter of its slope, full depth at once (SET-30). */
export const dovetailRouter: Method = {
  name: 'router, dovetail cutter',
  makes: ['dovetail'],
  attempt(plain) {
    const task: Task<ProfileCut> = { ...plain, cut: plain.cut as ProfileCut };
    const { instance, workshop, cut } = task;
    if (isMetal(instance)) return refuse('router cutters are not for this metal');
    const way = wayOf(task);
    if (!way) return refuse('the dovetail is no way with two like slopes that a cutter runs along');
    const machine = machineOf(workshop, 'hand router') ?? machineOf(workshop, 'router table');
    if (!machine) return refuse('the workshop has no hand router');
    const own = workshop.cutters.filter(c => c.kind === 'dovetail');
    if (own.length === 0) return refuse('the workshop has no dovetail cutter');
    const cutter = own
      .filter(
        c =>
          Math.abs((c.angle ?? 0) - way.slope) <= SLOPE_PLAY &&
          c.depth >= way.depth - 0.02 &&
          c.diameter <= way.far - way.near + 0.02,
      )
      .sort((a, b) => b.diameter - a.diameter)[0];
    if (!cutter)
      return refuse(
        `no dovetail cutter of ${say1(way.slope)} degrees under ${say1(way.far - way.near)} wide that reaches ${say1(way.depth)}; there are ${own
          .map(c => `${say1(c.diameter)} at ${say1(c.angle ?? 0)}`)
          .join(', ')}`,
      );
    const speed = routerTurns(cutter);
    if ('reason' in speed) return refuse(speed.reason);
    const limit = beyond(machine, { depth: way.depth });
    if (limit) return refuse(limit);
    const moves = slotMoves(way.far - way.near, cutter.diameter);
    return made({
      what: 'Dovetailed ways',
      method: 'router along a batten, dovetail cutter',
      machine,
      tool: `${cutter.name}, ${say1(cutter.diameter)} at ${say1(cutter.angle ?? way.slope)}`,
      state: { tool: cutter.id, jig: '', fence: way.near, height: way.depth, tilt: 0 },
      settings: [
        lengthSetting(
          'from',
          way.near,
          `bottom of the way from the ${FACE_WORDS[way.against]}; the batten lies the router’s own edge distance further`,
          'dovetail',
          'near edge',
        ),
        lengthSetting('depth', way.depth, `as drawn ${say1(way.depth)}, in one pass`, 'dovetail'),
        otherSetting(
          'angle',
          'angle',
          cutter.angle ?? way.slope,
          `slope of the cutter; drawn ${say1(way.slope)}`,
          'dovetail',
        ),
        otherSetting('speed', 'number', speed.turns, `turns a minute at most; ${speed.how}`, 'speed'),
      ],
      lays: [
        {
          label: FACE_WORDS[way.entry],
          down: opposite(way.entry),
          against: way.against,
          entry: way.entry,
          end: way.end,
        },
      ],
      ...(way.runsOut ? {} : { along: { from: way.start, to: way.finish } }),
      removal: { shape: 'undercut', width: cutter.diameter, moves, angle: cutter.angle ?? way.slope },
      drawing: () =>
        section({
          view: 'router',
          zero: 'face',
          seen: ALONG_FEED,
          tool: { from: way.near, to: way.near + cutter.diameter, height: way.depth, above: true },
          work: {
            width: Math.min(trueSize(instance, faceAxis(way.against)), way.far * 1.5 + 60),
            height: trueSize(instance, faceAxis(way.entry)),
          },
          reads: 'near',
          toolWord: 'cutter',
          grain: 'end-on',
        }),
      kerfSide: 'inside the way',
      wanted: {
        label: 'Way at the bottom',
        value: mm(way.far - way.near),
        how: `as drawn ${say1(way.far - way.near)}`,
      },
      correction: {
        share: 'whole',
        tooBig: 'Too wide: bring the last way closer by the whole difference.',
        tooSmall: 'Too narrow: take the last way out by the whole difference.',
      },
      trial: true,
      before: ['The middle is cleared with a straight cutter 1 mm short of the depth'],
      after: cut.mate
        ? ['The tongue is cut to this way with the same cutter, work on edge, tried on the test piece']
        : [],
      cautions: [
        ...MACHINE_FILES[machine.kind].cautions,
        'Do not lift the router in the way: the cutter is wider below.',
      ],
      passes: moves.length,
    });
  },
};
