import { describe, expect, it } from 'vitest';
import { planOperations } from '../../src/operations/plan-operations.ts';
import { REMEMBERED_TIMES, RESTS, timeUnit } from '../../src/operations/times.ts';
import type { Piece } from '../../src/results/piece.ts';
import {
  assembly,
  byId,
  commission,
  copy,
  edge,
  hole,
  joint,
  mitre,
  piece,
  pocket,
  recipe,
  rulesBetween,
  shop,
  size,
  step,
  tenon,
} from './making.ts';

function frame(more: { legs?: number; glue?: string } = {}): Piece {
  const legs = Array.from({ length: more.legs ?? 2 }, (_, k) => `leg.${k + 1}`);
  const joints = legs.map(id => joint('corner', ['rail.1', id]));
  return piece(
    [
      ...legs.map(id => copy(id, size(423, 45, 45), [pocket('corner', 'mortise')])),
      copy('rail.1', size(340, 60, 32), [tenon('corner'), tenon('corner')]),
    ],
    joints,
    [assembly('frame', [...legs, 'rail.1'], joints, more.glue === undefined ? {} : { glue: more.glue })],
  );
}

const minutes = (source: string) => ({
  low: 1,
  likely: 2,
  high: 3,
  source: { text: source, basis: 'workshop' as const },
});

describe('minutes', () => {
  it('come from the table by the count of cuts, with the spread and basis of the row', () => {
    const { operations } = planOperations(frame(), commission(), shop());
    const cut = byId(operations, 'cut:leg:corner:mortise');
    // Hollow chisel: 2 to 4 min a mortise, two of them.
    expect(cut.handsOn).toMatchObject({ low: 4, likely: 6, high: 8, source: { basis: 'memory' } });
    expect(cut.handsOn.source.text).toBe('mortise, hollow chisel, 10 x 50 x 40, 2-4 min a mortise x 2');
  });

  it('of the workshop win over the table', () => {
    const own = shop({ times: { 'mortise-machine': minutes('own log') } });
    const { operations } = planOperations(frame({ legs: 4 }), commission(), own);
    expect(byId(operations, 'cut:leg:corner:mortise').handsOn).toMatchObject({
      low: 4,
      likely: 8,
      high: 12,
      source: { basis: 'workshop' },
    });
  });

  it('are longer by hand', () => {
    const { operations } = planOperations(frame(), commission(), shop({ machines: [] }));
    // Mortise by hand 15 to 30, tenon by hand 12 to 25.
    expect(byId(operations, 'cut:leg:corner:mortise').handsOn).toMatchObject({ low: 30, high: 60 });
    expect(byId(operations, 'cut:rail:corner:tenon').handsOn).toMatchObject({ low: 24, high: 50 });
  });

  it('of a coat go by the surface, and the recipe wins', () => {
    const of = (perM2?: number) => {
      const coat = step('coat', 'oil', {
        product: 'danish-oil',
        ...(perM2 === undefined ? {} : { minutesPerM2: perM2 }),
      });
      const { operations } = planOperations(
        piece([copy('board', size(1000, 500, 20))]),
        commission(recipe('oil', ['board'], [coat])),
        shop(),
      );
      return byId(operations, 'finish:oil:oil').handsOn;
    };
    // Six faces of 1000 x 500 x 20: 2 (0.5 + 0.02 + 0.01) = 1.06 m2; oil 6 to 12 min a m2.
    expect(of().low).toBeCloseTo(6.36, 9);
    expect(of().high).toBeCloseTo(12.72, 9);
    expect(of(10)).toMatchObject({ source: { basis: 'maker' } });
    expect(of(10).likely).toBeCloseTo(10.6, 9);
  });

  it('have a unit for every key a workshop may time', () => {
    expect(timeUnit('mortise-machine')).toBe('mortise');
    for (const key of Object.keys(REMEMBERED_TIMES)) expect(timeUnit(key)).toBe(REMEMBERED_TIMES[key]!.per);
    expect(timeUnit('nothing')).toBeUndefined();
  });
});

