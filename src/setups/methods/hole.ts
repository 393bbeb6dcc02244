import { roundTo } from '../../quantities/length.ts';
import type { HoleCut } from '../../results/cuts.ts';
import type { CardDrawing, Lay, Setting } from '../../results/setups.ts';
import type { Drill, Machine, MachineKind } from '../../workshop/workshop.ts';
import { CAUTIONS } from '../cautions.ts';
import { lengthSetting, otherSetting, say1 } from '../figures.ts';
import { type Attempt, type Draft, type Method, made, refuse, type Task } from '../method.ts';
import { AT_PRESS, section } from '../section.ts';
import { beyond, drillsOf, jigOf, machineOf } from '../shop.ts';
import { distanceFrom, FACE_WORDS, faceAxis, nominal, opposite, trueSize } from '../sizes.ts';
import { drillTurns, isMetal } from '../speeds.ts';
import { type HolePlace, leanOf, placeHole } from './hole-place.ts';

/** How far a drill may differ from the hole asked for, by what the hole is for (SET-16). mm: under, over. */
const ALLOWED: Record<HoleCut['role'], { under: number; over: number }> = {
  clearance: { under: 0.1, over: 0.5 },
  slot: { under: 0.1, over: 0.5 },
  pilot: { under: 0.35, over: 0.25 },
  dowel: { under: 0.1, over: 0.1 },
  bar: { under: 0.02, over: 0.1 },
  plain: { under: 0.15, over: 0.15 },
  tapped: { under: 0.05, over: 0.1 },
};

/** Size of the hole: a bar that was measured takes its own diameter plus the play that was drawn. */
function holeWanted(task: Task<HoleCut>): { value: number; how: string } {
  const { cut, mate } = task;
  const drawn = { value: cut.diameter, how: `as drawn ${say1(cut.diameter)}` };
  if (cut.role !== 'bar' || !mate?.instance.round) return drawn;
  const measured = mate.instance.measured?.thickness ?? mate.instance.measured?.width;
  if (measured === undefined) return drawn;
  const play = Math.max(0, cut.diameter - nominal(mate.instance, 'z'));
  return {
    value: measured + play,
    how: `${mate.instance.name}, ${say1(measured)} measured${play > 0.005 ? ` + ${say1(play)}` : ''}`,
  };
}

type Found = { drill: Drill; how: string } | { reason: string };

/** The drill nearest the hole among those that may stand for it. */
export function chooseDrill(task: Task<HoleCut>, wanted: number, depth: number): Found {
  const metal = isMetal(task.instance);
  const kinds: Drill['kind'][] = metal ? ['twist'] : ['brad point', 'forstner', 'twist'];
  const all = drillsOf(task.workshop, kinds);
  const { under, over } = ALLOWED[task.cut.role];
  const fit = all.filter(d => d.diameter >= wanted - under - 1e-6 && d.diameter <= wanted + over + 1e-6);
  if (fit.length === 0) {
    const nearest = [...all].sort((a, b) => Math.abs(a.diameter - wanted) - Math.abs(b.diameter - wanted))[0];
    return {
      reason: `no ${say1(wanted)} drill${nearest ? `; the nearest is ${say1(nearest.diameter)}` : ''}`,
    };
  }
  const long = fit.filter(d => d.depth >= depth - 0.01);
  if (long.length === 0)
    return {
      reason: `the ${say1(wanted)} drill reaches ${say1(Math.max(...fit.map(d => d.depth)))}, the hole is ${say1(depth)} deep`,
    };
  const preferred = (d: Drill): number =>
    wanted >= 14 && d.kind === 'forstner' ? 0 : d.kind === 'brad point' ? 1 : d.kind === 'twist' ? 2 : 3;
  const drill = [...long].sort(
    (a, b) =>
      Math.abs(a.diameter - wanted) - Math.abs(b.diameter - wanted) ||
      preferred(a) - preferred(b) ||
      a.depth - b.depth,
  )[0]!;
  const off = drill.diameter - wanted;
  return {
    drill,
    how:
      Math.abs(off) < 0.005
        ? drill.name
        : `${drill.name}, ${say1(Math.abs(off))} ${off > 0 ? 'over' : 'under'}, allowed for a ${task.cut.role} hole`,
  };
}

