/** Small words that titles and remedies share: lengths in mm, masses, names in a row. */
import { formatLength, roundTo } from '../quantities/length.ts';

/** `2.5 mm`: remedies are plain sentences, so the unit stands in them. */
export const inMm = (value: number, decimals = 1): string =>
  `${formatLength(value, { unit: 'mm', decimals })} mm`;

export const inKg = (value: number): string => `${roundTo(value, 1)} kg`;

export const inPercent = (value: number): string => `${roundTo(value, 1)} %`;

/** `leg`, `leg and rail`, `leg, rail and 3 more`. */
export function listed(names: readonly string[], most = 3): string {
  const unique = [...new Set(names)];
  if (unique.length <= 1) return unique[0] ?? '';
  if (unique.length > most) return `${unique.slice(0, most).join(', ')} and ${unique.length - most} more`;
  return `${unique.slice(0, -1).join(', ')} and ${unique.at(-1)}`;
}

/** First letter up, the rest as it is. */
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

/** A part's name in the middle of a sentence: `lower cross rail`; `MDF core` and `2nd shelf` stay as they are. */
export const mid = (name: string): string =>
  /^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
