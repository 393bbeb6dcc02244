import type { Parts } from './parts.ts';

/** Samples laid another way: a third of a turn about the line through x, y and z, so that x becomes y, y z and z x. */

const DIRECTION: Record<string, string> = {
  right: 'back',
  back: 'up',
  up: 'right',
  left: 'front',
  front: 'down',
  down: 'left',
};
const PLACE: Record<string, string> = {
  left: 'front',
  right: 'back',
  front: 'bottom',
  back: 'top',
  bottom: 'left',
  top: 'right',
  centre_x: 'centre_y',
  centre_y: 'centre_z',
  centre_z: 'centre_x',
};
const NAMED = new RegExp(`\\.(${Object.keys(PLACE).join('|')})\\b`, 'g');

const turnedText = (v: unknown): unknown =>
  typeof v === 'string' ? v.replace(NAMED, (_, face: string) => `.${PLACE[face]}`) : v;

interface Laid {
  along?: string;
  facing?: string;
  turn?: { x?: number; y?: number; z?: number };
  at?: Record<string, unknown>;
}

function turnedPart(part: object): object {
  const { along, facing, turn, at, ...rest } = part as Laid;
  return {
    ...rest,
    ...(along ? { along: DIRECTION[along] } : {}),
    ...(facing ? { facing: DIRECTION[facing] } : {}),
    ...(turn ? { turn: { y: turn.x ?? 0, z: turn.y ?? 0, x: turn.z ?? 0 } } : {}),
    ...(at ? { at: Object.fromEntries(Object.entries(at).map(([k, v]) => [PLACE[k], turnedText(v)])) } : {}),
  };
}

export const turnedParts = (parts: Parts): Parts =>
  Object.fromEntries(Object.entries(parts).map(([id, part]) => [id, turnedPart(part)]));
