import { checkJobDocument } from '../src/job-file/read.ts';
import { JOINT_CATALOGUE, JOINTS } from '../src/joints/index.ts';
import type { JointLimit, JointMade, Piece } from '../src/results/piece.ts';
import type { Source } from '../src/results/source.ts';
import type { JointFigure, JointType, Meets } from '../src/setting-out/joint-type.ts';
import { setOut } from '../src/setting-out/set-out.ts';
import { PIECES } from '../tests/joints/pieces/index.ts';
import { jointSvg } from './joint-picture.ts';

/** docs/joints.md and its drawings, made from the catalogue and from a sample of each joint. */

/** Thickness of the thinner part of every sample, mm. */
const THICK = 20;
const NONE = { length: 0, width: 0, thickness: 0 };

const MEETS: Record<Meets, string> = {
  'end to face': 'an end of the first part lies flat against a face of the second',
  'end to end': 'an end of the first part lies flat against an end of the second',
  'end to slope': 'an end of the first part runs against a face of the second at whatever slant',
  'edge to face': 'an end or edge of the first part lies flat against a face of the second',
  'face to face': 'two faces lie flat against each other',
  overlap: 'the bodies of the two share room',
  corner: 'the bodies of the two share room at a corner',
};

interface Sample {
  piece: Piece;
  made: JointMade;
  value(figure: string): string;
}

function sampleOf(type: string): Sample {
  const { parts, set } = PIECES[type]!(THICK);
  const { document } = checkJobDocument({
    scantling: 'job/1',
    title: type,
    parts,
    joints: { j: { type, from: 'from', into: 'into', ...(set ? { set } : {}) } },
  });
  const out = setOut(document!, JOINT_CATALOGUE, {
    allowances: { timber: NONE, sheet: NONE, bar: NONE, tube: NONE },
    density: () => 700,
  });
  const made = out.piece.joints[0];
  if (!made)
    throw new Error(`the sample of ${type} makes no joint: ${out.faults.map(f => f.fault).join('; ')}`);
  return {
    piece: out.piece,
    made,
    value: figure => {
      const m = out.book.value(`joints.j.${figure}`);
      return m?.type === 'number' ? String(tidy(m.value)) : m?.type === 'text' ? m.value : '';
    },
  };
}

const tidy = (n: number): number => Math.round(n * 100) / 100;
const UNIT: Record<JointFigure['kind'], string> = {
  length: ' mm',
  angle: ' deg',
  number: '',
  count: '',
  text: '',
};

export const jointPictures = (): Map<string, string> =>
  new Map(
    JOINTS.map(j => {
      const { piece, made } = sampleOf(j.type);
      return [`${j.type}.svg`, jointSvg(piece, made, THICK)];
    }),
  );

export function jointsPage(): string {
  const index = JOINTS.map(j => `- [${j.title}](#${j.type}): ${j.says}`);
  return `# Joints

Made from the catalogue by \`node --import tsx scripts/write-joints.ts\`; do not edit by hand. Every joint is one file in \`src/joints\`. Under \`joints\` of a job file, \`type\` is the name in brackets and \`set\` takes the figures by their names; what is not set follows the numbered rule. The column "here" is the figure of the sample that is drawn, whose thinner part is ${THICK} mm thick, and the range is what the trade keeps at that size. Play for the fit is left at the machine and not drawn. Rules without a published source say "common practice" or "remembered": judge those by your own work.

${index.join('\n')}

${JOINTS.map(section).join('\n')}`;
}

