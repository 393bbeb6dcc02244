import { spreadLabels } from '../../drawings/spread.ts';
import type { Box } from '../../geometry/box.ts';
import { type Vec3, vec } from '../../geometry/vector.ts';
import { type Camera, LEAST_ROD, PLAIN_FIGURE, project, type Sheet, type Spot } from './camera.ts';
import type { PartStations, Station } from './stations.ts';
import { at, box, escaped, figureText, figureWidth, grainLines, line, polygon, px } from './svg.ts';
import { thinned } from './thin.ts';

/** What is drawn under and over the piece: floor and shadow below; rods and figures above. SVG text. */
export interface Overlay {
  under: string;
  over: string;
}

export interface Picked {
  /** Last word of the part's name, for the heights. */
  name: string;
  stations: { x: PartStations; y: PartStations; z: PartStations };
  /** Outline of its shadow on the floor. */
  shadow: Vec3[][];
}

export interface Lie {
  camera: Camera;
  bounds: Box;
  main: { x: Station[]; y: Station[]; z: Station[] };
  picked: Picked | undefined;
  sheet: Sheet;
  /** Writes a length in the person's unit. */
  figure: (mm: number) => string;
}

interface Floor {
  near: Corner;
  far: Corner;
  left: Corner;
  right: Corner;
}

interface Corner {
  world: Vec3;
  spot: Spot;
}

interface Rod {
  axis: 'x' | 'y';
  name: string;
  /** -1 lies to the left of the near corner, 1 to the right. */
  side: -1 | 1;
  short: boolean;
  from: number;
  length: number;
  total: number;
  x: (value: number) => number;
  edge: (value: number) => Spot;
  marks: Mark[];
}

interface Mark extends Station {
  px: number;
  label?: number;
}

const THICK = (small: boolean): number => (small ? 18 : 26);

/** The four corners of the floor the piece stands on: nearest, farthest, and those to the left and right. */
function floorOf({ camera, bounds }: Lie): Floor {
  const z = bounds.min.z;
  const corners = [
    vec(bounds.min.x, bounds.min.y, z),
    vec(bounds.max.x, bounds.min.y, z),
    vec(bounds.max.x, bounds.max.y, z),
    vec(bounds.min.x, bounds.max.y, z),
  ].map((world): Corner => ({ world, spot: project(camera, world) }));
  let near = 0;
  corners.forEach((c, i) => {
    if (c.spot[1] > corners[near]!.spot[1] + 0.01) near = i;
  });
  const sides = [corners[(near + 1) % 4]!, corners[(near + 3) % 4]!].sort((a, b) => a.spot[0] - b.spot[0]);
  return { near: corners[near]!, far: corners[(near + 2) % 4]!, left: sides[0]!, right: sides[1]! };
}

export function overlay(lie: Lie): Overlay {
  const floor = floorOf(lie);
  const { bounds, camera, sheet, picked } = lie;
  const top = project(camera, { ...floor.left.world, z: bounds.max.z });
  let under =
    polyline([floor.left.spot, floor.near.spot, floor.right.spot], 't') +
    polyline([floor.left.spot, floor.far.spot, floor.right.spot], 'hid') +
    line(floor.left.spot, top, 't');
  for (const ring of picked?.shadow ?? [])
    under += polygon(
      ring.map(p => project(camera, p)),
      'shadow',
    );
  const rodY = floor.near.spot[1] + 26;
  let rods = [rodOf(lie, floor, floor.left, -1), rodOf(lie, floor, floor.right, 1)];
  if (sheet.small)
    rods = rods
      .filter(r => r.length > LEAST_ROD)
      .sort((a, b) => b.length - a.length)
      .slice(0, 1);
  label(rods, sheet);
  let over = '';
  for (const rod of rods) {
    over += rodSvg(lie, rod, rodY);
    under += floorLines(lie, floor, rod);
  }
  if (!sheet.small)
    over += heightRod(lie, floor, top, rodY, Math.min(floor.left.spot[0], ...rods.map(r => r.from)));
  return { under, over };
}

const polyline = (spots: readonly Spot[], kind: string): string =>
  `<path class="${kind}" d="M${spots.map(at).join('L')}"/>`;

