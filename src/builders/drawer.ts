import type { DrawerDocument, JobDocument, PartDocument } from '../setting-out/schema.ts';
import { lapRoom, roomFor } from './least.ts';
import { type Made, share, within } from './made.ts';
import { growth } from './season.ts';

/**
 * A drawer for an opening that looks to the front: front, sides, back and bottom, with runners and kickers of
 * wood or bought slides. Every size is an expression over the opening, so that "why" leads back to it. Rules
 * BLD-1 to BLD-6 and BLD-10.
 */
export function makeDrawer(id: string, d: DrawerDocument, document: JobDocument): Made {
  const t = (text: Parameters<typeof within>[1], otherwise?: string): string =>
    within(document, text, otherwise);
  const name = d.name ?? 'Drawer';
  const { left, right, bottom, top, front, back } = d.opening;
  const o = { l: t(left), r: t(right), b: t(bottom), t: t(top), f: t(front), k: t(back) };
  const gap = t(d.gap, '1 mm');
  const frontTimber = d.front?.material ?? d.material;
  const thick = t(d.front?.thickness, '20 mm');
  const sideThick = t(d.side?.thickness, '10 mm');
  // Slides stand beside the box, so that a front of their own must cover them.
  const falseFront = d.front?.false_front ?? (d.slides ? (d.front?.thickness ?? '20 mm') : undefined);
  const box = { front: `${id}_front`, side: `${id}_side`, back: `${id}_back`, bottom: `${id}_bottom` };
  const rebated = (d.corner ?? 'rebated') === 'rebated';
  const room = d.slides ? t(d.slides.room) : gap;
  const depth =
    d.depth !== undefined ? t(d.depth) : d.slides ? t(d.slides.length) : `${o.k} - ${o.f} - 10 mm`;
  // A front that laps over stands before the opening; one let in takes its thickness of the depth.
  const face = falseFront === undefined || d.front?.overlap !== undefined ? '0 mm' : t(falseFront);
  const overGap = `${id}_over`;
  const swell = share(growth(frontTimber, document));
  const boxFront = falseFront === undefined ? thick : sideThick;
  const up = t(d.bottom?.up, '6 mm');
  const floor = d.bottom ? t(d.bottom.thickness) : '0 mm';
  const made: Made = {
    parameters: {
      ...roomFor(id, name, [
        ['gap', 'gap round the front', gap, '0 mm'],
        [
          'wide',
          'opening, for two sides and their gaps',
          `${o.r} - ${o.l}`,
          `2 * (${room} + ${sideThick}) + 1 mm`,
        ],
        [
          'high',
          'opening, for the back over the bottom and the gaps',
          `${o.t} - ${o.b}`,
          `${gap} + ${overGap} + ${up} + ${floor} + 3 mm`,
        ],
        [
          'deep',
          'depth, for front and back',
          depth,
          `${face} + ${boxFront} + ${t(d.back?.thickness ?? d.side?.thickness, '10 mm')} + ${t(d.back?.from_end, '10 mm')} + 1 mm`,
        ],
      ]),
      ...lapRoom(id, name, d, document, t),
      [overGap]: {
        value: `ceil(0.5 mm + ${swell} * (${o.t} - ${o.b}), 0.1 mm)`,
        label: `${name}: gap over the front (BLD-2)`,
        note: 'What the front grows from the bench to the dampest of its room, and half a millimetre',
      },
    },
    parts: {},
    joints: {},
    features: {},
    assemblies: {},
  };
  const timber = (over: Omit<PartDocument, 'kind'>): PartDocument => ({ kind: 'timber', ...over });

  made.parts[box.front] = timber({
    name: falseFront === undefined ? `${name}, front` : `${name}, box front`,
    material: falseFront === undefined ? frontTimber : d.material,
    length: `${o.r} - ${o.l} - 2 * ${room}`,
    width: `${o.t} - ${o.b} - ${gap} - ${overGap}`,
    thickness: falseFront === undefined ? (d.front?.thickness ?? '20 mm') : (d.side?.thickness ?? '10 mm'),
    along: 'right',
    facing: 'front',
    at: {
      centre_x: `(${o.l} + ${o.r}) / 2`,
      front: falseFront === undefined ? front : `${o.f} + ${face}`,
      bottom: `${o.b} + ${gap}`,
    },
    note: d.slides ? 'BLD-6' : 'BLD-1, BLD-2',
  });
  // A lapped side runs on into the rebate of the front; dovetails are lengthened by their joint.
  const lap = rebated ? `${boxFront} / 2` : '0 mm';
  made.parts[box.side] = timber({
    name: `${name}, side`,
    material: d.material,
    length: `${depth} - ${face} - ${boxFront} + ${lap}`,
    width: `${box.front}.width - 1 mm`,
    thickness: d.side?.thickness ?? '10 mm',
    along: 'back',
    facing: 'right',
    at: { left: `${box.front}.left`, front: `${box.front}.back - ${lap}`, bottom: `${box.front}.bottom` },
    mirror: { x: `(${o.l} + ${o.r}) / 2` },
    ...(d.slides
      ? {}
      : { measure_first: { when: 'dry fit of the frame', reserve: { width: d.side?.reserve ?? '2 mm' } } }),
    note: d.slides ? 'BLD-6' : 'BLD-3',
  });
  if (rebated)
    for (const edge of ['left', 'right'] as const)
      made.features[`${id}_lap_${edge}`] = {
        type: 'rebate',
        on: box.front,
        face: 'back',
        edge,
        width: d.side?.thickness ?? '10 mm',
        depth: `${boxFront} / 2`,
      };
  else
    made.joints[`${id}_corners`] = {
      type: falseFront === undefined ? 'lapped-dovetail' : 'through-dovetail',
      from: box.side,
      into: box.front,
      count: 2,
    };
  made.parts[box.back] = timber({
    name: `${name}, back`,
    material: d.material,
    width: `${box.side}.width - ${up} - ${floor} - 1 mm`,
    thickness: d.back?.thickness ?? d.side?.thickness ?? '10 mm',
    along: 'right',
    facing: 'back',
    at: {
      left: `${box.side}.right`,
      right: `${box.side}_x.left`,
      back: `${box.side}.back - ${t(d.back?.from_end, '10 mm')}`,
      bottom: `${box.side}.bottom + ${up} + ${floor}`,
    },
    note: 'BLD-4',
  });
  made.joints[`${id}_back_in_sides`] = { type: 'housing', from: box.back, into: box.side, count: 2 };
  if (d.bottom) {
    const groove = d.bottom.groove ?? `${sideThick} / 2`;
    made.parts[box.bottom] = {
      name: `${name}, bottom`,
      kind: 'sheet',
      material: d.bottom.material,
      length: `${box.side}_x.left - ${box.side}.right`,
      width: `${box.back}.back - ${box.front}.back`,
      thickness: d.bottom.thickness,
      along: 'right',
      facing: 'up',
      at: {
        left: `${box.side}.right`,
        front: `${box.front}.back`,
        bottom: `${box.side}.bottom + ${up}`,
      },
    };
    made.joints[`${id}_bottom_in_sides`] = {
      type: 'grooved-panel',
      from: box.bottom,
      into: box.side,
      count: 2,
      set: { 'groove.depth': groove, 'gap.end': '0.5 mm' },
    };
    made.joints[`${id}_bottom_in_front`] = {
      type: 'grooved-panel',
      from: box.bottom,
      into: box.front,
      count: 1,
      set: { 'groove.depth': groove, 'gap.side': '0.5 mm' },
    };
  }
  if (falseFront !== undefined) addFalseFront(id, d, falseFront, made, o, t, overGap);
  for (const which of ['runner', 'kicker'] as const) addBearer(id, which, d, made, o, name);
  if (d.slides)
    made.parts[`${id}_slide`] = {
      name: `${name}, slide`,
      kind: 'bought-in',
      material: d.slides.item,
      count: 2,
      ...(d.slides.price === undefined ? {} : { price: d.slides.price }),
      ...(d.slides.mass === undefined ? {} : { mass: d.slides.mass }),
      note: 'BLD-6: buy before the opening is cut',
    };
  else if (d.stops ?? true)
    made.parts[`${id}_stop`] = timber({
      name: `${name}, stop`,
      material: d.material,
      length: '40 mm',
      width: '20 mm',
      thickness: '6 mm',
      count: 2,
      show: false,
      note: 'BLD-10: glued to the rail when the front stands flush',
    });
  made.assemblies[id] = {
    name,
    parts: [box.front, box.side, `${box.side}_x`, box.back, ...(d.bottom ? [box.bottom] : [])],
    glue: 'pva-d3',
  };
  return made;
}

