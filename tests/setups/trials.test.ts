import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { box } from '../../src/geometry/box.ts';
import { mm } from '../../src/results/quantity.ts';
import type { SetUp } from '../../src/results/setups.ts';
import { planSetUps } from '../../src/setups/plan-set-ups.ts';
import {
  correctedSetting,
  correctionOf,
  readsNow,
  trialFaults,
  withTrials,
} from '../../src/setups/trials.ts';
import { part, pieceOf, pocket, shop, tenon, without, workedRail } from './fixtures.ts';

const EFFORT = { seed: 1, iterations: 60 };
const cheeks = (): SetUp =>
  planSetUps(workedRail(32), [], shop(), EFFORT).setups.find(s => s.title.startsWith('Tenon cheeks'))!;

describe('a measured trial gives the correction with its direction (SET-6)', () => {
  it('turned cheeks: half the error, too thick comes closer, too thin goes away', () => {
    const card = cheeks();
    expect(correctedSetting(card)?.name).toBe('fence');
    expect(card.wanted?.value.value).toBeCloseTo(10.9, 6);
    const thick = correctionOf(card, 39.65, 11.1)!;
    expect(thick.move).toBeCloseTo(-0.1, 6);
    expect(thick.words).toBe('11.1 measured, 0.2 over: fence closer by 0.1, to 39.55');
    expect(correctionOf(card, 39.65, 10.7)?.words).toBe(
      '10.7 measured, 0.2 under: fence away by 0.1, to 39.75',
    );
    expect(correctionOf(card, 39.65, 10.92)).toMatchObject({ fits: true, move: 0, now: 39.65 });
  });

  it('a slot in two passes: the whole error at the last pass', () => {
    const side = part(
      'side',
      [600, 200, 18],
      [pocket('housing', 'h', box(200, 0, 10, 218, 200, 18), { run: 'y' })],
    );
    const [card] = planSetUps(pieceOf([side]), [], shop(), EFFORT).setups;
    expect(correctedSetting(card!)?.name).toBe('last pass');
    const set = correctedSetting(card!)!.value.value as number;
    expect(correctionOf(card!, set, 18.3)?.move).toBeCloseTo(-0.3, 6);
  });

  it('a tenon over the router table: too thick raises the cutter', () => {
    const rail = pieceOf([part('rail', [400, 60, 20], [tenon('t', { length: 25, z: { low: 5, high: 5 } })])]);
    const card = planSetUps(rail, [], without(shop(), 'table saw'), EFFORT).setups.find(s => s.wanted)!;
    expect(correctedSetting(card)?.name).toBe('depth');
    const set = correctedSetting(card)!.value.value as number;
    const answer = correctionOf(card, set, 10.4)!;
    expect(answer.move).toBeGreaterThan(0);
    expect(answer.words).toContain('depth up by 0.2');
  });

  it('the corrected cut comes out as wanted, whatever the machine’s own error', () => {
    const card = cheeks();
    const wanted = card.wanted!.value.value as number;
    fc.assert(
      fc.property(fc.double({ min: -0.8, max: 0.8, noNaN: true }), error => {
        // Turned cheeks: tenon = 2 (fence - jig) - stock, the scale off by `error`.
        const cut = (fence: number): number => 2 * (fence + error - 18.2) - 32;
        const first = correctionOf(card, 18.2 + (32 + wanted) / 2, cut(18.2 + (32 + wanted) / 2))!;
        expect(Math.abs(cut(first.now) - wanted)).toBeLessThan(0.06);
      }),
      { seed: 4, numRuns: 100 },
    );
  });
});

describe('trials are kept with the job', () => {
  it('several, each from where the last one left the setting; units as written', () => {
    const card = cheeks();
    const [with2] = withTrials(
      [card],
      { [card.id]: { '2': { set: '39.55 mm', measured: '10.9 mm' }, '1': { set: 39.65, measured: 11.1 } } },
      'mm',
    );
    expect(with2?.trials?.map(t => [t.id, t.now, t.fits, t.older])).toEqual([
      ['1', 39.55, false, false],
      ['2', 39.55, true, false],
    ]);
    expect(readsNow(with2!)).toBe(39.55);
    // The card's own figures stay as worked out: what is corrected is this machine's error.
    expect(with2?.settings).toEqual(card.settings);
  });

  it('one made for another figure is kept and not counted', () => {
    const card = cheeks();
    const moved = { ...card, settings: card.settings.map((s, i) => (i === 0 ? { ...s, value: mm(50) } : s)) };
    const [now] = withTrials([moved], { [card.id]: { '1': { set: 39.65, measured: 11.1 } } }, 'mm');
    expect(now?.trials?.[0]?.older).toBe(true);
    expect(readsNow(now!)).toBe(50);
  });

  it('what is no length is told at its place, and the rest counts', () => {
    const card = cheeks();
    const entries = {
      [card.id]: { '1': { set: 39.65, measured: 'about eleven' }, '2': { set: 39.65, measured: 11 } },
    };
    expect(trialFaults(entries, 'mm').map(f => f.place)).toEqual([`trials.${card.id}.1.measured`]);
    expect(withTrials([card], entries, 'mm')[0]?.trials).toHaveLength(1);
    expect(withTrials([card], undefined, 'mm')).toEqual([card]);
  });
});