function section(j: JointType): string {
  const sample = sampleOf(j.type);
  const { made } = sample;
  const lengthens = sample.piece.instances.find(i => i.id === 'from')!;
  const added = Object.entries(lengthens.added).filter(([, by]) => by > 0);
  const lines = [
    `- Where: ${MEETS[j.meets]}${j.within ? `, or up to ${j.within} mm from it` : ''}.`,
    `- Needs: ${j.needs.join('; ')}.`,
    `- Length allowance: ${added.length > 0 ? `the first part grows by its \`${j.adds(contactOf(added[0]![0]))}\`, here ${tidy(added[0]![1])} mm` : 'none'}.`,
    `- Cuts: ${cutWords(sample)}.`,
    ...(made.weld ? [`- Weld: ${Math.round(made.weld.length)} mm, all round.`] : []),
    `- Glue: ${made.glue.length > 0 ? made.glue.map(g => `${Math.round(g.area)} mm\u00b2 ${GRAIN[g.grain]}`).join(', ') : 'none'}.`,
    ...(made.fasteners.length > 0
      ? [`- Fasteners: ${made.fasteners.map(f => `${f.item}, ${f.quantity}`).join('; ')}.`]
      : []),
  ];
  return `<a id="${j.type}"></a>
## ${j.title} (\`${j.type}\`)

![${j.title}, taken apart](joints/${j.type}.svg)

${j.says}

${lines.join('\n')}

| figure | | rule of the trade | here | range |
|---|---|---|---|---|
${j.figures.map(f => figureRow(f, sample)).join('\n')}
${otherRanges(j, made)}
${rulesOf(j)
  .map(r => `- **${r.number}** ${r.says} ${r.reason} (${sourceWords(r.source)})`)
  .join('\n')}
`;
}

const GRAIN = {
  long: 'with the grain',
  end: 'on end grain',
  cross: 'across the grain',
  sheet: 'of sheet',
  metal: 'of metal',
} as const;

/** The face by which the sample was lengthened, for the joint's own word on it. */
const contactOf = (fromFace: string): Parameters<JointType['adds']>[0] =>
  ({ fromFace }) as Parameters<JointType['adds']>[0];

function cutWords({ piece, made }: Sample): string {
  const of = (id: string): string => {
    const kinds = piece.instances
      .find(i => i.id === id)!
      .cuts.filter(c => c.by === made.joint)
      .map(c => (c.kind === 'hole' ? `${c.role} hole` : c.kind));
    return [...new Set(kinds)]
      .map(k => counted(kinds.filter(o => o === k).length, k.replaceAll('-', ' ')))
      .join(', ');
  };
  const [first, second] = [of('from'), of('into')];
  return (
    [first && `${first} in the first part`, second && `${second} in the second`].filter(Boolean).join('; ') ||
    'none'
  );
}

const counted = (n: number, what: string): string =>
  `${n} ${what}${n > 1 ? (/(s|x|ch|sh)$/.test(what) ? 'es' : 's') : ''}`;

function figureRow(f: JointFigure, sample: Sample): string {
  const range = sample.made.limits
    .filter(l => l.figure === f.name)
    .map(rangeWords)
    .join('; ');
  const choices = f.choices && f.choices.length <= 4 ? ` (${f.choices.join(', ')})` : '';
  return `| \`${f.name}\` | ${f.label}${choices} | ${f.formula} (${f.rule.number}) | ${sample.value(f.name)}${UNIT[f.kind]} | ${range} |`;
}

const rangeWords = (l: JointLimit): string => {
  const [min, max] = [l.min, l.max].map(v => (v === undefined ? undefined : tidy(v)));
  const words =
    min !== undefined && max !== undefined
      ? `${min} to ${max}`
      : min !== undefined
        ? `${min} or more`
        : `${max} or less`;
  return `${words} (${l.rule.number})`;
};

/** What is kept in range though it is no figure of its own: wood left, hold of a screw. */
function otherRanges(j: JointType, made: JointMade): string {
  const names = new Set(j.figures.map(f => f.name));
  const others = made.limits.filter(l => !names.has(l.figure));
  if (others.length === 0) return '';
  return `\nKept besides: ${others.map(l => `${l.figure.replaceAll('.', ' ')} ${tidy(l.value)}, ${rangeWords(l)}`).join('; ')}.\n`;
}

/** Rules of the joint and those its figures quote, each once. */
const rulesOf = (j: JointType) =>
  [...new Set([...j.figures.map(f => f.rule), ...j.rules])].sort((a, b) => (a.number < b.number ? -1 : 1));

/** Whose word a rule is; a remembered one says so. */
const sourceWords = ({ text, basis }: Source): string =>
  basis === 'memory' && !/remembered/.test(text) ? `${text}, remembered` : text;
