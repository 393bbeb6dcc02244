import { mm } from '../../src/results/quantity.ts';
import type { CardDrawing, SetUp, SetUpPlan } from '../../src/results/setups.ts';

/** Set-ups of the bench: one upright in the jig, one long across the sled. */
export const JIG_CARD: CardDrawing = {
  view: 'end-on jig',
  stations: [
    { at: 0, label: 'fence', strong: false },
    { at: 18.2, label: 'jig', strong: false },
    { at: 39.7, label: 'blade', strong: true },
    { at: 42.7, label: 'kerf', strong: false },
    { at: 50.3, label: 'work', strong: false },
  ],
  work: { width: 32.1, height: 74, offset: 18.2 },
  blade: { at: 39.7, kerf: 3, height: 45, tilt: 0 },
  jig: 18.2,
  seen: 'along the feed, fence on the right',
  zero: 'fence',
  plane: 'section',
  grain: 'up',
  regions: [
    { what: 'fence', a: { from: -13, to: 0 }, h: { from: 0, to: 62 }, label: 'fence' },
    { what: 'jig', a: { from: 0, to: 18.2 }, h: { from: 0, to: 74 }, label: 'upright jig' },
    { what: 'work', a: { from: 18.2, to: 50.3 }, h: { from: 0, to: 74 } },
    { what: 'waste', a: { from: 42.7, to: 50.3 }, h: { from: 0, to: 45 } },
    { what: 'second waste', a: { from: 18.2, to: 28.8 }, h: { from: 0, to: 45 } },
    { what: 'tool', a: { from: 39.7, to: 42.7 }, h: { from: 0, to: 45 } },
  ],
  measures: [
    { from: { a: 50.3, h: 0 }, to: { a: 50.3, h: 45 }, value: 45 },
    { from: { a: 28.8, h: 11 }, to: { a: 39.7, h: 11 }, value: 10.9 },
  ],
  mark: { what: 'face side', a: 18.2, h: 55 },
};

export const LONG_CARD: CardDrawing = {
  view: 'cross-cut',
  stations: [
    { at: 0, label: 'stop', strong: false },
    { at: 1183, label: 'blade', strong: true },
    { at: 1186, label: 'kerf', strong: false },
    { at: 1203, label: 'work', strong: false },
  ],
  work: { width: 1203, height: 32, offset: 0 },
  blade: { at: 1183, kerf: 3, height: 37, tilt: 0 },
  seen: 'facing the sled, stop on the right',
  zero: 'stop',
  plane: 'section',
  grain: 'across',
  regions: [
    { what: 'stop', a: { from: -12, to: 0 }, h: { from: 0, to: 37 }, label: 'stop' },
    { what: 'work', a: { from: 0, to: 1203 }, h: { from: 0, to: 32 } },
    { what: 'waste', a: { from: 1186, to: 1203 }, h: { from: 0, to: 32 } },
    { what: 'tool', a: { from: 1183, to: 1186 }, h: { from: 0, to: 37 } },
  ],
  measures: [{ from: { a: 1203, h: 0 }, to: { a: 1203, h: 37 }, value: 37 }],
};

export const DRILL_CARD: CardDrawing = {
  view: 'drill',
  stations: [
    { at: 0, label: 'fence', strong: false },
    { at: 22.5, label: 'drill centre', strong: true },
    { at: 45, label: 'work', strong: false },
  ],
  work: { width: 45, height: 60, offset: 0 },
  blade: { at: 17, kerf: 11, height: 30, tilt: 0 },
  seen: 'facing the machine, fence behind the work',
  zero: 'fence',
  plane: 'section',
  grain: 'end-on',
  regions: [
    { what: 'fence', a: { from: -13, to: 0 }, h: { from: 0, to: 60 }, label: 'fence' },
    { what: 'work', a: { from: 0, to: 45 }, h: { from: 0, to: 60 } },
    { what: 'tool', a: { from: 17, to: 28 }, h: { from: 30, to: 60 }, label: 'drill' },
  ],
  measures: [{ from: { a: 45, h: 30 }, to: { a: 45, h: 60 }, value: 30 }],
};

const cheeks: SetUp = {
  id: 'cheeks',
  number: 2,
  title: 'Tenon cheeks, lower cross rail',
  machine: 'Table saw',
  tool: 'rip blade, kerf 3.0, upright jig (own, 18.2)',
  method: 'upright in the jig',
  settings: [
    { name: 'fence', value: mm(39.7), how: 'jig 18.2 + 21.5' },
    { name: 'blade height', value: mm(45), how: 'leg, measured 45.0' },
  ],
  wanted: { label: 'tenon', value: mm(10.9), how: 'mortise 11.0 less 0.1' },
  kerfSide: 'in the waste, away from the fence',
  runs: ['rail', 'rail_x'].flatMap(instance =>
    (['end1', 'end2'] as const).map(end => ({
      instance,
      mark: 'C',
      cut: end === 'end1' ? 'rail.2' : 'rail.3',
      end,
      down: end,
      against: 'face' as const,
      passes: ['face', 'turned'],
    })),
  ),
  operations: ['cheeks'],
  testPiece: { mark: 'test C', length: 360, width: 85, thickness: 32, material: 'ash' },
  correction: {
    share: 'half',
    tooBig: 'Too thick: bring the fence closer by half the difference.',
    tooSmall: 'Too thin: away by half.',
  },
  before: ['Shoulders are cut (set-up 1).', 'Rails and test piece came through the thicknesser in one pass.'],
  after: ['Leave the jig set until both end frames are dry fitted.'],
  cautions: [
    'Crown guard off for this cut: clamp the work in the jig, hands high on the jig.',
    'Waste falls free on the left. Leave it until the blade stands.',
    'Both cheeks shift: an error on the fence shows twice in the tenon.',
  ],
  changeOver: 12,
  minutes: 24,
  drawing: JIG_CARD,
};

const crossCut: SetUp = {
  ...cheeks,
  id: 'stretcher-length',
  number: 1,
  title: 'Stretcher to length',
  tool: 'cross-cut blade, kerf 3.0, sled',
  method: 'across on the sled',
  settings: [
    { name: 'stop', value: mm(1183), how: 'shoulder 1183' },
    { name: 'blade height', value: mm(37), how: 'work 32 + 5' },
  ],
  runs: [
    { instance: 'stretcher', mark: 'D', cut: 'end.1', down: 'back', against: 'backEdge', passes: ['cut'] },
  ],
  before: ['One end is square.'],
  after: [],
  cautions: ['Hold the work against the stop until the blade stands.'],
  drawing: LONG_CARD,
};
delete (crossCut as Partial<SetUp>).wanted;
delete (crossCut as Partial<SetUp>).correction;
delete (crossCut as Partial<SetUp>).testPiece;

export const SETUPS: SetUpPlan = {
  setups: [crossCut, cheeks],
  partByPart: 74,
  unmade: [],
  status: 'proved best',
  value: 20,
  bound: 20,
};
