import type { EndCut, LocalFace } from '../../results/cuts.ts';
import type { Setting, SetUp } from '../../results/setups.ts';
import type { Machine } from '../../workshop/workshop.ts';
import { otherScale, ringError, ringOf } from '../angles.ts';
import { CAUTIONS } from '../cautions.ts';
import { lengthSetting, otherSetting, say1 } from '../figures.ts';
import { type Draft, type Method, made, refuse, type Task } from '../method.ts';
import { AT_SLED, section } from '../section.ts';
import { beyond, bladeOf, jigOf, machineOf, noBlade } from '../shop.ts';
import { FACE_WORDS, trueSize } from '../sizes.ts';
import { isMetal } from '../speeds.ts';
import { handBench } from './hand-bench.ts';

const cutOf = (task: Task): EndCut => task.cut as EndCut;

/** Both ways a scale may print an angle: from square, and from the fence (SET-18). */
export function angleSettings(cut: EndCut): Setting[] {
  const mitre = Math.abs(cut.mitre);
  const bevel = Math.abs(cut.bevel);
  return [
    otherSetting(
      'mitre',
      'angle',
      mitre,
      `${say1(mitre)} from square; ${say1(otherScale(mitre))} on a scale that counts from the fence`,
      'mitre',
    ),
    otherSetting(
      'tilt',
      'angle',
      bevel,
      bevel === 0
        ? 'blade square to the table'
        : `${say1(bevel)} from upright; ${say1(90 - bevel)} from the table`,
      'mitre',
    ),
  ];
}

/** What an error on the scale does to the ring that these ends close (SET-18). */
function ringWords(cut: EndCut): string[] {
  const ring = ringOf(Math.abs(cut.mitre), Math.abs(cut.bevel));
  return ring
    ? [
        `Closes a ring of ${ring.sides}${ring.slope > 0.05 ? `, sides sloping ${say1(ring.slope)} from flat` : ''}: 0.1 off on the scale gapes ${say1(ringError(ring.sides, 0.1))} degrees at the last corner`,
      ]
    : [];
}

/** A positive mitre takes more from the face edge, a positive bevel more from the face side: long on the others. */
function longFaces(cut: EndCut): LocalFace[] {
  return [
    ...(cut.mitre === 0 ? [] : [cut.mitre > 0 ? ('backEdge' as const) : ('faceEdge' as const)]),
    ...(cut.bevel === 0 ? [] : [cut.bevel > 0 ? ('back' as const) : ('face' as const)]),
  ];
}

/** The stop reads from the long point: the length of the part, which the second end is cut to. */
const stopSetting = (task: Task): Setting =>
  lengthSetting(
    'stop',
    trueSize(task.instance, 'x'),
    'long point to long point, for the second end',
    'kerf',
    'near teeth',
  );

function draft(
  task: Task,
  kit: { machine: Machine; tool: string; toolId: string; kerf: number; jig?: Draft['jig'] },
  method: string,
  extra: Setting[],
  cautions: string[],
): Draft {
  const cut = cutOf(task);
  const width = trueSize(task.instance, 'y');
  const long = longFaces(cut);
  const angled = cut.mitre !== 0 || cut.bevel !== 0;
  return {
    what: angled ? (cut.bevel !== 0 && cut.mitre !== 0 ? 'Compound ends' : 'Mitres') : 'Ends, square',
    method,
    machine: kit.machine,
    tool: kit.tool,
    ...(kit.jig ? { jig: kit.jig } : {}),
    state: {
      tool: kit.toolId,
      jig: kit.jig?.id ?? '',
      fence: trueSize(task.instance, 'x'),
      tilt: cut.bevel,
      mitre: cut.mitre,
    },
    settings: [...angleSettings(cut), stopSetting(task), ...extra],
    lays: [
      {
        label: `${FACE_WORDS[cut.end]}${long.length > 0 ? `, long on the ${long.map(f => FACE_WORDS[f]).join(' and the ')}` : ''}`,
        down: 'back',
        against: cut.mitre < 0 ? 'faceEdge' : 'backEdge',
        long,
        entry: cut.end,
        end: cut.end === 'end1' ? 'end2' : 'end1',
      },
    ],
    removal: { shape: 'end', width: kit.kerf, moves: [0] },
    drawing: () => ({
      ...section({
        view: 'cross-cut',
        zero: 'stop',
        seen: AT_SLED,
        tool: { from: 0, to: kit.kerf, height: trueSize(task.instance, 'z'), tilt: cut.bevel },
        work: { width: Math.min(160, trueSize(task.instance, 'x')), height: width },
        reads: 'near',
        grain: 'across',
      }),
      plane: 'plan',
    }),
    end: cut.end,
    kerfSide: 'beyond the long point, in the waste',
    ...(angled
      ? {
          correction: {
            share: 'half',
            tooBig: 'Ring open outside: take from the angle the gap’s angle over twice the corners.',
            tooSmall: 'Ring open inside: add to the angle the gap’s angle over twice the corners.',
          } satisfies NonNullable<SetUp['correction']>,
        }
      : {}),
    trial: angled,
    before: angled ? ['Grooves and rebates are cut: they run out through the mitre'] : [],
    after: angled ? ['Opposite sides of a frame are held together and found equal', ...ringWords(cut)] : [],
    cautions,
    passes: 1,
  };
}