function drillDrafts(
  task: Task<HoleCut>,
  machine: Machine,
  kind: 'press' | 'hand' | 'jig',
  jigName?: string,
): Attempt {
  const { cut, instance } = task;
  const stock = trueSize(instance, faceAxis(cut.face));
  // A leaning hole is as long as it is drawn: the thickness says nothing of it.
  const leaning = placeHole(task).tilt > 0;
  const depth = cut.through && !leaning ? stock : cut.depth;
  const inset = distanceFrom(instance, cut.face, cut.at[faceAxis(cut.face)]);
  const wanted = holeWanted(task);
  const found = chooseDrill(task, wanted.value, depth);
  if ('reason' in found) return refuse(found.reason);
  const { drill } = found;
  const place = placeHole(task);
  if (kind === 'press') {
    const limit = beyond(machine, { depth, tilt: place.tilt });
    if (limit) return refuse(limit);
  }
  const metal = isMetal(instance);
  const speed = drillTurns(drill, instance);
  const travel = cut.slot?.travel ?? 0;
  const along = cut.slot && faceAxis(place.endFace) === cut.slot.along;
  const moves = travel > 0 && !along ? [0, travel] : [0];
  const fence = travel > 0 && !along ? place.fence - travel / 2 : place.fence;
  const stations = (
    travel > 0 && along ? [place.station - travel / 2, place.station + travel / 2] : [place.station]
  ).map(s => roundTo(s, 3));
  const lean = place.tilt > 0 ? leanOf(cut) : [];
  const lay: Lay = {
    label: FACE_WORDS[cut.face],
    down: opposite(cut.face),
    against: place.fenceFace,
    entry: cut.face,
    end: place.endFace,
    ...(lean.length > 0 ? { lean } : {}),
  };
  const method =
    kind === 'press'
      ? 'at the drill press, fence and marks'
      : kind === 'jig'
        ? 'with the dowel jig'
        : 'by hand with a guide';
  const shared = {
    method,
    machine,
    trial: false,
    end: undefined,
  };
  const settings: Setting[] = [
    lengthSetting('bit', drill.diameter, found.how, 'hole'),
    lengthSetting(
      'fence',
      fence,
      `centre from the ${FACE_WORDS[place.fenceFace]}${travel > 0 && !along ? `, less half the slot ${say1(travel)}` : ''}`,
      'reference',
      'centre',
    ),
    lengthSetting(
      'depth',
      depth,
      cut.through && !leaning
        ? `right through ${say1(stock)}, into the backing`
        : `as drawn ${say1(cut.depth)}${leaning ? ' along the drill' : ''}`,
      'reference',
    ),
    otherSetting('speed', 'number', speed.turns, speed.how, 'drillSpeed'),
    ...(place.tilt > 0
      ? [
          otherSetting(
            'tilt',
            'angle',
            place.tilt,
            `${say1(place.tilt)} from square to the face, ${lean
              .map(l => `${say1(l.angle)} towards the ${FACE_WORDS[l.towards]}`)
              .join(' and ')}`,
            'reference',
          ),
        ]
      : []),
    ...(inset > 0.05
      ? [
          lengthSetting(
            'inset',
            inset,
            `its mouth lies this far in from ${FACE_WORDS[cut.face]}, on the face that was cut there`,
            'reference',
          ),
        ]
      : []),
    ...(moves.length > 1
      ? [lengthSetting('last pass', fence + travel, `${say1(fence)} + ${say1(travel)}`, 'wideSlot', 'centre')]
      : []),
  ];
  const cautions = [
    metal ? CAUTIONS.metal : CAUTIONS.drill,
    ...(cut.through && !metal ? [CAUTIONS.backing] : []),
    ...(instance.round ? ['Round work lies in a vee block, clamped.'] : []),
  ];
  const words: Record<HoleCut['role'], string> = {
    clearance: 'Clearance holes',
    pilot: 'Pilot holes',
    dowel: 'Dowel holes',
    bar: 'Bar holes',
    plain: 'Holes',
    slot: 'Slotted holes',
    tapped: 'Tapping holes',
  };
  const { end: _none, ...base } = shared;
  const drawing = (from: number, to: number, height: number) =>
    section({
      view: 'drill',
      zero: 'fence',
      seen: AT_PRESS,
      tool: { from, to, height, above: true, tilt: place.tilt },
      work: { width: trueSize(instance, faceAxis(place.fenceFace)), height: Math.min(stock, 200) },
      reads: 'centre',
      toolWord: 'drill',
      grain: 'end-on',
    });
  const bore: Draft = {
    ...base,
    what: words[cut.role],
    tool: `${drill.name}${jigName ? `, ${jigName}` : ''}`,
    state: { tool: drill.id, jig: jigName ?? '', fence, height: depth, tilt: place.tilt },
    settings,
    lays: [lay],
    stations,
    ...(travel > 0 ? { joined: true as const } : {}),
    removal: { shape: 'bore', width: drill.diameter, moves },
    drawing: () => drawing(fence - drill.diameter / 2, fence + drill.diameter / 2, Math.min(depth, 200)),
    kerfSide: 'on the centre mark',
    before: [],
    after: [
      ...(travel > 0 ? ['Saw or chisel out between the two holes'] : []),
      ...(cut.role === 'tapped'
        ? [
            'Taper tap square with the press off, half a turn back at each turn, cutting oil; plug tap if blind',
          ]
        : []),
    ],
    cautions,
    passes: stations.length * moves.length,
  };
  if (!cut.countersink) return made(bore);
  // In a slot the head sits in the middle of the travel.
  const sink = countersinkDraft(task, base, lay, place, [roundTo(place.station, 3)], drill.diameter, drawing);
  return 'reason' in sink ? refuse(sink.reason) : made(bore, sink.draft);
}

