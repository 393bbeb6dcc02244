import type { TurnedCut } from '../../results/cuts.ts';
import type { CardDrawing, Lay } from '../../results/setups.ts';
import { MACHINE_FILES } from '../../workshop/machines/index.ts';
import type { Machine } from '../../workshop/workshop.ts';
import { lengthSetting, otherSetting, say1 } from '../figures.ts';
import { type Draft, type Method, made, refuse, type Task } from '../method.ts';
import { plan } from '../outline-draft.ts';
import { machineOf } from '../shop.ts';
import { trueSize } from '../sizes.ts';
import { isMetal } from '../speeds.ts';
import { handBench } from './hand-bench.ts';

/** Rim speed of roughing a square and of finishing, m/s (common practice); never over the lathe's own plate. */
const ROUGHING = 2.5;
const FINISHING = 6;

const turns = (diameter: number, rim: number): number =>
  Math.min(3000, Math.max(300, Math.round((rim * 60_000) / (Math.PI * diameter) / 50) * 50));

interface TurnedView {
  greatest: number;
  first: number;
  last: number;
  stations: { at: number; less: number }[];
  square: number;
}

/** Stations and how much less than the greatest diameter each is. */
function viewOf(task: Task<TurnedCut>): TurnedView {
  const { profile } = task.cut;
  const greatest = Math.max(...profile.map(p => p.diameter));
  return {
    greatest,
    first: profile[0]?.at ?? 0,
    last: profile.at(-1)?.at ?? 0,
    stations: profile.map(p => ({ at: p.at, less: greatest - p.diameter })),
    square: Math.max(trueSize(task.instance, 'y'), trueSize(task.instance, 'z')),
  };
}

const LAY: Lay = {
  label: 'between centres, end 1 at the headstock',
  down: 'back',
  against: 'faceEdge',
  entry: 'faceEdge',
  end: 'end1',
};

function turnedDraft(
  task: Task<TurnedCut>,
  view: TurnedView,
  kit: { machine: Machine; tool: string; method: string; hand: boolean; cautions: readonly string[] },
): Draft {
  const figures = view.stations
    .map(s => `${say1(s.at)}: ${say1(view.greatest - s.less)}`)
    .slice(0, 12)
    .join('; ');
  return {
    what: 'Turnings',
    method: kit.method,
    machine: kit.machine,
    tool: kit.tool,
    state: { tool: kit.tool, fence: view.greatest, tilt: 0 },
    settings: [
      lengthSetting('gauge', view.greatest, `greatest diameter; calipers at ${figures}`, 'turning', 'centre'),
      lengthSetting('from', view.first, 'the turning begins, from end 1', 'turning'),
      lengthSetting('to', view.last, 'the turning ends, from end 1', 'turning'),
      ...(kit.hand
        ? []
        : [
            otherSetting(
              'speed',
              'number',
              turns(view.square, ROUGHING),
              `turns a minute while it is square, ${ROUGHING} m/s at the corners; ${turns(view.greatest, FINISHING)} to finish`,
              'turning',
            ),
          ]),
    ],
    lays: [LAY],
    removal: { shape: 'turned', width: view.greatest, moves: [0], turned: view.stations },
    drawing: () => drawingOf(view),
    kerfSide: 'outside the line',
    trial: false,
    before: [
      task.cut.round
        ? 'Round stock, centres popped'
        : 'Centres marked by the diagonals; corners planed off where it is turned right round',
      'A stick with the stations and diameters lies on the rest',
      'Mortises are cut while the part is square',
    ],
    after: ['Sanded on the lathe, rest away, through the grits along the grain at the end'],
    cautions: [...kit.cautions],
    passes: Math.max(2, view.stations.length),
  };
}

/** Half the work seen from above the rest: centre line below, end 1 on the right, the turned line drawn. */
function drawingOf(view: TurnedView): CardDrawing {
  const half = view.square / 2;
  return plan({
    view: 'hand',
    seen: 'from above the rest, end 1 on the right, centre line below',
    zero: 'end 1',
    stations: view.stations
      .filter((s, i, all) => s.at > 0.05 && (i === 0 || s.at - all[i - 1]!.at > 0.05))
      .map(s => ({ at: s.at, label: `dia ${say1(view.greatest - s.less)}`, strong: true })),
    work: { width: view.last + 10, height: half },
    line: [
      { a: view.first, h: half },
      ...view.stations.map(s => ({ a: s.at, h: (view.greatest - s.less) / 2 })),
      { a: view.last, h: half },
    ],
    measures: [],
  });
}

const asTurned = (task: Task): Task<TurnedCut> => ({ ...task, cut: task.cut as TurnedCut });

export const latheTurning: Method = {
  name: 'lathe',
  makes: ['turned'],
  attempt(plain) {
    const task = asTurned(plain);
    const machine = machineOf(task.workshop, 'lathe');
    if (!machine) return refuse('the workshop has no lathe');
    if (isMetal(task.instance)) return refuse('the lathe is set up for timber');
    const view = viewOf(task);
    const length = trueSize(task.instance, 'x');
    if (machine.longest !== undefined && length > machine.longest + 0.01)
      return refuse(
        `${say1(length)} long, the ${machine.name} takes ${say1(machine.longest)} between its centres`,
      );
    const corner = Math.hypot(trueSize(task.instance, 'y'), trueSize(task.instance, 'z'));
    if (machine.widest !== undefined && corner > machine.widest + 0.01)
      return refuse(`${say1(corner)} over the corners, the ${machine.name} swings ${say1(machine.widest)}`);
    return made(
      turnedDraft(task, view, {
        machine,
        tool: 'roughing gouge, parting tool, skew, calipers',
        method: 'between centres, to calipers and a stick',
        hand: false,
        cautions: MACHINE_FILES.lathe.cautions,
      }),
    );
  },
};

/** Short cylinders and tapers without a lathe: eight sides, sixteen, round. Beads and coves are refused. */
export const roundByHand: Method = {
  name: 'plane and spokeshave to round',
  makes: ['turned'],
  attempt(plain) {
    const task = asTurned(plain);
    const machine = handBench(task.workshop);
    if (!machine) return refuse('no hand tools are in the workshop file');
    const view = viewOf(task);
    const bends = view.stations.filter((s, i) => {
      const [a, b] = [view.stations[i - 1], view.stations[i + 1]];
      return a && b && s.less < a.less - 0.5 && s.less < b.less - 0.5;
    });
    if (bends.length > 0) return refuse('beads are turned; by hand only cylinders and tapers are made round');
    return made(
      turnedDraft(task, view, {
        machine,
        tool: 'back saw, plane, spokeshave, gauge with the hole',
        method: 'shoulder sawn, planed to eight and sixteen sides, shaved round',
        hand: true,
        cautions: MACHINE_FILES['hand tools'].cautions,
      }),
    );
  },
};
