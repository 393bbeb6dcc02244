import { describe, expect, it } from 'vitest';
import type { FinishRecipe, FinishStep } from '../../src/results/commission.ts';
import { checksOf, commission, input, only, part, pieceOf, workshop } from './fixtures.ts';

const step = (product: string, given: Partial<FinishStep> = {}): FinishStep => ({
  kind: 'coat',
  name: product,
  product,
  ...given,
});
const parts = [
  part('seat', { size: [1380, 380, 27] }),
  part('bar', { size: [1221, 16, 16], kind: 'bar', material: 'stainless-304', round: true }),
];
const finished = (steps: FinishStep[], given: Partial<FinishRecipe> = {}, shop = workshop()) =>
  input(pieceOf(parts), {
    commission: commission({
      finishes: [
        { id: 'oil', name: 'clear oil', steps, instances: ['seat'], when: 'after glue-up', ...given },
      ],
    }),
    workshop: shop,
  });

describe('CHK-17: one finish over another', () => {
  it.each([
    [['hardwax-oil', 'hardwax-oil'], 'pass'],
    [['danish-oil', 'paste-wax'], 'pass'],
    [['paste-wax', 'shellac'], 'stop'],
    [['india-ink', 'hardwax-oil'], 'pass'],
    [['nobody-knows-this'], 'unknown'],
  ])('%s: %s', (products, severity) => {
    expect(only('finish', finished(products.map(p => step(p)))).severity).toBe(severity);
  });

  it('lets an agreed sample answer where the tables are silent', () => {
    const agreed = finished([step('nobody-knows-this')], { sample: { asked: true, agreed: '2026-11-20' } });
    expect(only('finish', agreed).severity).toBe('note');
  });
});

describe('CHK-18 to CHK-20: waits, warmth, material', () => {
  it('attends a wait shorter than the table gives', () => {
    const steps = (waitMinutes: number) => [step('hardwax-oil', { waitMinutes }), step('hardwax-oil')];
    const check = only('recoat', finished(steps(120)));
    expect([check.severity, check.figure, check.limit]).toEqual(['attend', 120, 480]);
    expect(checksOf('recoat', finished(steps(720)))).toEqual([]);
  });

  it("lets the workshop's own tin win", () => {
    const shop = workshop({ finishes: { 'hardwax-oil': { name: 'Ours', recoatMinutes: 60 } } });
    const steps = [step('hardwax-oil', { waitMinutes: 120 }), step('hardwax-oil')];
    expect(checksOf('recoat', finished(steps, {}, shop))).toEqual([]);
  });

  it.each([
    [18, 'pass'],
    [10, 'attend'],
  ])('hardwax oil in a shop at %i: %s', (temperature, severity) => {
    const shop = workshop({ climate: { temperature, humidity: 55 } });
    expect(only('finish temperature', finished([step('hardwax-oil')], {}, shop)).severity).toBe(severity);
  });

  it('attends a timber finish on a bar', () => {
    const both = finished([step('hardwax-oil')], { instances: ['seat', 'bar'] });
    expect(only('finish', both, 'CHK-20').severity).toBe('attend');
    expect(checksOf('finish', finished([step('hardwax-oil')]), 'CHK-20')).toEqual([]);
  });
});