export const mitreSawEnd: Method = {
  name: 'mitre saw',
  makes: ['end-cut'],
  attempt(task) {
    if (isMetal(task.instance)) return refuse('the mitre saw is set up for timber');
    const machine = machineOf(task.workshop, 'mitre saw');
    if (!machine) return refuse('the workshop has no mitre saw');
    const blade = bladeOf(task.workshop, machine, ['cross', 'combination', 'rip']);
    if (!blade) return refuse(noBlade(task.workshop, machine));
    const cut = cutOf(task);
    const limit = beyond(machine, {
      depth: trueSize(task.instance, 'z'),
      tilt: Math.abs(cut.bevel),
      piece: trueSize(task.instance, 'x'),
    });
    if (limit) return refuse(limit);
    if (Math.abs(cut.mitre) > 50) return refuse(`${say1(Math.abs(cut.mitre))} is past the turntable`);
    const tool = `${blade.name}, kerf ${say1(blade.kerf)}`;
    return made(
      draft(
        task,
        { machine, tool, toolId: blade.id, kerf: blade.kerf },
        'at the mitre saw',
        [],
        [CAUTIONS.mitreSaw],
      ),
    );
  },
};

export const sledEnd: Method = {
  name: 'table saw, sled',
  makes: ['end-cut'],
  attempt(task) {
    if (isMetal(task.instance)) return refuse('the table saw is set up for timber');
    const machine = machineOf(task.workshop, 'table saw');
    if (!machine) return refuse('the workshop has no table saw');
    const cut = cutOf(task);
    const mitred = Math.abs(cut.mitre) > 0.01;
    const jig = jigOf(task.workshop, machine, mitred ? 'mitre sled' : 'cross-cut sled');
    if (!jig) return refuse(`the table saw has no ${mitred ? 'mitre' : 'cross-cut'} sled`);
    if (mitred && Math.abs(Math.abs(cut.mitre) - 45) > 0.01)
      return refuse(`the mitre sled holds 45, not ${say1(Math.abs(cut.mitre))}`);
    const blade = bladeOf(task.workshop, machine, ['cross', 'combination', 'rip']);
    if (!blade) return refuse(noBlade(task.workshop, machine));
    const thick = trueSize(task.instance, 'z');
    const limit = beyond(machine, {
      depth: thick,
      tilt: Math.abs(cut.bevel),
      piece: trueSize(task.instance, 'x'),
    });
    if (limit) return refuse(limit);
    const tool = `${blade.name}, kerf ${say1(blade.kerf)}, ${jig.name}`;
    const over = Math.min(5, (machine.maxDepth ?? thick + 5) - thick);
    return made(
      draft(
        task,
        { machine, tool, toolId: blade.id, kerf: blade.kerf, jig },
        mitred ? 'on the mitre sled' : 'on the cross-cut sled',
        [
          lengthSetting(
            'blade height',
            thick + over,
            `${say1(thick)} + ${say1(over)} over the work`,
            'bladeOver',
          ),
        ],
        [CAUTIONS.sled],
      ),
    );
  },
};

export const metalSawEnd: Method = {
  name: 'metal saw',
  makes: ['end-cut'],
  attempt(task) {
    if (!isMetal(task.instance)) return refuse('the metal saw is for metal');
    const machine = machineOf(task.workshop, 'metal saw');
    if (!machine) return refuse('the workshop has no metal saw');
    const blade =
      bladeOf(task.workshop, machine, ['metal']) ?? task.workshop.blades.find(b => b.machine === machine.id);
    const limit = beyond(machine, { depth: trueSize(task.instance, 'z'), tilt: Math.abs(cutOf(task).bevel) });
    if (limit) return refuse(limit);
    return made(
      draft(
        task,
        {
          machine,
          tool: blade ? `${blade.name}, kerf ${say1(blade.kerf)}` : 'metal blade',
          toolId: blade?.id ?? 'metal',
          kerf: blade?.kerf ?? 1,
        },
        'at the metal saw',
        [],
        [CAUTIONS.metal],
      ),
    );
  },
};

export const handEnd: Method = {
  name: 'back saw and shooting board',
  makes: ['end-cut'],
  attempt(task) {
    const machine = handBench(task.workshop);
    if (!machine) return refuse('no hand tools are in the workshop file');
    const metal = isMetal(task.instance);
    return made(
      draft(
        task,
        {
          machine,
          tool: metal ? 'hacksaw and file' : 'back saw, shooting board',
          toolId: metal ? 'hacksaw' : 'back saw',
          kerf: metal ? 1 : 0.8,
        },
        metal ? 'sawn and filed to the line' : 'sawn and shot to the line',
        [],
        [metal ? CAUTIONS.metal : CAUTIONS.hand],
      ),
    );
  },
};