describe('waits', () => {
  it("of glue are the workshop's own figures where it has them", () => {
    const own = shop({
      adhesives: { quick: { name: 'Quick', like: 'pva', clampMinutes: 20, cureMinutes: 120 } },
    });
    const { operations, faults } = planOperations(frame({ glue: 'quick' }), commission(), own);
    expect(faults).toEqual([]);
    expect(byId(operations, 'glue:frame').wait).toEqual({
      minutes: 20,
      what: 'clamp',
      source: { text: 'workshop: Quick', basis: 'workshop' },
    });
    expect(byId(operations, 'set:frame').wait?.minutes).toBe(100);
  });

  it('of glue are those of the table else: an hour in clamps, a day in all', () => {
    const { operations } = planOperations(frame(), commission(), shop());
    expect(byId(operations, 'glue:frame').wait).toMatchObject({ minutes: 60, source: { basis: 'read' } });
    expect(byId(operations, 'set:frame').wait?.minutes).toBe(1380);
  });

  it('of a finish: recipe, then workshop, then table', () => {
    const of = (more: { waitMinutes?: number }, finishes = {}) => {
      const { operations } = planOperations(
        piece([copy('board', size(1000, 500, 20))]),
        commission(recipe('oil', ['board'], [step('coat', 'oil', { product: 'danish-oil', ...more })])),
        shop({ finishes }),
      );
      return byId(operations, 'finish:oil:oil').wait;
    };
    const own = { 'danish-oil': { name: 'Own oil', recoatMinutes: 300 } };
    expect(of({})?.minutes).toBe(1440);
    expect(of({}, own)?.minutes).toBe(300);
    expect(of({ waitMinutes: 200 }, own)).toMatchObject({ minutes: 200, source: { basis: 'maker' } });
  });

  it('of timber rest are the least of common practice, or the shop says', () => {
    const { operations } = planOperations(frame(), commission(), shop());
    expect(byId(operations, 'rest:ash-european').wait?.minutes).toBe(RESTS['rest-rough'].days * 1440);
    const own = shop({ times: { 'rest-rough': { ...minutes('own'), low: 0, likely: 600, high: 600 } } });
    expect(
      byId(planOperations(frame(), commission(), own).operations, 'rest:ash-european').wait?.minutes,
    ).toBe(600);
  });
});

describe('ids', () => {
  it('stay when something else is added', () => {
    const before = planOperations(frame(), commission(), shop()).operations.map(o => o.id);
    const more = frame({ legs: 4 });
    more.instances.push(copy('shelf', size(300, 200, 18), [hole('peg')], { material: 'oak-european' }));
    const after = planOperations(more, commission(), shop()).operations.map(o => o.id);
    expect(before.filter(id => !after.includes(id))).toEqual([]);
  });

  it('are unique and everything that is waited for exists', () => {
    const { operations } = planOperations(frame(), commission(), shop());
    const ids = new Set(operations.map(o => o.id));
    expect(ids.size).toBe(operations.length);
    for (const o of operations) for (const a of o.after) expect(ids.has(a.operation)).toBe(true);
  });
});

describe('one name used for many things', () => {
  it('makes no two operations of one id', () => {
    const same = piece(
      [
        copy('oak', size(400, 40, 30), [pocket('oak', 'mortise')], { material: 'oak' }),
        copy('brass', size(300, 40, 20), [tenon('oak')], {
          material: 'oak',
          measureFirst: { when: 'dry fit', reserve: size(10, 5, 0) },
        }),
        copy('bar', size(300, 8, 8), [], { kind: 'bar', material: 'brass', round: true }),
        copy('hinge', size(50, 30, 2), [], { kind: 'bought-in', material: 'oak' }),
      ],
      [joint('oak', ['brass', 'oak'])],
      [assembly('oak', ['oak', 'brass'], [joint('oak', ['brass', 'oak'])])],
    );
    const coats = ['coat', 'coat', 'coat 2'].map(name => step('coat', name, { product: 'danish-oil' }));
    const { operations } = planOperations(same, commission(recipe('oak', ['oak'], coats)), shop());
    const ids = operations.map(o => o.id);
    expect(ids.filter((id, k) => ids.indexOf(id) !== k)).toEqual([]);
    // Nothing is lost under another's id: both glue-up and recipe are sanded, three coats laid.
    expect(ids).toEqual(
      expect.arrayContaining(['sand:oak', 'prepare:oak', 'width:oak', 'width-of:brass', 'buy:hinge']),
    );
    expect(ids.filter(id => id.startsWith('finish:oak:'))).toEqual([
      'finish:oak:coat',
      'finish:oak:coat-2',
      'finish:oak:coat-2-2',
    ]);
  });
});

