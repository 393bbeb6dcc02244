import { describe, expect, it } from 'vitest';
import { checkCards } from '../../src/proof/simulator-check.ts';
import { spoilt } from '../../src/proof/simulator-spoil.ts';
import type { Cut, ProfileCut } from '../../src/results/cuts.ts';
import { ON_PART } from '../../src/results/cuts.ts';
import { bandRadius } from '../../src/setups/methods/line-saw.ts';
import { outlineOf, slopeOf, tightest } from '../../src/setups/outline.ts';
import { planSetUps } from '../../src/setups/plan-set-ups.ts';
import type { Cutter, Machine, Workshop } from '../../src/workshop/workshop.ts';
import { part, pieceOf, shop, without } from './fixtures.ts';

const EFFORT = { seed: 1, iterations: 60 };
const change = { tool: 4, fence: 1, height: 1, tilt: 2, jig: 2, measured: true };
const lathe: Machine = { id: 'lathe', kind: 'lathe', name: 'lathe', longest: 900, widest: 300, change };
const guided: Cutter = {
  id: 'guided',
  name: 'straight 19 with a bearing',
  kind: 'straight',
  diameter: 19,
  depth: 25,
  shank: 8,
  bearing: true,
};
const dovetailBit: Cutter = {
  id: 'bit',
  name: 'dovetail 14',
  kind: 'dovetail',
  diameter: 12.7,
  depth: 12,
  angle: 8,
  shank: 8,
  bearing: false,
};
const bigShop = (): Workshop => {
  const base = shop();
  return { ...base, machines: [...base.machines, lathe], cutters: [...base.cutters, guided, dovetailBit] };
};

const profile = (kind: ProfileCut['kind'], more: Partial<ProfileCut>): ProfileCut => ({
  kind,
  id: 'c',
  by: 'f',
  stage: ON_PART,
  face: 'face',
  axis: 'z',
  from: 0,
  to: 20,
  polygon: [],
  through: true,
  ...more,
});

/** Hollow of a rail: an arc of short chords, 30 deep over 400, in the back edge. */
const hollow = (): ProfileCut => {
  const radius = (200 * 200 + 30 * 30) / 60;
  const arc = Array.from({ length: 33 }, (_, i): [number, number] => {
    const x = 100 + (400 * i) / 32;
    return [x, Math.sqrt(radius * radius - (x - 300) ** 2) - (radius - 30)];
  });
  return profile('curve', { polygon: [[100, 0], ...arc.slice(1, -1), [500, 0]] });
};

/** Tails in the end of a drawer side: one waste between two tails, slope 1 in 8, 12 deep. */
const tail = (): ProfileCut =>
  profile('dovetail', {
    polygon: [
      [0, 30],
      [12, 31.5],
      [12, 42.5],
      [0, 44],
    ],
  });

/** A dovetailed way across a side, 20 wide at the bottom, 8 deep, 8 degrees. */
const way = (): ProfileCut => {
  const back = 8 * Math.tan((8 * Math.PI) / 180);
  return profile('dovetail', {
    axis: 'y',
    from: 0,
    to: 80,
    through: false,
    // z, x
    polygon: [
      [12, 200],
      [12, 220],
      [20, 220 - back],
      [20, 200 + back],
    ],
  });
};

const bevel = (): ProfileCut => {
  const taken = 20 * Math.tan((15 * Math.PI) / 180);
  return profile('bevel', {
    axis: 'x',
    from: 0,
    to: 600,
    // y, z: most is taken at the face side
    polygon: [
      [80, 20],
      [80 - taken, 20],
      [80, 0],
    ],
  });
};

const rail = (cut: Cut) => pieceOf([part('rail', [600, 80, 20], [cut])]);

