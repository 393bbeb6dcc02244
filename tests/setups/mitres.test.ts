import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { box } from '../../src/geometry/box.ts';
import { ON_PART } from '../../src/results/cuts.ts';
import type { Instance } from '../../src/results/piece.ts';
import { chooseNesting, nestedMitres, withWastePiece, worksAlong } from '../../src/setups/nested-mitres.ts';
import { planSetUps } from '../../src/setups/plan-set-ups.ts';
import { depthSteps } from '../../src/setups/speeds.ts';
import { part, pieceOf, pocket, shop } from './fixtures.ts';

const EFFORT = { seed: 1, iterations: 60 };
const RAD = Math.PI / 180;

const ring = fc.record({
  lengths: fc.array(fc.double({ min: 200, max: 900, noNaN: true }), { minLength: 2, maxLength: 8 }),
  across: fc.double({ min: 15, max: 120, noNaN: true }),
  angle: fc.double({ min: 5, max: 45, noNaN: true }),
  kerf: fc.double({ min: 0.8, max: 4, noNaN: true }),
});

describe('mitres nested head to tail against a waste piece between', () => {
  it('area is kept: parts, kerfs and the two half wedges are the whole board', () => {
    fc.assert(
      fc.property(ring, r => {
        const wedge = r.across * Math.tan(r.angle * RAD);
        const parts = r.lengths.reduce((sum, l) => sum + (l - wedge) * r.across, 0);
        const kerfs = ((r.lengths.length + 1) * r.kerf * r.across) / Math.cos(r.angle * RAD);
        const nested = nestedMitres(r, false);
        expect(nested.timber * r.across).toBeCloseTo(parts + kerfs + wedge * r.across, 4);
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  it('saves a wedge and a kerf for each part but one', () => {
    fc.assert(
      fc.property(ring, r => {
        const saved = withWastePiece(r).timber - nestedMitres(r, false).timber;
        const each = r.across * Math.tan(r.angle * RAD) + r.kerf / Math.cos(r.angle * RAD);
        expect(saved).toBeCloseTo((r.lengths.length - 1) * each, 6);
      }),
      { seed: 5, numRuns: 200 },
    );
  });

  it('four sides of 60 at 45 with a kerf of 3: worked by hand', () => {
    const r = { lengths: [500, 500, 300, 300], across: 60, angle: 45, kerf: 3 };
    expect(withWastePiece(r)).toEqual({ timber: 1600 + 8 * 3 * Math.SQRT2, cuts: 8, changes: 1 });
    expect(nestedMitres(r, false).timber).toBeCloseTo(1600 - 4 * 60 + 60 + 5 * 3 * Math.SQRT2, 6);
    expect(nestedMitres(r, false)).toMatchObject({ cuts: 5, changes: 4 });
    expect(nestedMitres(r, true).changes).toBe(0);
  });

  it('pays or not by the price of the timber against the swinging of the saw', () => {
    const r = { lengths: [500, 500, 300, 300], across: 60, angle: 45, kerf: 3 };
    const costs = { change: 3, hour: 4500, millimetre: 1 };
    // 3 changes more, 9 min at 45.00 an hour: 6.75; 192.7 mm at 1 is 1.93, at 5 it is 9.64.
    expect(chooseNesting(r, undefined, false, costs).words).toContain('cost 6.75 of swinging the saw');
    expect(chooseNesting(r, undefined, false, { ...costs, millimetre: 5 })).toMatchObject({ nested: true });
    expect(chooseNesting(r, undefined, true, costs).words).toContain(
      '5 cuts instead of 8, the board turned over',
    );
    expect(chooseNesting(r, 'rebate', true, costs)).toEqual({
      nested: false,
      words: 'Waste piece between: head to tail the rebate would lie on the wrong edge of every other part',
    });
  });

  const side = (id: string, length: number, extra: Instance['cuts'] = []): Instance =>
    part(
      id,
      [length, 60, 20],
      [
        ...(['end1', 'end2'] as const).map(end => ({
          kind: 'end-cut' as const,
          id: end,
          by: 'frame',
          stage: ON_PART,
          end,
          mitre: 45,
          bevel: 0,
        })),
        ...extra,
      ],
    );

  it('stands on the card, and a rebate forbids it', () => {
    const plain = planSetUps(pieceOf([side('a', 500), side('b', 500)]), [], shop(), EFFORT);
    expect(plain.setups[0]?.before.join(' ')).toContain('head to tail would save');
    const rebate = pocket('rebate', 'r', box(0, 0, 0, 500, 8, 10), { face: 'back' });
    expect(worksAlong(side('a', 500, [rebate]))).toBe('rebate');
    const rebated = planSetUps(
      pieceOf([side('a', 500, [rebate]), side('b', 500, [rebate])]),
      [],
      shop(),
      EFFORT,
    );
    const mitres = rebated.setups.find(s => s.title.startsWith('Mitres'))!;
    expect(mitres.before.join(' ')).toContain('the rebate would lie on the wrong edge');
  });
});

describe('tools within their marks', () => {
  it('a blade marked slower than the spindle is refused with both figures', () => {
    const base = shop();
    const fast = {
      ...base,
      machines: base.machines.map(m => (m.id === 'mitre' ? { ...m, speed: 5000 } : m)),
      blades: base.blades.map(b => (b.id === 'mitring' ? { ...b, maxSpeed: 4500 } : b)),
      jigs: base.jigs.filter(j => j.id !== 'mitres'),
    };
    const frame = part(
      'a',
      [500, 60, 20],
      [{ kind: 'end-cut', id: 'e', by: 'f', stage: ON_PART, end: 'end1', mitre: 30, bevel: 0 }],
    );
    const [card] = planSetUps(pieceOf([frame]), [], fast, EFFORT).setups;
    expect(card?.refused?.map(r => r.reason)).toContain(
      'the mitring blade is marked 4500 turns at most, the mitre saw turns 5000',
    );
    expect(card?.machine).toBe('hand tools');
  });

  it('steps of a router by cutter and timber (SET-13)', () => {
    const cutter = shop().cutters.find(c => c.diameter === 12)!;
    const of = (material: string): Instance => part('p', [500, 60, 20], [], { material });
    expect(depthSteps(cutter, 12, of('ash-european'))).toBe(3);
    expect(depthSteps(cutter, 12, of('lodgepole-pine'))).toBe(2);
  });
});
