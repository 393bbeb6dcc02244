/** The part of the reader that the tests use. */
declare module 'occt-import-js' {
  interface StepNode {
    name: string;
    meshes: number[];
    children: StepNode[];
  }
  interface StepMesh {
    name: string;
    attributes: { position: { array: number[] } };
    index: { array: number[] };
  }
  interface StepReader {
    ReadStepFile(
      bytes: Uint8Array,
      options: object,
    ): { success: boolean; root: StepNode; meshes: StepMesh[] };
  }
  export default function load(): Promise<StepReader>;
}
