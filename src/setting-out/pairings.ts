import type { FigureBook } from '../figures/book.ts';
import { nearest } from '../figures/nearest.ts';
import { type Box, boundsOf, box, boxToWorld } from '../geometry/box.ts';
import { AXES } from '../geometry/vector.ts';
import type { LocalFace } from '../results/cuts.ts';
import { type Fault, fault } from '../results/fault.ts';
import { type Body, bodyBox, bodyOf } from './bodies.ts';
import { apart, atSlant, contactsBetween, TOUCH } from './contacts.ts';
import { type Copy, copyFromId } from './copies.ts';
import { CopyLists } from './copy-lists.ts';
import type { Contact, JointCatalogue, JointType, Meets } from './joint-type.ts';
import type { JobDocument, JointDocument } from './schema.ts';

export interface Pairing {
  joint: string;
  type: JointType;
  document: JointDocument;
  contacts: Contact[];
}

/** Faces that a joint may lengthen: a tenon never makes its rail thicker, so a thickness needs no joint. */
const MAY_LENGTHEN: Partial<Record<Meets, readonly LocalFace[]>> = {
  'end to face': ['end1', 'end2'],
  'end to slope': ['end1', 'end2'],
  'end to end': ['end1', 'end2'],
  'edge to face': ['end1', 'end2', 'backEdge', 'faceEdge'],
  corner: ['end1', 'end2'],
};

/** Copies of every part and the pairs that every joint makes, worked out when first needed. */
export class Pairings {
  private readonly bodies = new Map<string, Body | undefined>();
  private readonly boxes = new Map<string, Box>();
  private readonly made = new Map<string, Pairing | undefined>();
  private readonly copies: CopyLists;
  private readonly told = new Map<string, Fault>();
  private readonly document: JobDocument;
  private readonly catalogue: JointCatalogue;
  private readonly book: FigureBook;

  constructor(document: JobDocument, catalogue: JointCatalogue, book: FigureBook) {
    this.document = document;
    this.catalogue = catalogue;
    this.book = book;
    this.copies = new CopyLists(document, book, f => this.tell(f));
  }

  faults(): Fault[] {
    return [...this.told.values()];
  }

  private tell(f: Fault): void {
    this.told.set(`${f.place}|${f.fault}`, f);
  }

  allCopies(): Copy[] {
    return Object.keys(this.document.parts ?? {}).flatMap(p => this.copies.of(p));
  }

  body(copy: Copy): Body | undefined {
    if (!this.bodies.has(copy.id))
      this.bodies.set(copy.id, bodyOf(copy, this.document.parts![copy.part]!, this.book));
    return this.bodies.get(copy.id);
  }

  bodyById(id: string): Body | undefined {
    const copy = this.copies.made(id);
    return copy && this.body(copy);
  }

  private worldBox(body: Body): Box {
    const kept = this.boxes.get(body.copy.id) ?? boxToWorld(body.frame, bodyBox(body.size));
    this.boxes.set(body.copy.id, kept);
    return kept;
  }

  /** Outer box of every body that has a place. */
  bounds(): Box {
    const boxes = this.allCopies()
      .filter(c => this.document.parts?.[c.part]?.at !== undefined)
      .map(c => this.body(c))
      .filter(b => b?.placed)
      .map(b => this.worldBox(b!));
    return boxes.length > 0 ? boundsOf(boxes.flatMap(b => [b.min, b.max])) : box(0, 0, 0, 0, 0, 0);
  }

  /** Pairs of a joint, or undefined when it cannot be told (its faults are). */
  of(joint: string): Pairing | undefined {
    if (!this.made.has(joint)) this.made.set(joint, this.pair(joint));
    return this.made.get(joint);
  }

  private pair(joint: string): Pairing | undefined {
    const document = this.document.joints?.[joint];
    if (!document) return undefined;
    const place = `joints.${joint}`;
    const type = this.catalogue.get(document.type);
    if (!type) {
      const near = nearest(document.type, this.catalogue.keys());
      this.tell(
        fault(
          `${place}.type`,
          `there is no joint called ${document.type}`,
          near ? `did you mean ${near}?` : `known are ${[...this.catalogue.keys()].join(', ')}`,
        ),
      );
      return undefined;
    }
    const sides = (['from', 'into'] as const).map(role => this.side(place, role, document[role]));
    if (sides.some(s => s === undefined)) return undefined;
    const [from, into] = sides as [Body[], Body[]];
    const contacts = Array.isArray(document.pair)
      ? this.listed(place, document.pair, type)
      : this.touching(from, into, type);
    if (contacts.length === 0 && from.length > 0 && into.length > 0 && !Array.isArray(document.pair)) {
      const pairs = from.slice(0, 40).flatMap(a => into.slice(0, 40).flatMap(b => (a === b ? [] : [[a, b]])));
      const fell = this.howFar(pairs as [Body, Body][], type);
      this.tell(fault(place, `no ${document.from} meets ${document.into}`, fell));
    }
    if (!type.many && type.meets === 'end to face') this.ambiguous(place, contacts);
    return { joint, type, document, contacts };
  }

