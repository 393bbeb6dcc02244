import occt from 'occt-import-js';

/** A solid as the independent reader sees it: volume and centre from its own triangles, mm3 and mm. */
export interface ReadSolid {
  name: string;
  volume: number;
  centre: [number, number, number];
}

let loading: ReturnType<typeof occt> | undefined;

/** Reads a STEP file with another program's reader; places hold by their transforms, names by nodes. */
export async function readStep(bytes: Uint8Array): Promise<{ solids: ReadSolid[]; names: string[] }> {
  loading ??= occt();
  const read = (await loading).ReadStepFile(bytes, {
    linearUnit: 'millimeter',
    linearDeflectionType: 'absolute_value',
    linearDeflection: 0.01,
    angularDeflection: 0.1,
  });
  if (!read.success) throw new Error('the reader refuses this file');
  const names: string[] = [];
  const walk = (node: (typeof read)['root']): void => {
    names.push(node.name);
    node.children.forEach(walk);
  };
  walk(read.root);
  const solids = read.meshes.map(({ name, attributes, index }) => {
    const at = attributes.position.array;
    const sum = [0, 0, 0];
    let six = 0;
    for (let t = 0; t < index.array.length; t += 3) {
      const [a, b, c] = [0, 1, 2].map(k => {
        const n = 3 * index.array[t + k]!;
        return [at[n]!, at[n + 1]!, at[n + 2]!];
      }) as [number[], number[], number[]];
      const v =
        a[0]! * (b[1]! * c[2]! - b[2]! * c[1]!) +
        a[1]! * (b[2]! * c[0]! - b[0]! * c[2]!) +
        a[2]! * (b[0]! * c[1]! - b[1]! * c[0]!);
      six += v;
      for (const k of [0, 1, 2]) sum[k]! += (v * (a[k]! + b[k]! + c[k]!)) / 4;
    }
    return { name, volume: six / 6, centre: sum.map(s => s / six) as [number, number, number] };
  });
  return { solids, names };
}
