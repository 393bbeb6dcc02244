import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NECESSARY, ORDER_RULES } from '../../src/operations/order-rules.ts';
import { planOperations } from '../../src/operations/plan-operations.ts';
import { setAsideWords } from '../../src/operations/set-aside.ts';
import type { Operation } from '../../src/results/operations.ts';
import {
  assembly,
  byId,
  commission,
  copy,
  joint,
  piece,
  pocket,
  recipe,
  rulesBetween,
  shop,
  size,
  step,
  tenon,
} from './making.ts';

const joints = [joint('corner', ['rail', 'leg'])];
const frame = piece(
  [
    copy('leg', size(423, 45, 45), [pocket('corner', 'mortise')]),
    copy('rail', size(340, 60, 32), [tenon('corner')]),
  ],
  joints,
  [assembly('frame', ['leg', 'rail'], joints)],
);
const oiled = commission(recipe('oil', ['leg', 'rail'], [step('coat', 'oil', { product: 'hardwax-oil' })]));
const plan = (overruled: Record<string, { reason: string }> = {}) =>
  planOperations(frame, oiled, shop(), overruled);

/** Is `first` before `next` by any chain of links? */
function isBefore(operations: Operation[], first: string, next: string): boolean {
  const seen = new Set<string>();
  const queue = [next];
  for (let id = queue.pop(); id !== undefined; id = queue.pop())
    for (const { operation } of byId(operations, id).after) {
      if (operation === first) return true;
      if (!seen.has(operation)) queue.push(operation);
      seen.add(operation);
    }
  return false;
}

describe('a rule set aside', () => {
  it('no longer holds its pair, and tells its risk and the reason', () => {
    const { operations, faults } = plan({ 'order.ORD-10': { reason: 'my jig sizes both' } });
    expect(faults).toEqual([]);
    const mortise = 'cut:leg:corner:mortise';
    expect(isBefore(plan().operations, mortise, 'cut:rail:corner:tenon')).toBe(true);
    expect(isBefore(operations, mortise, 'cut:rail:corner:tenon')).toBe(false);
    expect(setAsideWords([byId(operations, 'cut:rail:corner:tenon')])).toEqual([
      'Set aside: Mortise before tenon (ORD-10). Risk: the chisel fixes the width, the tenon is trimmed to it. Your reason: my jig sizes both',
    ]);
  });

  it('leaves what waited through it waiting for its own earlier work: no glue before the cuts without a dry run', () => {
    const { operations } = plan({ 'order.ORD-47': { reason: 'one joint' } });
    expect(rulesBetween(operations, 'dry:frame', 'glue:frame')).toEqual([]);
    expect(isBefore(operations, 'cut:leg:corner:mortise', 'glue:frame')).toBe(true);
    expect(isBefore(operations, 'cut:rail:corner:tenon', 'glue:frame')).toBe(true);
  });

  it('gives up the window and keeps the order of the coats; clamps come off after the glue all the same', () => {
    const twice = commission(
      recipe(
        'oil',
        ['leg', 'rail'],
        [step('coat', 'one', { product: 'hardwax-oil' }), step('coat', 'two', { product: 'hardwax-oil' })],
      ),
    );
    const judged = { 'order.ORD-59': { reason: 'the tin' }, 'order.ORD-51': { reason: 'wiped wet' } };
    const { operations } = planOperations(frame, twice, shop(), judged);
    const kept = planOperations(frame, twice, shop()).operations;
    expect(byId(kept, 'finish:oil:one').window).toBeDefined();
    expect(byId(operations, 'finish:oil:one').window).toBeUndefined();
    expect(rulesBetween(operations, 'finish:oil:one', 'finish:oil:two')).toEqual(['ORD-73']);
    expect(rulesBetween(operations, 'glue:frame', 'unclamp:frame')).toEqual(['ORD-76']);
  });

  it.each([
    ['order.ORD-99', 'no order rule is called ORD-99'],
    ['order.ORD-72', 'ORD-72 cannot be set aside'],
    ['order.ORD-15', 'ORD-15 holds nothing apart in this job'],
  ])('%s is refused or told: %s', (key, words) => {
    const { operations, faults } = plan({ [key]: { reason: 'because' } });
    expect(faults.map(f => f.place)).toEqual([`overruled.${key}`]);
    expect(faults[0]!.fault).toContain(words);
    expect(operations).toEqual(plan().operations);
  });

  it('passes over checks that are set aside in the same list', () => {
    expect(plan({ 'sag:shelf': { reason: 'seen' } })).toEqual(plan());
  });

  it('any set of rules leaves an order without a ring in which no part is glued before it is cut', () => {
    const free = ORDER_RULES.map(r => r.number).filter(n => !NECESSARY.has(n));
    fc.assert(
      fc.property(fc.subarray(free), numbers => {
        const { operations, faults } = plan(
          Object.fromEntries(numbers.map(n => [`order.${n}`, { reason: 'tried' }])),
        );
        expect(faults.filter(f => !f.fault.includes('holds nothing apart'))).toEqual([]);
        for (const o of operations) expect(isBefore(operations, o.id, o.id), o.id).toBe(false);
        for (const cut of ['cut:leg:corner:mortise', 'cut:rail:corner:tenon'])
          expect(isBefore(operations, cut, 'glue:frame')).toBe(true);
        expect(isBefore(operations, 'glue:frame', 'finish:oil:oil')).toBe(true);
      }),
      { seed: 7, numRuns: 150 },
    );
  });
});

describe('a ring', () => {
  const ring = piece(
    [
      copy('leg', size(423, 45, 45)),
      copy('rail', size(340, 60, 32), [], {
        measureFirst: { when: 'after the glue-up of frame', reserve: size(20, 0, 0) },
      }),
    ],
    joints,
    [assembly('frame', ['leg', 'rail'], joints)],
  );

  it('names the rule to relax with its risk and says where it is opened; relaxing it mends it', () => {
    const { faults } = planOperations(ring, commission(), shop());
    expect(faults[0]!.mend).toMatch(/^set aside ORD-\d+ by overruled: \{order\.ORD-\d+: .*\(risk: /);
    expect(faults[0]!.mend).toContain('For now "');
    const number = /ORD-\d+/.exec(faults[0]!.mend)![0];
    const mended = planOperations(ring, commission(), shop(), { [`order.${number}`]: { reason: 'so' } });
    expect(mended.faults.filter(f => f.mend.includes(number))).toEqual([]);
  });
});
