import type { Axis } from '../geometry/vector.ts';
import type { Direction, JobDocument, PanelDocument, PartDocument } from '../setting-out/schema.ts';
import { type Made, within } from './made.ts';

type WorldFace = 'left' | 'right' | 'front' | 'back' | 'bottom' | 'top';
type PlaceKey = keyof NonNullable<PartDocument['at']>;

const AXIS_OF: Record<Direction | WorldFace, Axis> = {
  left: 'x',
  right: 'x',
  front: 'y',
  back: 'y',
  up: 'z',
  down: 'z',
  bottom: 'z',
  top: 'z',
};
const LOW: Record<Axis, WorldFace> = { x: 'left', y: 'front', z: 'bottom' };
const HIGH: Record<Axis, WorldFace> = { x: 'right', y: 'back', z: 'top' };
/** The direction in which a world face looks, and the world face that looks in a direction. */
const LOOKS: Record<WorldFace, Direction> = {
  left: 'left',
  right: 'right',
  front: 'front',
  back: 'back',
  bottom: 'down',
  top: 'up',
};
const FACE_OF: Record<Direction, WorldFace> = {
  left: 'left',
  right: 'right',
  front: 'front',
  back: 'back',
  up: 'top',
  down: 'bottom',
};
const AXES: readonly Axis[] = ['x', 'y', 'z'];

/**
 * A made-up panel: the core shrinks by its lippings and by its faces, so that the whole comes to the size that
 * was asked. Lippings put on after the faces cover their edges; put on before, the faces cover them. Rules
 * BLD-11 to BLD-13.
 */
