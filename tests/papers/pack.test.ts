import { beforeAll, describe, expect, it } from 'vitest';
import type { DisplayList } from '../../src/drawings/list.ts';
import { SAFETY_LINE } from '../../src/papers/book.ts';
import { readPaperFonts } from '../../src/papers/font-reader.ts';
import type { PaperFonts } from '../../src/papers/fonts.ts';
import { jobPack, type PackInfo, packPages } from '../../src/papers/pack.ts';
import { pdfRuler, type Ruler } from '../../src/papers/pdf-fonts.ts';
import { DERIVED } from '../drawings/bench-derived.ts';
import { collisions, overPage, wordsOf } from './page-check.ts';
import { readPdf } from './read-pdf.ts';

const INFO: PackInfo = {
  title: 'Porch bench',
  number: '31',
  client: 'Rowan El\u017cbieta',
  settingOut: 4,
  date: '2026-11-25',
  programVersion: '0.1.0',
  currency: 'GBP',
  unit: 'mm',
};

let fonts: PaperFonts;
let ruler: Ruler;
let pages: DisplayList[];
beforeAll(async () => {
  fonts = await readPaperFonts();
  ruler = pdfRuler(fonts);
  pages = packPages(DERIVED, INFO, ruler);
});

const page = (section: string): string =>
  pages
    .filter(p => p.title === section)
    .map(wordsOf)
    .join(' ');

