import PDFDocument from 'pdfkit';
import type { Face, TextRun } from '../drawings/list.ts';
import { FONT_KEYS, fontKey, type PaperFonts, type Stretch, stretches } from './fonts.ts';

type Doc = InstanceType<typeof PDFDocument>;

const nameOf = (key: string, extended: boolean): string => (extended ? `${key} extended` : key);

export function registerFonts(doc: Doc, fonts: PaperFonts): void {
  for (const key of FONT_KEYS) {
    doc.registerFont(nameOf(key, false), bufferOf(fonts[key].latin));
    doc.registerFont(nameOf(key, true), bufferOf(fonts[key].extended));
  }
}

const bufferOf = (bytes: Uint8Array): Buffer => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** Figures stand in columns: tabular and lining everywhere; fractions as fractions. */
export const featuresOf = (stretch: Stretch): PDFKit.Mixins.OpenTypeFeatures[] =>
  stretch.fraction ? ['frac', 'kern'] : ['tnum', 'lnum', 'kern', 'liga'];

export function setFont(doc: Doc, face: Face, strong: boolean, stretch: Stretch, size: number): void {
  doc.font(nameOf(fontKey(face, strong), stretch.extended)).fontSize(size * stretch.size);
}

/** Measures text as it will be set. Widths in the unit of `size`. */
export interface Ruler {
  width(run: TextRun, face: Face, size: number): number;
  /** Width of one stretch at size 1. */
  stretch(stretch: Stretch, face: Face, strong: boolean): number;
}

/** Measuring is the same for the same fonts, whoever asks. */
const rulers = new WeakMap<PaperFonts, Ruler>();

/** A ruler over the real fonts; keeps what it has measured. */
export function pdfRuler(fonts: PaperFonts): Ruler {
  const known = rulers.get(fonts) ?? makeRuler(fonts);
  rulers.set(fonts, known);
  return known;
}

function makeRuler(fonts: PaperFonts): Ruler {
  const doc = new PDFDocument({ autoFirstPage: false, font: '' });
  registerFonts(doc, fonts);
  const known = new Map<string, number>();
  const stretch = (part: Stretch, face: Face, strong: boolean): number => {
    const key = `${fontKey(face, strong)} ${part.extended} ${part.fraction} ${part.size} ${part.text}`;
    let em = known.get(key);
    if (em === undefined) {
      setFont(doc, face, strong, part, 1000);
      em = doc.widthOfString(part.text, { features: featuresOf(part) }) / 1000;
      known.set(key, em);
    }
    return em;
  };
  return {
    stretch,
    width: (run, face, size) =>
      stretches(run.text).reduce((sum, part) => sum + stretch(part, face, run.strong ?? false), 0) *
      size *
      (run.size ?? 1),
  };
}
