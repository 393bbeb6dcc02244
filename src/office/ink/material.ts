import { materialOf } from '../../drawings/material.ts';
import type { Instance } from '../../results/piece.ts';
import type { GrainFrame, InkMaterial } from './part-mesh.ts';

/** Which hatch and wash a part takes in a drawing. */
export function inkMaterial(instance: Pick<Instance, 'kind' | 'material'>): InkMaterial {
  const material = materialOf(instance.material, instance.kind);
  return material === 'timber' && instance.kind === 'bought-in' ? 'metal' : material;
}

export function grainFrame(instance: Instance): GrainFrame {
  const { frame, grain } = instance;
  return {
    grain: grain === 'width' ? frame.y : frame.x,
    round: instance.round,
    ...(inkMaterial(instance) === 'board' ? { sheet: frame.z } : {}),
  };
}
