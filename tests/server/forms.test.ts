import { describe, expect, it } from 'vitest';
import { jobFile, workshopFile } from '../../src/server/forms.ts';

describe('files brought in and sent out', () => {
  it('a job with something wrong in it keeps what was entered, and is told what is wrong', () => {
    const text =
      'scantling: job/1\ntitle: Stool\nparts:\n  leg: {kind: timber, material: ash, length: [1, 2]}\n';
    const { document, faults } = jobFile.read(text);
    expect(faults).toMatchObject([{ place: 'parts.leg.length', line: 4 }]);
    expect(document).toEqual({
      scantling: 'job/1',
      title: 'Stool',
      parts: { leg: { kind: 'timber', material: 'ash', length: [1, 2] } },
    });
  });

  it('an old job is brought up to date', () => {
    const { document } = jobFile.read('scantling: job/0\ntitle: Stool\nsizes: {height: 450}\n');
    expect(document).toEqual({ scantling: 'job/1', title: 'Stool', parameters: { height: 450 } });
  });

  it('what cannot be read gives faults and no document', () => {
    for (const text of ['', '{{', 'scantling: job/99', 'scantling: workshop/1', 'a: &a [*a]']) {
      const { document, faults } = jobFile.read(text);
      expect(document).toBeUndefined();
      expect(faults.length).toBeGreaterThan(0);
    }
  });

  it('go out and come in the same', () => {
    const job = { scantling: 'job/1', title: 'Stool', parameters: { height: '17 1/2 in', n: 3 } };
    expect(jobFile.read(jobFile.write(job))).toEqual({ document: job, faults: [] });
    const shop = { scantling: 'workshop/1', name: 'Shop' };
    expect(workshopFile.read(workshopFile.write(shop))).toEqual({ document: shop, faults: [] });
  });
});