function rodOf(lie: Lie, floor: Floor, end: Corner, side: -1 | 1): Rod {
  const { bounds, camera, sheet, picked } = lie;
  const n = floor.near;
  const axis = end.world.x !== n.world.x ? 'x' : 'y';
  const span = Math.abs(end.spot[0] - n.spot[0]);
  const length = Math.max(span, LEAST_ROD);
  const short = span < LEAST_ROD;
  const total = bounds.max[axis] - bounds.min[axis];
  const x = (value: number): number =>
    n.spot[0] + ((side * Math.abs(value - n.world[axis])) / total) * length;
  const quiet = short ? [] : lie.main[axis].filter(m => !sheet.small || m.rank > 1 || m.centre);
  const own = (picked?.stations[axis].at ?? []).map((v): Station => ({ at: v, picked: true, rank: 3 }));
  const marks = [...quiet.filter(m => m.centre || !own.some(o => Math.abs(o.at - m.at) < 0.05)), ...own]
    .map((m): Mark => ({ ...m, px: x(m.at) }))
    .sort((a, b) => a.px - b.px);
  return {
    axis,
    name: axis === 'x' ? 'Width' : 'Depth',
    side,
    short,
    from: side < 0 ? n.spot[0] - length : n.spot[0],
    length,
    total,
    x,
    edge: value => project(camera, { ...n.world, [axis]: value }),
    marks,
  };
}

/** Gives the figures of both lying rods their places in one spread. */
function label(rods: readonly Rod[], sheet: Sheet): void {
  const [least, low] = sheet.small ? [15, 12] : [16, 16];
  const all = rods
    .flatMap(rod => rod.marks.map(mark => ({ mark, px: mark.px, rank: mark.rank, side: rod.side })))
    .sort((a, b) => a.px - b.px || a.side - b.side);
  const kept = thinned(all, least, sheet.width - 2 * low);
  spreadLabels(
    kept.map(k => k.px),
    least,
    low,
    sheet.width - low,
  ).forEach((place, i) => {
    kept[i]!.mark.label = place;
  });
}

function rodSvg(lie: Lie, rod: Rod, y: number): string {
  const { sheet, picked, figure, bounds } = lie;
  const thick = THICK(sheet.small);
  const low = bounds.min[rod.axis];
  let s =
    box(rod.from, y, rod.length, thick, 'frod') + grainLines(rod.from, y, rod.length, thick, rod.axis, false);
  if (picked) s += pickedZone(rod, picked.stations[rod.axis], y, thick, sheet.small, figure);
  s += box(rod.from, y, rod.length, thick, 'e');
  for (const m of rod.marks) {
    const on = m.picked === true;
    s += m.centre
      ? line([m.px, y - 5], [m.px, y + thick], 'chain')
      : line([m.px, y - (on ? 7 : 4)], [m.px, y + thick], on ? 'pkt' : 'e');
    if (m.label === undefined) continue;
    s += `<path class="${on ? 'pkt' : 't'}" d="M${at([m.px, y + thick])}L${at([m.label, y + thick + 12])}v4"/>`;
    s += `<text class="${on ? 'p' : ''}" transform="translate(${px(m.label + 4.4)} ${px(y + thick + 20)}) rotate(-90)" text-anchor="end">${figureText(figure(m.at - low))}</text>`;
  }
  if (sheet.small) return s;
  const words = `${rod.name} <tspan class="b">${figureText(figure(rod.total))}</tspan>`;
  const [x, anchor] = rod.side < 0 ? [rod.from - 14, 'end'] : [rod.from + rod.length + 14, 'start'];
  return `${s}<text x="${px(x)}" y="${px(y + thick / 2 + 4.5)}" text-anchor="${anchor}">${words}</text>`;
}

/** The stretch of the rod the picked part takes: between its shoulders where it has any. */
function pickedZone(
  rod: Rod,
  part: PartStations,
  y: number,
  thick: number,
  small: boolean,
  figure: (mm: number) => string,
): string {
  let [a, b] = [part.low, part.high];
  let words = '';
  if (part.at.length >= 4) {
    let most = 0;
    for (let i = 0; i + 1 < part.at.length; i++) {
      const gap = part.at[i + 1]! - part.at[i]!;
      if (gap > most) [most, a, b] = [gap, part.at[i]!, part.at[i + 1]!];
    }
    words = `${most < part.high - part.low - 0.1 ? 'shoulder ' : ''}${figureText(figure(most))}`;
  }
  const [x0, x1] = [Math.min(rod.x(a), rod.x(b)), Math.max(rod.x(a), rod.x(b))];
  let s = box(x0, y, x1 - x0, thick, 'fp');
  if (words && x1 - x0 > 110 && !small) {
    const x = x0 + (x1 - x0) * (x1 - x0 > 320 ? 0.26 : 0.5);
    s += `<text class="p on" x="${px(x)}" y="${px(y + thick / 2 + 4.4)}" text-anchor="middle">${words}</text>`;
  }
  return s;
}

