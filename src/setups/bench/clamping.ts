import { boxSize } from '../../geometry/box.ts';
import { AXES, type Axis } from '../../geometry/vector.ts';
import { extentOf } from '../../results/extent.ts';
import type { Operation } from '../../results/operations.ts';
import type { Assembly, Instance, JointMade, Piece } from '../../results/piece.ts';
import type { Setting } from '../../results/setups.ts';
import { clampCount } from '../../timber/clamps.ts';
import { MACHINE_FILES } from '../../workshop/machines/index.ts';
import type { Machine, Workshop } from '../../workshop/workshop.ts';
import type { Step } from '../batches.ts';
import { lengthSetting, otherSetting, say1 } from '../figures.ts';
import { section } from '../section.ts';
import { machineOf } from '../shop.ts';
import { benchStep } from './bench-step.ts';

/** Two cauls and a turn of the screw, mm (common practice). */
const CAULS = 60;

/** Clamps pulling one way: how many, how far apart their jaws are. */
export interface Pull {
  axis: Axis;
  clamps: number;
  opening: number;
  how: string;
}

const WAYS: Record<Axis, string> = { x: 'across the width', y: 'front to back', z: 'up and down' };

/** A set-up of clamps for every glue-up that has glued joints (SET-32). */
export function clampingSteps(piece: Piece, operations: readonly Operation[], workshop: Workshop): Step[] {
  const machine = machineOf(workshop, 'clamps') ?? machineOf(workshop, 'bench');
  if (!machine) return [];
  const instances = new Map(piece.instances.map(i => [i.id, i]));
  return operations.flatMap(operation => {
    const assembly = piece.assemblies.find(a => a.id === operation.assembly);
    if (operation.kind !== 'glue up' || !assembly) return [];
    const members = membersOf(assembly, piece.assemblies).flatMap(id => instances.get(id) ?? []);
    const joints = piece.joints.filter(j => assembly.joints.includes(j.id) && !j.dry && j.glue.length > 0);
    const first = members[0];
    if (!first || joints.length === 0) return [];
    return [stepOf(operation, assembly, members, joints, machine, workshop, first)];
  });
}

function membersOf(assembly: Assembly, all: readonly Assembly[], seen = new Set<string>()): string[] {
  if (seen.has(assembly.id)) return [];
  seen.add(assembly.id);
  return [
    ...assembly.instances,
    ...assembly.assemblies.flatMap(id => {
      const child = all.find(a => a.id === id);
      return child ? membersOf(child, all, seen) : [];
    }),
  ];
}

/** Pulls by the way each joint closes: its contact is thinnest across the joint line. */
export function pullsOf(members: readonly Instance[], joints: readonly JointMade[]): Pull[] {
  const whole = extentOf(members);
  return AXES.flatMap((axis): Pull[] => {
    const closing = joints.filter(j => !j.bond && closes(j) === axis);
    if (closing.length === 0) return [];
    const opening = whole.max[axis] - whole.min[axis] + CAULS;
    const boards = closing.filter(j => j.glue.every(g => g.grain === 'long'));
    if (boards.length === closing.length) {
      const run = Math.max(...boards.map(j => Math.max(...Object.values(boxSize(j.contact)))));
      const clamps = clampCount(run, 50, 300);
      return [{ axis, clamps, opening, how: `within 50 of each end and every 300 over ${say1(run)}` }];
    }
    // A clamp closes the joints at both its ends.
    const clamps = Math.max(1, Math.ceil(closing.length / 2));
    return [{ axis, clamps, opening, how: `over ${closing.length} joints, one clamp to each line of two` }];
  });
}

function closes(joint: JointMade): Axis {
  const size = boxSize(joint.contact);
  return AXES.reduce((best, k) => (size[k] < size[best] ? k : best), 'x' as Axis);
}

function stepOf(
  operation: Operation,
  assembly: Assembly,
  members: readonly Instance[],
  joints: readonly JointMade[],
  machine: Machine,
  workshop: Workshop,
  first: Instance,
): Step {
  const pulls = pullsOf(members, joints);
  const bonded = joints.some(j => j.bond);
  const settings: Setting[] = pulls.flatMap((pull, i) => [
    otherSetting(`clamps ${i + 1}`, 'count', pull.clamps, `${WAYS[pull.axis]}: ${pull.how}`, 'clamping'),
    lengthSetting(
      `opening ${i + 1}`,
      pull.opening,
      `${say1(pull.opening - CAULS)} and ${CAULS} for cauls and screw`,
      'clamping',
    ),
  ]);
  const widest = Math.max(0, ...pulls.map(p => p.opening));
  const tool = bonded ? 'cauls, weights' : 'clamps, cauls';
  return benchStep(operation, first, assembly.name, {
    title: `Clamps, ${assembly.name}`,
    what: `Clamps ${assembly.id}`,
    method: bonded ? 'between cauls under weights or clamps' : 'clamps set dry, then closed over glue',
    machine,
    tool,
    state: { tool, fence: widest, tilt: 0 },
    settings,
    lays: [{ label: 'closed', down: 'back', against: 'faceEdge', entry: 'face' }],
    removal: { shape: 'nothing', width: 0, moves: [0] },
    drawing: () =>
      section({
        view: 'hand',
        zero: 'face',
        seen: 'from above, fixed jaw on the right',
        tool: { from: Math.max(1, widest - CAULS), to: Math.max(2, widest), height: 30 },
        work: { width: Math.max(1, widest - CAULS), height: 60 },
        reads: 'near',
        toolWord: 'jaw',
        grain: 'across',
      }),
    trial: false,
    before: [
      'Clamps open to their figure and stand ready; cauls waxed or taped',
      ...pulls.flatMap(pull => enough(pull, workshop)),
    ],
    after: ['Diagonals alike, no wind; squeeze-out off while it is a gel'],
    cautions: [...MACHINE_FILES.clamps.cautions],
    passes: 1,
  });
}

/** Are there clamps enough that open so far? */
function enough({ axis, clamps, opening }: Pull, workshop: Workshop): string[] {
  const have = workshop.clamps.filter(c => c.length >= opening - 0.5).reduce((sum, c) => sum + c.quantity, 0);
  return have >= clamps
    ? []
    : [
        `Short of clamps ${WAYS[axis]}: ${clamps} that open ${say1(opening)}, the workshop has ${have}; borrow, or glue in two goes`,
      ];
}
