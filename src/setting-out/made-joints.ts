import type { FigureBook } from '../figures/book.ts';
import { type Box, boxBetween, boxCentre } from '../geometry/box.ts';
import type { Vec3 } from '../geometry/vector.ts';
import type { Cut } from '../results/cuts.ts';
import { ON_PART } from '../results/cuts.ts';
import { type Fault, fault } from '../results/fault.ts';
import type { JointMade } from '../results/piece.ts';
import { type Body, bodyBox } from './bodies.ts';
import type { Contact, JointParts, Member, Role } from './joint-type.ts';
import type { Pairing, Pairings } from './pairings.ts';
import type { JobDocument } from './schema.ts';

export interface Made {
  joint: JointMade;
  cuts: { instance: string; cut: Cut }[];
}

/** Boards glued edge to edge move as one: id of each board to the boards of its panel. */
export function panels(pairings: Pairings, document: JobDocument): Map<string, string[]> {
  const groups = new Map<string, string[]>();
  for (const [id, joint] of Object.entries(document.joints ?? {})) {
    if (joint.type !== EDGE_GLUED) continue;
    for (const { from, into } of pairings.of(id)?.contacts ?? []) {
      const joined = [...new Set([...(groups.get(from) ?? [from]), ...(groups.get(into) ?? [into])])];
      for (const member of joined) groups.set(member, joined);
    }
  }
  return groups;
}

export const EDGE_GLUED = 'edge-glued';

function panelBox(body: Body, group: string[] | undefined, pairings: Pairings): Box {
  const own = bodyBox(body.size);
  if (!group) return own;
  return group.reduce((whole, id) => {
    const other = pairings.bodyById(id);
    if (!other) return whole;
    const b = boxBetween(other.frame, body.frame, bodyBox(other.size));
    return {
      min: {
        x: Math.min(whole.min.x, b.min.x),
        y: Math.min(whole.min.y, b.min.y),
        z: Math.min(whole.min.z, b.min.z),
      },
      max: {
        x: Math.max(whole.max.x, b.max.x),
        y: Math.max(whole.max.y, b.max.y),
        z: Math.max(whole.max.z, b.max.z),
      },
    };
  }, own);
}

/** Cuts every joint that can be made; a joint whose figures are faulty is left out (its faults are told). */
export function makeJoints(
  document: JobDocument,
  pairings: Pairings,
  book: FigureBook,
): { made: Made[]; faults: Fault[] } {
  const faults: Fault[] = [];
  const groups = panels(pairings, document);
  const middle = boxCentre(pairings.bounds());
  const counters = new Map<string, number>();
  const all = Object.keys(document.joints ?? {}).flatMap(id => {
    const pairing = pairings.of(id);
    if (!pairing) return [];
    const values = figuresOf(id, pairing, book);
    if (!values) return [];
    return pairing.contacts.flatMap(contact => {
      const made = makeOne(id, pairing, contact, values, document, pairings, groups, middle);
      for (const f of made?.parts.impossible ?? []) {
        const own = pairing.document.set?.[f.figure] === undefined ? '' : 'set.';
        faults.push(fault(`joints.${id}.${own}${f.figure}`, f.fault, f.mend));
      }
      return made ? [number(made.parts, made.joint, id, contact, counters)] : [];
    });
  });
  return { made: all, faults };
}

function figuresOf(id: string, pairing: Pairing, book: FigureBook): Map<string, number | string> | undefined {
  const values = new Map<string, number | string>();
  for (const f of pairing.type.figures) {
    const m = book.value(`joints.${id}.${f.name}`);
    if (!m || m.type === 'truth') return undefined;
    values.set(f.name, m.value);
  }
  // Misspelt figures are asked for so that their faults are told; the joint is still made by rule.
  for (const name of Object.keys(pairing.document.set ?? {}))
    if (!values.has(name)) book.value(`joints.${id}.set.${name}`);
  return values;
}

function makeOne(
  id: string,
  pairing: Pairing,
  contact: Contact,
  values: Map<string, number | string>,
  document: JobDocument,
  pairings: Pairings,
  groups: Map<string, string[]>,
  middle: Vec3,
): { joint: JointMade; parts: JointParts } | undefined {
  const bodies = { from: pairings.bodyById(contact.from), into: pairings.bodyById(contact.into) };
  if (!bodies.from || !bodies.into) return undefined;
  const member = (role: Role): Member => {
    const body = bodies[role]!;
    const part = document.parts![body.copy.part]!;
    return {
      role,
      instance: body.copy.id,
      part: body.copy.part,
      kind: part.kind,
      material: part.material ?? '',
      round: part.diameter !== undefined,
      body: body.size,
      frame: body.frame,
    };
  };
  const dry = pairing.document.dry ?? false;
  const none = ofNothing(pairing, values);
  const parts =
    none ??
    pairing.type.make({
      id,
      figure: name => Number(values.get(name)),
      word: name => String(values.get(name)),
      contact,
      from: member('from'),
      into: member('into'),
      middle,
      panel: role => panelBox(bodies[role]!, groups.get(bodies[role]!.copy.id), pairings),
      adhesive: pairing.document.adhesive,
      dry,
    });
  const joint: JointMade = {
    id: `${id}:${contact.from}+${contact.into}${pairing.contacts.filter(c => c.from === contact.from && c.into === contact.into).length > 1 ? `:${contact.fromFace}` : ''}`,
    joint: id,
    type: pairing.type.type,
    title: pairing.type.title,
    instances: [contact.from, contact.into],
    contact: contact.world,
    glue: dry ? [] : parts.glue.map(g => ({ ...g, between: [contact.from, contact.into] })),
    ...(parts.weld && !dry ? { weld: parts.weld } : {}),
    fasteners: parts.fasteners,
    limits: parts.limits,
    dry,
    ...(parts.room ? { room: parts.room } : {}),
    ...(parts.bond ? { bond: parts.bond } : {}),
  };
  return { joint, parts };
}

/** A joint with a size of nothing where it needs one: refused, and nothing is cut. */
function ofNothing(pairing: Pairing, values: Map<string, number | string>): JointParts | undefined {
  const impossible = pairing.type.figures
    .filter(f => f.positive && Number(values.get(f.name)) <= 0)
    .map(f => ({
      figure: f.name,
      fault: `a ${f.label} of ${values.get(f.name)} mm is none`,
      mend: `give more than 0; the rule is ${f.formula}`,
    }));
  return impossible.length > 0 ? { cuts: [], glue: [], fasteners: [], limits: [], impossible } : undefined;
}

/** Gives cuts their ids and ties mates together. */
function number(
  parts: JointParts,
  joint: JointMade,
  id: string,
  contact: Contact,
  counters: Map<string, number>,
): Made {
  const cuts = (parts.impossible?.length ? [] : parts.cuts).map(({ role, cut }) => {
    const instance = contact[role];
    const key = `${instance}|${id}`;
    const n = (counters.get(key) ?? 0) + 1;
    counters.set(key, n);
    return { instance, cut: { ...cut, id: `${id}.${n}`, by: id, stage: ON_PART } as Cut };
  });
  for (const [a, b] of parts.mates ?? []) {
    const [first, second] = [cuts[a], cuts[b]];
    if (!first || !second) continue;
    first.cut.mate = { instance: second.instance, cut: second.cut.id };
    second.cut.mate = { instance: first.instance, cut: first.cut.id };
  }
  return { joint, cuts };
}
