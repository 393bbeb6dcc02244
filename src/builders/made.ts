import { plainLength } from '../figures/expression.ts';
import type {
  AssemblyDocument,
  FeatureDocument,
  FigureText,
  JobDocument,
  JointDocument,
  ParameterDocument,
  PartDocument,
} from '../setting-out/schema.ts';

/** What a builder adds to the setting-out: the same collections as the job file's own. */
export interface Made {
  parameters: Record<string, ParameterDocument>;
  parts: Record<string, PartDocument>;
  joints: Record<string, JointDocument>;
  features: Record<string, FeatureDocument>;
  assemblies: Record<string, AssemblyDocument>;
  /** What of the order cannot be made; the field within the builder, empty for the whole. */
  refused?: { field: string; fault: string; mend: string }[];
}

/**
 * A written figure as it may stand inside an expression: plain lengths get their unit, expressions brackets. A
 * default is written with its unit already.
 */
export function within(document: JobDocument, text: FigureText | undefined, otherwise = '0 mm'): string {
  if (text === undefined) return otherwise;
  const plain = typeof text === 'number' ? undefined : plainLength(text, document.units ?? 'mm');
  if (typeof text === 'number') return `${text} ${document.units ?? 'mm'}`;
  return plain?.type === 'number' ? `${plain.value} mm` : `(${text})`;
}

/** A share with enough figures for a hundredth of a millimetre, and no exponent. */
export const share = (value: number): string => value.toFixed(6);
