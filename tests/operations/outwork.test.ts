import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { deriveJob } from '../../src/job/derive.ts';
import { checkJobDocument, readWorkshopFile } from '../../src/job-file/read.ts';
import { COATER, table, WELDER } from './steel-table.ts';

const workshop = readWorkshopFile(readFileSync('examples/workshop.yaml', 'utf8')).workshop!;

const made = (job: object) => {
  const { document, faults } = checkJobDocument(job);
  const { derived } = deriveJob(document!, workshop, { today: '2026-11-25' });
  return { derived, faults: [...faults, ...derived.faults] };
};
test('a welded frame is welded, not glued: no glue is asked for, no clamp stands, its welds are dressed', () => {
  const { derived, faults } = made(table());
  expect(faults).toEqual([]);
  const titles = derived.operations.filter(o => o.assembly === 'frame').map(o => o.title);
  expect(titles.sort()).toEqual(['Dress the welds of Frame', 'Fit Frame dry', 'Tack and weld Frame']);
  expect(derived.checks.some(c => c.title === 'Which glue')).toBe(false);
  expect(derived.setups.setups.some(s => s.machine === 'Clamps')).toBe(false);
  // Four mitres of 2 (42.43 + 30) and four ends of 120 round.
  const run = derived.piece.joints.reduce((sum, j) => sum + (j.weld?.length ?? 0), 0);
  expect(run).toBeCloseTo(8 * (Math.hypot(30, 30) + 30) + 480, 6);
});

test('timber in what is welded is told: it has to stay out', () => {
  const job = table();
  const top = {
    kind: 'sheet',
    material: 'birch-plywood',
    length: 900,
    width: 500,
    thickness: 18,
    along: 'right',
    facing: 'up',
    at: { left: 0, front: 0, bottom: 720 },
  };
  const said = (parts: object, frame: string[]): boolean =>
    made({ ...job, parts, assemblies: { frame: { name: 'Frame', parts: frame } } }).derived.operations.some(
      o => o.cautions.some(c => c.startsWith('Timber and sheet stay out')),
    );
  expect(said({ ...job.parts, top }, [...job.assemblies.frame.parts, 'top'])).toBe(true);
  expect(said({ ...job.parts, top }, job.assemblies.frame.parts)).toBe(false);
});

test('given out it is away so many days, then dressed, then coated elsewhere, and both are paid for', () => {
  const { derived, faults } = made(table({ frame: { outwork: WELDER }, coat: { outwork: COATER } }));
  expect(faults).toEqual([]);
  const entry = (operation: string) =>
    derived.days.days.flatMap(d => d.entries).find(e => e.operation === operation)!;
  const day = (time: string): number => Date.parse(`${time}:00Z`) / 86_400_000;
  expect(day(entry('dress:frame').start) - day(entry('glue:frame').end)).toBeGreaterThanOrEqual(4);
  expect(entry('finish:coat:away').start >= entry('dress:frame').end).toBe(true);
  const last = derived.days.days.flatMap(d => d.entries).at(-1)!;
  expect(day(last.start) - day(entry('finish:coat:away').end)).toBeGreaterThanOrEqual(6);
  const line = (id: string) => derived.price.lines.find(l => l.id === id)?.amount;
  expect([line('outwork.assemblies.frame'), line('outwork.finishes.coat')]).toEqual([14000, 8550]);
  const before = made(table()).derived.operations.filter(o => o.wait?.what === 'outwork');
  expect(before).toEqual([]);
});

test.each([
  [table({ coat: { outwork: COATER, steps: { one: { kind: 'coat' } } } }), 'finishes.coat.steps'],
  [table({ coat: {} }), 'finishes.coat.steps'],
  [table({ frame: { outwork: { ...WELDER, price: 'much' } } }), 'assemblies.frame.outwork.price'],
  [{ ...table({ frame: { outwork: WELDER } }), joints: {} }, 'assemblies.frame.outwork'],
])('outwork that cannot be is told at its place, and the rest is worked out', (job, place) => {
  const { derived, faults } = made(job);
  expect(faults.map(f => f.place)).toContain(place);
  expect(derived.piece.groups.length).toBe(3);
});
