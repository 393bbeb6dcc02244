import { describe, expect, it } from 'vitest';
import { checkCards } from '../../src/proof/simulator-check.ts';
import { spoilt } from '../../src/proof/simulator-spoil.ts';
import type { Operation, Sizing } from '../../src/results/operations.ts';
import type { Instance, Piece } from '../../src/results/piece.ts';
import { planSetUps } from '../../src/setups/plan-set-ups.ts';
import { planingPasses } from '../../src/setups/sizing/planing.ts';
import { MACHINE_FILES } from '../../src/workshop/machines/index.ts';
import type { Machine, Workshop } from '../../src/workshop/workshop.ts';
import { operation, part, pieceOf, shop, tenon } from './fixtures.ts';

const EFFORT = { seed: 1, iterations: 60 };
const STEPS: Sizing[] = ['rough length', 'rough width', 'face', 'edge', 'thickness', 'width', 'length'];

const withPlaners = (more: Partial<Machine> = {}): Workshop => {
  const base = shop();
  const change = { tool: 4, fence: 1, height: 1, tilt: 2, jig: 2, measured: true };
  return {
    ...base,
    machines: [
      ...base.machines,
      {
        id: 'planer',
        kind: 'planer',
        name: 'planer',
        maxDepth: 2,
        widest: 260,
        shortest: 250,
        change,
        ...more,
      },
      {
        id: 'thick',
        kind: 'thicknesser',
        name: 'thicknesser',
        maxDepth: 2,
        widest: 300,
        shortest: 250,
        change,
        ...more,
      },
    ],
  };
};

/** Blanks 20 longer, 5 wider and 5 thicker than the parts, and the whole of rule 5 over them. */
function rough(instances: Instance[], steps = STEPS): { piece: Piece; operations: Operation[] } {
  const piece = pieceOf(instances);
  for (const group of piece.groups)
    group.blank = {
      length: group.size.length + 20,
      width: group.size.width + 5,
      thickness: group.size.thickness + 5,
    };
  const operations = steps.map((sizing, i) =>
    operation(sizing, [], i === 0 ? [] : [steps[i - 1]!], {
      kind: 'prepare',
      sizing,
      instances: instances.map(p => p.id),
    }),
  );
  return { piece, operations };
}

const figure = (plan: ReturnType<typeof planSetUps>, title: RegExp, name: string): number[] =>
  plan.setups
    .filter(s => title.test(s.title))
    .map(s => s.settings.find(x => x.name === name)?.value.value as number)
    .sort((a, b) => a - b);

describe('parts are brought to size in set-ups', () => {
  const parts = [part('rail', [600, 80, 22]), part('rail_2', [600, 80, 22]), part('stile', [900, 60, 22])];
  const { piece, operations } = rough(parts);
  const plan = planSetUps(piece, operations, withPlaners(), EFFORT);

  it('rough sizes are the blank’s, the others the finished part’s', () => {
    expect(plan.unmade).toEqual([]);
    expect(figure(plan, /^Rough lengths/, 'stop')).toEqual([620, 920]);
    expect(figure(plan, /^Rough widths/, 'fence')).toEqual([65, 85]);
    expect(figure(plan, /^Widths/, 'fence')).toEqual([60, 80]);
    expect(figure(plan, /^Lengths/, 'stop')).toEqual([600, 900]);
  });

  it('all of one thickness come through in one pass, whatever their width (SET-25)', () => {
    const through = plan.setups.filter(s => s.title.startsWith('Thicknesses'));
    expect(through).toHaveLength(1);
    expect(through[0]?.runs.map(r => r.instance).sort()).toEqual(['rail', 'rail_2', 'stile']);
    expect(through[0]?.settings[0]?.rule).toBe('SET-25');
  });

  it('face, edge, thickness, width, length stay in that order', () => {
    const number = (word: string): number => plan.setups.find(s => s.title.startsWith(word))!.number;
    const order = [
      'Rough lengths',
      'Rough widths',
      'Face sides',
      'Face edges',
      'Thicknesses',
      'Widths',
      'Lengths',
    ];
    const numbers = order.map(number);
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
  });

  it('every size agrees with the design, and one kerf of any fence is found out', () => {
    const report = checkCards(piece, plan.setups);
    expect(report.wrong).toEqual([]);
    const sizes = plan.setups.filter(s => s.removal?.shape === 'size');
    expect(sizes.length).toBeGreaterThanOrEqual(9);
    for (const card of sizes)
      for (const sign of [1, -1] as const)
        expect(checkCards(piece, spoilt(plan.setups, card.id, sign)!).wrong.map(w => w.setUp)).toContain(
          card.id,
        );
  });

  it('left at its rough width a part is found out', () => {
    const without = plan.setups.filter(s => !s.title.startsWith('Widths'));
    expect(checkCards(piece, without).wrong[0]?.what).toContain('left at');
  });
});

