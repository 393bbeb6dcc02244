import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { readPaperFonts } from '../../src/papers/font-reader.ts';
import { stretches } from '../../src/papers/fonts.ts';
import { pdfRuler, type Ruler } from '../../src/papers/pdf-fonts.ts';
import { STYLE, sayRuns, textHeight, wrap } from '../../src/papers/typeset.ts';
import { say } from '../../src/results/message.ts';
import { mm, q, text } from '../../src/results/quantity.ts';

let ruler: Ruler;
beforeAll(async () => {
  ruler = pdfRuler(await readPaperFonts());
});

const plain = (lines: ReturnType<typeof wrap>): string[] => lines.map(line => line.map(r => r.text).join(''));

describe('setting text', () => {
  it('breaks lines at spaces, within the measure, and loses no word', () => {
    const words = fc.array(fc.stringMatching(/^[a-z0-9\u00e9.,]{1,12}$/), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(words, fc.integer({ min: 20, max: 120 }), (list, width) => {
        const lines = wrap(list.join(' '), width, STYLE.text, ruler);
        for (const line of lines)
          expect(
            line.reduce((sum, r) => sum + ruler.width(r, 'words', STYLE.text.size), 0),
          ).toBeLessThanOrEqual(width + 0.01);
        expect(plain(lines).join(' ')).toBe(list.join(' '));
      }),
      { seed: 21, numRuns: 60 },
    );
  });

  it('breaks a word that is wider than the measure rather than run over', () => {
    const lines = wrap('x'.repeat(200), 30, STYLE.table, ruler);
    expect(lines.length).toBeGreaterThan(5);
    expect(plain(lines).join('')).toBe('x'.repeat(200));
  });

  it('keeps a gap of two spaces, and paragraphs', () => {
    expect(plain(wrap('Ash  34 sawn', 100, STYLE.table, ruler))).toEqual(['Ash\u00a0 34 sawn']);
    expect(plain(wrap('one\ntwo', 100, STYLE.table, ruler))).toEqual(['one', 'two']);
    expect(textHeight('one\ntwo', 100, STYLE.table, ruler)).toBeCloseTo(2 * 3.5 * 1.3, 6);
  });

  it('keeps a figure and its unit together, figures strong and names plain', () => {
    const runs = sayRuns(
      say('{what} moves {move} at {moisture}.', {
        what: text('Seat'),
        move: mm(2.5),
        moisture: q('moisture', 9),
      }),
      {
        unit: 'mm',
        currency: 'GBP',
      },
    );
    expect(runs[0]).toMatchObject({ text: 'Seat', strong: false });
    expect(runs[2]).toMatchObject({ text: '2.5', strong: true });
    expect(runs[3]).toMatchObject({ text: '\u202fmm', size: 0.74 });
    expect(runs.at(-2)).toMatchObject({ text: '9\u202f%', strong: true });
    const lines = plain(wrap(runs, 17, STYLE.text, ruler));
    expect(lines.some(line => line.includes('2.5\u202fmm'))).toBe(true);
  });

  it('sets figures of one width, so that columns stand', () => {
    const width = (t: string): number => ruler.width({ text: t }, 'figures', 1);
    for (const digit of '0123456789') expect(width(digit)).toBeCloseTo(width('0'), 6);
  });
});

describe('which font holds a letter', () => {
  it('splits text by file, sets fractions as such, and leaves no gap for what no file holds', () => {
    expect(stretches('\u0141uk').map(s => [s.text, s.extended])).toEqual([
      ['\u0141', true],
      ['uk', false],
    ]);
    expect(stretches('1 3/4').map(s => [s.text, s.fraction])).toEqual([
      ['1', false],
      ['\u00a0', false],
      ['3/4', true],
    ]);
    expect(stretches('a\u4e16b').map(s => s.text)).toEqual(['a?b']);
    expect(stretches('5/7')[0]!.fraction).toBe(false);
  });

  it('can set any text at all', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), content => {
        for (const face of ['figures', 'big', 'words', 'remark'] as const)
          expect(Number.isFinite(ruler.width({ text: content }, face, 4))).toBe(true);
      }),
      { seed: 23, numRuns: 200 },
    );
  });
});
