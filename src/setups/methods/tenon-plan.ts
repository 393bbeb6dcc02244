import type { LocalFace, TenonCut } from '../../results/cuts.ts';
import { say1 } from '../figures.ts';
import { tenonLength, tenonWanted, type Wanted } from '../fit.ts';
import type { Task } from '../method.ts';
import { FACES, isMeasured, sizeWords, trueSize } from '../sizes.ts';

/** What is taken off one side of the stock to leave the tenon, and as far as where from its tip. */
export interface Side {
  face: LocalFace;
  /** Depth taken from that face, mm. */
  amount: number;
  how: string;
  /** From the tip to where the waste ends, mm: the shoulder, or the end of a haunch. */
  reach: number;
}

export interface TenonPlan {
  length: Wanted;
  thickness: Wanted;
  stock: number;
  stockWords: string;
  measured: boolean;
  axis: 'y' | 'z';
  otherAxis: 'y' | 'z';
  /** Both cheeks equal: cut by turning. */
  centred: boolean;
  /** Taken from the face side (or face edge), and from the other side. */
  high: Side | undefined;
  low: Side | undefined;
  /** Edge shoulders and haunch. */
  edges: Side[];
}

/** The tenon of a task, in figures from the reference surfaces. */
export function planTenon(task: Task<TenonCut>): TenonPlan {
  const { cut, instance } = task;
  const axis = cut.cheeks;
  const otherAxis = axis === 'z' ? 'y' : 'z';
  const stock = trueSize(instance, axis);
  const thickness = tenonWanted(task);
  const length = tenonLength(task);
  const { low, high } = cut[axis];
  const centred = low > 0.01 && high > 0.01 && Math.abs(low - high) < 0.1;
  const each = (stock - thickness.value) / 2;
  const eachHow = `half of ${sizeWords(instance, axis)} less ${say1(thickness.value)}`;
  const face = FACES[axis].high;
  const back = FACES[axis].low;
  const side = (f: LocalFace, amount: number, how: string): Side | undefined =>
    amount > 0.01 ? { face: f, amount, how, reach: length.value } : undefined;
  const takenHigh = low <= 0.01 ? stock - thickness.value : high;
  const highSide = centred
    ? side(face, each, eachHow)
    : high > 0.01
      ? side(
          face,
          takenHigh,
          low <= 0.01
            ? `${sizeWords(instance, axis)} less ${say1(thickness.value)}`
            : `as drawn ${say1(high)}`,
        )
      : undefined;
  const lowSide = centred
    ? side(back, each, eachHow)
    : low > 0.01
      ? side(
          back,
          stock - thickness.value - (high > 0.01 ? high : 0),
          `${sizeWords(instance, axis)} less ${say1(thickness.value)}${high > 0.01 ? ` less ${say1(high)}` : ''}`,
        )
      : undefined;
  return {
    length,
    thickness,
    stock,
    stockWords: sizeWords(instance, axis),
    measured: isMeasured(instance, axis),
    axis,
    otherAxis,
    centred,
    high: highSide,
    low: lowSide,
    edges: edgeSides(task, otherAxis, length.value, centred ? each : undefined),
  };
}

/** A tenon may be this much narrower than drawn, mm: its edges carry no glue (0.2 to 0.5 in all, remembered). */
const EDGE_PLAY = 0.1;

/**
 * An edge shoulder within `EDGE_PLAY` of the cheeks' takes their figure: one set-up the less, and the edges of a
 * tenon have play anyway.
 */
const edgeAmount = (drawn: number, cheek: number | undefined): { amount: number; how: string } =>
  cheek !== undefined && cheek - drawn > 0.005 && cheek - drawn <= EDGE_PLAY + 1e-9
    ? { amount: cheek, how: `as the cheeks; drawn ${say1(drawn)}, an edge has play` }
    : { amount: drawn, how: `as drawn ${say1(drawn)}` };

/** Edge shoulders: the haunch ends short of the tip, and beyond its width the edge goes to the shoulder. */
function edgeSides(task: Task<TenonCut>, axis: 'y' | 'z', length: number, cheek: number | undefined): Side[] {
  const { cut } = task;
  const sides: Side[] = [];
  for (const which of ['high', 'low'] as const) {
    const amount = cut[axis][which];
    if (amount <= 0.01) continue;
    const face = FACES[axis][which];
    const haunch = cut.haunch?.side === which && axis !== cut.cheeks ? cut.haunch : undefined;
    if (!haunch) {
      sides.push({ face, ...edgeAmount(amount, cheek), reach: length });
      continue;
    }
    sides.push({
      face,
      amount,
      how: `as drawn ${say1(amount)}`,
      reach: length - haunch.length,
    });
    const outside = amount - haunch.width;
    if (outside > 0.01)
      sides.push({
        face,
        amount: outside,
        how: `${say1(amount)} less haunch ${say1(haunch.width)}`,
        reach: length,
      });
  }
  return sides;
}

export const reachHow = (plan: TenonPlan, side: Side): string =>
  Math.abs(side.reach - plan.length.value) < 0.01
    ? plan.length.how
    : `tenon ${say1(plan.length.value)} less haunch ${say1(plan.length.value - side.reach)}`;

/** Like sides (same depth and reach) are one setting with the work turned. */
export function likeSides(sides: readonly (Side | undefined)[]): Side[][] {
  const groups: Side[][] = [];
  for (const side of sides) {
    if (!side) continue;
    const like = groups.find(
      g => Math.abs(g[0]!.amount - side.amount) < 0.03 && Math.abs(g[0]!.reach - side.reach) < 0.03,
    );
    if (like) like.push(side);
    else groups.push([side]);
  }
  return groups;
}