it('test pieces come through with the parts they stand for (SET-25)', () => {
  const rail = part('rail', [400, 70, 32], [tenon('t')]);
  const { piece, operations } = rough([rail]);
  const test = operation('test', [], ['thickness'], {
    kind: 'test piece',
    title: 'Trial cut: tenon of Rail',
    testPiece: { of: 'rail', length: 300, width: 70, thickness: 32, material: 'ash-european' },
  });
  const plan = planSetUps(piece, [...operations, test], withPlaners(), EFFORT);
  const through = plan.setups.find(s => s.title.startsWith('Thicknesses'))!;
  expect(through.before.join(' ')).toContain(
    'In the same pass: test piece 300.0 long, trial cut: tenon of Rail',
  );
});

it('a board measured on the rack is named with what comes off in all', () => {
  const { piece, operations } = rough([part('rail', [600, 80, 22])]);
  const workshop = withPlaners();
  workshop.rack = [
    {
      id: 'b',
      kind: 'board',
      material: 'ash-european',
      label: 'Ash board 11',
      length: 2400,
      width: 200,
      thickness: 34,
      round: false,
      quantity: 1,
      measuredThickness: 34.2,
      value: 0,
    },
  ];
  const plan = planSetUps(piece, operations, workshop, EFFORT);
  const through = plan.setups.find(s => s.title.startsWith('Thicknesses'))!;
  expect(through.before).toContain('From Ash board 11, 34.2 measured, 12.2 comes off in all');
});

it('planing goes in equal passes no deeper than the machine may, the last a light one (SET-26)', () => {
  expect(planingPasses(2.5, 2)).toEqual({ passes: 2, each: 2, last: 0.5 });
  expect(planingPasses(5, 2)).toEqual({ passes: 4, each: 1.5, last: 0.5 });
  expect(planingPasses(0.4, 2)).toEqual({ passes: 1, each: 0.4, last: 0.4 });
});

describe('what a machine cannot hold is refused with the reason, and another way taken', () => {
  it('a key too short for planer and thicknesser is planed by hand', () => {
    const { piece, operations } = rough([part('key', [80, 24, 10])]);
    const plan = planSetUps(piece, operations, withPlaners(), EFFORT);
    const face = plan.setups.find(s => s.title.startsWith('Face sides'))!;
    expect(face.method).toContain('by hand');
    expect(face.refused?.[0]?.reason).toContain('shorter than the 250.0 the planer may run');
    expect(face.refused?.[0]?.reason).toContain('in one length with its like');
  });

  it('a board wider than the knives likewise', () => {
    const { piece, operations } = rough([part('top', [700, 320, 22])]);
    const plan = planSetUps(piece, operations, withPlaners(), EFFORT);
    const face = plan.setups.find(s => s.title.startsWith('Face sides'))!;
    expect(face.refused?.[0]?.reason).toBe('325.0 wide, the planer planes 260.0');
    const thick = plan.setups.find(s => s.title.startsWith('Thicknesses'))!;
    expect(thick.method).toContain('gauge line');
  });

  it('a fence beyond the table', () => {
    const { piece, operations } = rough([part('top', [1200, 900, 18], [], { kind: 'sheet' })], ['width']);
    const plan = planSetUps(piece, operations, shop(), EFFORT);
    expect(plan.setups[0]?.refused?.[0]?.reason).toBe(
      'the fence would stand at 900.0, the table of the table saw ends at 800.0',
    );
    expect(plan.setups[0]?.machine).toBe('hand tools');
  });

  it('nothing at all in the workshop: said for each size, never dropped', () => {
    const { piece, operations } = rough([part('rail', [600, 80, 22])]);
    const plan = planSetUps(piece, operations, { ...shop(), machines: [] }, EFFORT);
    expect(plan.unmade).toHaveLength(STEPS.length);
    expect(plan.asks?.map(a => a.machine)).toContain('hand tools');
  });
});

describe('a maker is asked about a machine only when a set-up needs it', () => {
  it('limits of used machines that the file leaves open, each once', () => {
    const { piece, operations } = rough([part('rail', [600, 80, 22])], ['length']);
    const plan = planSetUps(piece, operations, shop(), EFFORT);
    expect(plan.asks).toEqual([
      {
        machine: 'mitre saw',
        asks: 'widest piece, square (usually 120 to 340)',
        because: plan.setups[0]!.title,
      },
    ]);
  });

  it('every machine has a file, with minutes for each change and a caution', () => {
    for (const file of Object.values(MACHINE_FILES)) {
      expect(file.holds.length).toBeGreaterThan(0);
      expect(file.cautions.length).toBeGreaterThan(0);
      for (const question of Object.values(file.limits))
        expect(question.usual[0]).toBeLessThan(question.usual[1]);
    }
    expect(Object.keys(MACHINE_FILES)).toHaveLength(19);
  });
});

it('ends that are both mitred bring the part to length themselves', () => {
  const mitred = part(
    'side',
    [500, 60, 20],
    (['end1', 'end2'] as const).map(end => ({
      kind: 'end-cut' as const,
      id: end,
      by: 'frame',
      stage: { when: 'part' as const },
      end,
      mitre: 45,
      bevel: 0,
    })),
  );
  const { piece, operations } = rough([mitred], ['rough length', 'length']);
  const plan = planSetUps(piece, operations, shop(), EFFORT);
  expect(plan.setups.some(s => s.title.startsWith('Lengths'))).toBe(false);
  expect(checkCards(piece, plan.setups).wrong).toEqual([]);
});
