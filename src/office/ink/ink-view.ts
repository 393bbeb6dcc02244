import {
  BufferAttribute,
  BufferGeometry,
  DataTexture,
  DepthTexture,
  FloatType,
  Mesh,
  NearestFilter,
  OrthographicCamera,
  RGBAFormat,
  Scene,
  UnsignedByteType,
  UnsignedIntType,
  type Vector3,
  WebGLRenderer,
  WebGLRenderTarget,
} from 'three';
import { type Box, corners } from '../../geometry/box.ts';
import { dot, type Vec3, ZERO } from '../../geometry/vector.ts';
import { type Batch, batch } from './batch.ts';
import type { Camera } from './camera.ts';
import { HATCHES, inkMaterials, inkUniforms, WASHES } from './ink-materials.ts';
import type { InkMaterial, PartMesh } from './part-mesh.ts';
import { PART_ROWS } from './shaders.ts';

const MATERIAL_CODE: Record<InkMaterial, number> = { timber: 0, metal: 1, brass: 2, board: 3 };

/** Part ids of the whole sheet, as read from the graphics card: one byte quartet a pixel, rows from the foot. */
export interface IdMask {
  width: number;
  height: number;
  bytes: Uint8Array;
}

/**
 * The piece in ink, in three passes whatever the number of parts: faces (colour and ids), lines (coverage,
 * blended by maximum so that joins never thicken), and the sheet that composes both over a clear ground.
 */
export class InkView {
  private readonly renderer: WebGLRenderer;
  private readonly camera = new OrthographicCamera();
  private readonly scenes = {
    faces: new Scene(),
    outline: new Scene(),
    edges: new Scene(),
    sheet: new Scene(),
  };
  private readonly u = inkUniforms();
  private readonly materials = inkMaterials(this.u);
  private faceTarget: WebGLRenderTarget | undefined;
  private lineTarget: WebGLRenderTarget | undefined;
  private data: Batch | undefined;
  private partData = new Float32Array(0);
  private flags = new Float32Array(0);
  private geometries: { outline: BufferGeometry; edges: BufferGeometry } | undefined;
  private order = new Map<string, number>();
  private bounds: Box = { min: ZERO, max: ZERO };
  private height = 1;

  constructor(canvas: HTMLCanvasElement) {
    this.renderer = new WebGLRenderer({
      canvas,
      alpha: true,
      antialias: false,
      premultipliedAlpha: true,
      preserveDrawingBuffer: true,
    });
    this.renderer.autoClear = false;
    this.renderer.setClearColor(0, 0);
    const sheet = new BufferGeometry();
    sheet.setAttribute('position', new BufferAttribute(new Float32Array([-1, -1, 0, 3, -1, 0, -1, 3, 0]), 3));
    this.scenes.sheet.add(still(new Mesh(sheet, this.materials.sheet)));
    for (const scene of Object.values(this.scenes)) {
      scene.matrixAutoUpdate = false;
      scene.matrixWorldAutoUpdate = false;
    }
  }

  /** Size of the sheet in CSS pixels and device pixels a CSS pixel. Small drawings take lighter lines. */
  resize(width: number, height: number, ratio: number, small: boolean): void {
    this.height = height;
    this.u.ratio.value = ratio;
    this.u.weight.value = small ? 0.7 : 1;
    this.u.halves.edges.value = 0.55 * this.u.weight.value * ratio;
    this.u.halves.outline.value = 2 * this.u.weight.value * ratio;
    this.renderer.setPixelRatio(ratio);
    this.renderer.setSize(width, height, false);
    const [w, h] = [Math.round(width * ratio), Math.round(height * ratio)];
    this.u.size.value.set(w, h);
    this.faceTarget?.dispose();
    this.lineTarget?.dispose();
    const flat = {
      minFilter: NearestFilter,
      magFilter: NearestFilter,
      type: UnsignedByteType,
      format: RGBAFormat,
    };
    this.faceTarget = new WebGLRenderTarget(w, h, { ...flat, count: 2, depthBuffer: true });
    this.faceTarget.depthTexture = new DepthTexture(w, h, UnsignedIntType);
    this.lineTarget = new WebGLRenderTarget(w, h, { ...flat, depthBuffer: false });
    this.u.colour.value = this.faceTarget.textures[0]!;
    this.u.ids.value = this.faceTarget.textures[1]!;
    this.u.depth.value = this.faceTarget.depthTexture;
    this.u.lines.value = this.lineTarget.texture;
  }

