import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { box } from '../../src/geometry/box.ts';
import { vec } from '../../src/geometry/vector.ts';
import { cutByCards } from '../../src/proof/simulator.ts';
import { checkCards } from '../../src/proof/simulator-check.ts';
import { whatIsLeft } from '../../src/proof/simulator-grid.ts';
import { mm } from '../../src/results/quantity.ts';
import type { SetUp } from '../../src/results/setups.ts';
import { planSetUps } from '../../src/setups/plan-set-ups.ts';
import { hole, part, pieceOf, pocket, shop, tenon, workedRail } from '../setups/fixtures.ts';
import { randomJob } from '../setups/random-job.ts';

const EFFORT = { seed: 1, iterations: 60 };
const FENCES = ['fence', 'stop', 'from', 'height', 'gauge'];

/** The same plan with one figure of one card moved. */
const moved = (setUps: readonly SetUp[], id: string, by: number): SetUp[] =>
  setUps.map(s => {
    const at = s.settings.findIndex(x => x.to !== undefined && FENCES.includes(x.name));
    return s.id !== id || at < 0
      ? s
      : {
          ...s,
          settings: s.settings.map((x, i) =>
            i === at ? { ...x, value: mm((x.value.value as number) + by) } : x,
          ),
        };
  });

describe('the arithmetic proves itself', () => {
  const piece = workedRail(32);
  const { setups } = planSetUps(piece, [], shop(), EFFORT);

  it('the worked rail and leg come out as designed, every card repeated', () => {
    const report = checkCards(piece, setups);
    expect(report.wrong).toEqual([]);
    expect(report.notSimulated).toEqual([]);
    expect(report.agreeing).toBe(setups.length);
  });

  it.each(setups.map(s => [s.title, s] as const))('one kerf of fence spoils it: %s', (_, setUp) => {
    const kerf = setUp.removal!.width;
    for (const by of [kerf, -kerf]) {
      const report = checkCards(piece, moved(setups, setUp.id, by));
      expect(report.wrong.some(w => w.setUp === setUp.id)).toBe(true);
      expect(report.agreeing).toBeLessThan(setups.length);
    }
  });

  it('a blade too low leaves wood, a card left out leaves its cut', () => {
    const cheeks = setups.find(s => s.title.startsWith('Tenon cheeks'))!;
    const low = setups.map(s =>
      s === cheeks
        ? { ...s, settings: s.settings.map(x => (x.name === 'blade height' ? { ...x, value: mm(40) } : x)) }
        : s,
    );
    expect(checkCards(piece, low).wrong.length).toBeGreaterThan(0);
    const without = checkCards(
      piece,
      setups.filter(s => s !== cheeks),
    );
    expect(without.wrong.some(w => w.what.startsWith('wood left standing'))).toBe(true);
  });

  it('waste falls only when shoulder and cheek are both cut', () => {
    const shoulders = setups.filter(s => s.title.startsWith('Tenon shoulders'));
    const cheeks = setups.filter(s => s.title.startsWith('Tenon cheeks'));
    const size = { length: 340, width: 80, thickness: 32 };
    const none = { x: [], y: [], z: [] };
    const fallen = (list: SetUp[]): number =>
      whatIsLeft(size, cutByCards('rail', size, list).ways, none, 0).fallen.reduce((sum, f) => sum + f, 0);
    expect(fallen(shoulders)).toBe(0);
    expect(fallen(cheeks)).toBe(0);
    expect(fallen([...shoulders, ...cheeks])).toBeGreaterThan(0);
  });
});

