import { nearest } from '../figures/nearest.ts';
import { type Fault, fault } from '../results/fault.ts';
import type { Assembly, Instance, JointMade } from '../results/piece.ts';
import { copyFromId, mirroredId } from './copies.ts';
import { readOutwork } from './outwork.ts';
import type { AssemblyDocument, JobDocument } from './schema.ts';

const WHOLE = 'whole';

interface Draft {
  id: string;
  name: string;
  instances: string[];
  assemblies: string[];
  document: AssemblyDocument;
}

/**
 * Sub-assemblies in the order of their glue-ups, members first, then the whole piece. A joint is closed at
 * the first assembly that holds all its parts. With none written, the whole is one.
 */
export function makeAssemblies(
  document: JobDocument,
  instances: Instance[],
  joints: JointMade[],
): { assemblies: Assembly[]; faults: Fault[] } {
  const faults: Fault[] = [];
  const drafts = draftAssemblies(document, instances, faults);
  const ordered = inOrder(drafts, faults);
  const held = new Map<string, Set<string>>();
  const closed = new Set<string>();
  const owner = new Map<string, string>();
  const assemblies = ordered.map((draft, order): Assembly => {
    const all = new Set([...draft.instances, ...draft.assemblies.flatMap(a => [...(held.get(a) ?? [])])]);
    held.set(draft.id, all);
    for (const i of draft.instances) {
      const other = owner.get(i);
      if (other)
        faults.push(
          fault(
            `assemblies.${draft.id}.parts`,
            `${i} is already in ${other}`,
            'a part goes into one assembly only',
          ),
        );
      owner.set(i, draft.id);
    }
    const own = joints.filter(j => !closed.has(j.id) && j.instances.every(i => all.has(i)));
    for (const j of own) closed.add(j.id);
    if (draft.document.outwork && !own.some(j => j.weld))
      faults.push(
        fault(
          `assemblies.${draft.id}.outwork`,
          `nothing is welded in ${draft.name}`,
          'welding is given out with its assembly, a coat with its finish: finishes.NAME.outwork',
        ),
      );
    return assembly(draft, order, own, faults);
  });
  const rest = instances.filter(i => i.kind !== 'bought-in' && !owner.has(i.id)).map(i => i.id);
  const open = joints.filter(j => !closed.has(j.id));
  const used = new Set(ordered.flatMap(d => d.assemblies));
  const tops = ordered.filter(d => !used.has(d.id)).map(d => d.id);
  if (rest.length > 0 || open.length > 0 || tops.length > 1)
    assemblies.push({
      id: WHOLE,
      name: 'The whole',
      instances: rest,
      assemblies: tops,
      joints: open.map(j => j.id),
      dryFit: true,
      order: assemblies.length,
    });
  return { assemblies, faults };
}

const assembly = (draft: Draft, order: number, joints: JointMade[], faults: Fault[]): Assembly => ({
  id: draft.id,
  name: draft.name,
  instances: draft.instances,
  assemblies: draft.assemblies,
  joints: joints.map(j => j.id),
  ...(draft.document.glue === undefined ? {} : { glue: draft.document.glue }),
  ...(draft.document.outwork
    ? { outwork: readOutwork(`assemblies.${draft.id}.outwork`, draft.document.outwork, faults) }
    : {}),
  dryFit: draft.document.dry_fit ?? true,
  order,
});

function draftAssemblies(document: JobDocument, instances: Instance[], faults: Fault[]): Draft[] {
  const parts = document.parts ?? {};
  const known = new Set(instances.map(i => i.id));
  const written = document.assemblies ?? {};
  return Object.entries(written).flatMap(([id, a]) => {
    if (id === WHOLE && a.mirror)
      faults.push(fault(`assemblies.${id}`, 'the whole cannot be mirrored', 'take mirror away'));
    const place = `assemblies.${id}`;
    const members = (a.parts ?? []).flatMap(name => {
      const copy = copyFromId(name, parts);
      if (!copy) {
        const near = nearest(name, [...Object.keys(parts), ...known]);
        faults.push(
          fault(
            `${place}.parts`,
            `there is no part called ${name}`,
            near ? `did you mean ${near}?` : 'name parts or copies of this job',
          ),
        );
        return [];
      }
      if (copy.id !== copy.part && !known.has(name)) {
        faults.push(
          fault(`${place}.parts`, `there is no ${name}: so many are not made`, 'name a copy that is made'),
        );
        return [];
      }
      // A repeated part named as such brings all its copies; a mirrored one only itself, for its fellow goes elsewhere.
      return (parts[copy.part]!.repeat || parts[copy.part]!.count !== undefined) && copy.id === copy.part
        ? instances
            .filter(i => i.part === copy.part && !/_[xyz]+$/.test(i.id.slice(copy.part.length)))
            .map(i => i.id)
        : [name];
    });
    const subs = (a.assemblies ?? []).filter(name => {
      const there =
        Object.hasOwn(written, name) ||
        Object.entries(written).some(([o, d]) => d.mirror && `${o}_${d.mirror}` === name);
      if (!there)
        faults.push(
          fault(`${place}.assemblies`, `there is no assembly called ${name}`, 'name an assembly of this job'),
        );
      return there;
    });
    const first: Draft = {
      id,
      name: a.name ?? id,
      instances: [...new Set(members)].filter(m => known.has(m)),
      assemblies: subs,
      document: a,
    };
    if (!a.mirror) return [first];
    const mirrored = first.instances.map(m => {
      const fellow = mirroredId(m, a.mirror!, parts);
      if (!fellow || !known.has(fellow))
        faults.push(
          fault(
            `${place}.mirror`,
            `${m} has no mirrored copy in ${a.mirror}`,
            `give the part a mirror in ${a.mirror}`,
          ),
        );
      return fellow;
    });
    return [
      first,
      {
        ...first,
        id: `${id}_${a.mirror}`,
        name: `${first.name}, other hand`,
        instances: mirrored.filter(m => m !== undefined && known.has(m)) as string[],
      },
    ];
  });
}

/** Members before what they go into; a circle is named and broken. */
function inOrder(drafts: Draft[], faults: Fault[]): Draft[] {
  const byId = new Map(drafts.map(d => [d.id, d]));
  const done = new Set<string>();
  const ordered: Draft[] = [];
  const visit = (d: Draft, above: string[]): void => {
    if (done.has(d.id)) return;
    if (above.includes(d.id)) {
      faults.push(
        fault(
          `assemblies.${d.id}`,
          `the assemblies go into each other in a circle: ${[...above.slice(above.indexOf(d.id)), d.id].join(' -> ')}`,
          'take one out of the other',
        ),
      );
      return;
    }
    for (const sub of d.assemblies) {
      const member = byId.get(sub);
      if (member) visit(member, [...above, d.id]);
    }
    if (done.has(d.id)) return;
    done.add(d.id);
    ordered.push(d);
  };
  for (const d of drafts) visit(d, []);
  return ordered;
}
