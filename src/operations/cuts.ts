import { boxSize } from '../geometry/box.ts';
import type { Cut, CutKind, EndCut, HoleCut, PocketCut } from '../results/cuts.ts';
import type { Instance } from '../results/piece.ts';
import type { Workshop } from '../workshop/workshop.ts';
import type { OrderOfWork } from './order-of-work.ts';
import { mm, nameOf, type Prepared } from './stock.ts';
import { spellOf, type Work } from './times.ts';
import { isStaged, type PartView, type View } from './view.ts';

/** All cuts of one kind that one joint or feature asks of the copies of one part, at one stage. */
export interface CutGroup {
  id: string;
  part: PartView;
  by: string;
  kind: CutKind;
  /** Assembly after whose glue-up it is made; undefined on the loose part. */
  after: string | undefined;
  cuts: { instance: Instance; cut: Cut }[];
}

const JOINT_KINDS: readonly CutKind[] = [
  'mortise',
  'open-mortise',
  'housing',
  'halving',
  'notch',
  'recess',
  'tenon',
];

export const isJointCut = (group: CutGroup): boolean => JOINT_KINDS.includes(group.kind);

/** `cut:<part>:<joint or feature>:<kind>`, with `@<assembly>` when it is made on a glued assembly. */
export function cutGroups(view: View): CutGroup[] {
  const groups = new Map<string, CutGroup>();
  for (const part of view.parts) {
    if (part.kind === 'bought-in') continue;
    for (const instance of part.copies) {
      for (const cut of instance.cuts) {
        const after = cut.stage.when === 'after' ? cut.stage.assembly : undefined;
        const id = `cut:${part.id}:${cut.by}:${cut.kind}${after === undefined ? '' : `@${after}`}`;
        const group = groups.get(id) ?? { id, part, by: cut.by, kind: cut.kind, after, cuts: [] };
        group.cuts.push({ instance, cut });
        groups.set(id, group);
      }
    }
  }
  return [...groups.values()];
}

/** Rod, marking-out, test pieces and the cuts themselves, with the rules among them. */
export function addCuts(view: View, work: OrderOfWork, prepared: ReadonlyMap<string, Prepared>): CutGroup[] {
  const groups = cutGroups(view);
  const { workshop } = view;
  const rod = work.add({
    id: 'rod',
    kind: 'mark out',
    title: 'Draw the rod',
    handsOn: spellOf(workshop, [{ key: 'rod-drawing', times: 1 }]),
  });
  for (const part of view.parts) {
    if (part.kind === 'bought-in') continue;
    const own = groups.filter(group => group.part === part);
    const made = prepared.get(part.id)!;
    if (own.length === 0) {
      work.link(rod, made.sizing, 69);
      continue;
    }
    const mark = markOut(view, work, part, own);
    work.link(rod, [mark, ...made.sizing], 69);
    work.link(made.last, mark, 70);
    for (const group of own) {
      work.add(cutOperation(workshop, group));
      work.link(mark, group.id, 7);
      const test = testPiece(view, work, group);
      if (test) {
        work.link(test, group.id, isMitre(group) ? 23 : 6);
        work.link(made.last, test, 6);
      }
    }
    orderOnPart(work, own, mark);
  }
  orderAcross(view, work, groups);
  return groups;
}

function markOut(view: View, work: OrderOfWork, part: PartView, own: readonly CutGroup[]): string {
  const joints = own.filter(isJointCut).reduce((sum, group) => sum + group.cuts.length, 0);
  return work.add({
    id: `mark:${part.id}`,
    kind: 'mark out',
    title: `Mark out ${part.name}`,
    instances: part.copies.map(copy => copy.id),
    handsOn: spellOf(view.workshop, [
      { key: 'mark-out-part', times: part.copies.length },
      { key: 'mark-out-joint', times: joints },
    ]),
  });
}