/** Depth of a countersink: (head - hole) / 2 / tan(half the angle) below the face (SET-17). */
export const countersinkDepth = (head: number, hole: number, angle: number): number =>
  (head - hole) / 2 / Math.tan((angle / 2) * (Math.PI / 180));

function countersinkDraft(
  task: Task<HoleCut>,
  base: { method: string; machine: Machine; trial: boolean },
  lay: Lay,
  place: HolePlace,
  stations: number[],
  hole: number,
  drawing: (from: number, to: number, height: number) => CardDrawing,
): { draft: Draft } | { reason: string } {
  const sink = task.cut.countersink!;
  const tool = drillsOf(task.workshop, ['countersink'])
    .filter(d => d.diameter >= sink.diameter - 0.05)
    .sort((a, b) => a.diameter - b.diameter)[0];
  if (!tool) return { reason: `no countersink reaches ${say1(sink.diameter)} dia` };
  const depth = countersinkDepth(sink.diameter, hole, sink.angle);
  const speed = drillTurns(tool, task.instance);
  return {
    draft: {
      ...base,
      what: 'Countersinks',
      tool: tool.name,
      state: { tool: tool.id, jig: '', fence: place.fence, height: depth, tilt: place.tilt },
      settings: [
        lengthSetting(
          'bit',
          tool.diameter,
          `${tool.name}, ${say1(sink.angle)} degrees wanted`,
          'countersink',
        ),
        lengthSetting(
          'fence',
          place.fence,
          `centre from the ${FACE_WORDS[place.fenceFace]}`,
          'reference',
          'centre',
        ),
        lengthSetting(
          'depth',
          depth,
          `head ${say1(sink.diameter)} less hole ${say1(hole)}, half of it, over tan ${say1(sink.angle / 2)}: below the face where the cone meets the hole`,
          'countersink',
        ),
        otherSetting('speed', 'number', speed.turns, speed.how, 'drillSpeed'),
      ],
      lays: [lay],
      stations,
      removal: { shape: 'cone', width: sink.diameter, moves: [0], angle: sink.angle },
      drawing: () => drawing(place.fence - sink.diameter / 2, place.fence + sink.diameter / 2, depth),
      kerfSide: 'on the hole',
      before: ['The hole is drilled: the countersink follows it'],
      after: ['The head of a screw lies flush or 0.2 under'],
      cautions: [CAUTIONS.drill],
      passes: stations.length,
    },
  };
}

const asHole = (task: Task): Task<HoleCut> => ({ ...task, cut: task.cut as HoleCut });
const byMachine = (
  name: string,
  machineKind: MachineKind,
  kind: 'press' | 'hand',
  refusal: (task: Task<HoleCut>) => string | undefined,
): Method => ({
  name,
  makes: ['hole'],
  attempt(task) {
    const machine = machineOf(task.workshop, machineKind);
    if (!machine) return refuse(`the workshop has no ${machineKind}`);
    const hole = asHole(task);
    const reason = refusal(hole);
    return reason ? refuse(reason) : drillDrafts(hole, machine, kind);
  },
});

/** Most work that stands under a bench drill press when it is drilled in the end, mm (common practice). */
const UNDER_PRESS = 250;

export const drillPress = byMachine('drill press', 'drill press', 'press', task => {
  if (task.cut.stage.when === 'after')
    return 'the hole is drilled in the glued assembly, which does not stand under the press';
  const tall = trueSize(task.instance, faceAxis(task.cut.face));
  return tall > UNDER_PRESS
    ? `the work stands ${say1(tall)} tall under the drill, more than ${UNDER_PRESS}`
    : undefined;
});

export const dowelJig: Method = {
  name: 'dowel jig',
  makes: ['hole'],
  attempt(task) {
    const hole = asHole(task);
    if (hole.cut.role !== 'dowel') return refuse('the dowel jig is for dowel holes');
    const machine = machineOf(task.workshop, 'hand drill') ?? machineOf(task.workshop, 'drill press');
    if (!machine) return refuse('the workshop has no drill for the dowel jig');
    const jig =
      task.workshop.jigs.find(j => j.kind === 'dowel jig') ?? jigOf(task.workshop, machine, 'dowel jig');
    return jig ? drillDrafts(hole, machine, 'jig', jig.name) : refuse('the workshop has no dowel jig');
  },
};

export const handDrill = byMachine('hand drill with a guide', 'hand drill', 'hand', () => undefined);
