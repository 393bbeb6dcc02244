/** Edits that clear a check: a figure of a joint the maker may set. */
import { JOINT_CATALOGUE } from '../joints/index.ts';
import { formatLength } from '../quantities/length.ts';
import type { Mend } from '../results/checks.ts';
import type { JointMade } from '../results/piece.ts';
import { capital } from './words.ts';

/** Lengths are written with their unit, since the file may count in another; to a tenth, never past the limit. */
function rounded(value: number, towards: 'up' | 'down'): number {
  const tenths = value * 10;
  return (towards === 'up' ? Math.ceil(tenths - 1e-6) : Math.floor(tenths + 1e-6)) / 10;
}

/**
 * The edit that sets a length of a joint. Undefined where the joint has no such figure to set, as for one that
 * only follows from others.
 * @param towards which way a figure between two tenths goes
 */
export function setJointLength(
  joint: JointMade,
  figure: string,
  value: number,
  towards: 'up' | 'down',
): Mend | undefined {
  const known = JOINT_CATALOGUE.get(joint.type)?.figures.find(f => f.name === figure);
  if (known?.kind !== 'length') return undefined;
  const mm = rounded(value, towards);
  const words = `${formatLength(mm, { unit: 'mm' })} mm`;
  return {
    parameter: `joints.${joint.joint}.${figure}`,
    value: mm,
    label: `${capital(known.label)} ${words}`,
    edit: { path: ['joints', joint.joint, 'set', figure], value: words },
  };
}