function cutOperation(workshop: Workshop, group: CutGroup): Parameters<OrderOfWork['add']>[0] {
  const { part, cuts } = group;
  return {
    id: group.id,
    kind: kindOf(group.kind),
    title: titleOf(group),
    instances: [...new Set(cuts.map(({ instance }) => instance.id))],
    ...(group.after === undefined ? {} : { assembly: group.after }),
    cuts: cuts.map(({ instance, cut }) => ({ instance: instance.id, cut: cut.id })),
    handsOn: spellOf(workshop, workOf(workshop, group)),
    batch: batchOf(cuts[0]!.cut, part),
    resources: ['hands', 'machine'],
  };
}

const kindOf = (kind: CutKind): 'drill' | 'shape' | 'cut' =>
  kind === 'hole'
    ? 'drill'
    : kind === 'taper' || kind === 'chamfer' || kind === 'round-over'
      ? 'shape'
      : 'cut';

const NAMES: Record<CutKind, [one: string, many: string]> = {
  mortise: ['mortise', 'mortises'],
  'open-mortise': ['open mortise', 'open mortises'],
  housing: ['housing', 'housings'],
  groove: ['groove', 'grooves'],
  rebate: ['rebate', 'rebates'],
  recess: ['recess', 'recesses'],
  halving: ['halving', 'halvings'],
  notch: ['notch', 'notches'],
  tenon: ['tenon', 'tenons'],
  'end-cut': ['angled end', 'angled ends'],
  hole: ['hole', 'holes'],
  chamfer: ['chamfer', 'chamfers'],
  'round-over': ['round-over', 'round-overs'],
  taper: ['taper', 'tapers'],
};

function titleOf({ kind, cuts, part }: CutGroup): string {
  const [one, many] = NAMES[kind];
  const verb = kind === 'hole' ? 'Drill' : 'Cut';
  const edges = kind === 'chamfer' || kind === 'round-over';
  const count = edges
    ? cuts.reduce((sum, { cut }) => sum + ('edges' in cut ? cut.edges.length : 1), 0)
    : cuts.length;
  return `${verb} ${count} ${count === 1 ? one : many} in ${part.name}`;
}

const has = (workshop: Workshop, ...kinds: string[]): boolean =>
  workshop.machines.some(machine => kinds.includes(machine.kind));

/** The rows of the time table that speak of these cuts, by what the shop has to make them with. */
function workOf(workshop: Workshop, { kind, cuts, part }: CutGroup): Work[] {
  const count = cuts.length;
  const sawn = has(workshop, 'table saw', 'band saw', 'router table');
  switch (kind) {
    case 'mortise': {
      if (has(workshop, 'slot mortiser')) return [{ key: 'loose-tenon', times: count }];
      const machine = has(workshop, 'chisel mortiser', 'hand router', 'router table', 'drill press');
      return [{ key: machine ? 'mortise-machine' : 'mortise-hand', times: count }];
    }
    case 'tenon':
      return [
        { key: sawn ? 'tenon-machine' : 'tenon-hand', times: count },
        ...(sawn ? [{ key: 'fit-joint', times: count }] : []),
      ];
    case 'open-mortise':
    case 'halving':
      // A row counts the joint; each of its two members is half of it.
      return [{ key: 'bridle-machine', times: count / 2 }];
    case 'housing':
      return [{ key: 'housing-router', times: runMetres(cuts) }];
    case 'groove':
    case 'rebate':
      return [{ key: 'groove-machine', times: runMetres(cuts) }];
    case 'recess':
    case 'notch':
      return [{ key: 'cut-recess', times: count }];
    case 'end-cut':
      return [{ key: 'mitre-cut', times: count }];
    case 'hole':
      return cuts.every(({ cut }) => (cut as HoleCut).role === 'dowel')
        ? [{ key: 'dowel-joint', times: count / 4 }]
        : [{ key: 'drill-hole', times: count }];
    case 'taper':
      return [{ key: 'taper-cut', times: count }];
    case 'chamfer':
    case 'round-over':
      return [{ key: 'edge-mould', times: edgeMetres(cuts, part) }];
  }
}

