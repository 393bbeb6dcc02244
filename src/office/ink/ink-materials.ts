import {
  CustomBlending,
  type DataTexture,
  type DepthTexture,
  DoubleSide,
  FrontSide,
  GLSL3,
  Matrix4,
  MaxEquation,
  NoBlending,
  OneFactor,
  RawShaderMaterial,
  type ShaderMaterialParameters,
  type Texture,
  Vector2,
  Vector3,
} from 'three';
import {
  FACE_FRAGMENT,
  FACE_VERTEX,
  LINE_FRAGMENT,
  LINE_VERTEX,
  SHEET_FRAGMENT,
  SHEET_VERTEX,
} from './shaders.ts';

/** Custom properties of the ground that colour washes and hatches, in the shader's own order. */
export const WASHES = ['--timber', '--timber-end', '--metal', '--brass', '--board'];
export const HATCHES = ['--timber-ink', '--metal-ink', '--brass-ink', '--board-ink'];

/** Everything the passes share: changed in place, read by every material. */
export const inkUniforms = () => ({
  size: { value: new Vector2(1, 1) },
  view: { value: new Vector3() },
  viewProjection: { value: new Matrix4() },
  partTexture: { value: null } as { value: DataTexture | null },
  ids: { value: null } as { value: Texture | null },
  depth: { value: null } as { value: DepthTexture | null },
  colour: { value: null } as { value: Texture | null },
  lines: { value: null } as { value: Texture | null },
  ratio: { value: 1 },
  weight: { value: 1 },
  mmPx: { value: 1 },
  depthMm: { value: 1 },
  halves: { edges: { value: 0.55 }, outline: { value: 2 } },
  hidden: { value: 0 },
  washes: WASHES.map(() => new Vector3()),
  hatches: HATCHES.map(() => new Vector3()),
  pickWash: { value: new Vector3() },
  ink: { value: new Vector3() },
  pencil: { value: new Vector3() },
});
export type InkUniforms = ReturnType<typeof inkUniforms>;

/** The materials of the three passes. */
export function inkMaterials(
  u: InkUniforms,
): Record<'face' | 'edges' | 'outline' | 'sheet', RawShaderMaterial> {
  const make = (vertexShader: string, fragmentShader: string, more: ShaderMaterialParameters) =>
    new RawShaderMaterial({ glslVersion: GLSL3, vertexShader, fragmentShader, ...more });
  const shared = {
    uViewProjection: u.viewProjection,
    uPart: u.partTexture,
    uRatio: u.ratio,
    uMmPx: u.mmPx,
    uSize: u.size,
  };
  const line = (half: { value: number }, outline: boolean): RawShaderMaterial =>
    make(LINE_VERTEX, LINE_FRAGMENT, {
      side: DoubleSide,
      depthTest: false,
      depthWrite: false,
      transparent: true,
      blending: CustomBlending,
      blendEquation: MaxEquation,
      blendEquationAlpha: MaxEquation,
      blendSrc: OneFactor,
      blendDst: OneFactor,
      blendSrcAlpha: OneFactor,
      blendDstAlpha: OneFactor,
      uniforms: {
        ...shared,
        uHalf: half,
        uOutline: { value: outline },
        uIds: u.ids,
        uDepth: u.depth,
        uDepthMm: u.depthMm,
      },
    });
  return {
    face: make(FACE_VERTEX, FACE_FRAGMENT, {
      side: FrontSide,
      blending: NoBlending,
      uniforms: {
        ...shared,
        uView: u.view,
        uWeight: u.weight,
        uWash: { value: u.washes },
        uHatch: { value: u.hatches },
        uPickWash: u.pickWash,
      },
    }),
    edges: line(u.halves.edges, false),
    outline: line(u.halves.outline, true),
    sheet: make(SHEET_VERTEX, SHEET_FRAGMENT, {
      depthTest: false,
      depthWrite: false,
      blending: NoBlending,
      uniforms: {
        uColour: u.colour,
        uIds: u.ids,
        uLines: u.lines,
        uInk: u.ink,
        uPencil: u.pencil,
        uHidden: u.hidden,
      },
    }),
  };
}