describe('test pieces', () => {
  it('are of the section of the part, no longer than it, and on the list', () => {
    const { operations } = planOperations(frame(), commission(), shop());
    expect(byId(operations, 'test:rail:corner:tenon').testPiece).toEqual({
      of: 'rail.1',
      length: 300,
      width: 60,
      thickness: 32,
      material: 'ash-european',
    });
  });

  it('are asked for cheeks, open mortises, mitres, not for mortises, holes, chamfers', () => {
    const { operations } = planOperations(
      piece([
        copy('a', size(500, 60, 20), [
          tenon('t'),
          pocket('o', 'open-mortise'),
          pocket('m', 'mortise'),
          hole('h'),
          edge('c', 'chamfer'),
          mitre('e'),
        ]),
      ]),
      commission(),
      shop(),
    );
    expect(operations.filter(o => o.testPiece).map(o => o.id)).toEqual([
      'test:a:t:tenon',
      'test:a:o:open-mortise',
      'test:a:e:end-cut',
    ]);
  });
});

describe('planed stock', () => {
  it('is neither rested, faced nor thicknessed', () => {
    const bought = frame();
    for (const group of bought.groups) group.blank = { ...group.size, length: group.size.length + 20 };
    const ids = planOperations(bought, commission(), shop()).operations.map(o => o.id.split(':')[0]);
    expect(ids).not.toContain('rest');
    expect(ids).not.toContain('face');
    expect(ids).not.toContain('thickness');
    expect(ids).toContain('length');
  });
});

describe('faults', () => {
  it('name a ring in the order of work with its rules, and plan the rest', () => {
    // A part that is measured at the glue-up of the assembly it goes into.
    const joints = [joint('corner', ['rail', 'leg'])];
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
    const { operations, faults } = planOperations(ring, commission(), shop());
    expect(faults).toHaveLength(1);
    expect(faults[0]!.fault).toContain('goes round in a ring');
    for (const words of ['"Glue up frame"', 'ORD-47', 'ORD-71', 'Measure for rail'])
      expect(faults[0]!.fault).toContain(words);
    expect(operations.length).toBeGreaterThan(10);
  });

  it('tell of a recipe that stains over its sealer, by rule ORD-57', () => {
    const wrong = recipe(
      'wrong',
      ['board'],
      [step('seal', 'seal', { product: 'shellac' }), step('stain', 'stain', { product: 'water-stain' })],
    );
    const { faults } = planOperations(piece([copy('board', size(1000, 500, 20))]), commission(wrong), shop());
    expect(faults).toHaveLength(1);
    expect(faults[0]!.fault).toContain('ORD-57');
  });

  it('tell an unknown finish and an unknown glue, with the nearest', () => {
    const { faults } = planOperations(
      frame({ glue: 'pvaa' }),
      commission(recipe('oil', ['leg.1'], [step('coat', 'one', { product: 'danisch-oil' })])),
      shop(),
    );
    expect(faults.map(f => f.place)).toEqual(['assemblies.frame.glue', 'finishes.oil.one']);
    expect(faults[0]!.mend).toContain('pva');
    expect(faults[1]!.mend).toContain('danish-oil');
  });
});

describe('glued joints in no assembly', () => {
  it('are glued up as the rest', () => {
    const joints = [joint('corner', ['rail', 'leg'])];
    const open = piece(
      [copy('leg', size(423, 45, 45)), copy('rail', size(340, 60, 32), [tenon('corner')])],
      joints,
    );
    const { operations } = planOperations(open, commission(), shop());
    expect(byId(operations, 'glue:rest').title).toBe('Glue up the rest');
    expect(rulesBetween(operations, 'cut:rail:corner:tenon', 'glue:rest')).toEqual(['ORD-70']);
  });
});

describe('a cold shop', () => {
  it('is told at the glue-up', () => {
    const { operations } = planOperations(
      frame(),
      commission(),
      shop({ climate: { temperature: 8, humidity: 60 } }),
    );
    expect(byId(operations, 'glue:frame').cautions.join()).toContain('The shop stands at 8 degC');
  });
});

describe('nothing', () => {
  it('asks for nothing', () => {
    expect(planOperations(piece([]), commission(), shop())).toEqual({ operations: [], faults: [] });
  });
});
