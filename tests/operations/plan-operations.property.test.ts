import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDays } from '../../src/days/check-days.ts';
import { FIRST_EFFORT, planDays } from '../../src/days/plan-days.ts';
import { planOperations } from '../../src/operations/plan-operations.ts';
import type { FinishStep } from '../../src/results/commission.ts';
import type { Cut } from '../../src/results/cuts.ts';
import { setUps } from '../days/making.ts';
import {
  assembly,
  commission,
  copy,
  edge,
  hole,
  joint,
  mitre,
  onAssembly,
  piece,
  pocket,
  recipe,
  shop,
  size,
  step,
  taper,
  tenon,
} from './making.ts';

const makers: ((by: string) => Cut)[] = [
  tenon,
  by => pocket(by, 'mortise'),
  by => pocket(by, 'open-mortise'),
  by => pocket(by, 'groove', 'x', 200),
  by => pocket(by, 'housing', 'y', 30),
  hole,
  mitre,
  taper,
  by => edge(by, 'chamfer'),
  by => edge(by, 'round-over'),
  by => onAssembly(hole(by), 'a0'),
];

const kinds = ['timber', 'timber', 'timber', 'sheet', 'bar', 'bought-in'] as const;
const steps: FinishStep[] = [
  step('prepare', 'sand', { grit: 150 }),
  step('stain', 'stain', { product: 'water-stain' }),
  step('coat', 'coat', { product: 'hardwax-oil' }),
  step('coat', 'coat', { product: 'hardwax-oil' }),
];

const pieces = fc
  .record({
    parts: fc.array(
      fc.record({
        kind: fc.constantFrom(...kinds),
        copies: fc.integer({ min: 1, max: 3 }),
        cuts: fc.array(fc.nat({ max: makers.length - 1 }), { maxLength: 4 }),
        held: fc.integer({ min: 0, max: 9 }),
        home: fc.integer({ min: -1, max: 2 }),
      }),
      { minLength: 1, maxLength: 8 },
    ),
    pairs: fc.array(fc.tuple(fc.nat(), fc.nat(), fc.boolean()), { maxLength: 8 }),
    finishFrom: fc.nat(),
    before: fc.boolean(),
  })
  .map(({ parts, pairs, finishFrom, before }) => {
    const instances = parts.flatMap((p, k) =>
      Array.from({ length: p.copies }, (_, c) =>
        copy(
          `p${k}.${c}`,
          size(300 + 40 * k, 40 + 10 * k, 20),
          p.cuts.map((m, j) => makers[m]!(`f${k}_${j}`)),
          {
            kind: p.kind,
            material: p.kind === 'sheet' ? 'birch-plywood' : p.kind === 'bar' ? 'brass' : 'ash-european',
            ...(p.held === 0 ? { measureFirst: { when: 'dry fit', reserve: size(10, 5, 0) } } : {}),
          },
        ),
      ),
    );
    const joints = pairs.flatMap(([a, b, dry], k) => {
      const [one, other] = [instances[a % instances.length]!, instances[b % instances.length]!];
      return one === other ? [] : [joint(`j${k}`, [one.id, other.id], { dry })];
    });
    const homes = [0, 1, 2].map(h =>
      instances.filter(i => parts[Number(i.part.slice(1))]!.home === h).map(i => i.id),
    );
    const assemblies = homes.flatMap((own, h) =>
      own.length === 0
        ? []
        : [
            assembly(
              `a${h}`,
              own,
              joints.filter(j => j.instances.every(id => own.includes(id))),
              { order: h + 1 },
            ),
          ],
    );
    const finished = instances.slice(finishFrom % instances.length).map(i => i.id);
    return {
      piece: piece(instances, joints, assemblies),
      commission: commission(
        recipe('oil', finished, steps, { when: before ? 'before glue-up' : 'after glue-up' }),
      ),
    };
  });

describe('random pieces', () => {
  it('give operations without rings, the same each time, that can be laid into days', () => {
    fc.assert(
      fc.property(pieces, drawn => {
        const { operations } = planOperations(drawn.piece, drawn.commission, shop());
        expect(planOperations(drawn.piece, drawn.commission, shop()).operations).toEqual(operations);
        const done = new Set<string>();
        for (let before = -1; done.size > before; ) {
          before = done.size;
          for (const o of operations) if (o.after.every(a => done.has(a.operation))) done.add(o.id);
        }
        expect(done.size).toBe(operations.length);
        const cuts = operations.flatMap(o => o.cuts.map(c => `${c.instance}/${c.cut}`));
        const asked = drawn.piece.instances
          .filter(i => i.kind !== 'bought-in')
          .flatMap(i => i.cuts.map(c => `${i.id}/${c.id}`));
        expect([...cuts].sort()).toEqual(asked.sort());
        const start = '2026-11-23T08:00';
        const days = planDays(operations, setUps(), shop(), { start }, FIRST_EFFORT);
        expect(checkDays(operations, setUps(), shop(), { start }, days)).toEqual([]);
      }),
      { numRuns: 80, seed: 20261125 },
    );
  });
});
