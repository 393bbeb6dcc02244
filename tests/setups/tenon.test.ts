import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { box } from '../../src/geometry/box.ts';
import type { SetUp } from '../../src/results/setups.ts';
import { planSetUps } from '../../src/setups/plan-set-ups.ts';
import { operation, part, pieceOf, pocket, shop, tenon, without, workedRail } from './fixtures.ts';

const EFFORT = { seed: 1, iterations: 120 };
const figure = (setUp: SetUp | undefined, name: string): unknown =>
  setUp?.settings.find(s => s.name === name)?.value.value;

// Basis: hand-worked numbers of the design's own card (section 4.7): jig 18.2, stock 32.1 measured, slot 11.0,
// play 0.1, kerf 3.0, leg measured 45.0.
describe('tenon cheeks in the upright jig', () => {
  const plan = planSetUps(workedRail(), [], shop(), EFFORT);
  const cheeks = plan.setups.find(s => s.title.startsWith('Tenon cheeks'));

  it('SET-3: fence = jig 18.2 + (32.1 + 10.9) / 2 = 39.7', () => {
    expect(figure(cheeks, 'fence')).toBe(39.7);
    expect(cheeks?.settings[0]?.how).toBe('jig 18.2 + 21.5: half of 32.1 measured + 10.9');
    expect(cheeks?.settings[0]?.to).toBe('near teeth');
  });

  it('SET-7, SET-11: wanted is slot 11.0 less 0.1; the blade stands as high as the leg measures', () => {
    expect(cheeks?.wanted?.value.value).toBeCloseTo(10.9, 9);
    expect(cheeks?.wanted?.how).toBe('slot 11.0 less 0.1');
    expect(figure(cheeks, 'blade height')).toBe(45);
    expect(cheeks?.settings[1]?.how).toBe('Leg, 45.0 measured');
  });

  it('draws what the card shows: fence 0, jig 18.2, blade 39.7, kerf 42.7, work 50.3; waste 7.6 falls free', () => {
    expect(cheeks?.drawing.stations).toEqual([
      { at: 0, label: 'fence', strong: false },
      { at: 18.2, label: 'jig', strong: false },
      { at: 39.7, label: 'blade', strong: true },
      { at: 42.7, label: 'kerf', strong: false },
      { at: 50.3, label: 'work', strong: false },
    ]);
    expect(cheeks?.cautions).toContain('Waste 7.6 falls free on the left. Leave it until the blade stands.');
    expect(cheeks?.drawing.keep).toEqual({ from: 28.8, to: 39.7, label: 'tenon' });
  });

  it('SET-6: turned, so half the error', () => {
    expect(cheeks?.correction?.share).toBe('half');
    expect(cheeks?.runs[0]?.passes).toEqual(['face', 'turned']);
  });

  it('shoulders on the sled: 45.0 to the far teeth, blade 10.6 high', () => {
    const shoulders = plan.setups.find(s => s.title.startsWith('Tenon shoulders'));
    expect(figure(shoulders, 'stop')).toBe(45);
    expect(shoulders?.settings[0]?.to).toBe('far teeth');
    expect(figure(shoulders, 'blade height')).toBe(10.6);
    expect(shoulders?.drawing.blade.at).toBeCloseTo(45 - 2.8, 9);
  });

  it('cheeks come after shoulders and say so', () => {
    expect(cheeks?.before[0]).toMatch(/^Tenon shoulders are done \(set-up \d+\)$/);
  });

  it('follows what was measured: stock 31.8 brings the fence 0.15 closer', () => {
    const thin = planSetUps(workedRail(31.8), [], shop(), EFFORT);
    const fence = figure(
      thin.setups.find(s => s.title.startsWith('Tenon cheeks')),
      'fence',
    ) as number;
    expect(fence).toBeCloseTo(39.7 - 0.15, 9);
  });
});