const agreeing = (cut: Cut, workshop: Workshop) => {
  const piece = rail(cut);
  const plan = planSetUps(piece, [], workshop, EFFORT);
  expect(plan.unmade).toEqual([]);
  const report = checkCards(piece, plan.setups);
  expect(report.wrong).toEqual([]);
  expect(report.notSimulated).toEqual([]);
  for (const card of plan.setups)
    for (const sign of [1, -1] as const) {
      const cards = spoilt(plan.setups, card.id, sign)!;
      expect(checkCards(piece, cards).wrong.map(w => w.setUp)).toContain(card.id);
    }
  return plan.setups;
};

describe('each new cut has a method, its card repeats it, one kerf spoils it', () => {
  it.each([
    ['curve by template and bearing', hollow(), bigShop(), 'bearing against a template'],
    ['curve at the band saw', hollow(), shop(), 'spokeshave'],
    ['curve by hand', hollow(), without(shop(), 'band saw'), 'spokeshaved'],
    ['tails by hand', tail(), shop(), 'pared to the gauge line'],
    ['a dovetailed way by router', way(), bigShop(), 'dovetail cutter'],
    ['a bevel at the tilted saw', bevel(), shop(), 'blade tilted'],
    ['a bevel by hand', bevel(), without(shop(), 'table saw', 'band saw'), 'planed to two lines'],
  ] as const)('%s', (_, cut, workshop, method) => {
    const [card] = agreeing(cut, workshop);
    expect(card?.method).toContain(method);
  });

  it('a turning to calipers', () => {
    const turned: Cut = {
      kind: 'turned',
      id: 't',
      by: 'f',
      stage: ON_PART,
      round: false,
      profile: [
        { at: 50, diameter: 40 },
        { at: 200, diameter: 24 },
        { at: 400, diameter: 36 },
      ],
    };
    const piece = pieceOf([part('leg', [600, 45, 45], [turned])]);
    const plan = planSetUps(piece, [], bigShop(), EFFORT);
    expect(checkCards(piece, plan.setups)).toMatchObject({ wrong: [], notSimulated: [] });
    const [card] = plan.setups;
    expect(card?.settings.map(s => [s.name, s.value.value])).toEqual([
      ['gauge', 40],
      ['from', 50],
      ['to', 400],
      ['speed', 1050],
    ]);
    const off = plan.setups.map(s => ({
      ...s,
      removal: { ...s.removal!, turned: s.removal!.turned!.map(p => ({ ...p, at: p.at + 5 })) },
    }));
    expect(checkCards(piece, off).wrong).toHaveLength(1);
    // A bead is refused by hand, with the reason, and told as unmade where there is no lathe.
    const bead = {
      ...turned,
      profile: [
        { at: 0, diameter: 20 },
        { at: 20, diameter: 40 },
        { at: 40, diameter: 20 },
      ],
    };
    const none = planSetUps(pieceOf([part('leg', [600, 45, 45], [bead])]), [], shop(), EFFORT);
    expect(none.unmade[0]?.reason).toContain('beads are turned');
    expect(none.asks).toContainEqual({ machine: 'lathe', asks: 'is there one', because: 'turning of Leg' });
  });

  it('a bevel’s fence is the width of its narrow face, and the blade leans from upright', () => {
    const [card] = planSetUps(rail(bevel()), [], shop(), EFFORT).setups;
    const of = (name: string) => card?.settings.find(s => s.name === name)?.value.value;
    expect(of('fence')).toBeCloseTo(80 - 20 * Math.tan((15 * Math.PI) / 180), 3);
    expect(of('tilt')).toBeCloseTo(15, 3);
    expect(card?.runs[0]?.down).toBe('face');
    const steep = planSetUps(
      rail(bevel()),
      [],
      { ...shop(), machines: shop().machines.map(m => (m.id === 'saw' ? { ...m, maxTilt: 10 } : m)) },
      EFFORT,
    );
    expect(steep.setups[0]?.refused?.[0]?.reason).toBe('tilted 15.0, the table saw tilts to 10.0');
  });

  it('a way that no cutter fits is refused with what there is, and cut by hand', () => {
    const steep = { ...bigShop(), cutters: [{ ...dovetailBit, angle: 14 }] };
    const [card] = planSetUps(rail(way()), [], steep, EFFORT).setups;
    expect(card?.refused?.[0]?.reason).toContain('no dovetail cutter of 8.0 degrees under 20.0 wide');
    expect(card?.machine).toBe('hand tools');
  });
});

