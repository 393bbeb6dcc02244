/** Compares what the cards leave of each blank with the part as it is designed. */

import type { Box } from '../geometry/box.ts';
import { AXES, type Axis, axisVector, dot } from '../geometry/vector.ts';
import { cutShapes } from '../results/cut-shapes.ts';
import type { EndCut, HoleCut, LocalFace, Size } from '../results/cuts.ts';
import type { Instance, Piece } from '../results/piece.ts';
import type { SetUp } from '../results/setups.ts';
import { type CutByCards, cutByCards } from './simulator.ts';
import { cellIndex, middle, whatIsLeft } from './simulator-grid.ts';
import { compareRegions, compareSizes } from './simulator-solids.ts';

export interface SimulationReport {
  setUps: number;
  /** Set-ups of which every cut could be repeated from the card. */
  simulated: number;
  /** Simulated set-ups whose cuts all agree with the design. */
  agreeing: number;
  notSimulated: { setUp: string; instance: string; cut: string; reason: string }[];
  wrong: { setUp: string; instance: string; cut: string; what: string }[];
}

/** Fits, rounded settings and edge play stay below this; a kerf does not (mm). */
export const TOLERANCE = 0.3;

/**
 * Every card of a plan, repeated on the blanks and compared. Parts are taken at their nominal sizes: cards of
 * measured parts are compared with as much more tolerance as the measurement differs.
 */
export function checkCards(piece: Piece, all: readonly SetUp[]): SimulationReport {
  // Clamping and sanding take nothing that a card could repeat.
  const setUps = all.filter(s => s.removal?.shape !== 'nothing');
  const report: SimulationReport = {
    setUps: setUps.length,
    simulated: 0,
    agreeing: 0,
    notSimulated: [],
    wrong: [],
  };
  const byId = new Map(piece.instances.map(i => [i.id, i]));
  const blanks = new Map(piece.groups.flatMap(g => g.instances.map(id => [id, g.blank] as const)));
  for (const instance of piece.instances) {
    const blank = trueBlank(instance);
    const done = cutByCards(instance.id, blank, setUps);
    report.notSimulated.push(...done.notSimulated.map(n => ({ ...n, instance: instance.id })));
    const tolerance =
      TOLERANCE + difference(instance) + Math.max(0, ...mates(instance, byId).map(difference));
    report.wrong.push(
      ...compareSizes(instance, blanks.get(instance.id) ?? instance.size, done, tolerance),
      ...compareSolid(instance, blank, done, tolerance),
      ...compareRegions(instance, blank, done, tolerance),
      ...compareRest(instance, blank, done, tolerance),
    );
  }
  const unsure = new Set(report.notSimulated.map(n => n.setUp));
  const wrong = new Set(report.wrong.map(w => w.setUp));
  const sure = setUps.filter(s => !unsure.has(s.id));
  report.simulated = sure.length;
  report.agreeing = sure.filter(s => !wrong.has(s.id)).length;
  return report;
}

const trueBlank = (instance: Instance): Size => ({ ...instance.size, ...instance.measured });

/** Greatest difference of a measured size from the nominal one. */
const difference = (instance: Instance): number =>
  Math.max(
    0,
    ...(['length', 'width', 'thickness'] as const).map(k =>
      Math.abs((instance.measured?.[k] ?? instance.size[k]) - instance.size[k]),
    ),
  );

const mates = (instance: Instance, byId: ReadonlyMap<string, Instance>): Instance[] =>
  instance.cuts.flatMap(c => (c.mate ? (byId.get(c.mate.instance) ?? []) : []));

type Wrong = SimulationReport['wrong'];
/** The boxes that a designed cut takes away. Round, sloping and angled shapes are compared figure by figure. */
interface Designed {
  cut: string;
  boxes: Box[];
}

const designed = (instance: Instance): Designed[] =>
  instance.cuts.flatMap(cut => {
    const boxes = cutShapes(cut, instance.size).flatMap(s => (s.shape === 'box' ? [s.box] : []));
    return boxes.length > 0 ? [{ cut: cut.id, boxes }] : [];
  });