describe('SET-4: from open mortise to tenon the fence moves kerf less half the clearance', () => {
  const bridle = (stock: number, slot: number, clearance: number) =>
    pieceOf([
      part(
        'post',
        [400, 60, stock],
        [
          pocket('open-mortise', 'bridle.1', box(340, 0, (stock - slot) / 2, 400, 60, (stock + slot) / 2), {
            face: 'end2',
            run: 'y',
            through: true,
            clearance,
            mate: { instance: 'rail', cut: 'bridle.1' },
          }),
        ],
      ),
      part(
        'rail',
        [400, 60, stock],
        [
          tenon('bridle.1', {
            length: 60,
            z: { low: (stock - slot) / 2, high: (stock - slot) / 2 },
            clearance,
            mate: { instance: 'post', cut: 'bridle.1' },
          }),
        ],
      ),
    ]);
  const fenceOf = (plan: ReturnType<typeof planSetUps>, title: string): number =>
    figure(
      plan.setups.find(s => s.title.startsWith(title)),
      'fence',
    ) as number;

  it('slot 15 in 45, play 0.1, kerf 3: 45.2 to 48.15', () => {
    const plan = planSetUps(bridle(45, 15, 0.1), [], shop(), EFFORT);
    expect(fenceOf(plan, 'Open mortises')).toBeCloseTo(18.2 + 30 - 3, 9);
    expect(fenceOf(plan, 'Tenon cheeks')).toBeCloseTo(18.2 + 30 - 0.05, 9);
  });

  it('holds for any stock, slot and play', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 200, max: 700 }),
        fc.double({ min: 0.2, max: 0.6, noNaN: true }),
        fc.double({ min: 0, max: 0.4, noNaN: true }),
        (tenths, share, clearance) => {
          const stock = tenths / 10;
          const slot = Math.max(4, Math.round(stock * share));
          const plan = planSetUps(bridle(stock, slot, clearance), [], shop(), EFFORT);
          const move = fenceOf(plan, 'Tenon cheeks') - fenceOf(plan, 'Open mortises');
          expect(move).toBeCloseTo(3 - clearance / 2, 2);
        },
      ),
      { numRuns: 60, seed: 7 },
    );
  });
});

describe('SET-5: off the middle, from one face', () => {
  const rail = part(
    'rail',
    [400, 60, 30],
    [tenon('t', { length: 40, z: { low: 14, high: 6 }, through: false })],
  );
  const plan = planSetUps(pieceOf([rail]), [], shop(), EFFORT);
  const [back, front] = ['Tenon cheeks, back', 'Tenon cheeks, face'].map(t =>
    plan.setups.find(s => s.title.startsWith(t)),
  );

  it('fence 18.2 + 6 + 10 = 34.2 and 18.2 + 6 - 3 = 21.2: moved tenon + kerf, corrected whole', () => {
    expect(figure(back, 'fence')).toBeCloseTo(34.2, 9);
    expect(figure(front, 'fence')).toBeCloseTo(21.2, 9);
    expect(back?.correction?.share).toBe('whole');
    expect(front?.settings[0]?.how).toContain('less kerf 3.0');
  });

  it('both cuts lay the face side to the jig, so thickness does not reach the tenon', () => {
    expect(back?.runs[0]?.lays?.map(l => l.against)).toEqual(['face']);
    expect(front?.runs[0]?.lays?.map(l => l.against)).toEqual(['face']);
  });
});

