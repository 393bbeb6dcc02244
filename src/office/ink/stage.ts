import { hull } from '../../drawings/clip.ts';
import type { Box } from '../../geometry/box.ts';
import { AXES } from '../../geometry/vector.ts';
import type { Triangles } from '../../results/kernel.ts';
import type { Instance, Piece } from '../../results/piece.ts';
import { solidKey } from '../../solids/shapes.ts';
import { analyse } from './analyse.ts';
import { boxMesh, placedMesh } from './box-mesher.ts';
import { type Camera, cameraFor, type Sheet, STANCES, type Stance } from './camera.ts';
import { InkView } from './ink-view.ts';
import { type LabelPlace, markSpots, placeLabel } from './label.ts';
import { type Overlay, overlay, type Picked } from './overlay.ts';
import { corner, type PartMesh } from './part-mesh.ts';
import { mainStations, partStations, type Station } from './stations.ts';
import { figureWidth, labelSvg, markSvg } from './svg.ts';
import { offsetsAt, spreadBounds, type TakingApart, takingApart } from './take-apart.ts';

/** What the picked part is called on the sheet. */
export interface PickedName {
  instance: string;
  /** Mark and name. */
  title: string;
  /** Its size in words. */
  size: string;
  /** Word beside its heights on the rod. */
  short: string;
}

export interface StageElements {
  canvas: HTMLCanvasElement;
  under: SVGSVGElement;
  over: SVGSVGElement;
}

/** A move of the eye takes this long, milliseconds; none where motion is not wanted. */
const FOLLOW = 240;
/** After the hand lets go, the name of the picked part finds its place. */
const REST = 160;

/** The sheet with the piece on it: ink between two drawings that follow. Draws on demand only. */
export class Stage {
  private readonly ink: InkView;
  private readonly elements: StageElements;
  private readonly meshes = new Map<string, PartMesh>();
  private piece: Piece | undefined;
  private parts: PartMesh[] = [];
  private main: Record<'x' | 'y' | 'z', Station[]> = { x: [], y: [], z: [] };
  private steps: TakingApart[] = [];
  private marks = new Map<string, string>();
  private sheet: Sheet = { width: 0, height: 0, small: false };
  private stance: Stance = STANCES.turned;
  private share = 0;
  private bounds: Box | undefined;
  private picked: PickedName | undefined;
  private figure: (mm: number) => string = String;
  private wanted = 0;
  private restTimer = 0;
  private moving = 0;

  constructor(elements: StageElements) {
    this.elements = elements;
    this.ink = new InkView(elements.canvas);
    elements.canvas.addEventListener('webglcontextrestored', this.ask);
    this.ground();
  }

  /** Colours of the ground have changed; drawn at once, since a printer does not wait. */
  ground = (): void => {
    const style = getComputedStyle(this.elements.canvas);
    this.ink.ground(name => style.getPropertyValue(name));
    this.draw(true);
  };

  resize(width: number, height: number): void {
    if (width < 1 || height < 1) return;
    const small = width < 560;
    this.sheet = { width, height, small };
    this.ink.resize(width, height, Math.min(2, devicePixelRatio), small);
    for (const svg of [this.elements.under, this.elements.over])
      svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
    this.settle();
  }

  /** `surfaces` are those the solid kernel has made so far; the rest is drawn from boxes until it comes. */
  load(piece: Piece, surfaces: ReadonlyMap<string, Triangles>): void {
    this.piece = piece;
    const kept = new Map<string, PartMesh>();
    this.parts = placed(piece).flatMap(instance => {
      const { id, frame, kind, material, grain } = instance;
      const shape = solidKey(instance);
      const surface = surfaces.get(shape);
      const key = JSON.stringify([id, frame, kind, material, grain, shape, surface !== undefined]);
      const mesh =
        this.meshes.get(key) ?? analyse(instance, surface ? placedMesh(surface, frame) : boxMesh(instance));
      kept.set(key, mesh);
      return mesh.indices.length > 0 ? [mesh] : [];
    });
    this.meshes.clear();
    for (const [key, mesh] of kept) this.meshes.set(key, mesh);
    this.main = mainStations(
      this.parts,
      new Map(piece.instances.map(i => [i.id, shortName(i.name)])),
      piece.bounds,
    );
    this.steps = takingApart(piece);
    this.marks = new Map(piece.groups.flatMap(g => g.instances.map(i => [i, g.mark] as const)));
    this.ink.load(this.parts);
    this.settle();
  }

  pick(picked: PickedName | undefined): void {
    this.picked = picked;
    this.settle();
  }

  figures(figure: (mm: number) => string): void {
    this.figure = figure;
    this.settle();
  }

  apart(share: number): void {
    this.share = share;
    this.settle();
  }

  at = (x: number, y: number): string | undefined => this.ink.at(x, y);

  get eye(): Stance {
    return this.stance;
  }

  /** Turns at once, as a hand does. */
  turn(stance: Stance): void {
    cancelAnimationFrame(this.moving);
    this.stance = { ...stance, elevation: Math.min(90, Math.max(0, stance.elevation)) };
    this.ask();
    clearTimeout(this.restTimer);
    this.restTimer = window.setTimeout(() => this.draw(true), REST);
  }

