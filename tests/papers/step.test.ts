import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { toWorld } from '../../src/geometry/frame.ts';
import { loadExactKernel } from '../../src/host/exact-kernel-node.ts';
import { deriveJob } from '../../src/job/derive.ts';
import { readJobFile, readWorkshopFile } from '../../src/job-file/read.ts';
import { stepFile } from '../../src/papers/step.ts';
import { hasShape, placedSolids, SolidCache } from '../../src/solids/shapes.ts';
import { readStep } from '../host/read-step.ts';

const kernel = await loadExactKernel();
const example = (name: string): string =>
  readFileSync(new URL(`../../examples/${name}.yaml`, import.meta.url), 'utf8');
const INFO = { title: 'Trial', date: '2026-11-25', programVersion: '0.1.0' };

test('a whole piece is read again by another reader: names, places and volumes', async () => {
  const { workshop } = readWorkshopFile(example('workshop'));
  const { piece, title } = deriveJob(readJobFile(example('porch-bench')).document!, workshop!, {
    today: '2026-11-25',
  }).derived;
  const placed = placedSolids(piece.instances, new SolidCache(kernel));
  const bytes = stepFile(kernel.step(title, placed), { ...INFO, title });
  const text = new TextDecoder().decode(bytes);
  const shown = piece.instances.filter(i => !i.loose && hasShape(i));
  // Each solid once, every copy by reference.
  expect(text.match(/NEXT_ASSEMBLY_USAGE_OCCURRENCE/g)).toHaveLength(shown.length);
  expect(text.match(/MANIFOLD_SOLID_BREP/g)).toHaveLength(placed.length);
  expect(placed.length).toBeLessThan(shown.length);
  const { solids, names } = await readStep(bytes);
  expect(names).toContain(title);
  expect(new Set(solids.map(s => s.name))).toEqual(new Set(shown.map(i => i.name)));
  expect(solids).toHaveLength(shown.length);
  const wanted = placed.flatMap(({ solid, at }) =>
    at.map(({ frame }) => ({ at: toWorld(frame, solid.centre()), volume: solid.volume() })),
  );
  for (const { at, volume } of wanted) {
    const near = solids.filter(
      s => Math.hypot(s.centre[0] - at.x, s.centre[1] - at.y, s.centre[2] - at.z) < 0.05,
    );
    // Two parts may share a centre (crossed slats); one of them is this one.
    expect(near.some(s => Math.abs(s.volume / volume - 1) < 0.002)).toBe(true);
  }
});

const head = (text: string) => /FILE_NAME\('((?:[^']|'')*)',/.exec(text)![1]!;
const RAW =
  "ISO-10303-21;\nHEADER;\nFILE_NAME('a (b)','2020-01-01T10:00:00',('A'),(\n'O'),'p','s','n');\nENDSEC;\n";

test('any title can be read back from the head, and the file is plain ASCII', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 40 }), title => {
      const text = new TextDecoder().decode(stepFile(new TextEncoder().encode(RAW), { ...INFO, title }));
      expect(text).toMatch(/^[\n\r\t -~]*$/);
      expect(text).not.toContain('2020-01-01');
      const read = head(text)
        .replaceAll("''", "'")
        .replace(/\\X2\\([0-9A-F]+)\\X0\\|\\\\/g, (_, hex: string | undefined) =>
          hex === undefined
            ? '\\'
            : String.fromCharCode(...hex.match(/.{4}/g)!.map(unit => Number.parseInt(unit, 16))),
        );
      expect(read).toBe(title.replace(/\p{Cc}/gu, ' '));
    }),
    { numRuns: 300, seed: 20261125 },
  );
});

test('what is no STEP file is refused', () => {
  expect(() => stepFile(new TextEncoder().encode('solid'), INFO)).toThrow('no STEP file');
});
