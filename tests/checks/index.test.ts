import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CHECK_RULES, CHECKS, firstShown, runChecks, tally, worstFirst } from '../../src/checks/index.ts';
import { type Check, SEVERITIES } from '../../src/results/checks.ts';
import { say } from '../../src/results/message.ts';
import type { JointLimit } from '../../src/results/piece.ts';
import { commission, input, joint, only, PORCH, part, pieceOf } from './fixtures.ts';

const check = (given: Partial<Check>): Check => ({
  check: 'a',
  subject: 's',
  severity: 'pass',
  title: 't',
  figure: null,
  limit: null,
  unit: 'length',
  source: '',
  basis: 'read',
  remedy: '',
  say: say(''),
  ...given,
});

const anyCheck = fc.record({
  check: fc.constantFrom('a', 'b', 'c'),
  subject: fc.constantFrom('x', 'y'),
  severity: fc.constantFrom(...SEVERITIES),
  figure: fc.option(fc.double({ min: -1e6, max: 1e6, noNaN: true })),
  limit: fc.option(fc.double({ min: -1e6, max: 1e6, noNaN: true })),
});

describe('order of checks', () => {
  it('goes from stop to pass, whatever order they came in', () => {
    fc.assert(
      fc.property(fc.array(anyCheck, { maxLength: 30 }), given => {
        const checks = given.map(check);
        const sorted = worstFirst(checks);
        const ranks = sorted.map(c => SEVERITIES.indexOf(c.severity));
        expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
        expect(sorted).toHaveLength(checks.length);
        expect(worstFirst([...checks].reverse()).map(c => c.severity)).toEqual(sorted.map(c => c.severity));
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  it('puts first, within one severity, what is furthest past its limit', () => {
    const near = check({ severity: 'stop', figure: 2.1, limit: 2 });
    const far = check({ severity: 'stop', figure: 6, limit: 2 });
    expect(worstFirst([near, far])).toEqual([far, near]);
  });

  it('shows five at most and nothing that has passed; unknown and pending never count as passed', () => {
    const many = SEVERITIES.flatMap(severity => [check({ severity }), check({ severity, subject: 'z' })]);
    const shown = firstShown(many);
    expect(shown).toHaveLength(5);
    expect(shown.map(c => c.severity)).toEqual(['stop', 'stop', 'attend', 'attend', 'unknown']);
    expect(firstShown([check({})])).toEqual([]);
    expect(tally(many)).toEqual({ stop: 2, attend: 2, unknown: 2, pending: 2, note: 2, pass: 2 });
  });
});

describe('all checks', () => {
  it('numbers every rule once, with its reason and source', () => {
    expect(CHECK_RULES.length).toBeGreaterThan(30);
    expect(new Set(CHECK_RULES.map(r => r.number)).size).toBe(CHECK_RULES.length);
    expect(CHECK_RULES.filter(r => !/^CHK-\d+$/.test(r.number) || !r.reason || !r.source.text)).toEqual([]);
    expect(new Set(CHECKS.map(c => c.name)).size).toBe(CHECKS.length);
  });

  it('judges a piece of nothing without a word', () => {
    expect(runChecks(input(pieceOf([])))).toEqual([]);
  });

  it('says every judgement with values for all its names, and a remedy wherever it does not pass', () => {
    const piece = pieceOf([part('seat', { size: [1380, 380, 27] })]);
    const checks = runChecks(input(piece, { commission: commission({ site: PORCH, title: 'Bench' }) }));
    expect(checks.length).toBeGreaterThan(3);
    for (const c of checks) {
      const names = [...c.say.template.matchAll(/\{(\w+)\}/g)].map(m => m[1]);
      expect(names.filter(n => !Object.hasOwn(c.say.values, n!))).toEqual([]);
      expect(c.remedy === '').toBe(c.severity === 'pass');
    }
  });

  it('gives the same list for the same job', () => {
    const job = input(pieceOf([part('seat', { size: [1380, 380, 27] })]));
    expect(runChecks(job)).toEqual(runChecks(job));
  });
});

describe('CHK-38: parts without a size', () => {
  it('are told as not known, and seen by no other check', () => {
    const held = part('side', {
      size: [0, 57, 10],
      measureFirst: { when: 'dry fit', reserve: { length: 0, width: 2, thickness: 0 } },
    });
    const found = only('size', input(pieceOf([held])));
    expect([found.severity, found.remedy]).toEqual(['unknown', 'Measure it then, and enter the figure.']);
    expect(runChecks(input(pieceOf([held])))).toHaveLength(1);
  });

  it('leave bought-in parts without a size alone', () => {
    const hinge = part('hinge', { size: [0, 0, 0], kind: 'bought-in', material: 'butt-hinge', loose: true });
    expect(runChecks(input(pieceOf([hinge])))).toEqual([]);
  });
});

describe('CHK-4: limits of joints', () => {
  const limit = (given: Partial<JointLimit>): JointLimit => ({
    rule: { number: 'MT-1', says: '', reason: '', source: { text: 'a third', basis: 'read' } },
    figure: 'tenon.thickness',
    value: 11,
    min: 9,
    max: 15,
    kind: 'length',
    severity: 'attend',
    remedy: 'Make the tenon 15 thick.',
    ...given,
  });
  const limited = (...limits: JointLimit[]) =>
    input(pieceOf([part('rail', { size: [340, 80, 32] })], [joint('lower', ['rail'], { limits })]));

  it('passes figures within their limits in one line', () => {
    const found = only('joint', limited(limit({}), limit({ figure: 'tenon.length' })));
    expect([found.severity, found.figure]).toEqual(['pass', 2]);
  });

  it('passes on a broken limit with its rule, its remedy and the edit that clears it', () => {
    const found = only('joint', limited(limit({ value: 20 }), limit({})));
    expect([found.severity, found.figure, found.limit, found.rule?.number]).toEqual([
      'attend',
      20,
      15,
      'MT-1',
    ]);
    expect(found.mend).toEqual({
      parameter: 'joints.lower.tenon.thickness',
      value: 15,
      label: 'Tenon thickness 15 mm',
      edit: { path: ['joints', 'lower', 'set', 'tenon.thickness'], value: '15 mm' },
    });
  });

  it('offers no edit of a figure that the joint does not let be set', () => {
    expect(only('joint', limited(limit({ value: 20, figure: 'hold' }))).mend).toBeUndefined();
  });

  it('gives the lower limit for a figure too small', () => {
    expect(only('joint', limited(limit({ value: 5 }))).limit).toBe(9);
  });
});
