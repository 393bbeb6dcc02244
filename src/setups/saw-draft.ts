import type { EndName } from '../results/cuts.ts';
import type { CardDrawing, Lay, Setting, SetUp } from '../results/setups.ts';
import type { Blade, Jig, Machine } from '../workshop/workshop.ts';
import { lengthSetting, say1 } from './figures.ts';
import type { Draft } from './method.ts';
import type { SetRuleName } from './rules.ts';
import { ALONG_FEED, AT_SLED, section } from './section.ts';

export interface SawCutInput {
  what: string;
  method: string;
  machine: Machine;
  blade: Blade;
  jig?: Jig;
  /** Does the jig stand between fence and work (upright jig), so that its offset is added? */
  jigAtFence?: boolean;
  /** `fence` for rips and upright cuts, `stop` for cuts across on the sled. */
  from: 'fence' | 'stop';
  /** The kerf, from the face of the work that meets jig, fence or stop. */
  kerfAt: number;
  /** Side of the tool that the figure is read to: the side that is kept. */
  reads: 'near' | 'far';
  /** The arithmetic of the distance from the work's face to the side that is read. */
  how: string;
  rule: SetRuleName;
  height: number;
  heightHow: string;
  heightRule: SetRuleName;
  lays: Lay[];
  /** Section of the work in the cut: across (from the fence) and up. */
  work: { width: number; height: number };
  moves?: number[];
  extra?: Setting[];
  end?: EndName;
  waste?: { from: number; to: number };
  secondWaste?: { from: number; to: number };
  keep?: { from: number; to: number; label: string };
  kerfSide: string;
  wanted?: SetUp['wanted'];
  correction?: SetUp['correction'];
  trial?: boolean;
  before?: string[];
  after?: string[];
  cautions: string[];
  passes?: number;
  mark?: 'face side' | 'face edge';
  view?: CardDrawing['view'];
  tilt?: number;
  toolWord?: string;
}

/** `rip blade, kerf 3.0, upright jig (own, 18.2)`. */
export const toolWords = (blade: Blade, jig?: Jig): string =>
  `${blade.name}, kerf ${say1(blade.kerf)}${jig ? `, ${jig.name}${jig.offset > 0 ? ` (${say1(jig.offset)})` : ''}` : ''}`;

/** One state of a saw: the figures of the card from where the kerf must lie. */
export function sawDraft(input: SawCutInput): Draft {
  const { blade, jig, machine } = input;
  const kerf = blade.kerf;
  const offset = jig && input.jigAtFence ? jig.offset : 0;
  const near = input.kerfAt;
  // A fence scale always reads to the near teeth; only a stop can be measured to the far ones.
  const reads = input.from === 'fence' ? 'near' : input.reads;
  const read = reads === 'near' ? near : near + kerf;
  const figure = offset + read;
  const words =
    input.reads === 'far' && reads === 'near' ? `${input.how}, less kerf ${say1(kerf)}` : input.how;
  const how = offset > 0 ? `jig ${say1(offset)} + ${say1(read)}: ${words}` : words;
  const side = reads === 'near' ? ('near teeth' as const) : ('far teeth' as const);
  const shift = (span: { from: number; to: number } | undefined) =>
    span ? { from: span.from + offset, to: span.to + offset } : undefined;
  const waste = shift(input.waste);
  const secondWaste = shift(input.secondWaste);
  const keepSpan = shift(input.keep);
  const moves = input.moves ?? [0];
  const settings: Setting[] = [
    lengthSetting(input.from, figure, how, input.rule, side),
    lengthSetting('blade height', input.height, input.heightHow, input.heightRule),
    ...(moves.length > 1
      ? [
          lengthSetting(
            'last pass',
            figure + moves.at(-1)!,
            `${say1(figure)} ${moves.at(-1)! < 0 ? 'less' : '+'} ${say1(Math.abs(moves.at(-1)!))}, in ${moves.length - 1} ${moves.length === 2 ? 'step' : 'steps'}`,
            'wideSlot',
            side,
          ),
        ]
      : []),
    ...(input.extra ?? []),
  ];
  return {
    what: input.what,
    method: input.method,
    machine,
    tool: toolWords(blade, jig),
    ...(jig ? { jig } : {}),
    state: {
      tool: blade.id,
      jig: jig?.id ?? '',
      fence: figure,
      height: input.height,
      tilt: input.tilt ?? 0,
    },
    settings,
    lays: input.lays,
    removal: { shape: 'slot', width: kerf, moves },
    drawing: () =>
      section({
        view: input.view ?? (input.from === 'stop' ? 'cross-cut' : offset > 0 ? 'end-on jig' : 'flat rip'),
        zero: input.from,
        seen: input.from === 'stop' ? AT_SLED : ALONG_FEED,
        jig: offset,
        tool: {
          from: offset + near,
          to: offset + near + kerf,
          height: input.height,
          ...(input.tilt ? { tilt: input.tilt } : {}),
        },
        work: input.work,
        ...(waste ? { waste } : {}),
        ...(secondWaste ? { secondWaste } : {}),
        ...(keepSpan && input.keep ? { keep: { ...keepSpan, label: input.keep.label } } : {}),
        reads,
        grain: input.from === 'stop' ? 'across' : offset > 0 ? 'up' : 'end-on',
        ...(input.mark ? { mark: input.mark } : {}),
        ...(input.toolWord ? { toolWord: input.toolWord } : {}),
      }),
    ...(input.end ? { end: input.end } : {}),
    kerfSide: input.kerfSide,
    ...(input.wanted ? { wanted: input.wanted } : {}),
    ...(input.correction ? { correction: input.correction } : {}),
    trial: input.trial ?? false,
    before: input.before ?? [],
    after: input.after ?? [],
    cautions: input.cautions,
    passes: input.passes ?? input.lays.length * moves.length,
  };
}
