/** Reading a card: faces, distances from them, figures by name. */
import type { Axis } from '../geometry/vector.ts';
import { FACE_AXIS, type LocalFace, type Size } from '../results/cuts.ts';
import type { Setting } from '../results/setups.ts';

export const AXIS: Record<LocalFace, Axis> = FACE_AXIS;
export const HIGH: readonly LocalFace[] = ['end2', 'faceEdge', 'face'];

export const extent = (size: Size, axis: Axis): number =>
  axis === 'x' ? size.length : axis === 'y' ? size.width : size.thickness;

/** The coordinate that lies `distance` in from a face of the blank. */
export const inFrom = (size: Size, face: LocalFace, distance: number): number =>
  HIGH.includes(face) ? extent(size, AXIS[face]) - distance : distance;

/** The first figure of these names that a card gives. */
export const figure = (settings: readonly Setting[], ...names: string[]): number | undefined => {
  for (const name of names) {
    const value = settings.find(s => s.name === name)?.value.value;
    if (typeof value === 'number') return value;
  }
  return undefined;
};
