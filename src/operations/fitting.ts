import type { JointMade } from '../results/piece.ts';
import { closesLast, type Made } from './assemblies.ts';
import type { CutGroup } from './cuts.ts';
import type { Finished } from './finishing.ts';
import type { OrderOfWork } from './order-of-work.ts';
import { spellOf, type Work } from './times.ts';
import type { AssemblyView, PartView, View } from './view.ts';

/** Hardware and metal fitted dry and for good, tops and other unglued joints closed, packing. */
export function addFitting(
  view: View,
  work: OrderOfWork,
  made: Made,
  groups: readonly CutGroup[],
  finished: readonly Finished[],
): void {
  for (const part of view.parts.filter(p => p.kind === 'bought-in'))
    for (const by of jointsBy(view, part))
      work.link(
        `buy:${part.id}`,
        groups.filter(g => g.by === by).map(g => g.id),
        1,
      );
  const added = view.parts.filter(part => isFitted(view, part));
  for (const part of added) fitPart(view, work, made, groups, finished, part);
  const rest = view.loose.filter(joint => !joint.instances.some(id => added.includes(view.partOf.get(id)!)));
  for (const id of [...new Set(rest.map(joint => joint.joint))])
    assemble(
      view,
      work,
      made,
      finished,
      rest.filter(joint => joint.joint === id),
    );
  pack(view, work);
}

const jointsBy = (view: View, part: PartView): string[] => [
  ...new Set(part.copies.flatMap(copy => (view.jointsOf.get(copy.id) ?? []).map(joint => joint.joint))),
];

/** Hardware, and metal parts that only unglued joints hold: on and off again round the finish. */
function isFitted(view: View, part: PartView): boolean {
  if (part.copies.some(copy => view.homeOf.has(copy.id))) return false;
  return part.kind === 'bought-in' || (part.metal && jointsBy(view, part).length > 0);
}

/** What is there of the parts before the finish: themselves, every assembly around them, the last ones dry. */
function standing(view: View, work: OrderOfWork, made: Made, instances: readonly string[]): string[] {
  return instances.flatMap(id => {
    const part = view.partOf.get(id);
    const homes = around(view, id);
    const held = homes.flatMap(of =>
      closesLast(view, of) ? [`dry:${of.assembly.id}`] : (made.ready.get(of.assembly.id) ?? []),
    );
    return part && !held.some(operation => work.has(operation)) ? made.loose.get(part.id)! : held;
  });
}

/** The last assemblies around the parts, closed for good. */
const closed = (view: View, made: Made, instances: readonly string[]): string[] =>
  instances.flatMap(id =>
    around(view, id)
      .filter(of => closesLast(view, of))
      .flatMap(of => made.ready.get(of.assembly.id) ?? []),
  );

const around = (view: View, id: string): AssemblyView[] => view.assemblies.filter(({ all }) => all.has(id));

/** What the part is put to: by its joints, else the whole piece. */
function hostsOf(view: View, part: PartView): string[] {
  const joints = part.copies.flatMap(copy => view.jointsOf.get(copy.id) ?? []);
  const own = new Set(part.copies.map(copy => copy.id));
  const joined = [...new Set(joints.flatMap(joint => joint.instances))].filter(id => !own.has(id));
  if (joined.length > 0) return joined;
  return view.piece.instances.filter(i => i.kind !== 'bought-in').map(i => i.id);
}

function fitPart(
  view: View,
  work: OrderOfWork,
  made: Made,
  groups: readonly CutGroup[],
  finished: readonly Finished[],
  part: PartView,
): void {
  const own = new Set(part.copies.map(copy => copy.id));
  const joints = part.copies.flatMap(copy => view.jointsOf.get(copy.id) ?? []);
  const hosts = hostsOf(view, part);
  const coated = finished.filter(f => f.recipe.instances.some(id => hosts.includes(id)));
  const rule = part.metal && part.kind !== 'bought-in' ? 32 : 53;
  const first = work.add({
    id: `fit:${part.id}`,
    kind: 'fit',
    title: coated.length > 0 ? `Fit ${part.name} dry` : `Fit ${part.name}`,
    instances: [...own, ...hosts],
    handsOn: spellOf(view.workshop, fitWork(part, joints)),
  });
  work.link([...made.loose.get(part.id)!, ...standing(view, work, made, hosts)], first, 70);
  work.link(
    groups.filter(g => joints.some(joint => joint.joint === g.by)).map(g => g.id),
    first,
    70,
  );
  if (coated.length === 0) {
    work.link(closed(view, made, hosts), first, 70);
    return;
  }
  const last = work.add({
    id: `refit:${part.id}`,
    kind: 'fit',
    title: `Fix ${part.name} for good`,
    instances: [...own, ...hosts],
    handsOn: spellOf(view.workshop, driveWork(part, joints)),
  });
  work.link(first, last, rule);
  work.link(closed(view, made, hosts), last, 70);
  for (const { begins, cured, recipe } of coated) {
    // A recipe laid on before the glue-up is long dry when hardware comes to the closed piece.
    if (recipe.when === 'after glue-up') work.link(first, begins, rule);
    if (cured) work.link(cured, last, rule);
  }
  for (const f of finished.filter(other => other.recipe.instances.some(id => own.has(id)))) {
    work.link(first, f.begins, rule);
    if (f.cured) work.link(f.cured, last, rule);
  }
}

