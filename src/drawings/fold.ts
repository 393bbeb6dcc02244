/**
 * A measure drawn with its long empty stretches left out, as a draughtsman breaks a long piece: lengths between
 * `marks` that are over `most` are drawn `kept` long. Monotone and continuous, true to scale elsewhere.
 */
export interface Fold {
  /** Drawn distance from the lowest mark, in the measure's own unit. */
  at: (value: number) => number;
  total: number;
  /** The stretches that were shortened. */
  breaks: { from: number; to: number }[];
}

export function fold(marks: readonly number[], most: number, kept: number): Fold {
  const sorted = [...new Set(marks)].sort((a, b) => a - b);
  const knots: { value: number; drawn: number }[] = [];
  const breaks: Fold['breaks'] = [];
  let drawn = 0;
  sorted.forEach((value, i) => {
    if (i > 0) {
      const before = sorted[i - 1]!;
      const gap = value - before;
      if (gap > most) breaks.push({ from: before, to: value });
      drawn += gap > most ? kept : gap;
    }
    knots.push({ value, drawn });
  });
  const at = (value: number): number => {
    const first = knots[0];
    const last = knots.at(-1);
    if (!first || !last) return 0;
    if (value <= first.value) return first.drawn + value - first.value;
    if (value >= last.value) return last.drawn + value - last.value;
    const i = knots.findIndex(k => k.value >= value);
    const [a, b] = [knots[i - 1]!, knots[i]!];
    return a.drawn + ((value - a.value) / (b.value - a.value)) * (b.drawn - a.drawn);
  };
  return { at, total: drawn, breaks };
}
