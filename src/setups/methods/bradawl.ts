import type { HoleCut } from '../../results/cuts.ts';
import { CAUTIONS } from '../cautions.ts';
import { lengthSetting, say1 } from '../figures.ts';
import { type Method, made, refuse, type Task } from '../method.ts';
import { section } from '../section.ts';
import { FACE_WORDS, faceAxis, opposite, trueSize } from '../sizes.ts';
import { isMetal } from '../speeds.ts';
import { handBench } from './hand-bench.ts';
import { placeHole } from './hole-place.ts';

/** Widest lead hole that a bradawl opens, mm: screw tables give it for gauges 4 and 5 (3.2 mm shank) in softwood. */
const WIDEST = 2;

/** A lead hole for a small screw, pressed in by hand, the blade across the grain. */
export const bradawl: Method = {
  name: 'bradawl',
  makes: ['hole'],
  attempt(task) {
    const cut = task.cut as HoleCut;
    const hole: Task<HoleCut> = { ...task, cut };
    if (cut.role !== 'pilot' || cut.diameter > WIDEST + 0.01)
      return refuse(`a bradawl opens lead holes up to ${say1(WIDEST)}`);
    if (isMetal(task.instance)) return refuse('a bradawl does not enter metal');
    const machine = handBench(task.workshop);
    if (!machine) return refuse('no hand tools are in the workshop file');
    const place = placeHole(hole);
    return made({
      what: 'Lead holes',
      method: 'bradawl by hand',
      machine,
      tool: 'bradawl',
      state: { tool: 'bradawl', fence: place.fence, tilt: 0 },
      settings: [
        lengthSetting(
          'gauge',
          place.fence,
          `centre from the ${FACE_WORDS[place.fenceFace]}`,
          'reference',
          'centre',
        ),
        lengthSetting('depth', cut.depth, `as drawn ${say1(cut.depth)}; the screw finds the rest`, 'hole'),
      ],
      lays: [
        {
          label: FACE_WORDS[cut.face],
          down: opposite(cut.face),
          against: place.fenceFace,
          entry: cut.face,
          end: place.endFace,
        },
      ],
      stations: [place.station],
      removal: { shape: 'by eye', width: cut.diameter, moves: [0] },
      drawing: () =>
        section({
          view: 'hand',
          zero: 'face',
          seen: 'facing the work in the vice',
          tool: {
            from: place.fence - cut.diameter / 2,
            to: place.fence + cut.diameter / 2,
            height: cut.depth,
            above: true,
          },
          work: {
            width: trueSize(task.instance, faceAxis(place.fenceFace)),
            height: Math.min(200, trueSize(task.instance, faceAxis(cut.face))),
          },
          reads: 'centre',
          toolWord: 'bradawl',
          grain: 'end-on',
        }),
      kerfSide: 'on the centre mark',
      trial: false,
      before: [],
      after: [],
      cautions: [CAUTIONS.hand],
      passes: 1,
    });
  },
};