type Opening = Record<'l' | 'r' | 'b' | 't' | 'f' | 'k', string>;

/** A front screwed on before the box: let in with the usual gaps, or lapping over the frame. */
function addFalseFront(
  id: string,
  d: DrawerDocument,
  thickness: string | number,
  made: Made,
  o: Opening,
  t: (text: string | number | undefined, otherwise?: string) => string,
  overGap: string,
): void {
  const over = d.front?.overlap;
  const gap = t(d.gap, '1 mm');
  const side = over === undefined ? `-${gap}` : t(over);
  const grown = over === undefined ? `- ${gap} - ${overGap}` : `+ 2 * ${t(over)}`;
  made.parts[`${id}_face`] = {
    name: `${d.name ?? 'Drawer'}, front`,
    kind: 'timber',
    material: d.front?.material ?? d.material,
    length: `${o.r} - ${o.l} + 2 * (${side})`,
    width: `${o.t} - ${o.b} ${grown}`,
    thickness,
    along: 'right',
    facing: 'front',
    at: {
      centre_x: `(${o.l} + ${o.r}) / 2`,
      back: `${id}_front.front`,
      bottom: `${o.b} - (${side})`,
    },
    note: over === undefined ? 'BLD-1, BLD-2' : 'laps over its frame',
  };
  made.joints[`${id}_face_on_box`] = {
    type: 'screwed',
    from: `${id}_front`,
    into: `${id}_face`,
    count: 1,
    dry: true,
  };
}

/** Runners under the sides, kickers over them, dowelled between the two parts that are named. */
function addBearer(
  id: string,
  which: 'runner' | 'kicker',
  d: DrawerDocument,
  made: Made,
  o: Opening,
  name: string,
): void {
  const bearer = d[which];
  if (!bearer) return;
  const part = `${id}_${which}`;
  made.parts[part] = {
    name: `${name}, ${which}`,
    kind: 'timber',
    material: d.material,
    width: bearer.width ?? '22 mm',
    thickness: bearer.thickness ?? '16 mm',
    along: 'back',
    facing: 'up',
    at: {
      left: o.l,
      front: `${bearer.front}.back`,
      back: `${bearer.back}.front`,
      ...(which === 'runner' ? { top: o.b } : { bottom: o.t }),
    },
    mirror: { x: `(${o.l} + ${o.r}) / 2` },
    show: false,
  };
  for (const end of ['front', 'back'] as const)
    made.joints[`${part}_${end}`] = {
      type: 'dowelled',
      from: part,
      into: bearer[end],
      count: 2,
      set: { 'dowel.diameter': '6 mm', 'dowel.count': 1 },
    };
}
