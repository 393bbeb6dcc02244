/** Saws a piece of stock again from its list of cuts and compares what comes off with what the plan says. */
import type { SawCut, StockUse } from '../results/cutting.ts';

interface Rect {
  x: number;
  y: number;
  length: number;
  width: number;
}

/** mm: sizes are kept to 0.01. */
const CLOSE = 0.004;
const same = (a: number, b: number): boolean => Math.abs(a - b) <= CLOSE;
const alike = (a: Rect, b: Rect): boolean =>
  same(a.x, b.x) && same(a.y, b.y) && same(a.length, b.length) && same(a.width, b.width);
const show = (r: Rect): string => `${r.length} x ${r.width} at ${r.x}, ${r.y}`;

export function resaw(use: StockUse): string[] {
  const faults: string[] = [];
  let bench: Rect[] = [{ x: 0, y: 0, length: down(use.length), width: down(use.width) }];
  use.cuts.forEach((cut, i) => {
    if (cut.order !== i + 1) faults.push(`cut ${i + 1} carries the number ${cut.order}`);
    const hit = bench.find(piece => divides(cut, piece));
    if (!hit) {
      faults.push(`cut ${cut.order} at ${cut.at} does not go from edge to edge of any piece`);
      return;
    }
    const wanted = setting(cut, hit);
    if (!same(cut.setting, wanted)) faults.push(`cut ${cut.order} is set to ${cut.setting}, not ${wanted}`);
    bench = bench.flatMap(piece => (piece === hit ? parted(cut, piece, use.kerf) : [piece]));
  });
  const expected: { what: string; rect: Rect }[] = [
    ...use.placed.map(placed => ({ what: placed.instance, rect: placed })),
    ...use.left.map(left => ({ what: 'a piece left', rect: left })),
  ];
  for (const { what, rect } of expected) {
    const at = bench.findIndex(piece => alike(piece, rect));
    if (at < 0) faults.push(`${what}, ${show(rect)}, does not come off the saw`);
    else bench.splice(at, 1);
  }
  for (const piece of bench) faults.push(`${show(piece)} comes off the saw and is not in the plan`);
  return faults;
}

/** Stock is used to the whole 0.01 mm below its size. */
const down = (mm: number): number => Math.floor(mm * 100 + 1e-6) / 100;

function divides(cut: SawCut, piece: Rect): boolean {
  const [side, sideSize, near, size] =
    cut.kind === 'cross'
      ? [piece.y, piece.width, piece.x, piece.length]
      : [piece.x, piece.length, piece.y, piece.width];
  const across = same(cut.from, side) && same(cut.to, side + sideSize);
  return across && cut.at > near + CLOSE && cut.at < near + size - CLOSE;
}

const setting = (cut: SawCut, piece: Rect): number => {
  const [near, size] = cut.kind === 'cross' ? [piece.x, piece.length] : [piece.y, piece.width];
  return cut.trim ? near + size - cut.at : cut.at - near;
};

/** The two pieces beside the kerf; one that the kerf takes whole is gone. */
function parted(cut: SawCut, piece: Rect, kerf: number): Rect[] {
  const cross = cut.kind === 'cross';
  const near = cross ? piece.x : piece.y;
  const far = near + (cross ? piece.length : piece.width);
  const first = cut.trim ? cut.at - kerf : cut.at;
  const second = cut.trim ? cut.at : cut.at + kerf;
  const part = (from: number, to: number): Rect =>
    cross ? { ...piece, x: from, length: to - from } : { ...piece, y: from, width: to - from };
  return [part(near, first), part(second, far)].filter(rect => (cross ? rect.length : rect.width) > CLOSE);
}
