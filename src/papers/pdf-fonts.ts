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
}

/** A ruler over the real fonts; keeps what it has measured. */
export function pdfRuler(fonts: PaperFonts): Ruler {
  const doc = new PDFDocument({ autoFirstPage: false, font: '' });
  registerFonts(doc, fonts);
  const known = new Map<string, number>();
  return {
    width(run, face, size) {
      const key = `${fontKey(face, run.strong ?? false)} ${run.text}`;
      let em = known.get(key);
      if (em === undefined) {
        em = 0;
        for (const stretch of stretches(run.text)) {
          setFont(doc, face, run.strong ?? false, stretch, 1000);
          em += doc.widthOfString(stretch.text, { features: featuresOf(stretch) }) / 1000;
        }
        known.set(key, em);
      }
      return em * size * (run.size ?? 1);
    },
  };
}