describe('holes', () => {
  const rail = part(
    'rail',
    [500, 60, 20],
    [
      hole('h', {
        role: 'clearance',
        diameter: 5,
        depth: 20,
        through: true,
        countersink: { diameter: 10, angle: 90 },
      }),
    ],
  );
  const { setups } = planSetUps(pieceOf([rail]), [], shop(), EFFORT);

  it('agree, and do not when the fence, the station, the drill or the depth is another', () => {
    const piece = pieceOf([rail]);
    expect(checkCards(piece, setups)).toMatchObject({ setUps: 2, simulated: 2, agreeing: 2, wrong: [] });
    expect(checkCards(piece, moved(setups, setups[0]!.id, 3)).agreeing).toBe(1);
    const edit = (change: (s: SetUp) => SetUp) =>
      checkCards(
        piece,
        setups.map((s, i) => (i === 0 ? change(s) : s)),
      ).agreeing;
    expect(edit(s => ({ ...s, runs: s.runs.map(r => ({ ...r, stations: [103] })) }))).toBe(1);
    expect(edit(s => ({ ...s, removal: { ...s.removal!, width: 6 } }))).toBe(1);
    expect(
      edit(s => ({
        ...s,
        settings: s.settings.map(x => (x.name === 'depth' ? { ...x, value: mm(12) } : x)),
      })),
    ).toBe(1);
  });

  it('a leaning hole whose card gives no direction is counted as not simulated, with the reason', () => {
    const a = (10 * Math.PI) / 180;
    const leaning = pieceOf([
      part('rail', [500, 60, 20], [hole('h', { direction: vec(Math.sin(a), 0, -Math.cos(a)) })]),
    ]);
    const blind = planSetUps(leaning, [], shop(), EFFORT).setups.map(s => ({
      ...s,
      runs: s.runs.map(r => ({ ...r, lays: r.lays!.map(({ lean: _, ...lay }) => lay) })),
    }));
    const report = checkCards(leaning, blind);
    expect(report.simulated).toBe(0);
    expect(report.notSimulated[0]?.reason).toContain('leaning');
  });
});

it('measured parts keep their cards true: stock 32.1, leg 45.2', () => {
  const piece = workedRail(32.1);
  const report = checkCards(piece, planSetUps(piece, [], shop(), EFFORT).setups);
  expect(report.wrong).toEqual([]);
});

it('a haunch stays', () => {
  const piece = pieceOf([
    part(
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
    ),
  ]);
  const { setups } = planSetUps(piece, [], shop(), EFFORT);
  expect(checkCards(piece, setups)).toMatchObject({ wrong: [], notSimulated: [] });
  const haunch = setups.find(s => s.title.startsWith('Haunch ends'))!;
  expect(checkCards(piece, moved(setups, haunch.id, 2.8)).wrong.length).toBeGreaterThan(0);
});

it('a rebate in two cuts comes out whole, its strip fallen', () => {
  const piece = pieceOf([
    part('stile', [600, 50, 22], [pocket('rebate', 'r', box(0, 40, 0, 600, 50, 12), { face: 'back' })]),
  ]);
  const { setups } = planSetUps(piece, [], shop(), EFFORT);
  expect(setups).toHaveLength(2);
  expect(checkCards(piece, setups)).toMatchObject({ agreeing: 2, wrong: [] });
  for (const setUp of setups)
    for (const by of [3, -3])
      expect(checkCards(piece, moved(setups, setUp.id, by)).wrong.length).toBeGreaterThan(0);
});

it('random jobs: what can be repeated agrees, and one kerf of any fence is found out', () => {
  let simulated = 0;
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1e6 }), seed => {
      const { piece, operations } = randomJob(seed);
      const { setups } = planSetUps(piece, operations, shop(), EFFORT);
      const report = checkCards(piece, setups);
      expect(report.wrong).toEqual([]);
      simulated += report.agreeing;
      const unsure = new Set(report.notSimulated.map(n => n.setUp));
      const slots = setups.filter(s => s.removal?.shape === 'slot' && !unsure.has(s.id));
      const pick = slots[seed % Math.max(1, slots.length)];
      if (!pick) return;
      const spoilt = checkCards(piece, moved(setups, pick.id, pick.removal!.width));
      expect(spoilt.wrong.some(w => w.setUp === pick.id)).toBe(true);
    }),
    { numRuns: 40, seed: 17 },
  );
  expect(simulated).toBeGreaterThan(400);
});
