import { unzlibSync } from 'fflate';

const HEADER = 44;
const ENTRY = 20;
const SFNT_HEADER = 12;
const RECORD = 16;
const SIGNATURE = 0x774f4646;

/**
 * A WOFF 1.0 file (W3C Recommendation, 13 December 2012) as the plain font it packs: every table inflated once, where a
 * reader of packed fonts inflates the table of outlines again for each letter. Anything else is given back as it is.
 */
export function unpackWoff(bytes: Uint8Array): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.byteLength < HEADER || view.getUint32(0) !== SIGNATURE) return bytes;
  const count = view.getUint16(12);
  const tables = Array.from({ length: count }, (_, i) => {
    const at = HEADER + i * ENTRY;
    const [offset, packed, length] = [
      view.getUint32(at + 4),
      view.getUint32(at + 8),
      view.getUint32(at + 12),
    ];
    const part = bytes.subarray(offset, offset + packed);
    return {
      tag: view.getUint32(at),
      checksum: view.getUint32(at + 16),
      data: packed < length ? unzlibSync(part, { out: new Uint8Array(length) }) : part,
    };
  });
  const padded = (n: number): number => Math.ceil(n / 4) * 4;
  const body = SFNT_HEADER + count * RECORD;
  const out = new Uint8Array(tables.reduce((sum, t) => sum + padded(t.data.length), body));
  const sfnt = new DataView(out.buffer);
  const power = Math.floor(Math.log2(Math.max(1, count)));
  sfnt.setUint32(0, view.getUint32(4));
  sfnt.setUint16(4, count);
  sfnt.setUint16(6, 16 * 2 ** power);
  sfnt.setUint16(8, power);
  sfnt.setUint16(10, 16 * count - 16 * 2 ** power);
  let offset = body;
  tables.forEach(({ tag, checksum, data }, i) => {
    const at = SFNT_HEADER + i * RECORD;
    sfnt.setUint32(at, tag);
    sfnt.setUint32(at + 4, checksum);
    sfnt.setUint32(at + 8, offset);
    sfnt.setUint32(at + 12, data.length);
    out.set(data, offset);
    offset += padded(data.length);
  });
  return out;
}
