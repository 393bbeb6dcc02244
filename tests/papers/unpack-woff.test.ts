import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { FONT_FILES, FONT_KEYS } from '../../src/papers/fonts.ts';
import { unpackWoff } from '../../src/papers/unpack-woff.ts';

const { resolve } = createRequire(import.meta.url);
const bytesOf = (file: string): Uint8Array => new Uint8Array(readFileSync(resolve(file)));

/** Checksum of a table as OpenType defines it: sum of its big-endian words, zeros beyond its end. */
function checksum(data: Uint8Array): number {
  let sum = 0;
  for (let i = 0; i < data.length; i += 4)
    sum =
      (sum +
        (((data[i]! << 24) | ((data[i + 1] ?? 0) << 16) | ((data[i + 2] ?? 0) << 8) | (data[i + 3] ?? 0)) >>>
          0)) >>>
      0;
  return sum;
}

describe('unpacking fonts', () => {
  const files = FONT_KEYS.flatMap(key => [FONT_FILES[key].latin, FONT_FILES[key].extended]);

  it.each(files)('%s gives every table with the checksum it was packed with', file => {
    const font = unpackWoff(bytesOf(file));
    const view = new DataView(font.buffer);
    const count = view.getUint16(4);
    const tags: string[] = [];
    for (let i = 0; i < count; i++) {
      const at = 12 + i * 16;
      const tag = String.fromCharCode(...font.subarray(at, at + 4));
      const [offset, length] = [view.getUint32(at + 8), view.getUint32(at + 12)];
      const data = font.slice(offset, offset + length);
      // The head table keeps the checksum of the whole file in itself: left out of its own.
      if (tag === 'head') data.fill(0, 8, 12);
      expect(checksum(data)).toBe(view.getUint32(at + 4));
      tags.push(tag);
    }
    for (const tag of ['cmap', 'glyf', 'head', 'hmtx', 'loca', 'maxp']) expect(tags).toContain(tag);
  });

  it('leaves other bytes alone', () => {
    const other = new Uint8Array([1, 2, 3]);
    expect(unpackWoff(other)).toBe(other);
  });
});
