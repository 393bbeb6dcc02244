import { timberSpecies } from '../reference/timber-species.ts';
import type { DoorDocument, JobDocument } from '../setting-out/schema.ts';
import { roomFor } from './least.ts';
import { type Made, share, within } from './made.ts';
import { growth } from './season.ts';

/**
 * A door let into an opening that looks to the front: a slab, or a frame with a panel in its groove, and its
 * hinges. Sizes are expressions over the opening. Rules BLD-7 to BLD-9.
 */
export function makeDoor(id: string, d: DoorDocument, document: JobDocument): Made {
  const t = (text: Parameters<typeof within>[1], otherwise?: string): string =>
    within(document, text, otherwise);
  const name = d.name ?? 'Door';
  const { left, right, bottom, top } = d.opening;
  const o = { l: t(left), r: t(right), b: t(bottom), t: t(top) };
  const gap = t(d.gap, '2 mm');
  const framed = d.stile !== undefined;
  const swell = share(growth(d.material, document));
  // Only what lies across the grain grows: two stiles of a framed door, the whole slab of a plain one.
  const grows = framed ? `2 * ${t(d.stile)}` : `(${o.r} - ${o.l})`;
  const closing = `${id}_closing`;
  const near = `${o.l} + ${d.hinged === 'left' ? gap : closing}`;
  const far = `${o.r} - ${d.hinged === 'left' ? closing : gap}`;
  const thick = t(d.thickness);
  const made: Made = {
    parameters: {
      ...roomFor(id, name, [
        ['gap', 'gap round the door', gap, '0 mm'],
        [
          'wide',
          framed ? 'opening, for two stiles and the gaps' : 'opening, for the gaps',
          `${o.r} - ${o.l}`,
          `${framed ? `2 * ${t(d.stile)} + ` : ''}${gap} + ${closing} + 1 mm`,
        ],
        [
          'high',
          framed ? 'opening, for two rails and the gaps' : 'opening, for the gaps',
          `${o.t} - ${o.b}`,
          `${framed ? `${t(d.top_rail ?? d.stile)} + ${t(d.bottom_rail ?? d.stile)} + ` : ''}2 * ${gap} + 1 mm`,
        ],
      ]),
      [closing]: {
        value: `ceil(${gap} + ${swell} * ${grows}, 0.1 mm)`,
        label: `${name}: gap at the closing side (BLD-7)`,
        note: 'The gap all round and what the door grows from the bench to the dampest of its room',
      },
      [`${id}_swing`]: {
        value: `${thick} * ${thick} / (2 * (${o.r} - ${o.l} - ${gap} - ${closing}))`,
        label: `${name}: what the closing edge swings out (BLD-8)`,
        max: closing,
      },
    },
    parts: {},
    joints: {},
    features: {},
    assemblies: {},
  };
  const upright = {
    bottom: `${o.b} + ${gap}`,
    top: `${o.t} - ${gap}`,
    front: d.opening.front,
  };
  if (framed) addFrame(id, d, made, { near, far, gap, ...o }, t, name, upright);
  else
    made.parts[`${id}_slab`] = {
      name,
      kind: timberSpecies(d.material) ? 'timber' : 'sheet',
      material: d.material,
      width: `${far} - (${near})`,
      thickness: d.thickness,
      along: 'up',
      facing: 'front',
      at: { left: near, ...upright },
      note: 'BLD-7',
    };
  if (d.hinges)
    made.parts[`${id}_hinge`] = {
      name: `${name}, hinge`,
      kind: 'bought-in',
      material: d.hinges.item,
      count: d.hinges.count ?? `${o.t} - ${o.b} > 900 mm ? 3 : 2`,
      ...(d.hinges.price === undefined ? {} : { price: d.hinges.price }),
      ...(d.hinges.mass === undefined ? {} : { mass: d.hinges.mass }),
      note: 'BLD-9: recesses follow the leaf in hand',
    };
  return made;
}

type Text = (text: string | number | undefined, otherwise?: string) => string;

function addFrame(
  id: string,
  d: DoorDocument,
  made: Made,
  o: Record<'near' | 'far' | 'gap' | 'l' | 'r' | 'b' | 't', string>,
  t: Text,
  name: string,
  upright: { bottom: string; top: string; front: string | number },
): void {
  const stile = `${id}_stile`;
  const groove = d.panel ? t(d.groove, '10 mm') : undefined;
  made.parts[stile] = {
    name: `${name}, stile`,
    kind: 'timber',
    material: d.material,
    width: d.stile!,
    thickness: d.thickness,
    along: 'up',
    facing: 'front',
    at: { left: o.near, ...upright },
    mirror: { x: `(${o.near} + ${o.far}) / 2` },
    note: 'BLD-7',
  };
  const rails = [
    ['top_rail', d.top_rail ?? d.stile!, { top: `${stile}.top` }],
    ['bottom_rail', d.bottom_rail ?? d.stile!, { bottom: `${stile}.bottom` }],
  ] as const;
  for (const [which, width, at] of rails) {
    made.parts[`${id}_${which}`] = {
      name: `${name}, ${which === 'top_rail' ? 'top rail' : 'bottom rail'}`,
      kind: 'timber',
      material: d.material,
      width,
      thickness: d.thickness,
      along: 'right',
      facing: 'front',
      at: { left: `${stile}.right`, right: `${stile}_x.left`, front: d.opening.front, ...at },
    };
    made.joints[`${id}_${which}_in_stile`] = {
      type: 'mortise-and-tenon',
      from: `${id}_${which}`,
      into: stile,
      count: 2,
      set: {
        ...(d.tenon === undefined ? {} : { 'tenon.length': d.tenon }),
        ...(groove === undefined ? {} : { kind: 'haunched', 'haunch.length': groove }),
      },
    };
  }
  if (d.panel && groove !== undefined) {
    const panel = `${id}_panel`;
    made.parts[panel] = {
      name: `${name}, panel`,
      kind: timberSpecies(d.panel.material) ? 'timber' : 'sheet',
      material: d.panel.material,
      length: `${id}_top_rail.bottom - ${id}_bottom_rail.top`,
      width: `${stile}_x.left - ${stile}.right`,
      thickness: d.panel.thickness,
      along: 'up',
      facing: 'front',
      at: {
        left: `${stile}.right`,
        bottom: `${id}_bottom_rail.top`,
        centre_y: `${stile}.centre_y`,
      },
    };
    for (const into of [stile, `${id}_top_rail`, `${id}_bottom_rail`])
      made.joints[`${panel}_in_${into.slice(id.length + 1)}`] = {
        type: 'grooved-panel',
        from: panel,
        into,
        set: {
          'groove.depth': groove,
          ...(d.panel.gap === undefined ? {} : { 'gap.side': d.panel.gap }),
          ...(d.panel.edge === undefined ? {} : { 'edge.thickness': d.panel.edge }),
        },
      };
    if (d.panel.edge !== undefined)
      for (const edge of ['left', 'right', 'top', 'bottom'] as const)
        made.features[`${panel}_${edge}`] = {
          type: 'rebate',
          on: panel,
          face: 'back',
          edge,
          width: groove,
          depth: `${t(d.panel.thickness)} - ${t(d.panel.edge)}`,
        };
  }
  made.assemblies[id] = {
    name,
    parts: [stile, `${stile}_x`, `${id}_top_rail`, `${id}_bottom_rail`, ...(d.panel ? [`${id}_panel`] : [])],
    glue: 'pva-d3',
  };
}