describe('outlines', () => {
  it('are measured from the face edge and the nearer end', () => {
    const view = outlineOf(
      part('rail', [600, 80, 20]),
      profile('curve', {
        polygon: [
          [500, 80],
          [560, 80],
          [560, 70],
        ],
      }),
    );
    expect(view).toMatchObject({
      entry: 'face',
      against: 'faceEdge',
      end: 'end2',
      gauge: 0,
      station: 40,
      whole: true,
    });
    expect(view.points).toEqual([
      [0, 60],
      [0, 0],
      [10, 0],
    ]);
  });

  it('tightest bend, slope of a dovetail', () => {
    expect(tightest(hollow().polygon)).toBeCloseTo((200 * 200 + 900) / 60, 0);
    expect(tightest(hollow().polygon, true)).toBeCloseTo((200 * 200 + 900) / 60, 0);
    expect(1 / Math.tan((slopeOf(tail().polygon) * Math.PI) / 180)).toBeCloseTo(8, 6);
  });

  it('a band too wide for the bend is refused with both radii (SET-28)', () => {
    expect([3, 6, 10, 12.7, 19, 25].map(bandRadius)).toEqual([5, 16, 64, 64, 138, 184]);
    const corner = profile('curve', {
      polygon: [
        [0, 0],
        ...Array.from({ length: 13 }, (_, i): [number, number] => {
          const a = ((Math.PI / 2) * i) / 12;
          return [12 * (1 - Math.sin(a)), 12 * (1 - Math.cos(a))];
        }),
      ],
    });
    const base = shop();
    const wide: Workshop = {
      ...base,
      blades: [
        ...base.blades,
        { id: 'b', machine: 'band', name: 'band 16', kerf: 1.2, diameter: 0, width: 16, use: 'rip' },
      ],
    };
    const [card] = planSetUps(rail(corner), [], wide, EFFORT).setups;
    expect(card?.refused?.map(r => r.reason)).toContain(
      'the line turns to a radius of 12.0, the narrowest band turns 138',
    );
  });

  it('a window cannot be entered by a band; without a bearing it is sawn by hand', () => {
    const window = profile('cut-out', {
      polygon: [
        [100, 20],
        [200, 20],
        [200, 60],
        [100, 60],
      ],
    });
    const [card] = agreeing(window, shop());
    expect(card?.tool).toContain('coping saw');
    expect(agreeing(window, bigShop())[0]?.after).toContain('Corners squared with a chisel');
  });
});

it('a leaning hole carries its direction and agrees', () => {
  const a = (10 * Math.PI) / 180;
  const piece = rail({
    kind: 'hole',
    id: 'h',
    by: 'f',
    stage: ON_PART,
    role: 'plain',
    face: 'face',
    at: { x: 100, y: 30, z: 20 },
    direction: { x: Math.sin(a), y: 0, z: -Math.cos(a) },
    diameter: 8,
    depth: 15,
    through: false,
  });
  const plan = planSetUps(piece, [], shop(), EFFORT);
  expect(plan.setups[0]?.runs[0]?.lays?.[0]?.lean).toEqual([
    { towards: 'end2', angle: expect.closeTo(10, 6) },
  ]);
  expect(checkCards(piece, plan.setups)).toMatchObject({ wrong: [], notSimulated: [], agreeing: 1 });
  const other = plan.setups.map(s => ({
    ...s,
    runs: s.runs.map(r => ({
      ...r,
      lays: r.lays!.map(l => ({ ...l, lean: [{ towards: 'end1' as const, angle: 10 }] })),
    })),
  }));
  expect(checkCards(piece, other).wrong.length).toBeGreaterThan(0);
});
