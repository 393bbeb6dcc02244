import type { Face } from '../drawings/list.ts';

/** The cuts of the two families that papers are set in. */
export const FONT_KEYS = ['figures', 'figures-strong', 'big', 'words', 'words-strong', 'remark'] as const;
export type FontKey = (typeof FONT_KEYS)[number];

/** Bytes of each cut, basic Latin and the extension apart, as the font packages split them. */
export type PaperFonts = Record<FontKey, { latin: Uint8Array; extended: Uint8Array }>;

/**
 * Where the fonts are, as module paths: static cuts, because a variable font packed as woff2 cannot be
 * subset into a PDF (its glyph table is transformed and its instances have no outlines of their own).
 */
export const FONT_FILES: Record<FontKey, { latin: string; extended: string }> = {
  figures: files('encode-sans-semi-condensed', '400-normal'),
  'figures-strong': files('encode-sans-semi-condensed', '600-normal'),
  big: files('encode-sans-condensed', '600-normal'),
  words: files('source-serif-4', '400-normal'),
  'words-strong': files('source-serif-4', '600-normal'),
  remark: files('source-serif-4', '400-italic'),
};

function files(family: string, cut: string): { latin: string; extended: string } {
  const file = (subset: string): string => `@fontsource/${family}/files/${family}-${subset}-${cut}.woff`;
  return { latin: file('latin'), extended: file('latin-ext') };
}

export const fontKey = (face: Face, strong: boolean): FontKey => {
  if (face === 'big' || face === 'remark') return face;
  return strong ? `${face}-strong` : face;
};

/** A stretch of text in one font file, with the features it takes. */
export interface Stretch {
  text: string;
  extended: boolean;
  /** A fraction, to be set as one. */
  fraction: boolean;
  /** Share of the size: thin spaces are full ones set small, since not every cut has one of its own. */
  size: number;
}

/** What neither subset holds, said in signs that they do. */
const INSTEAD: Record<string, string> = {
  '\u202f': '\u2009',
  '\u2192': 'to',
  '\u2264': 'at most ',
  '\u2265': 'at least ',
  '\u2248': 'about ',
  '\u2032': "'",
  '\u2033': '"',
  '\u2611': 'x',
};

const inLatin = (code: number): boolean =>
  (code >= 0x20 && code <= 0x7e) ||
  (code >= 0xa0 && code <= 0xff) ||
  [
    0x131, 0x152, 0x153, 0x2009, 0x2013, 0x2014, 0x2018, 0x2019, 0x201c, 0x201d, 0x2022, 0x2026, 0x20ac,
    0x2212,
  ].includes(code);

const inExtended = (code: number): boolean =>
  (code >= 0x100 && code <= 0x17f) || (code >= 0x218 && code <= 0x21b);

const THIN_SHARE = 0.6;

const FRACTION = /\d{1,3}\/(?:2|4|8|16|32|64|128)(?!\d)/g;

/** The whole number and its fraction stand close and are never parted: 1 3/4. */
export const closeFractions = (text: string): string =>
  text.replace(/(\d) (?=\d{1,3}\/(?:2|4|8|16|32|64|128)(?!\d))/g, '$1\u2009');

/** Splits text by the font file that holds it. A sign that no file holds becomes a question mark, never a gap. */
export function stretches(text: string): Stretch[] {
  const known = [...text].map(c => INSTEAD[c] ?? c).join('');
  const closed = closeFractions(known);
  const found: Stretch[] = [];
  let last = 0;
  for (const match of closed.matchAll(FRACTION)) {
    found.push(...byFile(closed.slice(last, match.index)));
    found.push({ text: match[0], extended: false, fraction: true, size: 1 });
    last = match.index + match[0].length;
  }
  return [...found, ...byFile(closed.slice(last))];
}

function byFile(text: string): Stretch[] {
  const found: Stretch[] = [];
  for (const c of text) {
    const code = c.codePointAt(0)!;
    const thin = c === '\u2009';
    const extended = !inLatin(code) && inExtended(code);
    const sign = thin ? '\u00a0' : inLatin(code) || extended ? c : code < 0x20 ? ' ' : '?';
    const size = thin ? THIN_SHARE : 1;
    const open = found.at(-1);
    if (open && open.extended === extended && open.size === size) open.text += sign;
    else found.push({ text: sign, extended, fraction: false, size });
  }
  return found;
}