export function makePanel(id: string, d: PanelDocument, document: JobDocument): Made {
  const t = (text: Parameters<typeof within>[1], otherwise?: string): string =>
    within(document, text, otherwise);
  const name = d.name ?? 'Panel';
  const core = `${id}_core`;
  const thin = AXIS_OF[d.facing];
  const long = AXIS_OF[d.along];
  const wide = AXES.find(k => k !== thin && k !== long) ?? 'y';
  const faceSide = FACE_OF[d.facing];
  const behind = faceSide === HIGH[thin] ? LOW[thin] : HIGH[thin];
  const glue = t(d.faces?.glue_line, '0 mm');
  const lip = d.lipping ? t(d.lipping.thickness) : '0 mm';
  const edges: readonly WorldFace[] = d.lipping?.edges ?? [];
  const after = (d.lipping?.when ?? 'after faces') === 'after faces';
  const measured = document.measured?.[core]?.thickness;
  const coreThick = measured === undefined ? t(d.core.thickness) : t(measured);
  const build = (side: 'face' | 'back'): string =>
    d.faces?.[side] ? `(${t(d.faces[side].thickness)} + ${glue})` : '0 mm';
  /** What is taken off the whole at a world face before the core begins. */
  const off = (face: WorldFace): string => {
    if (face === faceSide) return build('face');
    if (face === behind) return build('back');
    return edges.includes(face) ? lip : '0 mm';
  };
  const inset = (key: PlaceKey, text: string | number): string => {
    const axis = key.startsWith('centre_') ? (key.slice(7) as Axis) : AXIS_OF[key as WorldFace];
    if (key.startsWith('centre_')) return `${t(text)} + (${off(LOW[axis])} - ${off(HIGH[axis])}) / 2`;
    return key === LOW[axis]
      ? `${t(text)} + ${off(key as WorldFace)}`
      : `${t(text)} - ${off(key as WorldFace)}`;
  };
  const less = (axis: Axis): string => `${off(LOW[axis])} - ${off(HIGH[axis])}`;
  const made: Made = {
    parameters: {
      [`${id}_build_up`]: {
        value: `${coreThick} + ${build('face')} + ${build('back')}`,
        label: `${name}: thickness made up (BLD-12)`,
        note: 'Core as measured where it is, faces and their glue lines: what a groove or recess must take',
      },
    },
    parts: {
      [core]: {
        name: `${name}, core`,
        kind: 'sheet',
        material: d.core.material,
        thickness: d.core.thickness,
        along: d.along,
        facing: d.facing,
        at: Object.fromEntries(
          Object.entries(d.at).map(([key, text]) => [key, inset(key as PlaceKey, text as string | number)]),
        ),
        ...(d.length === undefined ? {} : { length: `${t(d.length)} - ${less(long)}` }),
        ...(d.width === undefined ? {} : { width: `${t(d.width)} - ${less(wide)}` }),
        ...(d.mirror ? { mirror: d.mirror } : {}),
        note: 'BLD-11',
      },
    },
    joints: {},
    features: {},
    assemblies: {},
  };
  const copies = d.mirror ? { mirror: d.mirror } : {};
  for (const [side, at] of [
    ['face', faceSide],
    ['back', behind],
  ] as const) {
    const sheet = d.faces?.[side];
    if (!sheet) continue;
    const over = (axis: Axis): string => (after ? '0 mm' : `${off(LOW[axis])} + ${off(HIGH[axis])}`);
    const shift = (axis: Axis): string => (after ? '0 mm' : `(${off(HIGH[axis])} - ${off(LOW[axis])}) / 2`);
    made.parts[`${id}_${side}`] = {
      name: `${name}, ${side === 'face' ? 'face' : 'backing'}`,
      kind: 'sheet',
      material: sheet.material,
      length: `${core}.length + ${over(long)}`,
      width: `${core}.width + ${over(wide)}`,
      thickness: sheet.thickness,
      along: d.along,
      facing: d.facing,
      at: {
        [at === HIGH[thin] ? LOW[thin] : HIGH[thin]]: `${core}.${at}`,
        [`centre_${long}`]: `${core}.centre_${long} + ${shift(long)}`,
        [`centre_${wide}`]: `${core}.centre_${wide} + ${shift(wide)}`,
      },
      ...copies,
      note: 'BLD-13',
    };
    made.joints[`${id}_${side}_on_core`] = {
      type: 'sheet-bonded',
      from: `${id}_${side}`,
      into: core,
      set: {
        faces: d.faces?.face && d.faces.back ? 'both' : 'one',
        'glue.line': d.faces?.glue_line ?? '0 mm',
      },
    };
  }
  for (const edge of edges) addLipping(edge);
  const parts = Object.keys(made.parts);
  if (parts.length > 1)
    for (const copy of copySuffixes(Object.keys(d.mirror ?? {})))
      made.assemblies[`${id}${copy}`] = {
        name,
        parts: parts.map(part => `${part}${copy}`),
        glue: d.glue ?? 'pva-d3',
        dry_fit: false,
      };
  return made;

  /** Strips on the long sides run over those at the ends. */
  function addLipping(edge: WorldFace): void {
    const across = AXIS_OF[edge];
    if (!d.lipping) return;
    if (across === thin) {
      made.refused = [
        ...(made.refused ?? []),
        {
          field: 'lipping.edges',
          fault: `${edge} is a face of the panel and no edge of it`,
          mend: `name sides that lie round a panel facing ${d.facing}`,
        },
      ];
      return;
    }
    const run = across === long ? wide : long;
    const runsOver = across === wide;
    const whole = after
      ? { size: `${id}_build_up`, from: faceSide, shift: `(${build('face')} - ${build('back')}) / 2` }
      : { size: `${core}.thickness`, from: faceSide, shift: '0 mm' };
    const up = faceSide === HIGH[thin] ? '' : '-';
    made.parts[`${id}_lip_${edge}`] = {
      name: `${name}, lipping`,
      kind: 'timber',
      material: d.lipping.material,
      length: `${core}.${run === long ? 'length' : 'width'} + ${runsOver ? `${off(LOW[run])} + ${off(HIGH[run])}` : '0 mm'}`,
      width: whole.size,
      thickness: d.lipping.thickness,
      along: { x: 'right', y: 'back', z: 'up' }[run] as Direction,
      facing: LOOKS[edge],
      at: {
        [edge === HIGH[across] ? LOW[across] : HIGH[across]]: `${core}.${edge}`,
        [`centre_${run}`]: runsOver
          ? `${core}.centre_${run} + (${off(HIGH[run])} - ${off(LOW[run])}) / 2`
          : `${core}.centre_${run}`,
        [`centre_${thin}`]: `${core}.centre_${thin} + ${up}(${whole.shift})`,
      },
      ...copies,
      note: 'BLD-11',
    };
    made.joints[`${id}_lip_${edge}_glued`] = { type: 'lipped', from: `${id}_lip_${edge}`, into: core };
  }
}

/** Ends of the ids of all copies that mirrors make: none, `_x`, `_y`, `_xy`. */
function copySuffixes(axes: readonly string[]): string[] {
  const sets = [''];
  for (const axis of [...axes].sort()) sets.push(...sets.map(set => set + axis));
  return sets.map(set => (set === '' ? '' : `_${set}`));
}
