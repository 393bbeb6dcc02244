import { boxCentre } from '../geometry/box.ts';
import { toLocal } from '../geometry/frame.ts';
import type { Instance, PartGroup, Piece } from '../results/piece.ts';
import { type ShowOptions, showSize } from '../results/show.ts';
import { type Item, line, polygon, rect, words } from './list.ts';
import { textWidth } from './manner.ts';
import { scanCode } from './scan-code.ts';

/** What stands on the label of one part. */
export interface PartLabel {
  mark: string;
  name: string;
  /** Cut size; undefined while the part waits for a measurement. */
  size: string;
  material: string;
  /** Way the grain runs on the label's little part, whose length lies across the label. */
  grain: 'length' | 'width' | 'free' | 'none';
  /** Long edges and ends that carry a lipping. */
  lipped: ('face edge' | 'back edge' | 'end 1' | 'end 2')[];
  /** Length to width of the part. */
  shape: number;
  /** Text of the code to scan: commission and copy. */
  code: string;
}

/** One label for every copy of every part that is cut, in the order of the marks. */
export function partLabels(
  piece: Piece,
  marks: ReadonlyMap<string, string>,
  job: string,
  show: ShowOptions,
  materialName: (key: string) => string,
): PartLabel[] {
  const byId = new Map(piece.instances.map(instance => [instance.id, instance]));
  return piece.groups
    .filter(group => group.kind !== 'bought-in')
    .flatMap(group =>
      group.instances.flatMap(id => {
        const instance = byId.get(id);
        return instance
          ? [labelOf(instance, group, piece, marks.get(id) ?? group.mark, job, show, materialName)]
          : [];
      }),
    );
}

function labelOf(
  instance: Instance,
  group: PartGroup,
  piece: Piece,
  mark: string,
  job: string,
  show: ShowOptions,
  materialName: (key: string) => string,
): PartLabel {
  const metal = instance.kind === 'bar' || instance.kind === 'tube';
  return {
    mark,
    name: group.name,
    size: instance.measureFirst
      ? `after ${instance.measureFirst.when}`
      : showSize(group.size, show, instance.round),
    material: materialName(group.material),
    grain: metal ? 'none' : instance.kind === 'timber' ? 'length' : instance.grain,
    lipped: lippedEdges(instance, piece),
    shape: group.size.length / Math.max(1, group.size.width),
    code: `${job} ${instance.id}`,
  };
}

/** Where lippings meet the part: the side of its own middle on which each joint lies. */
function lippedEdges(instance: Instance, piece: Piece): PartLabel['lipped'] {
  const { length, width } = instance.size;
  const found = piece.joints
    .filter(joint => joint.type === 'lipped' && joint.instances[1] === instance.id)
    .map(joint => {
      const at = toLocal(instance.frame, boxCentre(joint.contact));
      const along = (at.x - length / 2) / length;
      const across = (at.y - width / 2) / width;
      if (Math.abs(along) > Math.abs(across)) return along < 0 ? ('end 1' as const) : ('end 2' as const);
      return across > 0 ? ('face edge' as const) : ('back edge' as const);
    });
  return [...new Set(found)];
}

/** The label in a box of `width` by `height` mm: mark, name, size, material, the part with its grain, the code. */
export function labelItems(label: PartLabel, width: number, height: number): Item[] {
  const pad = 2.5;
  const side = Math.min(height - 2 * pad, width * 0.34);
  const room = width - side - 3 * pad;
  const sized = (text: string, size: number, strong = false): number =>
    Math.min(size, (size * room) / Math.max(1e-6, textWidth(text, size, strong)));
  const big = sized(label.mark, 8.5, true);
  const lines: Item[] = [
    words([pad, pad + 7], label.mark, { size: big, strong: true }),
    words([pad, pad + 11.6], label.name, { size: sized(label.name, 3.4) }),
    words([pad, pad + 16.2], label.size, { size: sized(label.size, 3.8, true), strong: true }),
    words([pad, pad + 20.2], label.material, { size: sized(label.material, 3), tone: 'ink-2' }),
  ];
  const below = height - pad - 21.5;
  return [
    ...lines,
    ...(below > 4 ? partSketch(label, pad, pad + 22, room, below - 0.5) : []),
    ...scanCode(label.code, width - side - pad, (height - side) / 2, side),
  ];
}

/** The part lying along the label: arrow for the grain, a thick edge for a lipping. */
function partSketch(label: PartLabel, x: number, y: number, width: number, height: number): Item[] {
  const h = Math.min(height, Math.max(3.5, width / Math.max(1, label.shape)));
  const w = Math.min(width, h * label.shape);
  const thick = 0.9;
  const edges = {
    'face edge': rect(x, y, w, thick, { wash: 'ink' }),
    'back edge': rect(x, y + h - thick, w, thick, { wash: 'ink' }),
    'end 1': rect(x, y, thick, h, { wash: 'ink' }),
    'end 2': rect(x + w - thick, y, thick, h, { wash: 'ink' }),
  };
  return [
    rect(x, y, w, h, { stroke: 'edge' }),
    ...label.lipped.map(edge => edges[edge]),
    ...arrow(label.grain, x + w / 2, y + h / 2, w, h),
  ];
}

function arrow(grain: PartLabel['grain'], x: number, y: number, w: number, h: number): Item[] {
  if (grain === 'none' || grain === 'free') return [];
  const reach = (grain === 'length' ? w : h) * 0.34;
  const tip = Math.min(1.2, reach * 0.6);
  const at = (a: number, b: number): [number, number] =>
    grain === 'length' ? [x + a, y + b] : [x + b, y + a];
  const head = (end: number): Item => {
    const back = end - Math.sign(end) * tip;
    return polygon([at(end, 0), at(back, tip / 2), at(back, -tip / 2)], { wash: 'ink' });
  };
  return [line(at(-reach + tip, 0), at(reach - tip, 0), { stroke: 'edge' }), head(reach), head(-reach)];
}
