import { boxSize } from '../geometry/box.ts';
import type { Instance, JointMade } from '../results/piece.ts';
import type { CutGroup } from './cuts.ts';
import { addMeasurement, type Moment, measuredParts } from './measuring.ts';
import type { OrderOfWork } from './order-of-work.ts';
import { cautionBy } from './order-rules.ts';
import { sandWork, usualGrits } from './sanding.ts';
import { diagonals } from './squareness.ts';
import type { Prepared } from './stock.ts';
import { type GlueTimes, glueTimes, spellOf, type Work } from './times.ts';
import { type AssemblyView, type PartView, panelFacesM2, surfaceM2, type View } from './view.ts';
import { afterWelding, welding } from './welding.ts';

/** What later stages need to know of the parts and assemblies before them. */
export interface Made {
  /** What leaves a part ready while it is loose: the last of its preparing and its cuts. */
  loose: Map<string, string[]>;
  /** What leaves an assembly ready for the next thing. */
  ready: Map<string, string[]>;
  /** Operations made on a glued assembly, by assembly. */
  staged: Map<string, string[]>;
}

/** Dry fits, measurements taken at them, glue-ups, clamps off, flushing, cuts on glued assemblies. */
export function addAssemblies(
  view: View,
  work: OrderOfWork,
  prepared: ReadonlyMap<string, Prepared>,
  groups: readonly CutGroup[],
): Made {
  const made: Made = { loose: new Map(), ready: new Map(), staged: new Map() };
  for (const part of view.parts)
    made.loose.set(part.id, [
      ...(part.kind === 'bought-in' ? [`buy:${part.id}`] : prepared.get(part.id)!.last),
      ...groups.filter(g => g.part === part && g.after === undefined).map(g => g.id),
    ]);
  for (const group of groups)
    if (group.after !== undefined)
      made.staged.set(group.after, [...(made.staged.get(group.after) ?? []), group.id]);
  const held = measuredParts(view);
  for (const assembly of view.assemblies) addAssembly(view, work, assembly, made, held);
  for (const assembly of view.assemblies) linkIntoParent(view, work, assembly, made);
  for (const [part, moment] of held)
    addMeasurement(view, work, part, moment, prepared.get(part.id)?.sizing ?? [`buy:${part.id}`]);
  return made;
}

function addAssembly(
  view: View,
  work: OrderOfWork,
  of: AssemblyView,
  made: Made,
  held: ReadonlyMap<PartView, Moment>,
): void {
  const { assembly } = of;
  const { workshop } = view;
  const glue = of.glued ? glueTimes(workshop, assembly.glue ?? bondGlue(of)) : undefined;
  const parts = [...new Set(assembly.instances.flatMap(id => view.partOf.get(id) ?? []))];
  const measuredHere = [...held].filter(([, m]) => m.assembly === of && m.at === 'dry').map(([part]) => part);
  const sand = sandInside(view, work, of);
  const glueUp = closing(view, work, of, glue);
  const dry = assembly.dryFit || measuredHere.length > 0 ? dryFit(view, work, of) : undefined;
  for (const part of parts) {
    const done = made.loose.get(part.id)!;
    const atDry = dry !== undefined && !measuredHere.includes(part);
    const holes = done.filter(id => id.startsWith('cut:') && id.endsWith(':hole'));
    work.link(holes, atDry ? dry : glueUp, 16);
    work.link(
      done.filter(id => !holes.includes(id)),
      atDry ? dry : glueUp,
      measuredHere.includes(part) ? 48 : 70,
    );
    work.link(
      done.filter(id => /:taper$/.test(id)),
      sand ?? [],
      12,
    );
    work.link(
      done.filter(id => !/:taper$/.test(id)),
      sand ?? [],
      70,
    );
  }
  if (dry) work.link(dry, glueUp, 47);
  if (sand) work.link(sand, glueUp, 38);
  const shot = shootEdges(view, work, of);
  for (const part of parts) if (shot) work.link(made.loose.get(part.id)!, shot, 70);
  if (shot) work.link(shot, dry ?? glueUp, 70);
  degrease(view, work, of, glueUp, made);
  made.ready.set(assembly.id, afterGlue(view, work, of, glueUp, glue, made));
}

const bondGlue = (of: AssemblyView): string | undefined =>
  of.joints.find(joint => joint.bond)?.bond?.adhesive;

/** Inside faces before they are shut in: half the surface of what goes in here, boards of glued panels too. */
function sandInside(view: View, work: OrderOfWork, of: AssemblyView): string | undefined {
  // What is put together after the finish is sanded by its recipe.
  if (of.panel || closesLast(view, of)) return undefined;
  const panels = of.assembly.assemblies.flatMap(id => {
    const child = view.assembly.get(id);
    return child?.panel ? [...child.all] : [];
  });
  const copies = [...of.assembly.instances, ...panels]
    .flatMap(id => view.instances.get(id) ?? [])
    .filter(copy => isSanded(view, copy) && view.recipeOf.get(copy.id)?.when !== 'before glue-up');
  if (copies.length === 0) return undefined;
  const grits = copies
    .map(copy => usualGrits(view.recipeOf.get(copy.id)))
    .reduce((most, own) => (own.length > most.length ? own : most));
  const id = work.add({
    id: `sand:${of.assembly.id}`,
    kind: 'sand',
    title: `Sand the inside faces of ${of.assembly.name}`,
    instances: copies.map(copy => copy.id),
    assembly: of.assembly.id,
    grits,
    handsOn: spellOf(view.workshop, sandWork(copies, 0.5 * grits.length)),
    cautions: ['Dust: extraction and a mask'],
  });
  for (const child of of.assembly.assemblies)
    if (view.assembly.get(child)?.panel) work.link(`flush:${child}`, id, 41);
  return id;
}

