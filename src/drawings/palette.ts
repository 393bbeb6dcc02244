import type { Stroke, Tone, Wash } from './list.ts';

/** Colours by role: the light ground stands as fallback on screens, print is black on white with hatch. */
export interface Palette {
  tone: (tone: Tone) => string;
  wash: (wash: Wash) => string;
}

const STATES = ['stop', 'attend', 'note', 'pass', 'unknown', 'pending'];

const LIGHT: Record<string, string> = {
  ink: '#191c20',
  'ink-2': '#42474d',
  'ink-3': '#5d6368',
  rule: '#c9cdc6',
  pencil: '#4a2c9b',
  'pencil-wash': '#e2ddf2',
  sheet: '#fafbf8',
  'rod-face': '#f7f0e1',
  timber: '#f0e2c8',
  'timber-end': '#e3cda4',
  'timber-ink': '#85592c',
  metal: '#dbe3e8',
  'metal-ink': '#45596a',
  brass: '#efe3ae',
  'brass-ink': '#72600f',
  board: '#eae4d6',
  'board-ink': '#6f5f45',
  waste: '#e6e8e3',
  'waste-ink': '#6b706c',
  stop: '#9b1c1c',
  attend: '#824c00',
  note: '#3f4a54',
  pass: '#2b5a38',
  unknown: '#55595f',
  pending: '#55595f',
};

const PRINT: Record<string, string> = {
  ink: '#000000',
  'ink-2': '#262626',
  'ink-3': '#4d4d4d',
  rule: '#b8b8b8',
  pencil: '#3d2585',
  'timber-ink': '#4a4a4a',
  'metal-ink': '#3a3a3a',
  'brass-ink': '#4a4a4a',
  'board-ink': '#4a4a4a',
  'waste-ink': '#6b6b6b',
};

const MATERIALS = ['timber', 'metal', 'brass', 'board', 'waste'];

const toneToken = (tone: Tone): string => (MATERIALS.includes(tone) ? `${tone}-ink` : tone);
const washToken = (wash: Wash): string =>
  wash === 'rod' ? 'rod-face' : wash === 'picked' ? 'pencil-wash' : wash;
const variable = (token: string): string => `var(--${token},${LIGHT[token] ?? '#191c20'})`;

/** CSS variables of the house, with the light ground to fall back on: the file stands alone too. */
export const SCREEN: Palette = {
  tone: tone => variable(toneToken(tone)),
  wash: wash => variable(washToken(wash)),
};

/** Paper: every wash is white, every state black. A copier keeps everything. */
export const PAPER_INK: Palette = {
  tone: tone => PRINT[toneToken(tone)] ?? '#000000',
  wash: wash => (wash === 'ink' || STATES.includes(wash) ? '#000000' : '#ffffff'),
};

/** Widths and dashes, by unit. */
interface Weights {
  width: Record<Stroke, number>;
  hidden: readonly number[];
  chain: readonly number[];
}

export const WEIGHTS: Record<'px' | 'mm', Weights> = {
  px: {
    width: { outline: 2, edge: 1.1, thin: 0.7, hidden: 0.8, chain: 0.8, hatch: 0.5, silhouette: 4 },
    hidden: [5, 3],
    chain: [14, 3, 2.5, 3],
  },
  mm: {
    width: { outline: 0.5, edge: 0.25, thin: 0.18, hidden: 0.18, chain: 0.18, hatch: 0.13, silhouette: 1 },
    hidden: [1.6, 0.9],
    chain: [4, 0.9, 0.7, 0.9],
  },
};

export const dashes = (stroke: Stroke, unit: 'px' | 'mm'): readonly number[] | undefined =>
  stroke === 'hidden' || stroke === 'chain' ? WEIGHTS[unit][stroke] : undefined;
