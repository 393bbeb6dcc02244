import type { Check } from '../results/checks.ts';
import type { Size } from '../results/cuts.ts';
import type { Derived } from '../results/derived.ts';
import type { Instance, PartKind } from '../results/piece.ts';

/** The stable results of `--json` (docs/results.md): mm, kg, minor units, minutes, ISO 8601. */
export interface PartResult {
  mark: string;
  name: string;
  quantity: number;
  material: string;
  kind: PartKind;
  length: number | null;
  width: number | null;
  thickness: number | null;
  shoulderLength: number | null;
  measured: Partial<Size> | null;
  blank: Size;
  mass: number | null;
}

/** Float noise never leaves the program. */
const tidy = (value: number): number => Math.round(value * 1e6) / 1e6 || 0;
const tidySize = (s: Size): Size => ({
  length: tidy(s.length),
  width: tidy(s.width),
  thickness: tidy(s.thickness),
});

/** One row for like parts, handed ones apart. A part that is measured first has no sizes yet, only its reserve. */
export function partResults(derived: Derived): PartResult[] {
  const byId = new Map<string, Instance>(derived.piece.instances.map(i => [i.id, i]));
  return derived.piece.groups.map(g => {
    const first = byId.get(g.instances[0]!);
    const held = first?.measureFirst !== undefined;
    const size = (value: number): number | null => (held ? null : tidy(value));
    return {
      mark: g.mark,
      name: g.name,
      quantity: g.instances.length,
      material: g.material,
      kind: g.kind,
      length: size(g.size.length),
      width: size(g.size.width),
      thickness: size(g.size.thickness),
      shoulderLength: size(g.shoulderLength),
      measured: first?.measured ?? null,
      blank: tidySize(g.blank),
      mass: g.mass === null ? null : tidy(g.mass),
    };
  });
}

export const checkResults = (derived: Derived) =>
  derived.checks.map(
    ({ check, subject, severity, figure, limit, unit, source, basis, remedy, say, title }: Check) => ({
      check,
      subject,
      severity,
      figure: figure === null ? null : tidy(figure),
      limit: limit === null ? null : tidy(limit),
      unit,
      source,
      basis,
      remedy,
      say,
      title,
    }),
  );

/** The whole job as one object, for `derive --out`. */
export const allResults = (derived: Derived) => ({
  parts: partResults(derived),
  cut: derived.cutting,
  setups: derived.setups,
  days: derived.days,
  check: checkResults(derived),
  price: derived.price,
  faults: derived.faults,
});
