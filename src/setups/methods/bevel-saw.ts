import type { ProfileCut } from '../../results/cuts.ts';
import { MACHINE_FILES } from '../../workshop/machines/index.ts';
import { lengthSetting, otherSetting, say1 } from '../figures.ts';
import { type Method, made, refuse, type Task } from '../method.ts';
import { outlineOf } from '../outline.ts';
import { ALONG_FEED, section } from '../section.ts';
import { beyond, bladeOf, machineOf, noBlade } from '../shop.ts';
import {
  distanceFrom,
  FACE_WORDS,
  FACES,
  faceAxis,
  nominal,
  opposite,
  otherAxis,
  trueSize,
} from '../sizes.ts';
import { isMetal } from '../speeds.ts';

/** Where the leaning cut lies: the narrow face down, the edge that stays to the fence. */
interface Leaning {
  down: keyof typeof FACE_WORDS;
  against: keyof typeof FACE_WORDS;
  /** Width left on the narrow face, and on the wide one. */
  narrow: number;
  wide: number;
  thick: number;
  tilt: number;
}

/** A long edge out of square, right through: one slanting side over the whole thickness; else undefined. */
function leaningOf(task: Task<ProfileCut>): Leaning | undefined {
  const { cut, instance } = task;
  if (cut.axis !== 'x' || cut.polygon.length !== 3 || !outlineOf(instance, cut).whole) return undefined;
  const deep = faceAxis(cut.face);
  const side = otherAxis('x', deep);
  const at = (p: [number, number], axis: 'x' | 'y' | 'z'): number => (axis === 'y' ? p[0] : p[1]);
  const sides = cut.polygon.map(p => at(p, side));
  const edge = sides.filter(v => Math.abs(v) < 0.01).length >= 2 ? FACES[side].low : FACES[side].high;
  const against = opposite(edge);
  const left = cut.polygon.map(p => ({
    kept: distanceFrom(instance, against, at(p, side)),
    deep: at(p, deep),
  }));
  const inner = left.reduce((a, b) => (b.kept < a.kept ? b : a));
  const thick = nominal(instance, deep);
  const down = inner.deep > thick / 2 ? FACES[deep].high : FACES[deep].low;
  const far = left.filter(p => Math.abs(p.deep - inner.deep) > thick - 0.02);
  if (far.length !== 1) return undefined;
  const wide = far[0]!.kept;
  return {
    down,
    against,
    narrow: inner.kept,
    wide,
    thick,
    tilt: (Math.atan2(wide - inner.kept, thick) * 180) / Math.PI,
  };
}

/** A bevel along the grain at the table saw, blade leaning away from the fence (SET-29). */
export const bevelTableSaw: Method = {
  name: 'table saw, blade tilted',
  makes: ['bevel'],
  attempt(plain) {
    const task: Task<ProfileCut> = { ...plain, cut: plain.cut as ProfileCut };
    const { instance, workshop } = task;
    if (isMetal(instance)) return refuse('the saw is set up for timber');
    const machine = machineOf(workshop, 'table saw');
    if (!machine) return refuse('the workshop has no table saw');
    const blade = bladeOf(workshop, machine, ['rip', 'combination', 'cross']);
    if (!blade) return refuse(noBlade(workshop, machine));
    const lean = leaningOf(task);
    if (!lean) return refuse('the bevel is not one slant over a whole long edge');
    const tall = lean.thick / Math.cos((lean.tilt * Math.PI) / 180);
    const limit = beyond(machine, {
      depth: tall,
      tilt: lean.tilt,
      fence: lean.wide,
      piece: trueSize(instance, 'x'),
    });
    if (limit) return refuse(limit);
    return made({
      what: 'Bevels',
      method: 'along the fence, blade tilted',
      machine,
      tool: `${blade.name}, kerf ${say1(blade.kerf)}`,
      state: { tool: blade.id, jig: '', fence: lean.narrow, height: lean.thick + 5, tilt: lean.tilt },
      settings: [
        lengthSetting(
          'fence',
          lean.narrow,
          `width left on the ${FACE_WORDS[lean.down]}, at the table`,
          'bevel',
          'near teeth',
        ),
        otherSetting(
          'tilt',
          'angle',
          lean.tilt,
          `${say1(lean.wide - lean.narrow)} over ${say1(lean.thick)}; from upright, ${say1(90 - lean.tilt)} from the table`,
          'bevel',
        ),
        lengthSetting('blade height', lean.thick + 5, `${say1(lean.thick)} + 5.0 over the work`, 'bladeOver'),
      ],
      lays: [
        {
          label: `${FACE_WORDS[lean.down]} down`,
          down: lean.down,
          against: lean.against,
          entry: lean.down,
          end: 'end1',
        },
      ],
      removal: { shape: 'bevel', width: blade.kerf, moves: [0] },
      drawing: () =>
        section({
          view: 'flat rip',
          zero: 'fence',
          seen: ALONG_FEED,
          tool: { from: lean.narrow, to: lean.narrow + blade.kerf, height: lean.thick + 5, tilt: lean.tilt },
          work: { width: Math.max(lean.wide, lean.narrow), height: lean.thick },
          keep: { from: 0, to: lean.narrow, label: 'kept' },
          reads: 'near',
          grain: 'end-on',
        }),
      kerfSide: 'outside the part, away from the fence',
      trial: false,
      before: ['The tilt is tried on waste with a bevel set to the drawing'],
      after: ['The sawn bevel is planed with one stroke'],
      cautions: [
        ...MACHINE_FILES['table saw'].cautions,
        'Blade leans away from the fence; a leaning blade towards it traps the strip.',
      ],
      passes: 1,
    });
  },
};
