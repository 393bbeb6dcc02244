import { describe, expect, it } from 'vitest';
import type { Assembly } from '../../src/results/piece.ts';
import { checksOf, commission, input, joint, only, PORCH, part, pieceOf, workshop } from './fixtures.ts';

const board = part('board', { size: [500, 100, 20] });
const rail = part('rail', { size: [500, 60, 20] });
const bar = part('bar', { size: [500, 16, 16], kind: 'bar', material: 'stainless-304', round: true });

const glued = (
  other: 'rail' | 'bar',
  glue: string | undefined,
  given: Parameters<typeof input>[1] = {},
  joints = 1,
) => {
  const made = Array.from({ length: joints }, (_, i) =>
    joint(`j${i}`, ['board', other], {
      glue: [{ between: ['board', other], area: 1000, grain: other === 'bar' ? 'metal' : 'long' }],
    }),
  );
  const frame: Assembly = {
    id: 'frame',
    name: 'The frame',
    instances: ['board', other],
    assemblies: [],
    joints: made.map(j => j.id),
    ...(glue === undefined ? {} : { glue }),
    dryFit: true,
    order: 1,
  };
  return input(pieceOf([board, rail, bar], made, [frame]), given);
};

describe('CHK-13: what a glue holds', () => {
  it.each([
    ['rail', 'pva', 'pass'],
    ['bar', 'pva', 'stop'],
    ['bar', 'epoxy', 'pass'],
    ['rail', 'grandfathers-own', 'unknown'],
    ['rail', undefined, 'unknown'],
  ] as const)('board to %s with %s: %s', (other, glue, severity) => {
    expect(only('adhesive', glued(other, glue)).severity).toBe(severity);
  });

  it("knows the workshop's own glue by what it is like", () => {
    const shop = workshop({ adhesives: { fast: { name: 'The fast one', like: 'pva-d3' } } });
    const check = only('adhesive', glued('rail', 'fast', { workshop: shop }));
    expect([check.severity, check.title]).toEqual(['pass', 'The fast one holds timber to timber']);
  });
});

describe('CHK-14 to CHK-16: the shop, the clock and the damp', () => {
  const shopAt = (temperature: number) => workshop({ climate: { temperature, humidity: 55 } });

  it.each([
    [18, 'pass'],
    [8, 'stop'],
  ])('wood glue in a shop at %i: %s', (temperature, severity) => {
    expect(only('glue temperature', glued('rail', 'pva', { workshop: shopAt(temperature) })).severity).toBe(
      severity,
    );
  });

  it('attends between the two figures of a band', () => {
    expect(only('glue temperature', glued('rail', 'pva-d3', { workshop: shopAt(7) })).severity).toBe(
      'attend',
    );
  });

  it.each([
    [4, 'pass'],
    [14, 'attend'],
  ])('%i joints in one glue-up with white glue: %s', (joints, severity) => {
    const check = only('open time', glued('rail', 'pva', {}, joints));
    expect([check.severity, check.figure, check.limit]).toEqual([severity, joints, 10]);
  });

  it("lets the workshop's own open time win", () => {
    const shop = workshop({ adhesives: { pva: { name: 'PVA', openMinutes: 20 } } });
    expect(only('open time', glued('rail', 'pva', { workshop: shop }, 14)).severity).toBe('pass');
  });

  it('speaks of plain wood glue only where timber gets damp', () => {
    const damp = { commission: commission({ site: { ...PORCH, humidity: { low: 50, high: 85 } } }) };
    expect(only('glue and damp', glued('rail', 'pva', damp)).severity).toBe('attend');
    expect(checksOf('glue and damp', glued('rail', 'pva-d4', damp))).toEqual([]);
    expect(checksOf('glue and damp', glued('rail', 'pva'))).toEqual([]);
  });
});

describe('CHK-39: clamps', () => {
  const top = (quantity: number, length = 900) => {
    const boards = [0, 200, 400].map((y, i) =>
      part(`top_${i}`, { size: [1200, 200, 25], frame: { ...board.frame, origin: { x: 0, y, z: 0 } } }),
    );
    const edges = [0, 1].map(i =>
      joint('edges', [`top_${i}`, `top_${i + 1}`], {
        glue: [{ between: [`top_${i}`, `top_${i + 1}`], area: 1, grain: 'long' }],
      }),
    );
    return input(pieceOf(boards, edges), { workshop: workshop({ clamps: [{ length, quantity }] }) });
  };

  // 1200 long: 50 from each end and every 300 between is 5.
  it.each([
    [5, 900, 'pass'],
    [4, 900, 'attend'],
    [9, 610, 'attend'],
  ])('%i of %i for a top of 600 x 1200: %s', (quantity, length, severity) => {
    const check = only('clamps', top(quantity, length));
    expect([check.severity, check.limit]).toEqual([severity, 5]);
  });

  it('says nothing when the workshop lists none, or nothing is glued up of boards', () => {
    expect(checksOf('clamps', { ...top(5), workshop: workshop() })).toEqual([]);
    expect(checksOf('clamps', { ...top(5), piece: pieceOf([board]) })).toEqual([]);
  });
});

describe('CHK-36: iron and tannin', () => {
  const met = (timber: string, metal: string) =>
    input(
      pieceOf(
        [
          part('post', { size: [700, 60, 60], material: timber }),
          part('rod', { size: [500, 12, 12], kind: 'bar', material: metal }),
        ],
        [joint('rods', ['rod', 'post'])],
      ),
    );

  it('attends plain steel in oak, and leaves stainless and ash alone', () => {
    expect(only('iron stain', met('oak-european', 'mild-steel')).severity).toBe('attend');
    expect(checksOf('iron stain', met('oak-european', 'stainless-304'))).toEqual([]);
    expect(checksOf('iron stain', met('ash-european', 'mild-steel'))).toEqual([]);
  });
});
