import type { ProfileCut } from '../results/cuts.ts';
import type { CardDrawing, Setting, SetUp } from '../results/setups.ts';
import type { Jig, Machine } from '../workshop/workshop.ts';
import { lengthSetting, otherSetting, say1 } from './figures.ts';
import type { Draft, Task } from './method.ts';
import { type Outline, slopeOf } from './outline.ts';
import { cutNames, FACE_WORDS, opposite } from './sizes.ts';

export interface OutlineKit {
  method: string;
  machine: Machine;
  tool: string;
  toolId: string;
  kerf: number;
  jig?: Jig;
  hand: boolean;
  extra?: Setting[];
  before?: string[];
  after?: string[];
  cautions: string[];
  passes: number;
  trial?: boolean;
  correction?: SetUp['correction'];
}

/** A marked or templated line, worked through: where it lies from two faces, how deep, at which slope (SET-27). */
export function outlineDraft(task: Task<ProfileCut>, view: Outline, kit: OutlineKit): Draft {
  const { cut } = task;
  const slope = slopeOf(view.points);
  const deep = view.to;
  const across = Math.max(...view.points.map(p => p[0]));
  const along = Math.max(...view.points.map(p => p[1]));
  const settings = [
    lengthSetting(
      'gauge',
      view.gauge,
      `nearest point of the line to the ${FACE_WORDS[view.against]}; it spans ${say1(across)}`,
      'outline',
      'near edge',
    ),
    lengthSetting(
      'depth',
      deep,
      view.whole
        ? `right through ${say1(view.thick)}`
        : `${say1(view.to - view.from)} deep${view.from > 0.01 ? `, beginning ${say1(view.from)} below the ${FACE_WORDS[view.entry]}` : ''}`,
      'outline',
    ),
    ...(cut.kind === 'dovetail' && slope > 0.5
      ? [
          otherSetting(
            'angle',
            'angle',
            slope,
            `1 in ${say1(1 / Math.tan((slope * Math.PI) / 180))} from square`,
            'outline',
          ),
        ]
      : []),
    ...(kit.extra ?? []),
  ];
  return {
    what: cutNames(cut, true),
    method: kit.method,
    machine: kit.machine,
    tool: kit.tool,
    ...(kit.jig ? { jig: kit.jig } : {}),
    state: { tool: kit.toolId, jig: kit.jig?.id ?? '', height: deep, tilt: 0 },
    settings,
    lays: [
      {
        label: FACE_WORDS[view.entry],
        down: opposite(view.entry),
        against: view.against,
        entry: view.entry,
        end: view.end,
      },
    ],
    stations: [view.station],
    along: { from: view.from, to: view.to },
    removal: { shape: 'outline', width: kit.kerf, moves: [0], outline: view.points },
    drawing: () => lineDrawing(view, kit, across, along),
    kerfSide: kit.kerf > 0 ? 'outside the line, in the waste' : 'along the template',
    trial: kit.trial ?? false,
    ...(kit.correction ? { correction: kit.correction } : {}),
    before: kit.before ?? [],
    after: kit.after ?? [],
    cautions: kit.cautions,
    passes: kit.passes,
  };
}

/** The marked face from above, stations to the left from the end that is ruled from, the gauged face below. */
function lineDrawing(view: Outline, kit: OutlineKit, across: number, along: number): CardDrawing {
  const reach = view.station + along;
  const high = view.gauge + across;
  return plan({
    view: kit.hand ? 'hand' : 'router',
    seen: `on the ${FACE_WORDS[view.entry]}, ${FACE_WORDS[view.end]} on the right, ${FACE_WORDS[view.against]} below`,
    zero: FACE_WORDS[view.end],
    stations: [
      ...(view.station > 0.05 ? [{ at: view.station, label: 'begins', strong: false }] : []),
      { at: reach, label: 'ends', strong: false },
    ],
    work: { width: reach + 12, height: high + 12 },
    line: view.points.map(([a, b]) => ({ a: view.station + b, h: view.gauge + a })),
    measures:
      view.gauge > 0.5
        ? [
            {
              from: { a: view.station + along / 2, h: 0 },
              to: { a: view.station + along / 2, h: view.gauge },
              value: view.gauge,
            },
          ]
        : [],
  });
}

/** Work from above with a line on it: nothing stands at 0 but its own end. */
export function plan(input: {
  view: CardDrawing['view'];
  seen: string;
  zero: string;
  stations: CardDrawing['stations'];
  work: { width: number; height: number };
  line: NonNullable<CardDrawing['line']>;
  measures: NonNullable<CardDrawing['measures']>;
}): CardDrawing {
  const { work } = input;
  return {
    view: input.view,
    stations: [{ at: 0, label: input.zero, strong: false }, ...input.stations],
    work: { ...work, offset: 0 },
    blade: { at: 0, kerf: 0, height: 0, tilt: 0 },
    seen: input.seen,
    plane: 'plan',
    regions: [{ what: 'work', a: { from: 0, to: work.width }, h: { from: 0, to: work.height } }],
    measures: input.measures,
    line: input.line,
    grain: 'across',
  };
}