const isSanded = (view: View, copy: Instance): boolean =>
  copy.kind !== 'bought-in' && !view.partOf.get(copy.id)?.metal;

function dryFit(view: View, work: OrderOfWork, of: AssemblyView): string {
  return work.add({
    id: `dry:${of.assembly.id}`,
    kind: 'dry fit',
    title: `Fit ${of.assembly.name} dry`,
    instances: [...of.all],
    assembly: of.assembly.id,
    handsOn: spellOf(view.workshop, [{ key: of.glued ? 'prepare-glue-up' : 'dry-fit', times: 1 }]),
    resources: ['hands', 'bench', 'clamps'],
    cautions: of.glued ? ['Time the closing with clamps on'] : [],
  });
}

/** Put together without glue, and not shut into a glue-up later: it is closed when its parts are finished. */
export function closesLast(view: View, of: AssemblyView): boolean {
  const parent = of.parent === undefined ? undefined : view.assembly.get(of.parent);
  return !of.glued && !of.welded && (parent === undefined || closesLast(view, parent));
}

/** The glue-up; without glue it is putting together. */
function closing(view: View, work: OrderOfWork, of: AssemblyView, glue: GlueTimes | undefined): string {
  const { workshop } = view;
  const { assembly } = of;
  const id = `glue:${assembly.id}`;
  if (of.welded) return welding(view, work, of);
  const base = { id, instances: [...of.all], assembly: assembly.id };
  if (!of.glued)
    return work.add({
      ...base,
      kind: 'assemble',
      title: `Put ${assembly.name} together`,
      handsOn: spellOf(workshop, closingWork(of)),
      resources: ['hands', 'bench'],
    });
  const shop = workshop.climate.temperature;
  const cold = glue?.least !== undefined && shop < glue.least;
  return work.add({
    ...base,
    kind: 'glue up',
    title: `Glue up ${assembly.name}`,
    handsOn: spellOf(workshop, closingWork(of)),
    ...(glue?.clamp ? { wait: { what: 'clamp', ...glue.clamp } } : {}),
    resources: ['hands', 'bench', 'clamps'],
    cautions: [
      ...(glue?.open
        ? [`${glue.name} stays open ${Math.round(glue.open.minutes)} min: rehearse the closing`]
        : []),
      ...(cold ? [`The shop stands at ${shop} degC; ${glue.name} wants ${glue.least} at least`] : []),
      ...(of.panel ? [] : [cautionBy(50), ...diagonals(view, of)]),
      ...(glue?.cautions ?? []),
    ],
  });
}

function closingWork(of: AssemblyView): Work[] {
  const boards = of.joints.length + 1;
  if (of.panel) return [{ key: 'glue-panel', times: boards / 4 }];
  const bonds = of.joints.filter(joint => joint.bond);
  const area = areaM2(bonds);
  const screws = of.joints
    .flatMap(joint => joint.fasteners)
    .reduce((sum, f) => sum + (f.kind === 'screw' ? f.quantity : 0), 0);
  return [
    ...(bonds.length < of.joints.length || bonds.length === 0 ? [{ key: 'glue-up', times: 1 }] : []),
    // The row of the bond counts cleaning the metal, which is an operation of its own here.
    { key: 'bond-metal-sheet', times: area },
    { key: 'degrease-metal', times: -area },
    { key: 'screw-joint', times: screws },
  ];
}

const areaM2 = (joints: readonly JointMade[]): number =>
  joints.flatMap(joint => joint.glue).reduce((sum, face) => sum + face.area / 1e6, 0);

/** Edges shot for a glued panel. */
function shootEdges(view: View, work: OrderOfWork, of: AssemblyView): string | undefined {
  if (!of.panel) return undefined;
  const metres = of.joints.reduce((sum, joint) => {
    const size = boxSize(joint.contact);
    return sum + Math.max(size.x, size.y, size.z) / 1000;
  }, 0);
  return work.add({
    id: `shoot:${of.assembly.id}`,
    kind: 'prepare',
    title: `Shoot the edges of ${of.assembly.name}`,
    instances: [...of.all],
    assembly: of.assembly.id,
    handsOn: spellOf(view.workshop, [{ key: 'shoot-edge-joint', times: metres }]),
  });
}

/** Rule 36 gives the hour. */
const BOND_WITHIN = {
  minutes: 60,
  text: 'metal is bonded within the hour (ORD-36)',
  basis: 'common practice',
} as const;