/** From the floor's edge down to the rod, and from a picked part's shadow to the edge. */
function floorLines(lie: Lie, floor: Floor, rod: Rod): string {
  const rodY = floor.near.spot[1] + 26;
  const { camera, picked, bounds } = lie;
  let s = '';
  for (const m of rod.marks) {
    if (rod.short && !m.picked) continue;
    const e = rod.edge(m.at);
    const start = e[1] + (m.picked ? 0 : 3);
    const kind = m.picked ? 'pkc' : m.centre ? 'chain' : 'lead';
    const bent = Math.abs(m.px - e[0]) > 0.5;
    s += `<path class="${kind}" d="M${at([e[0], start])}${bent ? `V${px(e[1] + 7)}L${at([m.px, rodY - 9])}` : ''}V${px(rodY - 6)}"/>`;
    if (!m.picked || !picked) continue;
    const other = rod.axis === 'x' ? 'y' : 'x';
    const shadow = picked.stations[other];
    const edge = floor.near.world[other];
    const start3 = Math.abs(shadow.low - edge) < Math.abs(shadow.high - edge) ? shadow.low : shadow.high;
    const place = (o: number): Spot => {
      const p = vec(0, 0, bounds.min.z);
      p[rod.axis] = m.at;
      p[other] = o;
      return project(camera, p);
    };
    s += line(place(start3), place(edge), 'pkc');
  }
  return s;
}

function heightRod(lie: Lie, floor: Floor, top: Spot, rodY: number, leftMost: number): string {
  const { camera, bounds, picked, figure } = lie;
  const thick = THICK(false);
  const span = floor.left.spot[1] - top[1];
  const length = Math.max(span, LEAST_ROD);
  const short = span < LEAST_ROD;
  const foot = floor.left.spot[1];
  const x = Math.max(leftMost - 58, 132 + Math.max(0, (lie.sheet.figures ?? PLAIN_FIGURE) - PLAIN_FIGURE));
  const total = bounds.max.z - bounds.min.z;
  const yOf = (v: number): number => foot - ((v - bounds.min.z) / total) * length;
  const own = (picked?.stations.z.at ?? []).map(
    (v): Station => ({ at: v, picked: true, rank: 3, ...(picked ? { name: picked.name } : {}) }),
  );
  const quiet = short
    ? []
    : lie.main.z.filter(m => !m.centre && !own.some(o => Math.abs(o.at - m.at) < 0.05));
  const marks = [...quiet, ...own].map((m): Mark => ({ ...m, px: yOf(m.at) })).sort((a, b) => b.at - a.at);
  let s =
    box(x, foot - length, thick, length, 'frod') + grainLines(x, foot - length, thick, length, 'z', true);
  if (picked) {
    const { low, high } = picked.stations.z;
    s += box(x, yOf(high), thick, yOf(low) - yOf(high), 'fp');
  }
  s += box(x, foot - length, thick, length, 'e');
  const strong = marks.filter(m => m.rank > 2).length;
  const kept = thinned(marks, 15, Math.max(length + 40, strong * 15));
  spreadLabels(
    kept.map(m => m.px),
    15,
    34,
    rodY - 6,
  ).forEach((place, i) => {
    kept[i]!.label = place;
  });
  const wide = Math.max(...kept.map(m => figureWidth(figure(m.at - bounds.min.z))), 28);
  for (const m of marks)
    s += heightMark(m, { x, thick, short, camera, floor, figure, low: bounds.min.z, names: x - wide - 30 });
  const first = kept[0]?.label;
  const title = Math.max(16, (first === undefined ? foot - length : Math.min(foot - length, first - 4)) - 12);
  return `${s}<text x="${px(x + thick / 2)}" y="${px(title)}" text-anchor="middle">Height <tspan class="b">${figureText(figure(total))}</tspan></text>`;
}

interface HeightPlace {
  x: number;
  thick: number;
  short: boolean;
  camera: Camera;
  floor: Floor;
  figure: (mm: number) => string;
  low: number;
  /** Where the names end, left of the figures. */
  names: number;
}

function heightMark(m: Mark, { x, thick, short, camera, floor, figure, low, names }: HeightPlace): string {
  const on = m.picked === true;
  const c = project(camera, { ...floor.left.world, z: m.at });
  let s = line([x, m.px], [x + thick + (on ? 7 : 4), m.px], on ? 'pkt' : 'e');
  if (!short || on)
    s +=
      Math.abs(c[1] - m.px) < 0.5
        ? line([x + thick + 6, m.px], [c[0] - 4, c[1]], on ? 'pkc' : 'lead')
        : `<path class="${on ? 'pkc' : 'lead'}" d="M${at([x + thick + 6, m.px])}h3L${at([c[0] - 6, c[1]])}h3"/>`;
  if (m.label === undefined) return s;
  s += `<path class="${on ? 'pkt' : 't'}" d="M${at([x, m.px])}L${at([x - 9, m.label])}h-5"/>`;
  s += `<text class="${on ? 'p' : ''}" x="${px(x - 18)}" y="${px(m.label + 4.5)}" text-anchor="end">${figureText(figure(m.at - low))}</text>`;
  const name = Math.abs(m.at - low) < 0.05 ? 'floor' : (m.name ?? '');
  return `${s}<text class="${on ? 'p' : 'q'}" x="${px(names)}" y="${px(m.label + 4.5)}" text-anchor="end">${escaped(name)}</text>`;
}
