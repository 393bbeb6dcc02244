import type { LocalFace } from '../../results/cuts.ts';
import type { CardDrawing, Lay, Setting } from '../../results/setups.ts';
import type { Jig, Machine } from '../../workshop/workshop.ts';
import { lengthSetting, say1 } from '../figures.ts';
import type { Draft } from '../method.ts';
import type { SetRuleName } from '../rules.ts';
import { section } from '../section.ts';

/** A saw or planer set to bring parts to one size. */
export interface SizingInput {
  what: string;
  method: string;
  machine: Machine;
  tool: string;
  toolId: string;
  kerf: number;
  jig?: Jig;
  /** The setting that carries the size. */
  reads: 'fence' | 'stop' | 'height' | 'gauge';
  size: number;
  how: string;
  rule: SetRuleName;
  extra?: Setting[];
  lays: Lay[];
  view: CardDrawing['view'];
  seen: string;
  /** Section the operator sees: from the fence or stop, and up. */
  work: { width: number; height: number };
  kerfSide?: string;
  before?: string[];
  after?: string[];
  cautions: string[];
  passes: number;
  height?: number;
}

/** Everything beyond `size`, read from the face that meets fence, stop or table, is taken away. */
export function sizingDraft(input: SizingInput): Draft {
  const { machine, size, kerf } = input;
  return {
    what: input.what,
    method: input.method,
    machine,
    tool: input.tool,
    ...(input.jig ? { jig: input.jig } : {}),
    state: {
      tool: input.toolId,
      jig: input.jig?.id ?? '',
      ...(input.reads === 'height' ? { height: size } : { fence: size }),
      ...(input.height === undefined ? {} : { height: input.height }),
      tilt: 0,
    },
    settings: [
      lengthSetting(input.reads, size, input.how, input.rule, 'near teeth'),
      ...(input.height === undefined
        ? []
        : [
            lengthSetting(
              'blade height',
              input.height,
              `${say1(input.work.height)} + ${say1(input.height - input.work.height)} over the work`,
              'bladeOver',
            ),
          ]),
      ...(input.extra ?? []),
    ],
    lays: input.lays,
    removal: { shape: 'size', width: kerf, moves: [0] },
    drawing: () => drawingOf(input),
    ...(input.kerfSide ? { kerfSide: input.kerfSide } : {}),
    trial: false,
    before: input.before ?? [],
    after: input.after ?? [],
    cautions: input.cautions,
    passes: input.passes,
  };
}

/** The size stands on the rod: only the height of a blade needs a measure of its own. */
function drawingOf(input: SizingInput): CardDrawing {
  const { size, kerf } = input;
  const drawn = section({
    view: input.view,
    zero: input.reads === 'fence' || input.reads === 'stop' ? input.reads : 'face',
    seen: input.seen,
    tool: { from: size, to: size + Math.max(kerf, 0.5), height: input.height ?? input.work.height },
    work: input.work,
    keep: { from: 0, to: size, label: 'part' },
    waste: { from: size + kerf, to: Math.max(size + kerf, input.work.width) },
    reads: 'near',
    grain: input.reads === 'stop' ? 'across' : 'end-on',
    ...(input.view === 'hand'
      ? { toolWord: 'line' }
      : input.reads === 'height'
        ? { toolWord: 'knives' }
        : {}),
  });
  return { ...drawn, measures: input.height === undefined ? [] : (drawn.measures ?? []).slice(0, 1) };
}

/** A lay with the words over its box. */
export const lay = (
  label: string,
  down: LocalFace,
  against: LocalFace,
  entry: LocalFace,
  end?: LocalFace,
): Lay => ({ label, down, against, entry, ...(end ? { end } : {}) });
