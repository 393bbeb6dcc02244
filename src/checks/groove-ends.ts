/** A groove that runs out at a dovetailed end must do so where a tail covers it. */
import type { Check } from '../results/checks.ts';
import type { PocketCut, ProfileCut } from '../results/cuts.ts';
import { say } from '../results/message.ts';
import type { Instance } from '../results/piece.ts';
import { mm, text } from '../results/quantity.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { capital, inMm } from './words.ts';

export const CHK_46 = rule(
  'CHK-46',
  'A groove that runs through at a dovetailed end lies whole within one tail.',
  'In a pin its end shows as a hole in the corner.',
  'common practice',
  'common practice',
);

const SLACK = 1e-6;

/** Where an outline lies at a height of its second coordinate: lowest and highest of its first, mm. */
function spanAt(ring: readonly [number, number][], level: number): [number, number] | undefined {
  const at = ring.flatMap(([y, z], i): number[] => {
    const [p, q] = ring[(i + 1) % ring.length]!;
    if (Math.abs(z - level) < SLACK) return [y];
    return (z - level) * (q - level) < 0 ? [y + ((p - y) * (level - z)) / (q - z)] : [];
  });
  return at.length === 0 ? undefined : [Math.min(...at), Math.max(...at)];
}

/** How far a groove must move across the end to lie within a socket, mm; undefined when it is too wide for it. */
function shiftInto(socket: ProfileCut, { min, max }: PocketCut['box']): number | undefined {
  const spans = [min.z, max.z].map(level => spanAt(socket.polygon, level));
  if (spans.some(s => s === undefined)) return undefined;
  const low = Math.max(...spans.map(s => s![0]));
  const high = Math.min(...spans.map(s => s![1]));
  if (max.y - min.y > high - low + SLACK) return undefined;
  if (min.y < low - SLACK) return low - min.y;
  return max.y > high + SLACK ? high - max.y : 0;
}

/** Least move that hides the end of a groove; nothing where the end has no tails, `none` where no tail is wide enough. */
function shiftAt(groove: PocketCut, instance: Instance, end: number): number | 'none' | undefined {
  const sockets = instance.cuts.filter(
    (c): c is ProfileCut =>
      c.kind === 'dovetail' && c.axis === 'x' && c.from <= end + SLACK && c.to >= end - SLACK,
  );
  if (sockets.length === 0) return undefined;
  const shifts = sockets.flatMap(s => shiftInto(s, groove.box) ?? []);
  return shifts.length === 0 ? 'none' : shifts.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
}

function judgeGroove(groove: PocketCut, instance: Instance): Check[] {
  const { box } = groove;
  const ends = [0, instance.size.length].filter(x => box.min.x <= x + SLACK && box.max.x >= x - SLACK);
  const shifts = ends.flatMap(end => shiftAt(groove, instance, end) ?? []);
  const [first] = shifts;
  if (first === undefined) return [];
  const wrong = shifts.find(s => s !== 0);
  const by = typeof wrong === 'number' ? Math.ceil((Math.abs(wrong) - SLACK) * 10) / 10 : undefined;
  return [
    finding({
      check: 'groove end',
      subject: `${groove.by}.${instance.id}`,
      severity: wrong === undefined ? 'pass' : 'attend',
      rule: CHK_46,
      title:
        wrong === undefined
          ? `Groove of ${instance.name} runs out in a tail`
          : `Groove shows at the end of ${instance.name}`,
      figure: by ?? (wrong === undefined ? 0 : null),
      limit: 0,
      unit: 'length',
      remedy:
        wrong === undefined
          ? ''
          : by === undefined
            ? 'No tail is as wide as the groove: use fewer tails, or plug its ends.'
            : `Move the groove ${inMm(by, 1)} ${(wrong as number) > 0 ? 'from' : 'towards'} the back edge, into the tail, or plug its ends.`,
      say: say('The groove in {part} is {wide} wide and runs to its dovetailed end.', {
        part: text(capital(instance.name)),
        wide: mm(box.max.y - box.min.y),
      }),
    }),
  ];
}

export const grooveEndsCheck: CheckMaker = {
  name: 'groove end',
  rules: [CHK_46],
  judge: ({ piece }: CheckInput) =>
    piece.instances.flatMap(instance =>
      instance.cuts.flatMap(cut =>
        cut.kind === 'groove' && cut.run === 'x' ? judgeGroove(cut, instance) : [],
      ),
    ),
};
