/**
 * The display list: one drawing as plain data, for screen, SVG file and PDF alike.
 * Coordinates run right and down in the list's own unit (`px` on a screen, `mm` on paper). Weights, colours
 * and fonts are roles; each renderer knows what they are on its ground.
 */
export type Point = readonly [number, number];

/** Line weights and patterns of looks.md. `silhouette` is twice the outline, painted under the faces. */
export type Stroke = 'outline' | 'edge' | 'thin' | 'hidden' | 'chain' | 'hatch' | 'silhouette';

export type StateTone = 'stop' | 'attend' | 'note' | 'pass' | 'unknown' | 'pending';

/** What a line or a word is drawn with. Material tones are the hatch inks. */
export type Tone =
  | 'ink'
  | 'ink-2'
  | 'ink-3'
  | 'rule'
  | 'pencil'
  | 'timber'
  | 'metal'
  | 'brass'
  | 'board'
  | 'waste'
  | StateTone;

/** What an area is filled with: material, ground, or what is picked. */
export type Wash =
  | 'timber'
  | 'timber-end'
  | 'metal'
  | 'brass'
  | 'board'
  | 'waste'
  | 'rod'
  | 'sheet'
  | 'picked'
  | 'ink'
  | StateTone;

export interface Look {
  stroke?: Stroke;
  tone?: Tone;
  wash?: Wash;
  /** Stroke the area thinly with its own wash, so that neighbours leave no seam. */
  seal?: boolean;
}

/** What makes an item findable: a stable id, the figure it shows, the page it leads to. */
export interface Tag {
  id?: string;
  /** Path of the figure or id of the instance that this item stands for. */
  figure?: string;
  href?: string;
}

export type Command =
  | readonly ['M', number, number]
  | readonly ['L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z'];

export interface PathItem extends Look, Tag {
  kind: 'path';
  d: readonly Command[];
}

export interface LineItem extends Look, Tag {
  kind: 'polyline' | 'polygon';
  points: readonly Point[];
}

export interface CircleItem extends Look, Tag {
  kind: 'circle';
  centre: Point;
  radius: number;
}

/** `figures` is the sans of figures and tables, `big` its narrow cut for large figures; `words` the serif; `remark` its italic. */
export type Face = 'figures' | 'big' | 'words' | 'remark';

export interface TextRun {
  text: string;
  strong?: boolean;
  tone?: Tone;
  /** Size as a share of the item's size, e.g. 0.74 for units. */
  size?: number;
}

export interface TextItem extends Tag {
  kind: 'text';
  /** On the baseline. */
  at: Point;
  runs: readonly TextRun[];
  anchor: 'start' | 'middle' | 'end';
  /** Height of the letters' em, list units. */
  size: number;
  face: Face;
  /** Degrees clockwise about `at`. */
  turn?: number;
  /** Ground kept clear behind the words, where they stand on hatch. */
  clear?: Wash;
}

export interface GroupItem extends Tag {
  kind: 'group';
  items: Item[];
  /** Spoken name, for a pressable group. */
  label?: string;
}

export type Item = PathItem | LineItem | CircleItem | TextItem | GroupItem;

export interface DisplayList {
  unit: 'px' | 'mm';
  width: number;
  height: number;
  /** What the drawing shows, in words. */
  title: string;
  /** Small drawings take 0.7 of each line weight. */
  weight: number;
  items: Item[];
}

export const line = (from: Point, to: Point, look: Look = { stroke: 'thin' }): LineItem => ({
  kind: 'polyline',
  points: [from, to],
  ...look,
});

export const polyline = (points: readonly Point[], look: Look): LineItem => ({
  kind: 'polyline',
  points,
  ...look,
});

export const polygon = (points: readonly Point[], look: Look): LineItem => ({
  kind: 'polygon',
  points,
  ...look,
});

