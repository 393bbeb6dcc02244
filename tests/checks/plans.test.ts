import { describe, expect, it } from 'vitest';
import type { Demand } from '../../src/results/cutting.ts';
import {
  checksOf,
  commission,
  cuttingPlan,
  dayPlan,
  input,
  only,
  operation,
  PORCH,
  part,
  pieceOf,
  sentence,
  setUpPlan,
  stock,
  workshop,
} from './fixtures.ts';

const seat = part('seat', { size: [1380, 380, 27] });
const piece = pieceOf([seat]);

describe('CHK-30, CHK-31, CHK-34: stock and machines', () => {
  it('stops where no stock gives a blank', () => {
    const demand: Demand = {
      mark: 'A',
      instance: 'seat',
      name: 'Seat',
      length: 1400,
      width: 390,
      thickness: 30,
      material: 'ash-european',
      kind: 'timber',
      round: false,
      turn: false,
      across: false,
      purpose: 'part',
    };
    const cutting = cuttingPlan();
    cutting.materials[0]!.unplaced = [
      { demand, reason: 'no board is 390 wide', mend: 'Glue it up of three boards.' },
    ];
    const check = only('stock', input(piece, { cutting }));
    expect([check.severity, check.remedy]).toEqual(['stop', 'Glue it up of three boards.']);
    expect(checksOf('stock', input(piece))).toEqual([]);
  });

  it('stops where no machine makes a cut', () => {
    const setups = setUpPlan({
      unmade: [{ instance: 'seat', cut: 'm.1', reason: 'no chisel of 11', mend: 'Chop it by hand.' }],
    });
    expect(only('machines', input(piece, { setups })).severity).toBe('stop');
  });

  it('tells together what one tool would cut', () => {
    const cut = (instance: string, mend: string) => ({
      instance,
      cut: `${instance}.1`,
      reason: 'no 6 drill.',
      mend,
    });
    const two = pieceOf([seat, part('rail', { size: [500, 60, 20] }), part('leg', { size: [400, 45, 45] })]);
    const setups = setUpPlan({
      unmade: [cut('seat', 'Buy a 6 drill.'), cut('rail', 'Buy a 6 drill.'), cut('leg', 'Buy a saw.')],
    });
    const told = checksOf('machines', input(two, { setups }));
    expect(told.map(c => c.title).sort()).toEqual(['No way to cut 2 parts', 'No way to cut leg']);
    expect(sentence(told.find(c => c.figure === 2)!)).toBe('Seat and rail: no 6 drill.');
  });

  it.each([
    [4000, 'pass'],
    [0, 'attend'],
  ])('stock at %i: %s', (price, severity) => {
    expect(only('unpriced', input(piece, { cutting: cuttingPlan([stock({ price })]) })).severity).toBe(
      severity,
    );
  });
});

describe('CHK-32, CHK-33: dates', () => {
  it.each([
    [{ date: '2026-12-20', kept: true, daysLate: 0 }, 'pass', 'Ready in time'],
    [{ date: '2026-12-12', kept: true, daysLate: 0 }, 'attend', 'In time if the work goes as it should'],
    [{ date: '2026-12-09', kept: false, daysLate: 1 }, 'stop', '1 day late'],
  ])('%o', (deadline, severity, title) => {
    const check = only('deadline', input(piece, { days: dayPlan({ deadline }) }));
    expect([check.severity, check.title]).toEqual([severity, title]);
  });

  it('passes on what the calendar cannot keep', () => {
    const days = dayPlan({
      trouble: [{ operation: 'coat2', what: 'The second coat falls on Sunday.', mend: 'Begin on Monday.' }],
    });
    const check = only(
      'window',
      input(piece, { days, operations: [operation('coat2', { title: 'second coat' })] }),
    );
    expect([check.severity, check.title]).toEqual(['attend', 'Second coat: its window is missed']);
    expect(checksOf('window', input(piece))).toEqual([]);
  });
});

describe('CHK-35: moisture', () => {
  const at = (moistureAtMaking?: number) =>
    input(piece, {
      commission: commission({
        site: PORCH,
        ...(moistureAtMaking === undefined ? {} : { moistureAtMaking }),
      }),
    });

  it.each([
    [12, 'pass'],
    [18, 'attend'],
    [6, 'attend'],
    [undefined, 'unknown'],
  ])('made up at %s %%: %s', (moisture, severity) => {
    expect(only('moisture', at(moisture)).severity).toBe(severity);
  });

  it('takes the reading of the board the part is cut from', () => {
    const rack = [
      {
        id: 'ash-1',
        kind: 'board' as const,
        material: 'ash-european',
        label: 'Ash',
        length: 3000,
        width: 200,
        thickness: 27,
        round: false,
        quantity: 1,
        moisture: 13,
        value: 4000,
      },
    ];
    const check = only('moisture', {
      ...at(),
      cutting: cuttingPlan([stock()]),
      workshop: workshop({ rack }),
    });
    expect([check.severity, check.figure, check.basis]).toEqual(['pass', 13, 'common practice']);
  });

  it('does not know the room without a site', () => {
    expect(
      only('moisture', input(piece, { commission: commission({ moistureAtMaking: 12 }) })).severity,
    ).toBe('unknown');
  });
});
