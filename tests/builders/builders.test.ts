import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { expandBuilders } from '../../src/builders/expand.ts';
import { growth } from '../../src/builders/season.ts';
import { checkJobDocument, readJobFile } from '../../src/job-file/read.ts';
import { timberSpecies } from '../../src/reference/timber-species.ts';
import type { JobDocument } from '../../src/setting-out/schema.ts';
import { equilibriumMoisture } from '../../src/timber/moisture.ts';
import { movementCoefficient } from '../../src/timber/movement.ts';
import { build, overlaps } from './build.ts';

const carcase = (over: object, inside = 410, depth = 400) => ({
  site: { name: 'Bedroom', humidity: { low: 40, high: 60 }, temperature: { low: 16, high: 22 } },
  moisture: 9,
  parameters: { inside, depth },
  parts: {
    side: {
      ...{ kind: 'timber', material: 'oak-european', length: 600, width: 'depth', thickness: 20 },
      ...{
        along: 'up',
        facing: 'left',
        at: { left: 0, front: 0, bottom: 0 },
        mirror: { x: '20 mm + inside / 2' },
      },
    },
    shelf: {
      ...{
        kind: 'timber',
        material: 'oak-european',
        width: 'depth',
        thickness: 20,
        along: 'right',
        facing: 'up',
      },
      at: { left: 'side.right', right: 'side_x.left', front: 0, top: 440 },
    },
  },
  joints: { shelf_in_side: { type: 'housing', from: 'shelf', into: 'side', count: 2 } },
  ...over,
});

const opening = { left: 'side.right', right: 'side_x.left', front: 'side.front' };
const upper = { ...opening, bottom: 'shelf.top', top: '580 mm', back: 'depth' };
const lower = { ...opening, bottom: '40 mm', top: 'shelf.bottom' };
const ply = { material: 'birch-plywood', thickness: 6 };

describe('drawers from their opening', () => {
  it("the writing table's drawer comes out as it was set out by hand, and takes no other part's room", async () => {
    const { document } = readJobFile(readFileSync('examples/writing-table.yaml', 'utf8'));
    const job = structuredClone(document!) as JobDocument;
    for (const group of ['parts', 'joints', 'features', 'assemblies'] as const)
      for (const id of Object.keys(job[group] ?? {}))
        if (/^(drawer|runner|kicker|pull|front_lap|back_in|bottom_in|top_edge|top_middle)/.test(id))
          delete job[group]![id];
    for (const frame of Object.values(job.assemblies!))
      if (frame.parts) frame.parts = frame.parts.filter(p => !/^(drawer|runner|kicker|pull)/.test(p));
    for (const finish of Object.values(job.finishes ?? {}))
      finish.on = finish.on.filter(p => !p.startsWith('drawer'));
    job.drawers = {
      pens: {
        name: 'Drawer',
        opening: {
          ...{ left: 'divider.right', right: 'divider_x.left', bottom: 'front_rail_low.top' },
          ...{ top: 'front_rail_top.bottom', front: 'leg.front', back: 'back_apron.front' },
        },
        depth: 450,
        material: 'sycamore',
        gap: 'gap',
        back: { thickness: 10 },
        bottom: { material: 'birch-plywood', thickness: 4 },
        runner: { front: 'front_rail_low', back: 'back_apron' },
        kicker: { front: 'front_rail_top', back: 'back_apron' },
      },
    };
    const made = build(job);
    expect(made.said).toEqual([]);
    expect(made.size('pens_front').length).toBe(558);
    expect(made.size('pens_side')).toMatchObject({ length: 440, thickness: 10 });
    expect(made.size('pens_side').width).toBeCloseTo(made.size('pens_front').width - 1, 9);
    expect(made.size('pens_back').length).toBeCloseTo(538 + 2 * 3.5, 6);
    expect(made.size('pens_bottom').length).toBeCloseTo(547, 6);
    expect(await overlaps(made)).toEqual([]);
  });

  it('leaves over the front what it grows till the dampest of its room', () => {
    const made = build(
      carcase({ drawers: { upper: { opening: upper, material: 'oak-european', bottom: ply } } }),
    );
    expect(made.said).toEqual([]);
    const oak = movementCoefficient(timberSpecies('oak-european')!, 'flat-sawn')!;
    const damp = equilibriumMoisture(16, 60);
    const over = 0.5 + oak.high * (damp - 9) * 140;
    expect(140 - 1 - made.size('upper_front').width).toBeCloseTo(Math.ceil(over * 10 - 1e-9) / 10, 6);
    expect(made.parameters.find(p => p.id === 'upper_over')).toMatchObject({ entered: false });
  });

  it.each([
    ['wooden, rebated', {}],
    ['on slides', { slides: { item: 'slide', length: 350, room: 12.7 } }],
    ['with a front that laps over', { front: { false_front: 18, overlap: 8 } }],
    [
      'on slides with a front that laps over',
      { front: { false_front: 18, overlap: 8 }, slides: { item: 's', length: 300, room: 13 } },
    ],
  ])('%s: no two parts share room', async (_, over) => {
    const made = build(
      carcase({ drawers: { upper: { opening: upper, material: 'oak-european', bottom: ply, ...over } } }),
    );
    expect(made.said).toEqual([]);
    expect(await overlaps(made)).toEqual([]);
  });

  it('the box follows the slides in hand: half a millimetre a side more takes one off the box', () => {
    const wide = (room: number) =>
      build(
        carcase({
          drawers: {
            upper: { opening: upper, material: 'oak-european', slides: { item: 's', length: 350, room } },
          },
        }),
      ).size('upper_front').length;
    expect(wide(12.7)).toBeCloseTo(410 - 25.4, 9);
    expect(wide(12.7) - wide(13.2)).toBeCloseTo(1, 9);
  });
});