/** The row that speaks of such a fitting, by its name. */
function fitWork(part: PartView, joints: readonly JointMade[]): Work[] {
  const name = `${part.name} ${part.material}`.toLowerCase();
  const count = part.copies.length;
  if (/cup hinge|concealed/.test(name)) return [{ key: 'cup-hinges-pair', times: count / 2 }];
  if (/hinge/.test(name)) return [{ key: 'butt-hinges-pair', times: count / 2 }];
  if (/runner|slide/.test(name)) return [{ key: 'fit-metal-runners', times: count / 2 }];
  if (/lock|escutcheon/.test(name)) return [{ key: 'fit-lock', times: count }];
  if (/knob|handle|pull/.test(name)) return [{ key: 'fit-handle', times: count }];
  const screws = screwsOf(joints);
  return screws > 0 ? [{ key: 'screw-joint', times: screws }] : [{ key: 'fit-catch', times: count }];
}

/** The second time the holes are there: screws only, or the handling of a small fitting. */
function driveWork(part: PartView, joints: readonly JointMade[]): Work[] {
  const screws = screwsOf(joints);
  return screws > 0
    ? [
        { key: 'screw-joint', times: screws },
        { key: 'drill-hole', times: -2 * screws },
      ]
    : [{ key: 'fit-catch', times: part.copies.length }];
}

const screwsOf = (joints: readonly JointMade[]): number =>
  joints
    .flatMap(joint => joint.fasteners)
    .reduce((sum, fastener) => sum + (fastener.kind === 'screw' ? fastener.quantity : 0), 0);

/** An unglued joint closed for good: a top on its buttons or slotted screws, knock-down rails. */
function assemble(
  view: View,
  work: OrderOfWork,
  made: Made,
  finished: readonly Finished[],
  joints: readonly JointMade[],
): void {
  const instances = [...new Set(joints.flatMap(joint => joint.instances))];
  const names = [...new Set(instances.map(id => view.partOf.get(id)?.name ?? id))];
  const moves = joints.some(joint => ['button', 'slotted screw'].includes(joint.room?.what ?? ''));
  const drilled = joints.some(joint =>
    joint.instances.some(id =>
      view.instances.get(id)?.cuts.some(cut => cut.by === joint.joint && cut.kind === 'hole'),
    ),
  );
  const screws = screwsOf(joints);
  const id = work.add({
    id: `assemble:${joints[0]!.joint}`,
    kind: 'assemble',
    title: `Fix ${names.join(' and ')}`,
    instances,
    handsOn: spellOf(
      view.workshop,
      moves
        ? [{ key: 'fit-top', times: 1 }]
        : screws > 0
          ? [
              { key: 'screw-joint', times: screws },
              { key: 'drill-hole', times: drilled ? -2 * screws : 0 },
            ]
          : [{ key: 'dry-fit', times: 1 }],
    ),
  });
  work.link([...standing(view, work, made, instances), ...closed(view, made, instances)], id, 70);
  for (const { recipe, dry } of finished)
    if (dry && recipe.instances.some(i => instances.includes(i))) work.link(dry, id, 61);
}

function pack(view: View, work: OrderOfWork): void {
  const ends = work.ends();
  const id = work.add({
    id: 'pack',
    kind: 'pack',
    title: 'Pack',
    instances: view.piece.instances.map(instance => instance.id),
    handsOn: spellOf(view.workshop, [{ key: 'pack', times: 1 }]),
  });
  for (const end of ends)
    work.link(end, id, /^(cure|finish):/.test(end) ? 62 : /^(assemble|refit|fit):/.test(end) ? 64 : 75);
}
