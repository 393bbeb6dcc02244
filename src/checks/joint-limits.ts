/** The joints' own proportions: each limit a joint states, against the figure it got. */
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import type { JointLimit, JointMade } from '../results/piece.ts';
import { type Quantity, q, text } from '../results/quantity.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { setJointLength } from './mend.ts';
import { gather } from './view.ts';
import { capital } from './words.ts';

/** Stands for the joints' own rules where a summary needs one: each limit carries the rule of its joint. */
export const CHK_4 = rule(
  'CHK-4',
  'Every figure of a joint keeps within the limits of its own rule.',
  'The proportions of the trade are what has been found to hold.',
  'the rules of the joints',
  'common practice',
);

/** Less than this over a limit is rounding, in the unit of the figure. */
const ROUNDING = 1e-6;

interface Stated {
  joint: JointMade;
  limit: JointLimit;
}

const over = ({ limit }: Stated): number =>
  Math.max(
    limit.max === undefined ? 0 : limit.value - limit.max,
    limit.min === undefined ? 0 : limit.min - limit.value,
    0,
  );

const bound = ({ limit }: Stated): number | null =>
  limit.max !== undefined && limit.value > limit.max ? limit.max : (limit.min ?? limit.max ?? null);

/** The figure that clears it, where the joint lets it be set. */
function mendOf(stated: Stated): Check['mend'] {
  const { joint, limit } = stated;
  const value = bound(stated);
  const most = limit.max !== undefined && limit.value > limit.max;
  return value === null ? undefined : setJointLength(joint, limit.figure, value, most ? 'down' : 'up');
}

function broken(stated: Stated): Check {
  const { joint, limit } = stated;
  const most = limit.max !== undefined && limit.value > limit.max;
  const as = (value: number): Quantity => q(limit.kind, value);
  return finding({
    check: 'joint',
    subject: `joints.${joint.joint}.${limit.figure}`,
    severity: limit.severity,
    rule: limit.rule,
    title: `${capital(joint.title)}: ${limit.figure.replaceAll('.', ' ')} out of proportion`,
    figure: limit.value,
    limit: bound(stated),
    unit: limit.kind,
    remedy: limit.remedy,
    mend: mendOf(stated),
    say: say(`{figure} is {value}; the rule gives ${most ? 'at most' : 'at least'} {bound}.`, {
      figure: text(capital(limit.figure.replaceAll('.', ' '))),
      value: as(limit.value),
      bound: as(bound(stated) ?? limit.value),
    }),
  });
}

function judge({ piece }: CheckInput): Check[] {
  const stated = piece.joints.flatMap(joint => joint.limits.map(limit => ({ joint, limit })));
  if (stated.length === 0) return [];
  const groups = gather(
    stated.filter(s => over(s) > ROUNDING),
    s => `${s.joint.joint} ${s.limit.figure}`,
  );
  if (groups.length > 0) {
    return groups.map(of => broken(of.reduce((worst, s) => (over(s) > over(worst) ? s : worst))));
  }
  return [
    finding({
      check: 'joint',
      subject: 'joints',
      severity: 'pass',
      rule: CHK_4,
      title: 'Joints keep their proportions',
      figure: stated.length,
      limit: null,
      unit: 'count',
      remedy: '',
      say: say('{count} figures of joints, all within their rules.', { count: q('count', stated.length) }),
    }),
  ];
}

export const jointLimitsCheck: CheckMaker = { name: 'joint', rules: [CHK_4], judge };
