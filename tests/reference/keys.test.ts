import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance, nearestKeys, table, toKey } from '../../src/reference/keys.ts';

const TREES = [
  { key: 'ash-european' },
  { key: 'white-oak-american', also: ['white-oak'] },
  { key: 'sycamore' },
];

describe('keys', () => {
  it('are lower-case words joined by hyphens', () => {
    expect(toKey('  Walnut, American ')).toBe('walnut-american');
    expect(toKey('4.0')).toBe('4.0');
  });

  it('find a row by key, by another name, and by its words in another order', () => {
    const trees = table(TREES);
    for (const word of ['ash-european', 'European ash', 'EUROPEAN-ASH']) {
      expect(trees.find(word)?.key).toBe('ash-european');
    }
    expect(trees.find('American white oak')?.key).toBe('white-oak-american');
    expect(trees.find('oak white')?.key).toBe('white-oak-american');
    expect(trees.find('oak')).toBeUndefined();
    expect(trees.find('')).toBeUndefined();
    expect(trees.find('constructor')).toBeUndefined();
    expect(trees.find('__proto__')).toBeUndefined();
  });

  it('refuse two rows under the same words', () => {
    expect(() => table([{ key: 'oak-red' }, { key: 'red-oak' }])).toThrow('two rows answer to "red-oak"');
  });

  it('hint at what was meant', () => {
    expect(nearestKeys('sicamore', TREES)).toEqual(['sycamore']);
    expect(nearestKeys('oak', TREES)).toEqual(['white-oak-american']);
    expect(nearestKeys('ash-europaen', TREES)[0]).toBe('ash-european');
    expect(nearestKeys('xyzzy-plugh-quux', TREES)).toEqual([]);
  });
});

describe('the letters between two words', () => {
  const word = fc.string({ maxLength: 8, unit: fc.constantFrom('a', 'b', 'c') });

  it('are nothing for the same word, as many both ways, and no shorter round a third', () => {
    fc.assert(
      fc.property(word, word, word, (a, b, c) => {
        expect(editDistance(a, a)).toBe(0);
        expect(editDistance(a, b)).toBe(editDistance(b, a));
        expect(editDistance(a, c)).toBeLessThanOrEqual(editDistance(a, b) + editDistance(b, c));
        expect(editDistance(a, b)).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
      }),
      { seed: 7 },
    );
  });

  it('are counted as by hand', () => {
    expect(editDistance('kitten', 'sitting')).toBe(3);
    expect(editDistance('', 'oak')).toBe(3);
  });
});
