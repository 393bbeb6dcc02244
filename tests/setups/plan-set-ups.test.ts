import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { box } from '../../src/geometry/box.ts';
import { vec } from '../../src/geometry/vector.ts';
import { ON_PART } from '../../src/results/cuts.ts';
import type { Operation } from '../../src/results/operations.ts';
import type { SetUpPlan } from '../../src/results/setups.ts';
import { changeOver } from '../../src/setups/changeover.ts';
import { planSetUps } from '../../src/setups/plan-set-ups.ts';
import { SET_RULES } from '../../src/setups/rules.ts';
import { whySetUp } from '../../src/setups/why-set-ups.ts';
import { hole, operation, part, pieceOf, pocket, shop, workedRail } from './fixtures.ts';
import { randomJob } from './random-job.ts';

const EFFORT = { seed: 1, iterations: 120 };

/** Operations whose order the plan breaks: read from set-up numbers alone. */
function broken(plan: SetUpPlan, operations: readonly Operation[]): string[] {
  const first = new Map<string, number>();
  const last = new Map<string, number>();
  for (const setUp of plan.setups)
    for (const id of setUp.operations) {
      first.set(id, Math.min(first.get(id) ?? Number.POSITIVE_INFINITY, setUp.number));
      last.set(id, Math.max(last.get(id) ?? 0, setUp.number));
    }
  const byId = new Map(operations.map(o => [o.id, o]));
  /** Last set-up of everything that must come before. */
  const latest = (id: string, seen = new Set<string>()): number =>
    Math.max(
      0,
      ...(byId.get(id)?.after ?? []).map(a => {
        if (seen.has(a.operation)) return 0;
        seen.add(a.operation);
        return Math.max(last.get(a.operation) ?? 0, latest(a.operation, seen));
      }),
    );
  return operations.filter(o => (first.get(o.id) ?? Number.POSITIVE_INFINITY) < latest(o.id)).map(o => o.id);
}

describe('precedence and batches', () => {
  const leg = part(
    'leg',
    [420, 45, 45],
    [
      pocket('mortise', 'm', box(180, 15, 17, 240, 45, 28), { face: 'faceEdge' }),
      { kind: 'taper', id: 't', by: 't', stage: ON_PART, face: 'back', from: 110, to: 0, amount: 9 },
      hole('early', { at: vec(100, 22, 45) }),
      hole('late', { at: vec(300, 22, 45) }),
    ],
  );
  const ops = [
    operation('taper', [['leg', 't']], ['mortise']),
    operation('mortise', [['leg', 'm']]),
    operation('early', [['leg', 'early']]),
    operation('fit', [], ['early', 'mortise']),
    operation('late', [['leg', 'late']], ['fit']),
  ];

  it('keeps what operations ask, also through operations that cut nothing', () => {
    const plan = planSetUps(pieceOf([leg]), ops, shop(), EFFORT);
    expect(broken(plan, ops)).toEqual([]);
    const holes = plan.setups.filter(s => s.title.startsWith('Holes'));
    // One drill, fence and depth, but a dry fit lies between: two set-ups, the second without change-over.
    expect(holes).toHaveLength(2);
    expect(holes[1]?.changeOver).toBe(0);
    expect(holes[1]?.changeHow).toBe('nothing changes');
  });

  it('without the fit between they are one', () => {
    const plan = planSetUps(
      pieceOf([leg]),
      ops.filter(o => o.id !== 'fit' && o.id !== 'late'),
      shop(),
      EFFORT,
    );
    expect(plan.setups.filter(s => s.title.startsWith('Holes'))).toHaveLength(1);
  });

  it('a sabotaged order is caught', () => {
    const plan = planSetUps(pieceOf([leg]), ops, shop(), EFFORT);
    const turned = {
      ...plan,
      setups: plan.setups.map(s => ({ ...s, number: plan.setups.length + 1 - s.number })),
    };
    expect(broken(turned, ops).length).toBeGreaterThan(0);
  });

  it('a ring among the operations does not hang or lose a cut', () => {
    const ring = [operation('a', [['leg', 'm']], ['b']), operation('b', [['leg', 't']], ['a'])];
    const plan = planSetUps(pieceOf([leg]), ring, shop(), EFFORT);
    expect(plan.setups.flatMap(s => s.runs.map(r => r.cut))).toEqual(
      expect.arrayContaining(['m', 't', 'early', 'late']),
    );
  });
});

describe('change-over', () => {
  const machine = shop().machines[0]!;
  it('counts each thing that differs, from the workshop file', () => {
    const a = { tool: 'rip', jig: 'upright', fence: 39.7, height: 45, tilt: 0 };
    expect(changeOver(machine, undefined, a)).toEqual({
      minutes: 8,
      how: 'tool 4.0, jig 2.0, fence or stop 1.0, height 1.0',
    });
    expect(changeOver(machine, a, { ...a, fence: 39.72 }).minutes).toBe(0);
    expect(changeOver(machine, a, { ...a, fence: 36.75 })).toEqual({ minutes: 1, how: 'fence or stop 1.0' });
    expect(
      changeOver(machine, a, { tool: 'cross', jig: 'sled', fence: 45, height: 10, tilt: 45 }).minutes,
    ).toBe(10);
  });

  it('the plan adds up, is no worse than part by part, and its bound lies below', () => {
    const plan = planSetUps(workedRail(), [], shop(), EFFORT);
    expect(plan.setups.reduce((sum, s) => sum + s.changeOver, 0)).toBe(plan.value);
    expect(plan.bound).toBeLessThanOrEqual(plan.value);
    expect(plan.partByPart).toBeGreaterThanOrEqual(plan.value);
  });
});

