import type { EndCut, ProfileCut } from '../../src/results/cuts.ts';
import { CORNERS } from '../joints/pieces/corners.ts';
import { pieceOf } from '../setting-out/piece.ts';
import { type OutsideCheck, outside } from './check.ts';

const LAYOUT =
  'popularwoodworking.com, editors blog, dovetail layout: what ratio or degree (1:6 draws 9.5, 1:8 draws 7.1 degrees)';
const MARKERS = 'http://www.leevalley.com/en/shopping/TechInfo.aspx?p=59417';
const SCARF = 'https://wikimili.com/en/Scarf_joint: tapers are cut between 1:8 and 1:10';
const POLYGON =
  'https://pdfslide.net/documents/table-saw-joinery-woodworking-tools-table-saw-joinery-wood-joinery.html';

const made = (type: string, material: string) => {
  const { parts } = CORNERS[type]!(20);
  return pieceOf({
    parts: { into: { ...parts.into, material }, from: { ...parts.from, material } },
    joints: { j: { type, from: 'from', into: 'into' } },
  });
};
const DEGREE = 180 / Math.PI;

/** Slope of the sides of the first socket as it is cut, degrees from the length of the tail. */
function socketSlope(type: string, material: string): number {
  const socket = made(type, material).instance('into').cuts[0] as ProfileCut;
  const [a, , , d] = socket.polygon;
  const [p, q] = [Math.abs(a![0] - d![0]), Math.abs(a![1] - d![1])];
  return Math.atan(Math.min(p, q) / Math.max(p, q)) * DEGREE;
}

const TIMBERS = { softwood: 'pine-scots', hardwood: 'oak-european' };
const slopes = (type: string) => () => ({
  softwood: socketSlope(type, TIMBERS.softwood),
  hardwood: socketSlope(type, TIMBERS.hardwood),
});

export const checks: OutsideCheck[] = [
  ...['through-dovetail', 'lapped-dovetail'].map(type =>
    outside({
      id: `${type}-slope`,
      topic: 'joints',
      inputs: TIMBERS,
      published: { softwood: 9.5, hardwood: 7.1 },
      unit: 'degree',
      tolerance: 0.05,
      source: LAYOUT,
      basis: 'read, printed answer',
      ours: slopes(type),
    }),
  ),
  outside({
    id: 'dovetail-marker-slope',
    topic: 'joints',
    inputs: TIMBERS,
    published: { softwood: 9, hardwood: 7 },
    unit: 'degree',
    tolerance: 0.5,
    source: MARKERS,
    basis: 'read, printed to whole degrees',
    ours: slopes('through-dovetail'),
  }),
  outside({
    id: 'scarf-slope',
    topic: 'joints',
    inputs: { deep: 20 },
    published: 9,
    unit: 'one in',
    tolerance: 1,
    source: SCARF,
    basis: 'read, range 8 to 10',
    ours: ({ deep }) => {
      const m = made('scarf', 'oak-european');
      return (m.instance('from').size.length - m.instance('from').body.length) / deep;
    },
  }),
  outside({
    id: 'box-mitre-bevel',
    topic: 'joints',
    inputs: { sides: 4 },
    published: 45,
    unit: 'degree',
    tolerance: 1e-9,
    source: POLYGON,
    basis: 'read, printed answer',
    ours: () => {
      const end = made('box-mitre', 'oak-european')
        .instance('from')
        .cuts.find(cut => cut.kind === 'end-cut') as EndCut;
      return Math.abs(end.bevel);
    },
  }),
];