const runMetres = (cuts: CutGroup['cuts']): number =>
  cuts.reduce((sum, { cut }) => sum + boxSize((cut as PocketCut).box)[(cut as PocketCut).run] / 1000, 0);

/** Moulded edges: along the part, or along an end where one of the two faces is an end. */
function edgeMetres(cuts: CutGroup['cuts'], part: PartView): number {
  const { size } = part.first;
  return cuts.reduce((sum, { cut }) => {
    if (!('edges' in cut)) return sum;
    return (
      sum +
      cut.edges.reduce((metres, { a, b }) => {
        const faces = [a, b];
        const onEnd = faces.includes('end1') || faces.includes('end2');
        const along = !onEnd
          ? size.length
          : faces.includes('face') || faces.includes('back')
            ? size.width
            : size.thickness;
        return metres + along / 1000;
      }, 0)
    );
  }, 0);
}

/**
 * One key for cuts that one setting makes: same tool size, depth and place from the reference faces.
 * Sections count too, since the stops and the jig take them up.
 */
export function batchOf(cut: Cut, part: PartView): string {
  const section = `${mm(part.first.size.width)}x${mm(part.first.size.thickness)}`;
  switch (cut.kind) {
    case 'tenon': {
      const { length, y, z, cheeks } = cut;
      return ['tenon', cheeks, length, z.low, z.high, y.low, y.high, section].map(word).join('|');
    }
    case 'end-cut':
      return ['end-cut', cut.mitre, cut.bevel].map(word).join('|');
    case 'hole':
      return ['hole', cut.role, cut.diameter, cut.through ? 'through' : cut.depth].map(word).join('|');
    case 'taper':
      return ['taper', cut.amount, Math.abs(cut.to - cut.from)].map(word).join('|');
    case 'chamfer':
    case 'round-over':
      return [cut.kind, cut.size].map(word).join('|');
    default: {
      const size = boxSize(cut.box);
      const across =
        cut.run === 'x' ? [size.y, size.z] : cut.run === 'y' ? [size.x, size.z] : [size.x, size.y];
      return [cut.kind, cut.face, ...across, section].map(word).join('|');
    }
  }
}

const word = (value: string | number): string => (typeof value === 'number' ? mm(value) : value);

const isMitre = ({ kind, cuts }: CutGroup): boolean =>
  kind === 'end-cut' && cuts.some(({ cut }) => (cut as EndCut).mitre !== 0 || (cut as EndCut).bevel !== 0);

/** Cuts whose fit is found on a trial piece: cheeks, open mortises, ways measured to a mate, mitres. */
function deservesTrial(group: CutGroup): boolean {
  if (group.part.metal || group.after !== undefined) return false;
  if (['tenon', 'open-mortise', 'halving'].includes(group.kind)) return true;
  if (['groove', 'housing'].includes(group.kind)) return group.cuts.some(({ cut }) => cut.mate !== undefined);
  return isMitre(group);
}

/** Long enough to be held and run like the part itself, no longer than it. Common practice. */
const TEST_LENGTH_MM = 300;

function testPiece(view: View, work: OrderOfWork, group: CutGroup): string | undefined {
  if (!deservesTrial(group)) return undefined;
  const { part } = group;
  const { size, material } = part.first;
  return work.add({
    id: `test:${part.id}:${group.by}:${group.kind}`,
    kind: 'test piece',
    title: `Trial cut: ${NAMES[group.kind][0]} of ${part.name}`,
    instances: [],
    handsOn: spellOf(view.workshop, [{ key: 'test-piece', times: 1 }]),
    ...(batchOf(group.cuts[0]!.cut, part) ? { batch: batchOf(group.cuts[0]!.cut, part) } : {}),
    testPiece: {
      of: part.first.id,
      length: Math.min(size.length, TEST_LENGTH_MM),
      width: size.width,
      thickness: size.thickness,
      material,
    },
  });
}

const loose = (groups: readonly CutGroup[], ...kinds: CutKind[]): string[] =>
  groups.filter(g => g.after === undefined && kinds.includes(g.kind)).map(g => g.id);