  /** Takes ink and washes from the ground's own custom properties. */
  ground(property: (name: string) => string): void {
    const set = (into: Vector3, name: string): void => {
      const hex = property(name).trim().replace('#', '');
      const full = hex.length === 3 ? [...hex].map(c => c + c).join('') : hex;
      into.set(
        ...([0, 2, 4].map(i => Number.parseInt(full.slice(i, i + 2), 16) / 255) as [number, number, number]),
      );
    };
    for (const [i, name] of WASHES.entries()) set(this.u.washes[i]!, name);
    for (const [i, name] of HATCHES.entries()) set(this.u.hatches[i]!, name);
    set(this.u.pickWash.value, '--pencil-wash');
    set(this.u.ink.value, '--ink');
    set(this.u.pencil.value, '--pencil');
  }

  load(parts: readonly PartMesh[]): void {
    const data = batch(parts);
    this.data = data;
    this.order = new Map(parts.map((p, i) => [p.instance, i]));
    for (const scene of [this.scenes.faces, this.scenes.outline, this.scenes.edges])
      for (const child of [...scene.children]) {
        scene.remove(child);
        if (child instanceof Mesh) child.geometry.dispose();
      }
    const faces = new BufferGeometry();
    for (const [name, array, width] of [
      ['position', data.positions, 3],
      ['uv', data.uv, 2],
      ['aux', data.aux, 2],
      ['ids', data.ids, 4],
    ] as const)
      faces.setAttribute(name, new BufferAttribute(array, width));
    this.scenes.faces.add(still(new Mesh(faces, this.materials.face)));
    this.loadLines(data);
    this.loadParts(parts, data);
  }

  /** Four corners an edge, not instanced: software rasters pay for each instance. */
  private loadLines(data: Batch): void {
    const n = data.edges;
    const four = (from: Float32Array, width: number): BufferAttribute => {
      const to = new Float32Array(n * 4 * width);
      for (let i = 0; i < n; i++)
        for (let c = 0; c < 4; c++) to.set(from.subarray(i * width, (i + 1) * width), (i * 4 + c) * width);
      return new BufferAttribute(to, width);
    };
    const quad = new Float32Array(n * 12);
    for (let i = 0; i < n; i++) quad.set([0, -1, 0, 1, -1, 0, 1, 1, 0, 0, 1, 0], i * 12);
    this.flags = new Float32Array(n * 4);
    const attributes = {
      position: new BufferAttribute(quad, 3),
      ea: four(data.ea, 3),
      eb: four(data.eb, 3),
      eid: four(data.eid, 4),
      flags: new BufferAttribute(this.flags, 1),
    };
    const make = (): BufferGeometry => {
      const g = new BufferGeometry();
      for (const [name, attribute] of Object.entries(attributes)) g.setAttribute(name, attribute);
      g.setIndex(new BufferAttribute(new Uint32Array(n * 6), 1));
      return g;
    };
    this.geometries = { outline: make(), edges: make() };
    this.scenes.outline.add(still(new Mesh(this.geometries.outline, this.materials.outline)));
    this.scenes.edges.add(still(new Mesh(this.geometries.edges, this.materials.edges)));
  }

  private loadParts(parts: readonly PartMesh[], data: Batch): void {
    const n = Math.max(1, parts.length);
    this.partData = new Float32Array(n * 4 * PART_ROWS);
    parts.forEach((part, i) => {
      this.partData.set(data.axes[i]!, i * 4);
      this.partData[(n + i) * 4 + 2] = MATERIAL_CODE[part.material];
    });
    this.u.partTexture.value?.dispose();
    this.u.partTexture.value = new DataTexture(this.partData, n, PART_ROWS, RGBAFormat, FloatType);
    this.u.partTexture.value.needsUpdate = true;
  }

  /** Marks picked parts, hides others, and moves parts that are taken apart. */
  states(picked: ReadonlySet<string>, offsets: ReadonlyMap<string, Vec3>): void {
    const n = this.partData.length / (4 * PART_ROWS);
    for (const [id, i] of this.order) {
      this.partData[(n + i) * 4] = picked.has(id) ? 1 : 0;
      const offset = offsets.get(id) ?? ZERO;
      this.partData.set([offset.x, offset.y, offset.z], (2 * n + i) * 4);
    }
    this.u.hidden.value = picked.size > 0 ? 1 : 0;
    if (this.u.partTexture.value) this.u.partTexture.value.needsUpdate = true;
  }

