/** Time from a changed dimension to parts, layouts, set-ups, days, checks and price (design, section 10: 50 ms for 40 parts). */
import { readFileSync } from 'node:fs';
import { deriveJob } from '../src/job/derive.ts';
import { checkJobDocument, readWorkshopFile } from '../src/job-file/read.ts';
import type { JobDocument } from '../src/setting-out/schema.ts';

const TIMBER = { kind: 'timber', material: 'ash-european' } as const;

/** A settle: four legs, six rails, twenty-four slats, six seat boards: forty pieces with their joints. */
export function fortyParts(length: number): JobDocument {
  const parts = {
    leg: {
      ...TIMBER,
      length: 'height',
      width: 'leg',
      thickness: 'leg',
      along: 'up',
      facing: 'front',
      at: { left: 0, front: 0, bottom: 0 },
      mirror: { x: 'length / 2', y: 'depth / 2' },
    },
    low_rail: {
      ...TIMBER,
      width: 60,
      thickness: 24,
      along: 'right',
      facing: 'front',
      at: { left: 'leg.right', right: 'leg_x.left', centre_y: 'leg_y.centre_y', bottom: 460 },
    },
    top_rail: {
      ...TIMBER,
      width: 70,
      thickness: 24,
      along: 'right',
      facing: 'front',
      at: { left: 'leg.right', right: 'leg_x.left', centre_y: 'leg_y.centre_y', top: 'height - 20 mm' },
    },
    seat_rail: {
      ...TIMBER,
      width: 90,
      thickness: 24,
      along: 'right',
      facing: 'front',
      at: { left: 'leg.right', right: 'leg_x.left', centre_y: 'leg.centre_y', top: 420 },
      mirror: { y: 'depth / 2' },
    },
    end_rail: {
      ...TIMBER,
      width: 90,
      thickness: 24,
      along: 'back',
      facing: 'left',
      at: { centre_x: 'leg.centre_x', front: 'leg.back', back: 'leg_y.front', top: 420 },
      mirror: { x: 'length / 2' },
    },
    slat: {
      ...TIMBER,
      width: 36,
      thickness: 12,
      along: 'up',
      facing: 'front',
      at: {
        left: 'leg.right + gap',
        centre_y: 'low_rail.centre_y',
        bottom: 'low_rail.top',
        top: 'top_rail.bottom',
      },
      repeat: { count: 24, along: 'x', step: '36 mm + gap' },
    },
    board: {
      ...TIMBER,
      length: 'length - 2 * leg - 10 mm',
      width: '(depth - 20 mm) / 6',
      thickness: 20,
      along: 'right',
      facing: 'up',
      at: { left: 'leg + 5 mm', front: 10, bottom: 420 },
      repeat: { count: 6, along: 'y', step: '(depth - 20 mm) / 6' },
    },
  };
  const tenon = { type: 'mortise-and-tenon' } as const;
  const { document, faults } = checkJobDocument({
    scantling: 'job/1',
    title: 'Settle of forty pieces',
    site: { name: 'Hall', humidity: { low: 40, high: 60 }, temperature: { low: 16, high: 24 } },
    moisture: 10,
    parameters: { length, depth: 480, height: 900, leg: 50, gap: '(length - 2 * leg - 24 * 36 mm) / 25' },
    parts,
    joints: {
      low: { ...tenon, from: 'low_rail', into: 'leg', count: 2 },
      top: { ...tenon, from: 'top_rail', into: 'leg', count: 2 },
      seat: {
        ...tenon,
        from: 'seat_rail',
        into: 'leg',
        count: 4,
        set: { 'tenon.length': 24, tip: 'mitred' },
      },
      end: { ...tenon, from: 'end_rail', into: 'leg', count: 4, set: { 'tenon.length': 24, tip: 'mitred' } },
      slats_low: { type: 'housing', from: 'slat', into: 'low_rail', count: 24 },
      slats_top: { type: 'housing', from: 'slat', into: 'top_rail', count: 24 },
      edges: { type: 'edge-glued', from: 'board', into: 'board', count: 5 },
    },
    assemblies: {
      end_frame: { parts: ['leg', 'leg_y', 'end_rail'], glue: 'pva-d3', mirror: 'x' },
      back: { parts: ['low_rail', 'top_rail', 'slat'], glue: 'pva-d3' },
      frame: {
        parts: ['seat_rail', 'seat_rail_y'],
        assemblies: ['end_frame', 'end_frame_x', 'back'],
        glue: 'pva-d3',
      },
      seat_panel: { parts: ['board'], glue: 'pva-d3' },
    },
    finishes: {
      oil: {
        on: ['all'],
        steps: {
          sand: { kind: 'prepare', grit: 180 },
          one: { kind: 'coat', product: 'hardwax-oil' },
          two: { kind: 'coat', product: 'hardwax-oil' },
        },
      },
    },
  });
  if (!document || faults.length > 0)
    throw new Error(`the generated job is faulty: ${JSON.stringify(faults)}`);
  return document;
}

const median = (values: number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

export function run(args: string[]): void {
  const rounds = Number(args[0] ?? 40);
  const { workshop } = readWorkshopFile(
    readFileSync(new URL('../examples/workshop.yaml', import.meta.url), 'utf8'),
  );
  const derive = (length: number) =>
    deriveJob(fortyParts(length), workshop!, { today: '2026-11-25' }).derived;
  const timed = (length: number): [number, ReturnType<typeof derive>] => {
    const document = fortyParts(length);
    const start = performance.now();
    const { derived } = deriveJob(document, workshop!, { today: '2026-11-25' });
    return [performance.now() - start, derived];
  };
  const [cold, first] = timed(1500);
  const faults = first.faults.map(f => `${f.place}: ${f.fault}`);
  console.log(
    `${first.piece.instances.length} pieces, ${first.piece.joints.length} joints, ${first.operations.length} operations, ${first.setups.setups.length} set-ups, ${first.checks.length} checks${faults.length > 0 ? `; FAULTS ${faults.join('; ')}` : ''}`,
  );
  for (let i = 0; i < 10; i++) derive(1400 + i);
  const changed = Array.from({ length: rounds }, (_, i) => timed(1500 + i)[0]);
  console.log(
    `cold derive ${cold.toFixed(0)} ms; one changed dimension: median ${median(changed).toFixed(1)} ms, best ${Math.min(...changed).toFixed(1)} ms, worst ${Math.max(...changed).toFixed(1)} ms over ${rounds} (budget 50 ms)`,
  );
}
