import { roundTo } from '../quantities/length.ts';
import type { CardDrawing, CardMeasure, CardRegion } from '../results/setups.ts';

const r = (value: number): number => roundTo(value, 2);

export interface SectionInput {
  view: CardDrawing['view'];
  zero: 'fence' | 'stop' | 'face';
  seen: string;
  /** Thickness of a jig between fence and work. */
  jig?: number;
  /** What the tool occupies, in fence coordinates, and how high it stands. */
  tool: { from: number; to: number; height: number; tilt?: number; above?: boolean };
  /** Section of the work: away from the fence and up. */
  work: { width: number; height: number };
  /** Stretches that fall away beside the tool. */
  waste?: { from: number; to: number };
  secondWaste?: { from: number; to: number };
  keep?: { from: number; to: number; label: string };
  /** Is the setting read to the near or to the far side of the tool? */
  reads: 'near' | 'far' | 'centre';
  toolWord?: string;
  grain?: CardDrawing['grain'];
  mark?: 'face side' | 'face edge';
}

/** The cut seen along the feed: fence at 0 on the right, table at 0, everything at true size (mm). */
export function section(input: SectionInput): CardDrawing {
  const { tool, work } = input;
  const offset = input.jig ?? 0;
  const toolWord = input.toolWord ?? 'blade';
  const kerfWord = toolWord === 'blade' ? 'kerf' : `${toolWord} far side`;
  const low = tool.above ? work.height - tool.height : 0;
  const high = tool.above ? work.height : tool.height;
  const centre = (tool.from + tool.to) / 2;
  const stations: CardDrawing['stations'] = [
    { at: 0, label: input.zero, strong: false },
    ...(offset > 0 ? [{ at: r(offset), label: 'jig', strong: false }] : []),
    ...(input.reads === 'centre'
      ? [{ at: r(centre), label: `${toolWord} centre`, strong: true }]
      : [
          { at: r(tool.from), label: toolWord, strong: input.reads === 'near' },
          { at: r(tool.to), label: kerfWord, strong: input.reads === 'far' },
        ]),
    { at: r(offset + work.width), label: 'work', strong: false },
  ].sort((a, b) => a.at - b.at);
  const region = (
    what: CardRegion['what'],
    from: number,
    to: number,
    h0: number,
    h1: number,
    label?: string,
  ): CardRegion => ({
    what,
    a: { from: r(from), to: r(to) },
    h: { from: r(h0), to: r(h1) },
    ...(label ? { label } : {}),
  });
  const tallest = Math.max(high, work.height);
  const regions: CardRegion[] = [
    input.zero === 'stop'
      ? region('stop', -12, 0, 0, Math.min(40, tallest), 'stop')
      : region('fence', -13, 0, 0, Math.min(62, Math.max(30, tallest)), input.zero),
    ...(offset > 0 ? [region('jig', 0, offset, 0, tallest, 'upright jig')] : []),
    region('work', offset, offset + work.width, 0, work.height),
    ...(input.keep ? [region('keep', input.keep.from, input.keep.to, low, high, input.keep.label)] : []),
    ...(input.waste && input.waste.to - input.waste.from > 0.05
      ? [region('waste', input.waste.from, input.waste.to, low, high)]
      : []),
    ...(input.secondWaste && input.secondWaste.to - input.secondWaste.from > 0.05
      ? [region('second waste', input.secondWaste.from, input.secondWaste.to, low, high)]
      : []),
    region('tool', tool.from, tool.to, low, high, toolWord),
  ];
  const measures: CardMeasure[] = [
    {
      from: { a: r(offset + work.width), h: r(low) },
      to: { a: r(offset + work.width), h: r(high) },
      value: r(tool.height),
    },
    ...(input.keep
      ? [
          {
            from: { a: r(input.keep.from), h: r(high / 4) },
            to: { a: r(input.keep.to), h: r(high / 4) },
            value: r(input.keep.to - input.keep.from),
          },
        ]
      : []),
  ];
  return {
    view: input.view,
    stations,
    work: { width: r(work.width), height: r(work.height), offset: r(offset) },
    blade: {
      at: r(tool.from),
      kerf: r(tool.to - tool.from),
      height: r(tool.height),
      tilt: tool.tilt ?? 0,
    },
    ...(offset > 0 ? { jig: r(offset) } : {}),
    ...(input.keep ? { keep: { ...input.keep, from: r(input.keep.from), to: r(input.keep.to) } } : {}),
    seen: input.seen,
    zero: input.zero,
    plane: 'section',
    regions,
    measures,
    ...(input.mark ? { mark: { what: input.mark, a: r(offset), h: r(work.height * 0.75) } } : {}),
    grain: input.grain ?? 'up',
  };
}

export const ALONG_FEED = 'along the feed, fence on the right';
export const AT_SLED = 'facing the sled, stop on the right';
export const AT_PRESS = 'facing the machine, fence behind the work';
