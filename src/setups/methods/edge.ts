import type { EdgeCut, LocalFace } from '../../results/cuts.ts';
import type { Lay } from '../../results/setups.ts';
import type { Machine, MachineKind } from '../../workshop/workshop.ts';
import { CAUTIONS } from '../cautions.ts';
import { lengthSetting, otherSetting, say1 } from '../figures.ts';
import { type Draft, type Method, made, refuse, type Task } from '../method.ts';
import { ALONG_FEED, section } from '../section.ts';
import { beyond, machineOf } from '../shop.ts';
import { cutName, FACE_WORDS, faceAxis, trueSize } from '../sizes.ts';
import { isMetal, routerTurns } from '../speeds.ts';
import { handBench } from './hand-bench.ts';

const isEnd = (face: LocalFace): boolean => face === 'end1' || face === 'end2';

/** Edges in the order they are cut: across the ends first (SET-24). */
export function edgeLays(cut: EdgeCut): Lay[] {
  const rank = (e: { a: LocalFace; b: LocalFace }): number => (isEnd(e.a) || isEnd(e.b) ? 0 : 1);
  return [...cut.edges]
    .sort((x, y) => rank(x) - rank(y))
    .map(e => ({ label: `${FACE_WORDS[e.a]}, ${FACE_WORDS[e.b]}`, down: e.a, against: e.b, entry: e.a }));
}

function edgeDraft(
  task: Task<EdgeCut>,
  kit: {
    machine: Machine;
    tool: string;
    toolId: string;
    by: 'router' | 'hand';
    how: string;
    speed?: Draft['settings'][number];
  },
): Draft {
  const { cut, instance } = task;
  const lays = edgeLays(cut);
  const name = cutName(cut);
  const down = lays[0]?.down ?? 'face';
  return {
    what: cut.kind === 'chamfer' ? 'Chamfers' : 'Round-overs',
    method: kit.by === 'router' ? 'router with a bearing' : 'plane and block',
    machine: kit.machine,
    tool: kit.tool,
    state: { tool: kit.toolId, height: cut.size, tilt: 0 },
    settings: [
      lengthSetting(
        'depth',
        cut.size,
        `${kit.how}: ${cut.kind === 'chamfer' ? 'leg of the chamfer' : 'radius'} ${say1(cut.size)}`,
        'edge',
      ),
      ...(kit.speed ? [kit.speed] : []),
    ],
    lays,
    removal: { shape: 'edge', width: cut.size, moves: [0], profile: cut.kind },
    drawing: () =>
      section({
        view: kit.by,
        zero: 'face',
        seen: kit.by === 'router' ? ALONG_FEED : 'from the end of the work in the vice',
        tool: { from: 0, to: cut.size, height: cut.size },
        work: {
          width: Math.min(120, trueSize(instance, faceAxis(lays[0]?.against ?? 'faceEdge'))),
          height: trueSize(instance, faceAxis(down)),
        },
        reads: 'far',
        toolWord: kit.by === 'router' ? 'cutter' : 'plane',
        grain: 'end-on',
      }),
    kerfSide: 'outside the line',
    trial: false,
    before: ['Joints are cut and inside faces sanded: an edge broken sooner spoils them'],
    after: [],
    cautions: [
      kit.by === 'router' ? CAUTIONS.router : CAUTIONS.hand,
      ...(lays.some(l => isEnd(l.down) || isEnd(l.against)) && kit.by === 'router'
        ? [`Ends first: the ${name} along the grain takes away what splintered.`]
        : []),
    ],
    passes: lays.length * (kit.by === 'router' && cut.size > 6 ? 2 : 1),
  };
}

const routerEdge = (kind: MachineKind, name: string): Method => ({
  name,
  makes: ['chamfer', 'round-over'],
  attempt(task) {
    const cut = task.cut as EdgeCut;
    if (isMetal(task.instance)) return refuse('router cutters are not for this metal');
    const machine = machineOf(task.workshop, kind);
    if (!machine) return refuse(`the workshop has no ${kind}`);
    const cutter = task.workshop.cutters
      .filter(
        c =>
          c.kind === cut.kind &&
          (cut.kind === 'chamfer' ? c.depth >= cut.size - 0.02 : Math.abs(c.depth - cut.size) < 0.06),
      )
      .sort((a, b) => a.depth - b.depth)[0];
    if (!cutter) {
      const sizes = task.workshop.cutters.filter(c => c.kind === cut.kind).map(c => say1(c.depth));
      return refuse(
        sizes.length === 0
          ? `the workshop has no ${cut.kind} cutter`
          : `no ${cut.kind} cutter of ${say1(cut.size)}; there are ${sizes.join(', ')}`,
      );
    }
    const speed = routerTurns(cutter);
    if ('reason' in speed) return refuse(speed.reason);
    const limit = beyond(machine, {
      depth: cut.size,
      ...(kind === 'router table' ? { piece: trueSize(task.instance, 'x') } : {}),
    });
    if (limit) return refuse(limit);
    if (kind === 'router table' && trueSize(task.instance, 'x') * trueSize(task.instance, 'y') > 0.35e6)
      return refuse(
        `${say1(trueSize(task.instance, 'x'))} by ${say1(trueSize(task.instance, 'y'))} is unwieldy on the router table`,
      );
    return made(
      edgeDraft(
        { ...task, cut },
        {
          machine,
          tool: cutter.name,
          toolId: cutter.id,
          by: 'router',
          how: 'cutter above the table or base',
          speed: otherSetting(
            'speed',
            'number',
            speed.turns,
            `turns a minute at most; ${speed.how}`,
            'speed',
          ),
        },
      ),
    );
  },
});

export const routerTableEdge = routerEdge('router table', 'router table with a bearing');
export const handRouterEdge = routerEdge('hand router', 'hand router with a bearing');

export const planeEdge: Method = {
  name: 'block plane',
  makes: ['chamfer', 'round-over'],
  attempt(task) {
    const machine = handBench(task.workshop);
    if (!machine) return refuse('no hand tools are in the workshop file');
    const tool = isMetal(task.instance) ? 'file' : 'block plane, cork block';
    return made(
      edgeDraft(
        { ...task, cut: task.cut as EdgeCut },
        { machine, tool, toolId: tool, by: 'hand', how: 'to pencil lines' },
      ),
    );
  },
};
