/** How far bars, shelves and seats sag under what stands on them. */
import { boxToLocal } from '../geometry/box.ts';
import { furnitureLoad } from '../reference/furniture-loads.ts';
import { metal } from '../reference/metals.ts';
import { sheetFigures, sheetMaterial } from '../reference/sheet-materials.ts';
import { type Band, middle, sourceOf } from '../reference/sourced.ts';
import type { Check } from '../results/checks.ts';
import { hollowOf } from '../results/cut-shapes.ts';
import { say } from '../results/message.ts';
import type { Instance } from '../results/piece.ts';
import { mm, q, text } from '../results/quantity.ts';
import type { Rule } from '../results/source.ts';
import { deflection, type LoadCase } from '../timber/deflection.ts';
import { GRAVITY } from '../timber/mass.ts';
import { rectangle, rectangleLess, round, roundTube, type Section } from '../timber/sections.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { isSeat, isShelf } from './purpose.ts';
import { gather, speciesOf, type View, worldAxis } from './view.ts';
import { capital, inKg, mid } from './words.ts';

export const CHK_21 = rule(
  'CHK-21',
  'A lying bar under 10 kg spread along it sags no more than 1 in 200 of its span.',
  'More is seen, and the bar works loose in its holes.',
  'delta = 5 W L^3/(384 E I), Wood Handbook FPL-GTR-282 (2021) Eq 9-2; the load is assumed, the limit 0.5 % of the span is remembered from EN 14749',
  'memory',
);

export const CHK_22 = rule(
  'CHK-22',
  'A shelf full of books, 37 kg a metre, sags at once no more than 1.7 mm a metre; with the years it creeps half as much again, a board of fibre or chips twice.',
  'The eye sees 2.6 mm a metre.',
  `${furnitureLoad('sag-at-once')!.source}; books: ${furnitureLoad('books')!.source}`,
  'read',
);

export const CHK_23 = rule(
  'CHK-23',
  'A seat under 1300 N in the middle of its widest span gives no more than 1 in 200 of it.',
  'A seat that gives feels weak, and its screws work.',
  'seat static load 1300 N, remembered from EN 12520; the limit is common practice. No conformity is claimed',
  'memory',
);

const BAR_KG = 10;
const BOOKS = furnitureLoad('books')!;
const SAG_AT_ONCE = furnitureLoad('sag-at-once')!;
const SEAT_STATIC = furnitureLoad('seat-static')!;
const LEAST_SPAN = 200;

/**
 * Greatest free span of a lying part between the places where joints hold it, mm, along its own length. Boards
 * glued edge to edge are held as one, and do not hold each other. Undefined when fewer than two places hold it, or
 * one holds it along more than half of its length.
 */
export function freeSpan(part: Instance, view: View): number | undefined {
  const boards = view.panels.find(p => p.instances.includes(part))?.instances ?? [part];
  const ids = new Set(boards.map(b => b.id));
  const held = [...new Set(boards.flatMap(b => view.jointsOf(b.id)))]
    .filter(joint => joint.instances.some(id => !ids.has(id)))
    .map(joint => boxToLocal(part.frame, joint.contact))
    .map(contact => ({
      from: Math.max(0, contact.min.x),
      to: Math.min(part.size.length, contact.max.x),
    }))
    .filter(h => h.to >= h.from)
    .sort((a, b) => a.from - b.from);
  if (held.some(h => h.to - h.from > part.size.length / 2)) return undefined;
  let reach = held[0]?.to;
  if (reach === undefined) return undefined;
  let span = 0;
  for (const h of held.slice(1)) {
    span = Math.max(span, h.from - reach);
    reach = Math.max(reach, h.to);
  }
  return span > 0 ? span : undefined;
}

const lies = (part: Instance): boolean => worldAxis(part.frame.x) !== 'z' && Math.abs(part.frame.x.z) < 0.02;
const lieFlat = (part: Instance): boolean => lies(part) && worldAxis(part.frame.z) === 'z';

function stiffnessOf(part: Instance): Band | undefined {
  if (part.kind === 'timber') return speciesOf(part)?.stiffnessMPa;
  const board = sheetMaterial(part.material);
  return board
    ? sheetFigures(board, part.size.thickness).stiffnessAlongMPa
    : metal(part.material)?.stiffnessMPa;
}