function degrease(view: View, work: OrderOfWork, of: AssemblyView, glueUp: string, made: Made): void {
  const bonds = of.joints.filter(joint => joint.bond);
  const metal = bonds.flatMap(joint => joint.instances).filter(id => view.partOf.get(id)?.metal);
  if (metal.length === 0) return;
  const id = work.add({
    id: `degrease:${of.assembly.id}`,
    kind: 'prepare',
    title: `Abrade and degrease the metal of ${of.assembly.name}`,
    instances: [...new Set(metal)],
    assembly: of.assembly.id,
    handsOn: spellOf(view.workshop, [{ key: 'degrease-metal', times: areaM2(bonds) }]),
    cautions: ['Solvent: gloves, open doors, no flame'],
  });
  for (const part of new Set(metal.flatMap(m => view.partOf.get(m) ?? [])))
    work.link(made.loose.get(part.id)!, id, 70);
  // Nothing else of the glue-up may hold it back once the metal is clean.
  work.link([`dry:${of.assembly.id}`, `sand:${of.assembly.id}`], id, 47);
  work.link(id, glueUp, 36);
  work.within(id, glueUp, BOND_WITHIN);
}

/** Clamps off with the squeeze-out, the glue set, flush, and what is cut on the assembly. Returns what leaves it ready. */
function afterGlue(
  view: View,
  work: OrderOfWork,
  of: AssemblyView,
  glueUp: string,
  glue: GlueTimes | undefined,
  made: Made,
): string[] {
  const { assembly } = of;
  const staged = made.staged.get(assembly.id) ?? [];
  if (of.welded) return afterWelding(view, work, of, glueUp, staged);
  if (!of.glued) {
    work.link(glueUp, staged, 72);
    return [glueUp, ...staged];
  }
  const unclamp = work.add({
    id: `unclamp:${assembly.id}`,
    kind: 'clean up',
    title: `Clamps and squeeze-out off ${assembly.name}`,
    instances: [...of.all],
    assembly: assembly.id,
    handsOn: spellOf(view.workshop, [{ key: 'clean-up', times: 1 }]),
  });
  work.link(glueUp, unclamp, 51);
  const free = [unclamp, ...setting(view, work, of, glueUp, glue)];
  work.link(free, staged, 72);
  const flush = flushing(view, work, of);
  if (flush) work.link(free, flush, 46);
  return [...free, ...(flush ? [flush] : []), ...staged];
}

/** What is left of the cure once the clamps may come off: it runs on whether they do or not. */
function setting(
  view: View,
  work: OrderOfWork,
  of: AssemblyView,
  glueUp: string,
  glue: GlueTimes | undefined,
): string[] {
  const left = (glue?.cure?.minutes ?? 0) - (glue?.clamp?.minutes ?? 0);
  if (!glue?.cure || left <= 0) return [];
  const id = work.add({
    id: `set:${of.assembly.id}`,
    kind: 'rest',
    title: `Let the glue of ${of.assembly.name} set`,
    instances: [...of.all],
    assembly: of.assembly.id,
    handsOn: spellOf(view.workshop, []),
    wait: { what: 'cure', ...glue.cure, minutes: left },
  });
  work.link(glueUp, id, 46);
  return [id];
}

function flushing(view: View, work: OrderOfWork, of: AssemblyView): string | undefined {
  const wood = of.joints.filter(
    joint =>
      !joint.dry && !joint.bond && joint.instances.every(id => view.instances.get(id)?.kind === 'timber'),
  );
  if (wood.length === 0) return undefined;
  return work.add({
    id: `flush:${of.assembly.id}`,
    kind: 'clean up',
    title: of.panel ? `Flatten ${of.assembly.name}` : `Flush the joints of ${of.assembly.name}`,
    instances: [...of.all],
    assembly: of.assembly.id,
    handsOn: spellOf(
      view.workshop,
      of.panel
        ? [{ key: 'flush-panel', times: panelFacesM2(of, view.instances) }]
        : [{ key: 'flush-joints', times: wood.length }],
    ),
  });
}

/** A sub-assembly goes into its parent when it is ready; a panel counts as one board. */
function linkIntoParent(view: View, work: OrderOfWork, of: AssemblyView, made: Made): void {
  const parent = of.parent === undefined ? undefined : view.assembly.get(of.parent);
  if (!parent) return;
  const into = work.has(`dry:${parent.assembly.id}`)
    ? `dry:${parent.assembly.id}`
    : `glue:${parent.assembly.id}`;
  const panelled =
    of.joints.length > 0 && !of.panel && parent.joints.some(j => j.room?.what === 'panel in groove');
  work.link(made.ready.get(of.assembly.id)!, into, of.panel && panelled ? 48 : 49);
  work.link(`flush:${of.assembly.id}`, `sand:${parent.assembly.id}`, 41);
}

/** Surface that the finish has to cover, m2. */
export const finishedM2 = (view: View, ids: readonly string[]): number =>
  surfaceM2(ids.flatMap(id => view.instances.get(id) ?? []).filter(copy => copy.kind !== 'bought-in'));
