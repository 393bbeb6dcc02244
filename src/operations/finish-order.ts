import type { FinishRecipe } from '../results/commission.ts';
import { closesLast, type Made } from './assemblies.ts';
import type { CutGroup } from './cuts.ts';
import type { OrderOfWork } from './order-of-work.ts';
import { spellOf } from './times.ts';
import type { AssemblyView, View } from './view.ts';

/** What must be over before the recipe begins, and what waits for it. */
export function waitForWork(
  view: View,
  work: OrderOfWork,
  made: Made,
  groups: readonly CutGroup[],
  recipe: FinishRecipe,
  { begins, firstCoat, dry }: { begins: string[]; firstCoat: string | undefined; dry: string | undefined },
): void {
  const parts = new Set(recipe.instances.flatMap(id => view.partOf.get(id) ?? []));
  const metal = [...parts].some(part => part.metal);
  for (const part of parts) work.link(made.loose.get(part.id)!, begins, part.metal ? 30 : 70);
  for (const group of groups.filter(g => parts.has(g.part))) {
    if (group.kind === 'chamfer' || group.kind === 'round-over') work.link(group.id, firstCoat ?? begins, 43);
    if (group.kind === 'taper') work.link(group.id, begins, 12);
  }
  if (firstCoat && !metal)
    for (const part of view.parts.filter(p => p.metal)) work.link(made.loose.get(part.id)!, firstCoat, 34);
  const homes = assembliesOf(view, recipe);
  if (recipe.when === 'after glue-up') {
    for (const home of homes) {
      if (!closesLast(view, home)) work.link(made.ready.get(home.assembly.id)!, begins, 41);
      else {
        work.link(`dry:${home.assembly.id}`, begins, 74);
        if (dry) work.link(dry, `glue:${home.assembly.id}`, 61);
      }
    }
    return;
  }
  const closing = homes.filter(home => !home.panel);
  for (const panel of homes.filter(home => home.panel))
    work.link(made.ready.get(panel.assembly.id)!, begins, 41);
  const direct = closing.filter(home => isFirstAround(view, home, recipe));
  for (const home of direct) {
    work.link(`dry:${home.assembly.id}`, begins, 74);
    if (dry) work.link(dry, `glue:${home.assembly.id}`, metal ? 37 : 44);
  }
  if (firstCoat) mask(view, work, recipe, direct, firstCoat);
}

/** Every assembly that holds an instance of the recipe, however deep. */
const assembliesOf = (view: View, recipe: FinishRecipe): AssemblyView[] =>
  view.assemblies.filter(({ all }) => recipe.instances.some(id => all.has(id)));

/** The innermost assembly, glued panels apart, around some instance of the recipe. */
function isFirstAround(view: View, home: AssemblyView, recipe: FinishRecipe): boolean {
  return recipe.instances.some(id => {
    let at = view.homeOf.get(id);
    while (at?.panel) at = at.parent === undefined ? undefined : view.assembly.get(at.parent);
    return at === home;
  });
}

function mask(
  view: View,
  work: OrderOfWork,
  recipe: FinishRecipe,
  closing: readonly AssemblyView[],
  firstCoat: string,
): void {
  const joints = closing
    .flatMap(home => home.joints)
    .filter(j => !j.dry && j.glue.length > 0 && j.instances.some(id => recipe.instances.includes(id)));
  if (joints.length === 0) return;
  const id = work.add({
    id: `mask:${recipe.id}`,
    kind: 'finish',
    title: `Mask the glue faces for ${recipe.name}`,
    instances: recipe.instances,
    handsOn: spellOf(view.workshop, [{ key: 'mask-joint', times: joints.length }]),
  });
  for (const home of closing) work.link(`dry:${home.assembly.id}`, id, 74);
  work.link(id, firstCoat, 45);
}