describe('the pages of a job pack', () => {
  it('come in the order of work, one card to a page', () => {
    expect(pages.map(p => p.title)).toEqual([
      'Summary',
      'Parts',
      'Views',
      'Marking out',
      'Marking out',
      'Cutting',
      'Cutting',
      'Milling',
      'Set-up 1',
      'Set-up 2',
      'Days',
      'Checks',
    ]);
  });

  it('name what they were made from, their number and the safety line on every page', () => {
    pages.forEach((p, i) => {
      const said = wordsOf(p);
      expect(said).toContain('Commission 31, made from setting-out 4, 25 November 2026, Scantling 0.1.0');
      expect(said).toContain(`${i + 1} of ${pages.length}`);
      expect(said).toContain(SAFETY_LINE);
    });
  });

  it('hold every mark with its sizes', () => {
    const said = page('Parts');
    for (const group of DERIVED.piece.groups) expect(said).toContain(group.name);
    expect(said).toContain('16 dia');
    expect(said).toContain('1400 \u00d7 131.7 \u00d7 27');
    expect(said).toContain('18.2');
  });

  it('give the order of sawing and what to buy', () => {
    const said = page('Cutting');
    expect(said).toContain('Cross-cut');
    expect(said).toContain('1440');
    expect(said).toContain('Two boards; one cannot do.');
    expect(said).toContain('Proved best. No plan costs less.');
    expect(said).toContain('\u00a338.40');
    expect(said).toContain('\u00a359.90');
  });

  it('give a set-up its figures to the tenth, cautions, ticks and the trial cut', () => {
    const said = page('Set-up 2');
    for (const word of [
      '39.7',
      '45.0',
      '10.9',
      'jig 18.2 + 21.5',
      'C1, end 1',
      'C2, end 2',
      'Half the difference',
    ])
      expect(said).toContain(word);
    for (const caution of DERIVED.setups.setups[1]!.cautions)
      for (const word of caution.split(' ')) expect(said).toContain(word);
    expect(said).toContain('at full size');
    expect(page('Set-up 1')).not.toContain('Trial cut');
  });

  it('lay out the days with waits, and judge worst first', () => {
    expect(page('Days')).toContain('Wednesday 25 November 2026');
    expect(page('Days')).toContain('In clamps until');
    const said = page('Checks');
    const places = ['Stop', 'Attend', 'Not known', 'Note', 'Pass, 1'].map(word => said.indexOf(word));
    expect(places.every(p => p >= 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
    expect(said).toContain('(read in the source)');
  });

  it('run nowhere over the edge of the paper', () => {
    for (const p of pages) expect(overPage(p, ruler)).toEqual([]);
  });

  it.each(['mm', 'in'] as const)('set no two texts into each other, in %s', unit => {
    for (const p of packPages(DERIVED, { ...INFO, unit }, ruler)) expect(collisions(p, ruler)).toEqual([]);
  });

  it('say what could not be worked out', () => {
    const broken = {
      ...DERIVED,
      faults: [{ place: 'parts.leg.length', fault: 'no such name: heigt', mend: 'write height' }],
      setups: {
        ...DERIVED.setups,
        unmade: [{ instance: 'leg', cut: 'taper', reason: 'No sled.', mend: 'Plane it.' }],
      },
    };
    const said = packPages(broken, INFO, ruler).map(wordsOf).join(' ');
    expect(said).toContain('parts.leg.length');
    expect(said).toContain('No sled. Plane it.');
  });

  it('give no size of a part that is to be measured first', () => {
    const piece = {
      ...DERIVED.piece,
      instances: DERIVED.piece.instances.map(i =>
        i.id === 'shelf' ? { ...i, measureFirst: { when: 'at the dry fit', reserve: i.size } } : i,
      ),
    };
    const parts = packPages({ ...DERIVED, piece }, INFO, ruler).filter(p => p.title === 'Parts');
    const said = parts.map(wordsOf).join(' ');
    expect(said).toContain('Measure first, at the dry fit');
    expect(said).not.toMatch(/Shelf 1 600/);
  });

  it('are drawn in inches when asked', () => {
    const said = packPages(DERIVED, { ...INFO, unit: 'in' }, ruler)
      .map(wordsOf)
      .join(' ');
    expect(said).toContain('Parts, cut sizes in in');
    expect(said).toContain('54 21/64');
  });

  it('hold up when there is nothing', () => {
    const empty = {
      ...DERIVED,
      piece: { ...DERIVED.piece, instances: [], groups: [] },
      cutting: { materials: [], buy: [], orders: [], cost: 0 },
      setups: { ...DERIVED.setups, setups: [] },
      days: { ...DERIVED.days, days: [], waits: [] },
      checks: [],
    };
    const bare = packPages(empty, INFO, ruler);
    expect(bare.map(p => p.title)).toEqual(['Summary', 'Parts', 'Cutting', 'Checks']);
  });
});

describe('the pack as a PDF', () => {
  it('is the same bytes for the same input', async () => {
    const [a, b] = [await jobPack(DERIVED, INFO, fonts), await jobPack(DERIVED, INFO, fonts)];
    expect(Buffer.compare(Buffer.from(a), Buffer.from(b))).toBe(0);
    expect(Buffer.from(a).toString('latin1', 0, 5)).toBe('%PDF-');
  });

  it('says on its pages what the pages say, in its own embedded fonts', async () => {
    const read = readPdf(await jobPack(DERIVED, { ...INFO, compress: false }, fonts));
    expect(read.pages).toHaveLength(pages.length);
    expect(read.pages[0]).toContain('Porch bench');
    // A letter outside the basic set comes from the extended cut.
    expect(read.pages[0]).toContain('\u017c');
    expect(read.pages[pages.findIndex(p => p.title === 'Set-up 2')]).toContain('39.7');
    expect(read.pages.join('')).not.toContain('\ufffd');
    expect(new Set(read.fonts.map(f => f.replace(/^[A-Z]+\+/, '')))).toEqual(
      new Set([
        'EncodeSansSemiCondensed-Regular',
        'EncodeSansSemiCondensed-SemiBold',
        'EncodeSansCondensed-SemiBold',
        'SourceSerif4-Regular',
        'SourceSerif4-SemiBold',
        'SourceSerif4-Italic',
      ]),
    );
    expect(read.info).toContain('D:20261125000000Z');
  });

  it('changes with its date and nothing else of the clock', async () => {
    const later = readPdf(await jobPack(DERIVED, { ...INFO, date: '2026-12-01', compress: false }, fonts));
    expect(later.info).toContain('D:20261201000000Z');
    expect(later.pages[0]).toContain('1 December 2026');
  });
});