function barSection(part: Instance): Section {
  const { width, thickness } = part.size;
  if (!part.round) {
    const gap = hollowOf(part);
    return gap
      ? rectangleLess(width, thickness, { widthMm: gap.max.y - gap.min.y, from: gap.min.z, to: gap.max.z })
      : rectangle(width, thickness);
  }
  return part.wall === undefined ? round(width) : roundTube(width, part.wall);
}

interface Loading {
  part: Instance;
  rule: Rule;
  span: number;
  section: Section;
  loadN: number;
  loadCase: LoadCase;
  /** mm */
  limit: number;
  /** `10 kg spread evenly`. */
  load: string;
}

function barLoading(part: Instance, view: View): Loading | undefined {
  if ((part.kind !== 'bar' && part.kind !== 'tube') || !lies(part)) return undefined;
  const span = freeSpan(part, view);
  if (!span || span < LEAST_SPAN) return undefined;
  return {
    part,
    rule: CHK_21,
    span,
    section: barSection(part),
    loadN: BAR_KG * GRAVITY,
    loadCase: 'uniform, simply supported',
    limit: span / 200,
    load: `${inKg(BAR_KG)} spread evenly`,
  };
}

function shelfLoading(part: Instance, view: View): Loading | undefined {
  if (!isShelf(part) || !lieFlat(part)) return undefined;
  const span = freeSpan(part, view);
  if (!span || span < LEAST_SPAN) return undefined;
  return {
    part,
    rule: CHK_22,
    span,
    section: rectangle(part.size.width, part.size.thickness),
    loadN: (BOOKS.high * GRAVITY * span) / 1000,
    loadCase: 'uniform, simply supported',
    limit: (SAG_AT_ONCE.high * span) / 1000,
    load: `${inKg(BOOKS.high)} a metre`,
  };
}

function seatLoading(part: Instance, view: View): Loading | undefined {
  if (!isSeat(part) || !lieFlat(part) || (part.kind !== 'timber' && part.kind !== 'sheet')) return undefined;
  const panel = view.panels.find(p => p.instances.includes(part));
  const span = freeSpan(part, view);
  if (!span || span < LEAST_SPAN) return undefined;
  return {
    part,
    rule: CHK_23,
    span,
    section: rectangle(panel?.width ?? part.size.width, part.size.thickness),
    loadN: SEAT_STATIC.high,
    loadCase: 'point at middle, simply supported',
    limit: span / 200,
    load: `${SEAT_STATIC.high} N in the middle`,
  };
}

function judgeLoading(l: Loading): Check {
  const stiffness = stiffnessOf(l.part);
  const common = {
    check: 'sag',
    subject: l.part.part,
    rule: l.rule,
    limit: l.limit,
    unit: 'length' as const,
  };
  if (!stiffness) {
    return finding({
      ...common,
      severity: 'unknown',
      title: `How far ${mid(l.part.name)} sags`,
      figure: null,
      remedy: `Enter a material the tables hold a stiffness for; ${l.part.material} has none.`,
      say: say('No stiffness is published for {material}.', { material: text(l.part.material) }),
    });
  }
  const { bendingMm } = deflection(l.loadCase, {
    loadN: l.loadN,
    spanMm: l.span,
    section: l.section,
    stiffnessMPa: middle(stiffness),
  });
  const bad = bendingMm > l.limit;
  return finding({
    ...common,
    severity: bad ? 'attend' : 'pass',
    title: bad ? `${capital(l.part.name)} sags too far` : `${capital(l.part.name)} is stiff enough`,
    figure: bendingMm,
    remedy: bad
      ? `Make it ${Math.ceil(100 * (bendingMm / l.limit) ** (1 / (l.part.round ? 4 : 3)) - 100)} % thicker, or hold it in the middle.`
      : '',
    say: say('{part} sags {sag} over {span} under {load}; {limit} is the limit.', {
      part: text(capital(l.part.name)),
      sag: mm(bendingMm),
      span: mm(l.span),
      load: q('text', l.load),
      limit: mm(l.limit),
    }),
    sources: [sourceOf(stiffness)],
  });
}

const judge = ({ piece }: CheckInput, view: View): Check[] =>
  gather(
    piece.instances.flatMap(
      part => barLoading(part, view) ?? shelfLoading(part, view) ?? seatLoading(part, view) ?? [],
    ),
    l => `${l.part.part} ${l.rule.number}`,
  ).map(of => judgeLoading(of.reduce((w, l) => (l.span > w.span ? l : w))));

export const sagCheck: CheckMaker = { name: 'sag', rules: [CHK_21, CHK_22, CHK_23], judge };
