import { boxSize } from '../geometry/box.ts';
import { profileSpan } from '../results/cut-shapes.ts';
import type { Cut, CutKind, HoleCut, PocketCut, ProfileCut, TurnedCut } from '../results/cuts.ts';
import type { Workshop } from '../workshop/workshop.ts';
import type { CutGroup } from './cuts.ts';
import { mm } from './stock.ts';
import type { Work } from './times.ts';
import type { PartView } from './view.ts';

export const kindOf = (kind: CutKind): 'drill' | 'shape' | 'cut' =>
  kind === 'hole' ? 'drill' : SHAPED.includes(kind) ? 'shape' : 'cut';

const SHAPED: readonly CutKind[] = [
  'taper',
  'chamfer',
  'round-over',
  'curve',
  'cut-out',
  'bevel',
  'scribe',
  'turned',
  'bent',
];

export const CUT_NAMES: Record<CutKind, [one: string, many: string]> = {
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
  dovetail: ['dovetail', 'dovetails'],
  curve: ['curve', 'curves'],
  'cut-out': ['cut-out', 'cut-outs'],
  bevel: ['bevel', 'bevels'],
  slant: ['slanting cut', 'slanting cuts'],
  scribe: ['scribed edge', 'scribed edges'],
  turned: ['turning', 'turnings'],
  bent: ['bend', 'bends'],
};

export function titleOf({ kind, cuts, part }: CutGroup): string {
  const [one, many] = CUT_NAMES[kind];
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
export function workOf(workshop: Workshop, { kind, cuts, part }: CutGroup): Work[] {
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
    case 'dovetail':
      return [{ key: 'dovetail-hand', times: dovetailedEnds(cuts) / 2 }];
    case 'curve':
    case 'cut-out':
    case 'scribe':
      return [{ key: 'curve-cut', times: lineMetres(cuts) }];
    case 'bevel':
      return [{ key: 'rip', times: lineMetres(cuts) }];
    case 'slant':
      return [{ key: 'cut-recess', times: count }];
    case 'bent':
      return [
        {
          key: 'bend-bar',
          times: count * (cuts[0]?.cut.kind === 'bent' && cuts[0].cut.form !== 'L' ? 2 : 1),
        },
      ];
    case 'turned':
      return [{ key: 'turning', times: turnedMetres(cuts) }];
    case 'chamfer':
    case 'round-over':
      return [{ key: 'edge-mould', times: edgeMetres(cuts, part) }];
  }
}

/** A row counts the corner; each of its two members is half of it. */
const dovetailedEnds = (cuts: CutGroup['cuts']): number =>
  new Set(
    cuts.map(({ instance, cut }) => {
      const along = profileSpan(cut as ProfileCut, 'x');
      return `${instance.id} ${along[0] + along[1] < instance.size.length ? 'end1' : 'end2'}`;
    }),
  ).size;

/** Longest way of the line, near enough for a time. */
const lineMetres = (cuts: CutGroup['cuts']): number =>
  cuts.reduce((sum, { cut }) => {
    const spans = (['x', 'y', 'z'] as const).map(k => profileSpan(cut as ProfileCut, k));
    const line = Math.max(...spans.map(([a, b]) => b - a));
    return sum + (line * (cut.kind === 'cut-out' ? 3 : 1)) / 1000;
  }, 0);

const turnedMetres = (cuts: CutGroup['cuts']): number =>
  cuts.reduce((sum, { cut }) => {
    const { profile } = cut as TurnedCut;
    return sum + ((profile.at(-1)?.at ?? 0) - (profile[0]?.at ?? 0)) / 1000;
  }, 0);

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
    case 'bent':
      return ['bent', cut.form, cut.radius, cut.stock, JSON.stringify(cut.air)].map(word).join('|');
    case 'turned':
      return ['turned', JSON.stringify(cut.profile), section].join('|');
    case 'dovetail':
    case 'curve':
    case 'cut-out':
    case 'bevel':
    case 'slant':
    case 'scribe':
      return [cut.kind, cut.face, cut.axis, JSON.stringify(cut.polygon), section].join('|');
    default: {
      const size = boxSize(cut.box);
      const across =
        cut.run === 'x' ? [size.y, size.z] : cut.run === 'y' ? [size.x, size.z] : [size.x, size.y];
      return [cut.kind, cut.face, ...across, section].map(word).join('|');
    }
  }
}

const word = (value: string | number): string => (typeof value === 'number' ? mm(value) : value);