describe('why', () => {
  const piece = workedRail();
  const plan = planSetUps(piece, [], shop(), EFFORT);
  const cheeks = plan.setups.find(s => s.title.startsWith('Tenon cheeks'))!;

  it('a fence answers with its arithmetic, its rule, its wish, kerf and measured part', () => {
    const why = whySetUp(`setups.${cheeks.id}.fence`, plan, piece);
    expect(why?.formula).toBe('jig 18.2 + 21.5: half of 32.1 measured + 10.9');
    expect(why?.rule?.number).toBe('SET-3');
    expect(why?.value?.value).toBe(39.7);
    expect(why?.inputs.map(i => [i.label, i.value?.value])).toEqual([
      ['Tenon wanted', 10.9],
      ['rip blade, kerf 3.0, upright jig (18.2)', 3],
      ['Rail, thickness', 32.1],
    ]);
    expect(why?.inputs.at(-1)?.how).toBe('measured');
  });

  it('every setting names a rule and can be asked; wrong paths answer nothing', () => {
    const numbers = new Set<string>(Object.values(SET_RULES).map(r => r.number));
    for (const setUp of plan.setups)
      for (const setting of setUp.settings) {
        expect(numbers.has(setting.rule ?? '')).toBe(true);
        expect(setting.how).not.toBe('');
        expect(whySetUp(`setups.${setUp.id}.${setting.name.replace(/ /g, '-')}`, plan, piece)?.formula).toBe(
          setting.how,
        );
      }
    expect(whySetUp('setups.value', plan, piece)?.value?.value).toBe(plan.value);
    expect(whySetUp('setups.bound', plan, piece)?.value?.value).toBe(plan.bound);
    expect(whySetUp(`setups.${cheeks.id}.correction`, plan, piece)?.rule?.number).toBe('SET-6');
    expect(whySetUp(`setups.${cheeks.id}.changeOver`, plan, piece)?.formula).toBe(cheeks.changeHow);
    expect(whySetUp(`setups.${cheeks.id}`, plan, piece)?.inputs).toHaveLength(cheeks.settings.length);
    expect(whySetUp('setups.nothing.fence', plan, piece)).toBeUndefined();
    expect(whySetUp(`setups.${cheeks.id}.nonsense`, plan, piece)).toBeUndefined();
  });

  it('rule numbers are single', () => {
    const numbers = Object.values(SET_RULES).map(r => r.number);
    expect(new Set(numbers).size).toBe(numbers.length);
  });
});

it('random jobs: every cut is in a set-up or unmade, order holds, the sum holds, twice the same', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1e6 }), seed => {
      const { piece, operations } = randomJob(seed);
      const plan = planSetUps(piece, operations, shop(), EFFORT);
      const made = new Set(plan.setups.flatMap(s => s.runs.map(r => `${r.instance}/${r.cut}`)));
      const unmade = new Set(plan.unmade.map(u => `${u.instance}/${u.cut}`));
      for (const instance of piece.instances)
        for (const cut of instance.cuts) {
          const key = `${instance.id}/${cut.id}`;
          expect(made.has(key) !== unmade.has(key)).toBe(true);
        }
      expect(broken(plan, operations)).toEqual([]);
      expect(plan.setups.map(s => s.number)).toEqual(plan.setups.map((_, i) => i + 1));
      expect(new Set(plan.setups.map(s => s.id)).size).toBe(plan.setups.length);
      expect(plan.setups.reduce((sum, s) => sum + s.changeOver, 0)).toBeCloseTo(plan.value, 6);
      expect(plan.bound).toBeLessThanOrEqual(plan.value + 1e-6);
      for (const setUp of plan.setups) {
        expect(setUp.cautions.length).toBeGreaterThan(0);
        expect(setUp.drawing.stations.length).toBeGreaterThan(1);
        for (const s of setUp.settings)
          if (typeof s.value.value === 'number') expect(Number.isFinite(s.value.value)).toBe(true);
      }
      expect(planSetUps(piece, operations, shop(), EFFORT)).toEqual(plan);
    }),
    { numRuns: 60, seed: 5 },
  );
});

it('the kept part and the fence add up: fence less jig is the far side of what is kept', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1e6 }), seed => {
      const { piece } = randomJob(seed);
      for (const setUp of planSetUps(piece, [], shop(), EFFORT).setups) {
        const { drawing, settings } = setUp;
        const fence = settings.find(s => s.name === 'fence' && s.to === 'near teeth')?.value.value;
        if (typeof fence !== 'number') continue;
        expect(drawing.blade.at).toBeCloseTo(fence, 2);
        const total = drawing.work.offset + drawing.work.width;
        expect(drawing.blade.at + drawing.blade.kerf).toBeLessThanOrEqual(total + 3.01);
      }
    }),
    { numRuns: 40, seed: 9 },
  );
});
