import { boxSize } from '../geometry/box.ts';
import type { Cut, CutKind, EndCut, PocketCut } from '../results/cuts.ts';
import type { Instance } from '../results/piece.ts';
import type { Workshop } from '../workshop/workshop.ts';
import { batchOf, CUT_NAMES, kindOf, titleOf, workOf } from './cut-work.ts';
import type { OrderOfWork } from './order-of-work.ts';
import { mm, nameOf, type Prepared } from './stock.ts';
import { spellOf } from './times.ts';
import { trialTimber } from './trial-timber.ts';
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
  'dovetail',
  'slant',
];

/** What takes the straight datum faces of a part away: cut when its joints are done. */
const SHAPES: readonly CutKind[] = ['taper', 'curve', 'cut-out', 'bevel', 'scribe', 'turned'];

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

const isMitre = ({ kind, cuts }: CutGroup): boolean =>
  kind === 'end-cut' && cuts.some(({ cut }) => (cut as EndCut).mitre !== 0 || (cut as EndCut).bevel !== 0);

/** Cuts whose fit is found on a trial piece: cheeks, open mortises, ways measured to a mate, mitres. */
function deservesTrial(group: CutGroup): boolean {
  if (group.part.metal || group.after !== undefined) return false;
  if (['tenon', 'open-mortise', 'halving', 'dovetail'].includes(group.kind)) return true;
  if (['groove', 'housing'].includes(group.kind)) return group.cuts.some(({ cut }) => cut.mate !== undefined);
  return isMitre(group);
}

/** Long enough to be held and run like the part itself, no longer than it. Common practice. */
const TEST_LENGTH_MM = 300;

const testOf = (group: CutGroup): string => `test:${group.part.id}:${group.by}:${group.kind}`;

function testPiece(view: View, work: OrderOfWork, group: CutGroup): string | undefined {
  if (!deservesTrial(group)) return undefined;
  const { part } = group;
  const { size } = part.first;
  const length = Math.min(size.length, TEST_LENGTH_MM);
  return work.add({
    id: testOf(group),
    kind: 'test piece',
    title: `Trial cut: ${CUT_NAMES[group.kind][0]} of ${part.name}`,
    instances: [],
    handsOn: spellOf(view.workshop, [{ key: 'test-piece', times: 1 }]),
    ...(batchOf(group.cuts[0]!.cut, part) ? { batch: batchOf(group.cuts[0]!.cut, part) } : {}),
    testPiece: {
      of: part.first.id,
      length,
      width: size.width,
      thickness: size.thickness,
      material: trialTimber(view, part, length),
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
  const shaped = loose(own, ...SHAPES);
  const moulded = loose(own, 'chamfer', 'round-over');
  const mitres = own.filter(g => g.after === undefined && isMitre(g)).map(g => g.id);
  const stopped = own
    .filter(g => g.kind === 'housing' && g.cuts.some(({ cut }) => stopsShort(cut as PocketCut, g.part)))
    .map(g => g.id);
  work.link([...joints, ...grooves], shaped, 11);
  work.link(mark, loose(own, 'taper'), 12);
  work.link(grooves, mitres, 13);
  work.link(holes, [...shaped, ...loose(own, 'round-over')], 14);
  work.link(stopped, moulded, 17);
  work.link([...joints, ...grooves, ...shaped], moulded, 43);
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
    // The trial is fitted to the mortise too.
    const tenons = own.filter(g => g.kind === 'tenon');
    work.link(
      loose(own, 'mortise', 'open-mortise'),
      tenons.flatMap(g => [testOf(g), g.id]),
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
