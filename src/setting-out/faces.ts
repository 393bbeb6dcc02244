import { directionToWorld, type Frame } from '../geometry/frame.ts';
import { dot, type Vec3, vec } from '../geometry/vector.ts';
import type { LocalFace } from '../results/cuts.ts';
import type { Direction, FaceWord } from './schema.ts';

export const LOCAL_FACES: readonly LocalFace[] = ['end1', 'end2', 'backEdge', 'faceEdge', 'back', 'face'];

/** Outward normal of each face in the part's frame. */
export const LOCAL_NORMAL: Record<LocalFace, Vec3> = {
  end1: vec(-1, 0, 0),
  end2: vec(1, 0, 0),
  backEdge: vec(0, -1, 0),
  faceEdge: vec(0, 1, 0),
  back: vec(0, 0, -1),
  face: vec(0, 0, 1),
};

export const OPPOSITE: Record<LocalFace, LocalFace> = {
  end1: 'end2',
  end2: 'end1',
  backEdge: 'faceEdge',
  faceEdge: 'backEdge',
  back: 'face',
  face: 'back',
};

export const SIZE_OF_AXIS = { x: 'length', y: 'width', z: 'thickness' } as const;

export const isHigh = (face: LocalFace): boolean => face === 'end2' || face === 'faceEdge' || face === 'face';

export const DIRECTION: Record<Direction, Vec3> = {
  left: vec(-1, 0, 0),
  right: vec(1, 0, 0),
  front: vec(0, -1, 0),
  back: vec(0, 1, 0),
  up: vec(0, 0, 1),
  down: vec(0, 0, -1),
};

const WORLD_NORMAL: Record<Exclude<FaceWord, 'end1' | 'end2'>, Vec3> = {
  left: DIRECTION.left,
  right: DIRECTION.right,
  front: DIRECTION.front,
  back: DIRECTION.back,
  bottom: DIRECTION.down,
  top: DIRECTION.up,
};

/** The part's own face that looks the way the word says; ends may be named as ends. */
export function localFace(word: FaceWord, frame: Frame): LocalFace {
  if (word === 'end1' || word === 'end2') return word;
  const wanted = WORLD_NORMAL[word];
  let best: LocalFace = 'face';
  let most = -2;
  for (const face of LOCAL_FACES) {
    const along = dot(directionToWorld(frame, LOCAL_NORMAL[face]), wanted);
    if (along > most + 1e-9) {
      most = along;
      best = face;
    }
  }
  return best;
}
