import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ALL_TABLES, contentHash, referenceVersion } from '../../src/reference/version.ts';

describe('the hash of the tables', () => {
  it('is sixteen hexadecimal digits and the same each time', () => {
    expect(referenceVersion()).toMatch(/^[0-9a-f]{16}$/);
    expect(referenceVersion()).toBe(contentHash(ALL_TABLES));
  });

  it('keeps to the published FNV-1a value', () => {
    // The text hashed is the JSON of the string, quotes included; FNV-1a of `"a"` worked out by hand.
    const byHand = ['"', 'a', '"'].reduce(
      (hash, letter) => BigInt.asUintN(64, (hash ^ BigInt(letter.charCodeAt(0))) * 1099511628211n),
      14695981039346656037n,
    );
    expect(contentHash('a')).toBe(byHand.toString(16).padStart(16, '0'));
  });

  it('does not depend on the order of fields, and sees every change of content', () => {
    const record = fc.dictionary(
      fc.string({ maxLength: 5 }),
      fc.oneof(fc.integer(), fc.string(), fc.boolean()),
    );
    fc.assert(
      fc.property(record, fc.string({ maxLength: 5 }), fc.integer(), (fields, name, value) => {
        const turned = Object.fromEntries(Object.entries(fields).reverse());
        expect(contentHash(turned)).toBe(contentHash(fields));
        if (fields[name] !== value)
          expect(contentHash({ ...fields, [name]: value })).not.toBe(contentHash(fields));
      }),
      { seed: 11 },
    );
  });

  it('tells lists in another order apart', () => {
    expect(contentHash([1, 2])).not.toBe(contentHash([2, 1]));
    expect(contentHash({ a: undefined })).toBe(contentHash({ a: null }));
  });
});