export const rect = (x: number, y: number, width: number, height: number, look: Look): LineItem =>
  polygon(
    [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
    look,
  );

export const circle = (centre: Point, radius: number, look: Look): CircleItem => ({
  kind: 'circle',
  centre,
  radius,
  ...look,
});

/** Straight runs as one path: what a hatch is. */
export const runs = (lines: readonly (readonly Point[])[], look: Look): PathItem => ({
  kind: 'path',
  d: lines.flatMap(points =>
    points.map(([x, y], i): Command => (i === 0 ? (['M', x, y] as const) : (['L', x, y] as const))),
  ),
  ...look,
});

export const path = (d: readonly Command[], look: Look): PathItem => ({ kind: 'path', d, ...look });

/** An arc of a circle as cubic curves; degrees, clockwise from the right as y runs down. */
export function arc(centre: Point, radius: number, from: number, to: number, look: Look): PathItem {
  const steps = Math.max(1, Math.ceil(Math.abs(to - from) / 90));
  const step = ((to - from) / steps) * (Math.PI / 180);
  const reach = (4 / 3) * Math.tan(step / 4) * radius;
  const at = (angle: number): Point => [
    centre[0] + radius * Math.cos(angle),
    centre[1] + radius * Math.sin(angle),
  ];
  let angle = from * (Math.PI / 180);
  const start = at(angle);
  const d: Command[] = [['M', start[0], start[1]]];
  for (let i = 0; i < steps; i++) {
    const next = angle + step;
    const [ax, ay] = at(angle);
    const [bx, by] = at(next);
    d.push([
      'C',
      ax - reach * Math.sin(angle),
      ay + reach * Math.cos(angle),
      bx + reach * Math.sin(next),
      by - reach * Math.cos(next),
      bx,
      by,
    ]);
    angle = next;
  }
  return path(d, look);
}

export interface TextOptions extends Tag {
  anchor?: 'start' | 'middle' | 'end';
  size: number;
  face?: Face;
  strong?: boolean;
  tone?: Tone;
  turn?: number;
  clear?: Wash;
}

export function words(at: Point, content: string | readonly TextRun[], options: TextOptions): TextItem {
  const { anchor = 'start', size, face = 'figures', strong, tone, turn, clear, ...tag } = options;
  const list = typeof content === 'string' ? [{ text: content }] : content;
  return {
    kind: 'text',
    at,
    runs: list.map(run => ({
      ...(strong === undefined ? {} : { strong }),
      ...(tone === undefined ? {} : { tone }),
      ...run,
    })),
    anchor,
    size,
    face,
    ...(turn === undefined ? {} : { turn }),
    ...(clear === undefined ? {} : { clear }),
    ...tag,
  };
}

export const group = (items: Item[], tag: Tag & { label?: string } = {}): GroupItem => ({
  kind: 'group',
  items,
  ...tag,
});

/** Moves items by (dx, dy), and scales them about the origin first if asked; text sizes scale too. */
export function place(items: readonly Item[], dx: number, dy: number, scale = 1): Item[] {
  const move = ([x, y]: Point): Point => [x * scale + dx, y * scale + dy];
  return items.map((item): Item => {
    switch (item.kind) {
      case 'group':
        return { ...item, items: place(item.items, dx, dy, scale) };
      case 'circle':
        return { ...item, centre: move(item.centre), radius: item.radius * scale };
      case 'text':
        return { ...item, at: move(item.at), size: item.size * scale };
      case 'path':
        return { ...item, d: item.d.map(command => moveCommand(command, move)) };
      default:
        return { ...item, points: item.points.map(move) };
    }
  });
}

function moveCommand(command: Command, move: (p: Point) => Point): Command {
  if (command[0] === 'Z') return command;
  if (command[0] === 'C') {
    const [ax, ay] = move([command[1], command[2]]);
    const [bx, by] = move([command[3], command[4]]);
    const [x, y] = move([command[5], command[6]]);
    return ['C', ax, ay, bx, by, x, y];
  }
  const [x, y] = move([command[1], command[2]]);
  return [command[0], x, y];
}
