import PDFDocument from 'pdfkit';
import type { DisplayList, Item, Look, TextItem } from '../drawings/list.ts';
import { CLEAR_PAD } from '../drawings/manner.ts';
import { dashes, PAPER_INK, WEIGHTS } from '../drawings/palette.ts';
import { type PaperFonts, stretches } from './fonts.ts';
import { featuresOf, pdfRuler, type Ruler, registerFonts, setFont } from './pdf-fonts.ts';

export interface PdfFacts {
  title: string;
  subject: string;
  /** ISO date: the only time in the file, so that one input gives one file. */
  date: string;
  programVersion: string;
  /** Left out in tests that read the file. */
  compress?: boolean;
}

const PT_PER_MM = 72 / 25.4;

interface Hand {
  doc: InstanceType<typeof PDFDocument>;
  list: DisplayList;
  ruler: Ruler;
}

/** Pages, drawn as display lists in millimetres, as a PDF with its fonts embedded. */
export function writePdf(
  pages: readonly DisplayList[],
  fonts: PaperFonts,
  facts: PdfFacts,
  ruler: Ruler = pdfRuler(fonts),
): Promise<Uint8Array> {
  const doc = new PDFDocument({
    autoFirstPage: false,
    font: '',
    compress: facts.compress ?? true,
    lang: 'en-GB',
    displayTitle: true,
    info: {
      Title: facts.title,
      Subject: facts.subject,
      Creator: `Scantling ${facts.programVersion}`,
      Producer: 'Scantling',
      CreationDate: new Date(`${facts.date}T00:00:00Z`),
      ModDate: new Date(`${facts.date}T00:00:00Z`),
    },
  });
  const chunks: Uint8Array[] = [];
  const done = new Promise<Uint8Array>((resolve, reject) => {
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    doc.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    doc.on('error', reject);
  });
  registerFonts(doc, fonts);
  for (const list of pages) {
    doc.addPage({ size: [list.width * PT_PER_MM, list.height * PT_PER_MM], margin: 0 });
    doc.save().scale(PT_PER_MM);
    doc.lineJoin('round').lineCap('round');
    for (const item of list.items) draw(item, { doc, list, ruler });
    doc.restore();
  }
  doc.end();
  return done;
}

function draw(item: Item, hand: Hand): void {
  const { doc } = hand;
  switch (item.kind) {
    case 'group':
      for (const child of item.items) draw(child, hand);
      return;
    case 'text':
      drawText(item, hand);
      return;
    case 'circle':
      doc.circle(item.centre[0], item.centre[1], item.radius);
      break;
    case 'path':
      for (const command of item.d) {
        if (command[0] === 'M') doc.moveTo(command[1], command[2]);
        else if (command[0] === 'L') doc.lineTo(command[1], command[2]);
        else if (command[0] === 'C')
          doc.bezierCurveTo(command[1], command[2], command[3], command[4], command[5], command[6]);
        else doc.closePath();
      }
      break;
    default: {
      item.points.forEach(([x, y], i) => {
        if (i === 0) doc.moveTo(x, y);
        else doc.lineTo(x, y);
      });
      if (item.kind === 'polygon') doc.closePath();
    }
  }
  ink(item, hand);
}

/** Fills and strokes the path that stands open, by its roles. */
function ink(look: Look, { doc, list }: Hand): void {
  const weights = WEIGHTS[list.unit].width;
  const wash = look.wash === undefined ? undefined : PAPER_INK.wash(look.wash);
  const sealed = look.stroke === undefined && look.seal === true && wash !== undefined;
  if (look.stroke === undefined && !sealed) {
    if (wash === undefined) doc.stroke('#000000');
    else doc.fill(wash);
    return;
  }
  doc.lineWidth(sealed ? weights.hatch : weights[look.stroke!] * list.weight);
  const dash = look.stroke === undefined ? undefined : dashes(look.stroke, list.unit);
  if (dash) doc.lineCap('butt').addContent(`[${dash.join(' ')}] 0 d`);
  const stroke = sealed ? wash : PAPER_INK.tone(look.tone ?? 'ink');
  if (wash === undefined) doc.stroke(stroke);
  else doc.fillAndStroke(wash, stroke);
  if (dash) doc.undash().lineCap('round');
}

function drawText(item: TextItem, { doc, ruler }: Hand): void {
  const [x, y] = item.at;
  const widths = item.runs.map(run => ruler.width(run, item.face, item.size));
  const width = widths.reduce((a, b) => a + b, 0);
  const left = item.anchor === 'start' ? x : item.anchor === 'end' ? x - width : x - width / 2;
  doc.save();
  if (item.turn) doc.rotate(item.turn, { origin: [x, y] });
  if (item.clear) {
    const pad = item.size * CLEAR_PAD;
    doc
      .rect(left - pad, y - item.size * 0.86, width + 2 * pad, item.size * 1.18)
      .fill(PAPER_INK.wash(item.clear));
  }
  let at = left;
  item.runs.forEach(run => {
    const size = item.size * (run.size ?? 1);
    doc.fillColor(PAPER_INK.tone(run.tone ?? 'ink'));
    for (const stretch of stretches(run.text)) {
      setFont(doc, item.face, run.strong ?? false, stretch, size);
      const features = featuresOf(stretch);
      doc.text(stretch.text, at, y, { lineBreak: false, baseline: 'alphabetic', features });
      at += ruler.stretch(stretch, item.face, run.strong ?? false) * size;
    }
  });
  doc.restore();
}
