import type { EndName } from '../results/cuts.ts';
import type { Instance } from '../results/piece.ts';
import { count } from '../results/quantity.ts';
import type { Lay, Removal, Setting, SetUp } from '../results/setups.ts';
import type { Cutter, Machine } from '../workshop/workshop.ts';
import { lengthSetting, otherSetting, say1 } from './figures.ts';
import type { Draft } from './method.ts';
import { SET_RULES, type SetRuleName } from './rules.ts';
import { ALONG_FEED, section } from './section.ts';
import { FACE_WORDS, faceAxis } from './sizes.ts';
import { depthSteps, routerTurns } from './speeds.ts';

export interface RouterCutInput {
  what: string;
  method: string;
  machine: Machine;
  cutter: Cutter;
  /** The part: its timber sets how deep a step may be. */
  part: Instance;
  /** In the table the work is pushed along the fence; by hand the router goes along a fence or batten. */
  inTable: boolean;
  fenceName: 'fence' | 'stop' | 'from';
  /** Near edge of the first way, from the reference face. */
  near: number;
  reads: 'near' | 'far';
  how: string;
  rule: SetRuleName;
  depth: number;
  depthHow: string;
  depthRule: SetRuleName;
  moves: number[];
  along?: Removal['along'];
  lays: Lay[];
  work: { width: number; height: number };
  end?: EndName;
  wanted?: SetUp['wanted'];
  correction?: SetUp['correction'];
  trial?: boolean;
  extra?: Setting[];
  before?: string[];
  after?: string[];
  cautions: string[];
  kerfSide: string;
  keep?: { from: number; to: number; label: string };
}

/** One state of a router, or the reason why the cutter cannot be run. */
export function routerDraft(input: RouterCutInput): Draft | { reason: string } {
  const { cutter, machine } = input;
  const speed = routerTurns(cutter);
  if ('reason' in speed) return speed;
  const figure = input.reads === 'near' ? input.near : input.near + cutter.diameter;
  const side = input.reads === 'near' ? ('near edge' as const) : ('far edge' as const);
  const steps = depthSteps(cutter, input.depth, input.part);
  const last = input.moves.at(-1) ?? 0;
  const settings: Setting[] = [
    lengthSetting(input.fenceName, figure, input.how, input.rule, side),
    lengthSetting('depth', input.depth, input.depthHow, input.depthRule),
    lengthSetting('bit', cutter.diameter, cutter.name, 'reference'),
    {
      name: 'passes',
      value: count(steps),
      how: `${say1(input.depth)} in steps of ${say1(input.depth / steps)}`,
      rule: SET_RULES.depthPass.number,
    },
    otherSetting('speed', 'number', speed.turns, `turns a minute at most; ${speed.how}`, 'speed'),
    ...(input.moves.length > 1
      ? [
          lengthSetting(
            'last pass',
            figure + last,
            `${say1(figure)} ${last < 0 ? 'less' : '+'} ${say1(Math.abs(last))}`,
            'wideSlot',
            side,
          ),
        ]
      : []),
    ...(input.along
      ? [
          lengthSetting(
            'start',
            input.along.from,
            `cutter edge from ${endWord(input.lays)}`,
            'reference',
            'near edge',
          ),
          lengthSetting(
            'finish',
            input.along.to,
            `cutter edge from ${endWord(input.lays)}`,
            'reference',
            'far edge',
          ),
        ]
      : []),
    ...(input.extra ?? []),
  ];
  return {
    what: input.what,
    method: input.method,
    machine,
    tool: cutter.name,
    state: { tool: cutter.id, jig: '', fence: figure, height: input.depth, tilt: 0 },
    settings,
    lays: input.lays,
    removal: {
      shape: 'slot',
      width: cutter.diameter,
      moves: input.moves,
      ...(input.along ? { along: input.along } : {}),
    },
    drawing: () =>
      section({
        view: 'router',
        zero: input.fenceName === 'from' ? 'face' : input.fenceName,
        seen: input.inTable ? ALONG_FEED : 'along the batten, work below the router',
        tool: {
          from: input.near,
          to: input.near + cutter.diameter,
          height: input.depth,
          above: !input.inTable,
        },
        work: input.work,
        reads: input.reads,
        toolWord: 'cutter',
        grain: input.lays[0] && faceAxis(input.lays[0].against) === 'x' ? 'across' : 'end-on',
        ...(input.keep ? { keep: input.keep } : {}),
      }),
    ...(input.end ? { end: input.end } : {}),
    kerfSide: input.kerfSide,
    ...(input.wanted ? { wanted: input.wanted } : {}),
    ...(input.correction ? { correction: input.correction } : {}),
    trial: input.trial ?? false,
    before: input.before ?? [],
    after: input.after ?? [],
    cautions: input.cautions,
    passes: input.lays.length * input.moves.length * steps,
  };
}

const endWord = (lays: readonly Lay[]): string => {
  const end = lays[0]?.end;
  return end ? FACE_WORDS[end] : 'the end';
};