describe('doors from their opening', () => {
  const framed = {
    stile: 55,
    bottom_rail: 70,
    tenon: 35,
    panel: { material: 'oak-european', thickness: 10, edge: 6 },
  };

  it.each([
    ['framed, hinged left', { hinged: 'left', ...framed }],
    ['framed, hinged right', { hinged: 'right', ...framed }],
    [
      'framed with a sheet',
      { hinged: 'left', ...framed, panel: { material: 'birch-plywood', thickness: 6 } },
    ],
    ['a slab', { hinged: 'left' }],
  ])('%s: no two parts share room, and it goes into its opening', async (_, over) => {
    const made = build(
      carcase(
        { doors: { lower: { opening: lower, material: 'oak-european', thickness: 20, ...over } } },
        410,
      ),
    );
    expect(made.said).toEqual([]);
    expect(await overlaps(made)).toEqual([]);
    const closing = made.book.number('parameters.lower_closing')!;
    const whole =
      'stile' in over ? 2 * 55 + made.size('lower_top_rail').length - 70 : made.size('lower_slab').width;
    expect(whole).toBeCloseTo(410 - 2 - closing, 6);
  });

  it('a thick narrow door that would strike its frame is told at the door', () => {
    const made = build(
      carcase(
        { doors: { lower: { opening: lower, material: 'oak-european', thickness: 40, hinged: 'left' } } },
        150,
      ),
    );
    expect(made.said).toEqual([expect.stringMatching(/^doors\.lower: .*swings out .*over the most/)]);
  });

  it('one hinge more above 900 mm', () => {
    const hinges = (top: number) =>
      build(
        carcase({
          doors: {
            lower: {
              opening: { ...lower, bottom: '0 mm', top: `${top} mm` },
              ...{ material: 'oak-european', thickness: 20, hinged: 'left' },
              hinges: { item: 'butt hinge', length: 50 },
            },
          },
        }),
      ).piece.instances.filter(i => i.part === 'lower_hinge').length;
    expect([hinges(400), hinges(900), hinges(901)]).toEqual([2, 2, 3]);
  });
});

describe('builders and parts the maker wrote', () => {
  it('an id that is built and written is told, and the written one kept', () => {
    const job = carcase({ drawers: { upper: { opening: upper, material: 'oak-european' } } });
    const made = build({
      ...job,
      parts: {
        ...job.parts,
        upper_front: { kind: 'timber', material: 'oak-european', length: 7, width: 7, thickness: 7 },
      },
    });
    expect(made.said[0]).toBe(
      'drawers.upper: it makes upper_front, and upper_front stands under parts already',
    );
    expect(made.size('upper_front').length).toBe(7);
  });

  it('a job without builders is the same job', () => {
    const { document } = checkJobDocument({ scantling: 'job/1', title: 'T' });
    expect(expandBuilders(document!).document).toBe(document);
  });

  it('wherever the opening stands and however wide, the drawer is the same drawer but for its width', () => {
    fc.assert(
      fc.property(fc.integer({ min: 200, max: 900 }), fc.integer({ min: 250, max: 600 }), (inside, depth) => {
        const made = build(
          carcase({ drawers: { d: { opening: upper, material: 'beech-european' } } }, inside, depth),
        );
        expect(made.said).toEqual([]);
        expect(made.size('d_front').length).toBeCloseTo(inside - 2, 9);
        expect(made.size('d_side').length).toBeCloseTo(depth - 10 - 20 + 10, 9);
      }),
      { seed: 2, numRuns: 20 },
    );
  });

  it('without a room or a known timber nothing is said to grow', () => {
    const { document } = checkJobDocument({ scantling: 'job/1', title: 'T' });
    expect(growth('oak-european', document!)).toBe(0);
    const sited = { ...document!, site: { name: 'S', humidity: { low: 40, high: 70 } } };
    expect(growth('no-such-wood', sited)).toBe(0);
    expect(growth('oak-european', sited)).toBeGreaterThan(0);
  });
});
