import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arc, group, line, place, rect, words } from '../../src/drawings/list.ts';
import { DESK, list } from '../../src/drawings/manner.ts';
import { svgTree, tidy, toSvg } from '../../src/drawings/svg.ts';

const drawing = (items: Parameters<typeof list>[4]) => list(DESK, 'A test', 100, 50, items);

describe('a display list as SVG', () => {
  it('writes roles as colour variables on screen and as fixed colours on print', () => {
    const one = drawing([rect(1, 2, 3, 4, { stroke: 'outline', wash: 'timber' })]);
    expect(toSvg(one)).toContain('fill="var(--timber,#f0e2c8)"');
    expect(toSvg(one)).toContain('stroke="var(--ink,#191c20)"');
    const print = toSvg(one, { ground: 'print' });
    expect(print).toContain('fill="#ffffff"');
    expect(print).not.toContain('var(');
  });

  it('carries ids, figures and addresses, so that a screen can make them pressable', () => {
    const text = toSvg(
      drawing([
        group([line([0, 0], [1, 1])], { id: 'a', figure: 'parts.leg.length', href: '#why', label: 'Leg' }),
      ]),
    );
    expect(text).toContain('<a id="a" data-figure="parts.leg.length" href="#why" aria-label="Leg">');
  });

  it('is well formed whatever the words are', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), content => {
        const text = toSvg(drawing([words([0, 0], content, { size: 10 })]));
        const inner = /<text[^>]*>([\s\S]*?)<\/text>/.exec(text)?.[1] ?? '';
        expect(inner).not.toMatch(/[<>]/);
        expect(inner.replace(/&(amp|lt|gt|quot);/g, '')).not.toContain('&');
        // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there
        expect(inner).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f]/);
      }),
      { seed: 2 },
    );
  });

  it('rounds to two decimals without minus nought', () => {
    expect([1.005, -0.001, 12.3456, -7.5].map(tidy)).toEqual(['1', '0', '12.35', '-7.5']);
  });

  it('names the drawing for those who hear it', () => {
    expect(svgTree(drawing([])).children[0]).toEqual({ tag: 'title', attributes: {}, children: ['A test'] });
  });
});

describe('placing', () => {
  it('moves and scales everything alike', () => {
    const items = place(
      [words([1, 2], 'x', { size: 3 }), arc([0, 0], 5, 0, 90, { stroke: 'edge' })],
      10,
      20,
      2,
    );
    expect(items[0]).toMatchObject({ at: [12, 24], size: 6 });
    const path = items[1];
    if (path?.kind !== 'path') throw new Error('not a path');
    const end = path.d.at(-1)!;
    expect(end[0]).toBe('C');
    expect(end[5]).toBeCloseTo(10, 6);
    expect(end[6]).toBeCloseTo(30, 6);
  });
});