  look(camera: Camera, bounds: Box): void {
    this.bounds = bounds;
    const { right, up, into, scale, centre, spot } = camera;
    const [w, h] = [this.u.size.value.x / this.u.ratio.value, this.height];
    const [kx, ky] = [(2 * scale) / w, (2 * scale) / h];
    const depths = corners(this.bounds).map(p => dot(into, p));
    const [near, far] = [Math.min(...depths), Math.max(...depths)];
    const kz = 2 / (far - near + 2);
    this.u.depthMm.value = kz / 2;
    this.u.mmPx.value = 1 / (scale * this.u.ratio.value);
    this.u.viewProjection.value.set(
      kx * right.x,
      kx * right.y,
      kx * right.z,
      (2 * spot[0]) / w - 1 - kx * dot(right, centre),
      ky * up.x,
      ky * up.y,
      ky * up.z,
      1 - (2 * spot[1]) / h - ky * dot(up, centre),
      kz * into.x,
      kz * into.y,
      kz * into.z,
      -1 - kz * (near - 1),
      0,
      0,
      0,
      1,
    );
    this.u.view.value.set(-into.x, -into.y, -into.z);
    this.chooseEdges();
  }

  /** Which edges can show from here, and which of them are rims (one face towards us, one away). */
  private chooseEdges(): void {
    const { data, geometries, flags } = this;
    if (!data || !geometries) return;
    const { x, y, z } = this.u.view.value;
    const facing = (n: Float32Array, i: number): boolean =>
      n[i * 3]! * x + n[i * 3 + 1]! * y + n[i * 3 + 2]! * z > 1e-4;
    const [outline, edges] = [geometries.outline.index!, geometries.edges.index!];
    let [o, e] = [0, 0];
    for (let i = 0; i < data.edges; i++) {
      const [a, b] = [facing(data.n0, i), facing(data.n1, i)];
      if (!a && !b) continue;
      const rim = a !== b;
      if (!rim && data.eid[i * 4 + 3] === 1) continue;
      flags.fill((a ? 1 : 0) + (b ? 2 : 0), i * 4, i * 4 + 4);
      for (const q of [0, 1, 2, 0, 2, 3]) {
        edges.array[e++] = i * 4 + q;
        if (rim) outline.array[o++] = i * 4 + q;
      }
    }
    geometries.outline.setDrawRange(0, o);
    geometries.edges.setDrawRange(0, e);
    outline.needsUpdate = true;
    edges.needsUpdate = true;
    const attribute = geometries.edges.getAttribute('flags');
    if (attribute instanceof BufferAttribute) attribute.needsUpdate = true;
  }

  draw(): void {
    if (!this.faceTarget || !this.lineTarget) return;
    const pass = (target: WebGLRenderTarget | null, ...scenes: Scene[]): void => {
      this.renderer.setRenderTarget(target);
      this.renderer.clear();
      for (const scene of scenes) this.renderer.render(scene, this.camera);
    };
    pass(this.faceTarget, this.scenes.faces);
    pass(this.lineTarget, this.scenes.outline, this.scenes.edges);
    pass(null, this.scenes.sheet);
  }

  /** The instance drawn at a spot of the sheet, CSS pixels. */
  at(x: number, y: number): string | undefined {
    const [px, py] = [Math.floor(x * this.u.ratio.value), Math.floor((this.height - y) * this.u.ratio.value)];
    const { x: w, y: h } = this.u.size.value;
    if (!this.faceTarget || px < 0 || py < 0 || px >= w || py >= h) return undefined;
    const bytes = new Uint8Array(4);
    this.renderer.readRenderTargetPixels(this.faceTarget, px, py, 1, 1, bytes, undefined, 1);
    return this.name(bytes[2]! + bytes[3]! * 256 - 1);
  }

  private name(index: number): string | undefined {
    for (const [id, i] of this.order) if (i === index) return id;
    return undefined;
  }

  numberOf = (instance: string): number => this.order.get(instance) ?? -1;

  mask(): IdMask | undefined {
    if (!this.faceTarget) return undefined;
    const { x: width, y: height } = this.u.size.value;
    const bytes = new Uint8Array(width * height * 4);
    this.renderer.readRenderTargetPixels(this.faceTarget, 0, 0, width, height, bytes, undefined, 1);
    return { width, height, bytes };
  }

  dispose(): void {
    this.faceTarget?.dispose();
    this.lineTarget?.dispose();
    this.u.partTexture.value?.dispose();
    for (const material of Object.values(this.materials)) material.dispose();
    // Browsers allow few contexts at once: give this one back now, not when memory is next tidied.
    this.renderer.forceContextLoss();
    this.renderer.dispose();
  }
}

function still(mesh: Mesh): Mesh {
  mesh.frustumCulled = false;
  return mesh;
}
