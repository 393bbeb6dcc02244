import type { LocalFace } from '../results/cuts.ts';
import type { PartGroup, Piece } from '../results/piece.ts';
import type { Setting } from '../results/setups.ts';
import type { SolverStatus } from '../results/solver.ts';

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** `5.0 x 45` as it is set: `5.0 \u00d7 45`. */
export const crossed = (text: string): string => text.replace(/(\d) x (?=\d)/g, '$1 \u00d7 ');

/** Faces of a part in the words of the bench. */
export const FACE_WORD: Record<LocalFace, string> = {
  face: 'face side',
  back: 'back',
  faceEdge: 'face edge',
  backEdge: 'back edge',
  end1: 'end 1',
  end2: 'end 2',
};

const SETTING_WORD: Record<string, string> = {
  speed: 'Speed, turns a minute',
  fence: 'Fence, scale reads',
  stop: 'Stop, from the blade',
  'gauge 2': 'Second gauge',
};

export const settingWord = (setting: Setting): string => SETTING_WORD[setting.name] ?? capital(setting.name);

/** Plain words of a proof; nothing where there is none, since a gap is told with the plan itself. */
export const proof = (status: SolverStatus, better: string): string =>
  status === 'proved best' ? `Proved best. No plan ${better}.` : '';

/** How far from the best a plan may be, per cent, rounded up: for sentences. */
export function gapWords(status: SolverStatus, value: number, bound: number): string {
  if (status === 'none' || value <= 0) return '';
  if (bound <= 0) return 'The best found; how much better one could be is not known.';
  return `The best found, within ${Math.max(0, Math.ceil(((value - bound) / value) * 100))}\u2009% of what any plan could do.`;
}

/** `C1`, `C2` within a mark of several, `D` where there is one. */
export function instanceMarks(piece: Piece): Map<string, string> {
  const marks = new Map<string, string>();
  for (const group of piece.groups)
    group.instances.forEach((id, i) => {
      marks.set(id, group.instances.length === 1 ? group.mark : numbered(group, i));
    });
  return marks;
}

/** Handed marks end in L or R: the number stands before the hand, `A1 L`. */
const numbered = (group: PartGroup, i: number): string => {
  const [letter = '', hand] = group.mark.split(' ');
  return hand === undefined ? `${letter}${i + 1}` : `${letter}${i + 1} ${hand}`;
};