/** Rules between cuts of one part. */
function orderOnPart(work: OrderOfWork, own: readonly CutGroup[], mark: string): void {
  const joints = loose(own, ...JOINT_KINDS);
  const grooves = loose(own, 'groove', 'rebate');
  const holes = loose(own, 'hole');
  const tapers = loose(own, 'taper');
  const moulded = loose(own, 'chamfer', 'round-over');
  const mitres = own.filter(g => g.after === undefined && isMitre(g)).map(g => g.id);
  const stopped = own
    .filter(g => g.kind === 'housing' && g.cuts.some(({ cut }) => stopsShort(cut as PocketCut, g.part)))
    .map(g => g.id);
  work.link([...joints, ...grooves], tapers, 11);
  work.link(mark, tapers, 12);
  work.link(grooves, mitres, 13);
  work.link(holes, [...tapers, ...loose(own, 'round-over')], 14);
  work.link(stopped, moulded, 17);
  work.link([...joints, ...grooves, ...tapers], moulded, 43);
}

/** Does the way end inside the part? */
function stopsShort(cut: PocketCut, part: PartView): boolean {
  const { size } = part.first;
  const full = cut.run === 'x' ? size.length : cut.run === 'y' ? size.width : size.thickness;
  return boxSize(cut.box)[cut.run] < full - 0.01;
}

/** Rules between cuts of parts that meet. */
function orderAcross(view: View, work: OrderOfWork, groups: readonly CutGroup[]): void {
  for (const by of new Set(groups.map(g => g.by))) {
    const own = groups.filter(g => g.by === by);
    work.link(
      loose(own, 'mortise', 'open-mortise'),
      own.filter(g => g.kind === 'tenon').map(g => g.id),
      10,
    );
    drawBore(work, own);
    measuredSheets(view, work, own);
  }
}

/** A hole through mortise and tenon of one joint: the mortised part is bored first. */
function drawBore(work: OrderOfWork, own: readonly CutGroup[]): void {
  const partsWith = (kind: CutKind): Set<PartView> =>
    new Set(own.filter(g => g.kind === kind).map(g => g.part));
  const [mortised, tenoned] = [partsWith('mortise'), partsWith('tenon')];
  const holes = own.filter(g => g.kind === 'hole');
  for (const first of holes.filter(g => mortised.has(g.part)))
    for (const then of holes.filter(g => tenoned.has(g.part) && !mortised.has(g.part)))
      work.link(first.id, then.id, 15);
}

/** A way that takes a sheet waits until calipers have been on the sheet, unless they have. */
function measuredSheets(view: View, work: OrderOfWork, own: readonly CutGroup[]): void {
  const ways = own.filter(
    g => ['groove', 'housing', 'rebate', 'recess'].includes(g.kind) && !isStaged(g.cuts[0]!.cut),
  );
  if (ways.length === 0) return;
  const by = own[0]!.by;
  const joined = new Set(view.piece.joints.filter(j => j.joint === by).flatMap(j => j.instances));
  for (const part of view.parts) {
    if (part.kind !== 'sheet' || part.first.measured?.thickness !== undefined) continue;
    if (!part.copies.some(copy => joined.has(copy.id))) continue;
    const cutHere = ways.filter(way => way.part !== part);
    if (cutHere.length === 0) continue;
    const id = `calipers:${part.material}:${mm(part.first.size.thickness)}`;
    if (!work.has(id)) {
      const nominal = `${nameOf(part.material)} ${mm(part.first.size.thickness)}`;
      work.add({
        id,
        kind: 'measure',
        title: `Measure the ${nominal} sheet`,
        instances: part.copies.map(copy => copy.id),
        handsOn: spellOf(view.workshop, [{ key: 'measure-part', times: 1 }]),
      });
    }
    work.link([`season:${part.material}`, `order:${part.material}`], id, 68);
    work.link(
      id,
      cutHere.map(way => way.id),
      24,
    );
  }
}