  private side(place: string, role: 'from' | 'into', name: string): Body[] | undefined {
    const parts = this.document.parts ?? {};
    const copy = copyFromId(name, parts);
    if (!copy) {
      const near = nearest(name, Object.keys(parts));
      this.tell(
        fault(
          `${place}.${role}`,
          `there is no part called ${name}`,
          near ? `did you mean ${near}?` : 'name a part of this job',
          'the id of a part',
        ),
      );
      return undefined;
    }
    if (copy.id !== copy.part && !this.copies.made(copy.id)) {
      this.tell(
        fault(`${place}.${role}`, `there is no ${copy.id}: so many are not made`, 'name a copy that is made'),
      );
      return undefined;
    }
    const copies = copy.id === copy.part ? this.copies.of(copy.part) : [copy];
    const bodies = copies.map(c => this.body(c));
    if (bodies.some(b => b === undefined)) return undefined;
    const loose = bodies.find(b => b && !b.placed);
    if (loose) {
      this.tell(
        fault(
          `parts.${copy.part}.at`,
          `${copy.part} has a joint but no place`,
          'say where it stands under at',
        ),
      );
      return undefined;
    }
    return bodies as Body[];
  }

  private touching(from: Body[], into: Body[], type: JointType): Contact[] {
    const found: Contact[] = [];
    const seen = new Set<string>();
    const reach = Math.max(TOUCH, type.within ?? 0);
    for (const a of from) {
      for (const b of into) {
        if (a === b) continue;
        const pair = [a.copy.id, b.copy.id].sort().join('+');
        if (seen.has(pair) && a.copy.part === b.copy.part) continue;
        const [wa, wb] = [this.worldBox(a), this.worldBox(b)];
        if (AXES.some(k => wa.min[k] > wb.max[k] + reach || wb.min[k] > wa.max[k] + reach)) continue;
        const contacts = contactsBetween(a, b, type.meets, type.within);
        if (contacts.length > 0) seen.add(pair);
        found.push(...contacts);
      }
    }
    return found;
  }

  private listed(place: string, pairs: [string, string][], type: JointType): Contact[] {
    return pairs.flatMap(([from, into], i) => {
      const [a, b] = [this.bodyById(from), this.bodyById(into)];
      if (!a || !b) {
        this.tell(
          fault(
            `${place}.pair`,
            `pair ${i + 1} names ${a ? into : from}, which is not there`,
            'name copies such as leg or leg_x',
          ),
        );
        return [];
      }
      const contacts = contactsBetween(a, b, type.meets, type.within);
      if (contacts.length === 0)
        this.tell(fault(`${place}.pair`, `${from} and ${into} do not meet`, this.howFar([[a, b]], type)));
      return contacts;
    });
  }

  /** Why none of the pairs makes a joint, and what mends it. */
  private howFar(pairs: readonly [Body, Body][], type: JointType): string {
    const gaps = pairs.map(([a, b]) => apart(a, b));
    const gap = Math.min(...gaps);
    if (Number.isFinite(gap) && gap > 0)
      return `the nearest are ${Math.round(gap * 10) / 10} mm apart: mend their places under at`;
    return pairs.some(([a, b], i) => gaps[i] === 0 && atSlant(a, b, type.meets))
      ? 'they meet at a slant, and a joint is set out square: turn both alike, or cut it as features'
      : 'no face of the one lies flat against a face of the other: mend their places under at';
  }

  private ambiguous(place: string, contacts: Contact[]): void {
    const byEnd = new Map<string, Set<string>>();
    for (const c of contacts) {
      const key = `${c.from} ${c.fromFace}`;
      byEnd.set(key, (byEnd.get(key) ?? new Set()).add(c.into));
    }
    for (const [end, parts] of byEnd)
      if (parts.size > 1)
        this.tell(
          fault(
            place,
            `${end.replace(' ', ', ')} meets ${[...parts].join(' and ')} at once`,
            'list the pairs meant under pair',
          ),
        );
  }

  /** Names of the joint figures that lengthen one face of a copy. Only joints that can reach that face are paired. */
  addedFigures(copy: string, face: LocalFace): string[] {
    const parts = this.document.parts ?? {};
    const part = copyFromId(copy, parts)?.part;
    const names: string[] = [];
    for (const [joint, document] of Object.entries(this.document.joints ?? {})) {
      const type = this.catalogue.get(document.type);
      if (
        !type ||
        !MAY_LENGTHEN[type.meets]?.includes(face) ||
        copyFromId(document.from, parts)?.part !== part
      )
        continue;
      const here = new Set<string>();
      for (const contact of this.of(joint)?.contacts ?? []) {
        const figure = contact.from === copy && contact.fromFace === face ? type.adds(contact) : undefined;
        if (figure !== undefined) here.add(`joints.${joint}.${figure}`);
      }
      names.push(...here);
    }
    return names;
  }

  /** Total of a joint's pairs against the count the maker expects. */
  checkCounts(): void {
    for (const joint of Object.keys(this.document.joints ?? {})) {
      const pairing = this.of(joint);
      if (!pairing || pairing.document.count === undefined || pairing.contacts.length === 0) continue;
      const wanted = this.book.number(`joints.${joint}.count.expected`);
      if (wanted !== undefined && wanted !== pairing.contacts.length)
        this.tell(
          fault(
            `joints.${joint}.count`,
            `${pairing.contacts.length} joints are made, ${wanted} are expected`,
            'mend the places of the parts, or the count',
          ),
        );
    }
  }
}