describe('tenon by other means', () => {
  it('on the router table without a saw: bit height (22 - 7.4) / 2 = 7.3, half the error', () => {
    const rail = part(
      'rail',
      [400, 60, 22],
      [tenon('t', { length: 30, through: false, z: { low: 7.3, high: 7.3 } })],
    );
    const plan = planSetUps(pieceOf([rail]), [], without(shop(), 'table saw'), EFFORT);
    expect(plan.setups[0]?.machine).toBe('router table');
    expect(figure(plan.setups[0], 'depth')).toBeCloseTo(7.3, 9);
    expect(figure(plan.setups[0], 'fence')).toBe(30);
    expect(plan.setups[0]?.settings[0]?.to).toBe('far edge');
    expect(plan.setups[0]?.correction?.share).toBe('half');
  });

  it('refuses a depth beyond the blade with the figures, and takes the next method', () => {
    const rail = part('rail', [500, 60, 32], [tenon('t', { length: 120, through: false })]);
    const plan = planSetUps(pieceOf([rail]), [], shop(), EFFORT);
    expect(plan.setups[0]?.refused).toContainEqual({
      method: 'table saw, upright jig',
      reason: '120.0 deep, the table saw reaches 90.0',
    });
    expect(plan.setups[0]?.machine).toBe('router table');
    expect(plan.unmade).toEqual([]);
  });

  it('refuses a piece too short to run, and offers the hand', () => {
    const rail = part('rail', [140, 60, 32], [tenon('t', { length: 20, through: false })]);
    const plan = planSetUps(pieceOf([rail]), [], shop(), EFFORT);
    expect(plan.setups[0]?.machine).toBe('hand tools');
    expect(plan.setups[0]?.refused?.[0]?.reason).toBe(
      'the piece is 140.0 long, shorter than the 200.0 the table saw may run',
    );
    expect(figure(plan.setups[0], 'gauge')).toBeCloseTo(10.5, 9);
    expect(figure(plan.setups[0], 'gauge 2')).toBeCloseTo(21.5, 9);
  });

  it('says what is unmade when nothing is there', () => {
    const rail = part('rail', [400, 60, 32], [tenon('t')]);
    const plan = planSetUps(pieceOf([rail]), [], shop({ machines: [] }), EFFORT);
    expect(plan.status).toBe('none');
    expect(plan.unmade).toHaveLength(1);
    expect(plan.unmade[0]?.reason).toContain('the workshop has no table saw');
    expect(plan.unmade[0]?.mend).not.toBe('');
  });
});

describe('haunch', () => {
  // Tenon 28 long, 60 wide in a rail of 92, haunch 10 long on the upper 32.
  const rail = part(
    'rail',
    [562, 92, 22],
    [
      tenon('t', {
        length: 28,
        through: false,
        z: { low: 7, high: 7 },
        y: { low: 0, high: 32 },
        haunch: { side: 'high', width: 32, length: 10 },
      }),
    ],
  );
  const plan = planSetUps(pieceOf([rail]), [], shop(), EFFORT);

  it('the edge is taken off 18 from the tip, so the haunch of 10 stays', () => {
    const cross = plan.setups.find(s => s.title.startsWith('Haunch ends'));
    const rip = plan.setups.find(s => s.title.startsWith('Tenon edges at the haunch'));
    expect(figure(cross, 'stop')).toBe(18);
    expect(figure(cross, 'blade height')).toBe(32);
    expect(figure(rip, 'fence')).toBeCloseTo(18.2 + 60, 9);
    expect(figure(rip, 'blade height')).toBe(18);
  });
});

it('all like tenons are one set-up (SET-23), and minutes come from the operations', () => {
  const rails = ['a', 'b', 'c'].map(id =>
    part(id, [400, 60, 32], [tenon('t.1'), tenon('t.2', { end: 'end2' })]),
  );
  const ops = rails.map(r =>
    operation(`cut:${r.id}`, [
      [r.id, 't.1'],
      [r.id, 't.2'],
    ]),
  );
  const plan = planSetUps(pieceOf(rails), ops, shop(), EFFORT);
  expect(plan.setups).toHaveLength(2);
  expect(plan.setups.map(s => s.runs.length)).toEqual([6, 6]);
  expect(plan.setups.reduce((sum, s) => sum + s.minutes, 0)).toBeCloseTo(30, 1);
});