  /** Goes to a named view, by a short move unless motion is not wanted. */
  face(stance: Stance): void {
    const from = this.stance;
    const turns = Math.round((from.azimuth - stance.azimuth) / 360) * 360;
    const to = { ...stance, azimuth: stance.azimuth + turns };
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) {
      this.turn(to);
      return;
    }
    cancelAnimationFrame(this.moving);
    const start = performance.now();
    const step = (now: number): void => {
      const t = Math.min(1, (now - start) / FOLLOW);
      const eased = 1 - (1 - t) ** 3;
      this.stance = {
        azimuth: from.azimuth + (to.azimuth - from.azimuth) * eased,
        elevation: from.elevation + (to.elevation - from.elevation) * eased,
      };
      this.draw(t === 1);
      if (t < 1) this.moving = requestAnimationFrame(step);
    };
    this.moving = requestAnimationFrame(step);
  }

  private settle(): void {
    this.wanted ||= requestAnimationFrame(() => {
      this.wanted = 0;
      this.draw(true);
    });
  }

  private ask = (): void => {
    this.wanted ||= requestAnimationFrame(() => {
      this.wanted = 0;
      this.draw(false);
    });
  };

  private draw(rest: boolean): void {
    const { piece, sheet } = this;
    if (!piece || sheet.width === 0 || this.parts.length === 0) return;
    const offsets = offsetsAt(this.steps, this.share);
    this.bounds = spreadBounds(piece, offsets);
    const figures = this.longestFigure(piece);
    const camera = cameraFor(this.stance, this.bounds, { ...sheet, figures, bare: offsets.size > 0 });
    this.ink.states(new Set(this.picked ? [this.picked.instance] : []), offsets);
    this.ink.look(camera, this.bounds);
    this.ink.draw();
    const apart = offsets.size > 0;
    const drawn = apart
      ? { under: '', over: rest ? this.markLabels() : '' }
      : this.overlay(piece, camera, { ...sheet, figures });
    const label = rest && this.picked && !apart && !sheet.small ? this.label(this.picked) : '';
    this.elements.under.innerHTML = drawn.under;
    this.elements.over.innerHTML = drawn.over + label;
  }

  private overlay(piece: Piece, camera: Camera, sheet: Sheet): Overlay {
    const part = this.parts.find(p => p.instance === this.picked?.instance);
    return overlay({
      camera,
      bounds: piece.bounds,
      main: this.main,
      picked: part && this.picked ? pickedOf(part, this.picked, piece.bounds.min.z) : undefined,
      sheet,
      figure: this.figure,
    });
  }

  /** Figures in inches are longer than in millimetres, and the rods need more room. */
  private longestFigure({ bounds }: Piece): number {
    return Math.max(
      ...AXES.flatMap(k => this.main[k].map(m => figureWidth(this.figure(m.at - bounds.min[k])))),
    );
  }

  /** Taken apart, nothing stands on the floor any more: the rods give way and each part shows its mark. */
  private markLabels(): string {
    const mask = this.ink.mask();
    if (!mask) return '';
    const spots = markSpots(mask, this.sheet, mask.width / this.sheet.width);
    return this.parts
      .map((part, i) => {
        const spot = spots.get(i);
        const mark = this.marks.get(part.instance) ?? '';
        return spot ? markSvg(spot, mark, part.instance === this.picked?.instance) : '';
      })
      .join('');
  }

  private label(picked: PickedName): string {
    const mask = this.ink.mask();
    if (!mask) return '';
    const width = Math.max(picked.size.length, picked.title.length) * 6.8;
    const ratio = mask.width / this.sheet.width;
    const number = this.ink.numberOf(picked.instance);
    const place: LabelPlace | undefined = placeLabel(mask, number, this.sheet, ratio, width, 34);
    return place ? labelSvg(place, picked.title, picked.size) : '';
  }

  dispose(): void {
    cancelAnimationFrame(this.wanted);
    cancelAnimationFrame(this.moving);
    clearTimeout(this.restTimer);
    this.elements.canvas.removeEventListener('webglcontextrestored', this.ask);
    this.ink.dispose();
  }
}

/** What stands in the piece: keys, wedges and hardware without a place are not drawn. */
const placed = (piece: Piece): Instance[] =>
  piece.instances.filter(i => !i.loose && Object.values(i.size).every(v => v > 0));

/** The word a part goes by beside a rod: the last of its name, before any comma. */
export const shortName = (name: string): string =>
  name
    .split(',')[0]!
    .trim()
    .split(/\s+/)
    .slice(-2)
    .join(' ')
    .toLowerCase()
    .replace(/^(top|lower|middle|upper) /, '');

function pickedOf(part: PartMesh, name: PickedName, floor: number): Picked {
  const points: [number, number][] = [];
  for (let i = 0; i < part.positions.length / 3; i++) {
    const p = corner(part, i);
    points.push([p.x, p.y]);
  }
  return {
    name: name.short,
    stations: { x: partStations(part, 'x'), y: partStations(part, 'y'), z: partStations(part, 'z') },
    shadow: [hull(points).map(([x, y]) => ({ x, y, z: floor }))],
  };
}
