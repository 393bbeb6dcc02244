import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planSetUps } from '../../src/setups/plan-set-ups.ts';
import { readStanding } from '../../src/setups/standing.ts';
import { shop, workedRail } from './fixtures.ts';

const EFFORT = { seed: 1, iterations: 120 };
const plain = planSetUps(workedRail(), [], shop(), EFFORT);

describe('what stands on the machines now', () => {
  it('is where the order starts: the set-up that stands already costs nothing and the plan gets cheaper by no less', () => {
    for (const setUp of plain.setups) {
      const standing = new Map([[setUp.machineId!, setUp.state!]]);
      const plan = planSetUps(workedRail(), [], shop(), EFFORT, standing);
      expect(plan.value).toBeLessThanOrEqual(plain.value);
      expect(plan.setups.reduce((sum, s) => sum + s.changeOver, 0)).toBe(plan.value);
      expect(plan.bound).toBeLessThanOrEqual(plan.value);
    }
    const [first] = plain.setups;
    const begun = planSetUps(workedRail(), [], shop(), EFFORT, new Map([[first!.machineId!, first!.state!]]));
    expect(begun.value).toBeLessThanOrEqual(plain.value - first!.changeOver);
    expect(begun.setups.some(s => s.machineId === first!.machineId && s.changeOver === 0)).toBe(true);
  });

  it('reads lengths with their unit; what is not said is set anew', () => {
    const machine = shop().machines[0]!.id;
    const { standing, faults } = readStanding({ [machine]: { tool: 'rip', fence: '4 cm' } }, shop(), 'mm');
    expect(faults).toEqual([]);
    expect(standing.get(machine)).toEqual({ tool: 'rip', jig: '', fence: 40, tilt: 0 });
  });

  it('refuses a machine that is not there and a length that cannot be read, and keeps the rest', () => {
    const machine = shop().machines[0]!.id;
    const { standing, faults } = readStanding(
      { [machine]: { tool: 'rip', height: 'high' }, nowhere: { tool: 'rip' } },
      shop(),
      'mm',
    );
    expect(faults.map(f => f.place)).toEqual([`standing.${machine}.height`, 'standing.nowhere']);
    expect([...standing.keys()]).toEqual([machine]);
  });

  it('any words for a fence are read or refused, never thrown', () => {
    const machine = shop().machines[0]!.id;
    fc.assert(
      fc.property(fc.string({ maxLength: 40 }), fence => {
        const { standing, faults } = readStanding({ [machine]: { fence } }, shop(), 'mm');
        expect((standing.get(machine)?.fence === undefined ? 0 : 1) + faults.length).toBe(1);
      }),
      { seed: 5, numRuns: 200 },
    );
  });
});