const inside = (b: Box, p: Record<Axis, number>, by = 0): boolean =>
  AXES.every(a => p[a] > b.min[a] - by && p[a] < b.max[a] + by);

/** Cells that the cards take and the design keeps, or the other way round, and the set-ups that answer for them. */
function compareSolid(instance: Instance, blank: Size, done: CutByCards, tolerance: number): Wrong {
  const { ways } = done;
  // A cut that no card repeats (worked by eye) is no fault of the cards: it is counted, not compared.
  const repeated = new Set(ways.map(w => w.cut));
  const byEye = new Set(done.notSimulated.map(n => n.cut).filter(id => !repeated.has(id)));
  const meant = designed(instance).filter(d => !byEye.has(d.cut));
  const planesOf = (axis: Axis): number[] =>
    meant.flatMap(d => d.boxes.flatMap(b => [b.min[axis], b.max[axis]]));
  const { planes, gone, fallen } = whatIsLeft(
    blank,
    ways,
    { x: planesOf('x'), y: planesOf('y'), z: planesOf('z') },
    tolerance,
  );
  const wrong = new Map<string, Wrong[number]>();
  const blame = (setUp: string, cut: string, what: string): void => {
    wrong.set(`${setUp}|${cut}`, { setUp, instance: instance.id, cut, what });
  };
  const thin = (axis: Axis, i: number): boolean => planes[axis][i + 1]! - planes[axis][i]! < tolerance;
  for (let i = 0; i + 1 < planes.x.length; i++)
    for (let j = 0; j + 1 < planes.y.length; j++)
      for (let k = 0; k + 1 < planes.z.length; k++) {
        if (thin('x', i) || thin('y', j) || thin('z', k)) continue;
        const cell = cellIndex(planes, i, j, k);
        const p = { x: middle(planes.x, i), y: middle(planes.y, j), z: middle(planes.z, k) };
        const takers = meant.filter(d => d.boxes.some(b => inside(b, p)));
        if (takers.length > 0 === (gone[cell] === 1)) continue;
        const where = `at ${p.x.toFixed(1)}, ${p.y.toFixed(1)}, ${p.z.toFixed(1)}`;
        if (takers.length > 0)
          for (const d of takers)
            for (const w of ways) if (w.cut === d.cut) blame(w.setUp, w.cut, `wood left standing ${where}`);
        if (takers.length === 0) {
          const by = ways.filter(w => fallen[cell] === 1 || inside(w.box, p, tolerance));
          for (const w of by) blame(w.setUp, w.cut, `wood lost ${where}`);
        }
      }
  return [...wrong.values()];
}

/** Holes, countersinks, tapers and edges, figure by figure. */
function compareRest(instance: Instance, blank: Size, done: CutByCards, tolerance: number): Wrong {
  const wrong: Wrong = [];
  const cuts = new Map(instance.cuts.map(c => [c.id, c]));
  const off = (a: number, b: number): boolean => !(Math.abs(a - b) <= tolerance);
  const say = (of: { setUp: string; cut: string }, what: string): void => {
    wrong.push({ setUp: of.setUp, instance: instance.id, cut: of.cut, what });
  };
  for (const bore of done.bores) {
    const cut = cuts.get(bore.cut);
    if (cut?.kind !== 'hole') say(bore, 'a hole nobody asked for');
    else for (const what of boreFaults(cut, bore, blank, off)) say(bore, what);
  }
  for (const sink of done.sunk) {
    const cut = cuts.get(sink.cut);
    if (cut?.kind !== 'hole' || !cut.countersink) say(sink, 'a countersink nobody asked for');
    else if (off(cut.countersink.diameter, sink.diameter))
      say(sink, `countersink ${sink.diameter}, wanted ${cut.countersink.diameter}`);
  }
  for (const taper of done.tapers) {
    const cut = cuts.get(taper.cut);
    if (cut?.kind !== 'taper') say(taper, 'a taper nobody asked for');
    else {
      const end: LocalFace = cut.to > cut.from ? 'end2' : 'end1';
      const from = end === 'end2' ? blank.length - cut.from : cut.from;
      if (
        taper.face !== cut.face ||
        taper.end !== end ||
        off(taper.amount, cut.amount) ||
        off(taper.from, from)
      )
        say(
          taper,
          `taper ${taper.amount} from ${taper.from} of ${taper.end}, wanted ${cut.amount} from ${from} of ${end}`,
        );
    }
  }
  for (const sawn of done.ends) {
    const cut = cuts.get(sawn.cut);
    if (cut?.kind !== 'end-cut') say(sawn, 'an angled end nobody asked for');
    else for (const what of endFaults(cut, sawn)) say(sawn, what);
  }
  for (const edge of done.edges) {
    const cut = cuts.get(edge.cut);
    const named = (list: readonly (readonly LocalFace[])[]): string =>
      list
        .map(e => [...e].sort().join('/'))
        .sort()
        .join();
    if (cut?.kind !== 'chamfer' && cut?.kind !== 'round-over') say(edge, 'an edge nobody asked for');
    else if (
      cut.kind !== edge.profile ||
      off(cut.size, edge.size) ||
      named(cut.edges.map(e => [e.a, e.b])) !== named(edge.edges)
    )
      say(edge, `${edge.profile} ${edge.size}, wanted ${cut.kind} ${cut.size}`);
  }
  return wrong;
}

/** Degrees: what a scale can be read to. */
const ANGLE_PLAY = 0.05;

/** The angle, and the side from which it is taken: a positive mitre leaves the back edge long. */
function endFaults(cut: EndCut, sawn: CutByCards['ends'][number]): string[] {
  const signed = (angle: number, low: LocalFace, high: LocalFace): number =>
    sawn.long.includes(low) ? angle : sawn.long.includes(high) ? -angle : angle;
  const mitre = signed(sawn.mitre, 'backEdge', 'faceEdge');
  const bevel = signed(sawn.bevel, 'back', 'face');
  return [
    ...(sawn.end === cut.end ? [] : [`${sawn.end} sawn, wanted ${cut.end}`]),
    ...(Math.abs(mitre - cut.mitre) <= ANGLE_PLAY ? [] : [`mitre ${mitre}, wanted ${cut.mitre}`]),
    ...(Math.abs(bevel - cut.bevel) <= ANGLE_PLAY ? [] : [`tilt ${bevel}, wanted ${cut.bevel}`]),
  ];
}

/** A clearance hole may be half a millimetre over, a pilot a little under; nothing may be in the wrong place. */
const DIAMETER_PLAY = 0.5;

function boreFaults(
  cut: HoleCut,
  bore: CutByCards['bores'][number],
  blank: Size,
  off: (a: number, b: number) => boolean,
): string[] {
  const faults: string[] = [];
  if (bore.face !== cut.face) faults.push(`enters at ${bore.face}, wanted ${cut.face}`);
  if (Math.abs(bore.diameter - cut.diameter) > DIAMETER_PLAY)
    faults.push(`${bore.diameter} dia, wanted ${cut.diameter}`);
  const into = AXES.reduce(
    (best, a) =>
      Math.abs(dot(cut.direction, axisVector(a))) > Math.abs(dot(cut.direction, axisVector(best))) ? a : best,
    'x',
  );
  const leaning = Math.abs(dot(cut.direction, axisVector(into))) < 0.9999;
  const wanted =
    cut.through && !leaning
      ? into === 'x'
        ? blank.length
        : into === 'y'
          ? blank.width
          : blank.thickness
      : cut.depth;
  if (off(bore.depth, wanted)) faults.push(`${bore.depth} deep, wanted ${wanted}`);
  for (const axis of AXES) {
    const at = bore.at[axis];
    if (axis === into || at === undefined) continue;
    const travel = cut.slot?.along === axis ? cut.slot.travel / 2 : 0;
    const away = Math.abs(at - cut.at[axis]);
    if (off(away, travel))
      faults.push(`centre ${at.toFixed(1)} along ${axis}, wanted ${cut.at[axis].toFixed(1)}`);
  }
  return faults;
}
