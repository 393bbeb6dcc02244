import { describe, expect, it } from 'vitest';
import { vec } from '../../src/geometry/vector.ts';
import type { EdgeCut, EndCut } from '../../src/results/cuts.ts';
import { ON_PART } from '../../src/results/cuts.ts';
import type { SetUp } from '../../src/results/setups.ts';
import { compoundMitre, ringOf } from '../../src/setups/angles.ts';
import { planSetUps } from '../../src/setups/plan-set-ups.ts';
import { hole, part, pieceOf, shop, without } from './fixtures.ts';

const EFFORT = { seed: 1, iterations: 120 };
const figure = (setUp: SetUp | undefined, name: string): number =>
  setUp?.settings.find(s => s.name === name)?.value.value as number;
const plan = (piece: Parameters<typeof planSetUps>[0], workshop = shop()) =>
  planSetUps(piece, [], workshop, EFFORT);

describe('holes', () => {
  it('SET-1: centre from the face edge and the nearer end', () => {
    const [setUp] = plan(pieceOf([part('rail', [500, 60, 20], [hole('h')])])).setups;
    expect(figure(setUp, 'fence')).toBe(30);
    expect(setUp?.runs[0]?.stations).toEqual([100]);
    expect(setUp?.runs[0]?.lays?.[0]).toMatchObject({
      down: 'back',
      against: 'faceEdge',
      entry: 'face',
      end: 'end1',
    });
    expect(figure(setUp, 'depth')).toBe(15);
    expect(figure(setUp, 'bit')).toBe(8);
  });

  it('holes of one drill, fence and depth are one set-up with their stations', () => {
    const rail = part(
      'rail',
      [500, 60, 20],
      [hole('a'), hole('b', { at: vec(450, 30, 20) }), hole('c', { at: vec(200, 30, 20) })],
    );
    const found = plan(pieceOf([rail]));
    expect(found.setups).toHaveLength(1);
    expect(found.setups[0]?.runs.map(r => r.stations?.[0])).toEqual([100, 50, 200]);
  });

  it('SET-16: a bar measured 15.96 takes the 16 drill; measured 16.1 none', () => {
    const bar = (thickness: number) =>
      part('bar', [1200, 16, 16], [], {
        kind: 'bar',
        material: 'stainless-steel',
        round: true,
        measured: { thickness },
      });
    const rail = part(
      'rail',
      [500, 80, 32],
      [
        hole('h', {
          role: 'bar',
          diameter: 16,
          depth: 20,
          mate: { instance: 'bar', cut: '' },
          at: vec(100, 30, 32),
        }),
      ],
    );
    expect(figure(plan(pieceOf([rail, bar(15.96)])).setups[0], 'bit')).toBe(16);
    const found = plan(pieceOf([rail, bar(16.1)]));
    expect(found.unmade[0]?.reason).toContain('no 16.1 drill; the nearest is 16.0');
  });

  it('SET-17: countersink 10 on a hole of 5 at 90 degrees is 2.5 deep, after the hole', () => {
    const rail = part(
      'rail',
      [500, 60, 20],
      [
        hole('h', {
          role: 'clearance',
          diameter: 5,
          through: true,
          countersink: { diameter: 10, angle: 90 },
        }),
      ],
    );
    const [bore, sink] = plan(pieceOf([rail])).setups;
    expect(bore?.title).toBe('Clearance holes, rail');
    expect(figure(bore, 'depth')).toBe(20);
    expect(bore?.cautions.some(c => c.startsWith('Scrap behind'))).toBe(true);
    expect(figure(sink, 'depth')).toBeCloseTo(2.5, 9);
  });

  it('a hole in an end takes the dowel jig; deeper than the drill is refused', () => {
    const rail = part(
      'rail',
      [500, 60, 20],
      [hole('h', { role: 'dowel', face: 'end1', at: vec(0, 30, 10), direction: vec(1, 0, 0), depth: 20 })],
    );
    const [setUp] = plan(pieceOf([rail])).setups;
    expect(setUp?.tool).toBe('brad point 8, dowel jig');
    const deep = part(
      'rail',
      [500, 200, 20],
      [hole('h', { face: 'faceEdge', at: vec(100, 200, 10), direction: vec(0, -1, 0), depth: 150 })],
    );
    expect(plan(pieceOf([deep])).unmade[0]?.reason).toContain(
      'the 8.0 drill reaches 90.0, the hole is 150.0 deep',
    );
  });

  it('a glued assembly is drilled by hand with a guide', () => {
    const rail = part('rail', [500, 60, 20], [hole('h', { stage: { when: 'after', assembly: 'frame' } })]);
    const [setUp] = plan(pieceOf([rail])).setups;
    expect(setUp?.machine).toBe('hand drill');
    expect(setUp?.before).toContain('Made on the glued assembly (frame): glue cured, squeeze-out off');
    expect(setUp?.refused?.[0]?.reason).toContain('does not stand under the press');
  });

  it('metal takes the twist drill, slowly: 4 mm in steel 0.45 m/s gives 2100', () => {
    const bar = part(
      'bar',
      [300, 20, 5],
      [hole('h', { diameter: 4, depth: 5, through: true, at: vec(100, 10, 5) })],
      {
        kind: 'bar',
        material: 'mild-steel',
      },
    );
    const [setUp] = plan(pieceOf([bar])).setups;
    expect(setUp?.tool).toBe('twist 4');
    // 60000 x 0.45 / (pi x 4) = 2148.6
    expect(figure(setUp, 'speed')).toBe(2100);
  });

  it('a lead hole of 2.0 without its drill is opened with a bradawl; one of 2.1 is unmade', () => {
    const with2 = (diameter: number) =>
      pieceOf([part('rail', [500, 60, 20], [hole('h', { role: 'pilot', diameter, depth: 12 })])]);
    const [setUp] = plan(with2(2)).setups;
    expect(setUp?.tool).toBe('bradawl');
    expect(figure(setUp, 'gauge')).toBe(30);
    expect(plan(with2(2.1)).unmade[0]?.reason).toContain('bradawl: a bradawl opens lead holes up to 2.0');
  });

  it('leaning: tilt from square', () => {
    const a = (10 * Math.PI) / 180;
    const rail = part('rail', [500, 60, 20], [hole('h', { direction: vec(Math.sin(a), 0, -Math.cos(a)) })]);
    expect(figure(plan(pieceOf([rail])).setups[0], 'tilt')).toBeCloseTo(10, 3);
  });
});

describe('ends', () => {
  const end = (mitre: number, bevel = 0, which: 'end1' | 'end2' = 'end1'): EndCut => ({
    kind: 'end-cut',
    id: `e.${which}`,
    by: 'frame',
    stage: ON_PART,
    end: which,
    mitre,
    bevel,
  });

  it('SET-18: 45 on the mitre sled, both scales written, half the error, grooves before', () => {
    const rail = part('rail', [900, 40, 22], [end(45), end(45, 0, 'end2')]);
    const found = plan(pieceOf([rail]));
    const [setUp] = found.setups;
    expect(found.setups).toHaveLength(1);
    expect(setUp?.method).toBe('on the mitre sled');
    expect(setUp?.settings[0]?.how).toBe('45.0 from square; 45.0 on a scale that counts from the fence');
    expect(figure(setUp, 'stop')).toBe(900);
    expect(figure(setUp, 'blade height')).toBe(27);
    expect(setUp?.after.at(-1)).toContain('Closes a ring of 4: 0.1 off on the scale gapes 0.8 degrees');
    expect(setUp?.testPiece).toBeDefined();
  });

  it('30 goes to the mitre saw; 55 to the hand; beyond the tilt is refused', () => {
    const thirty = plan(pieceOf([part('rail', [900, 40, 22], [end(30)])])).setups[0];
    expect(thirty?.machine).toBe('mitre saw');
    expect(thirty?.settings[0]?.how).toContain('60.0 on a scale');
    expect(plan(pieceOf([part('rail', [900, 40, 22], [end(55)])])).setups[0]?.machine).toBe('hand tools');
    const tilted = plan(pieceOf([part('rail', [900, 40, 22], [end(0, 50)])])).setups[0];
    expect(tilted?.refused?.[0]?.reason).toBe('tilted 50.0, the table saw tilts to 45.0');
  });

  it('a round bar goes to the metal saw', () => {
    const bar = part('bar', [900, 16, 16], [end(0)], {
      kind: 'bar',
      material: 'stainless-steel',
      round: true,
    });
    expect(plan(pieceOf([bar])).setups[0]?.machine).toBe('metal saw');
  });

  it('rings are found back from their angles', () => {
    for (const sides of [3, 4, 5, 6, 8, 12])
      for (const slope of [0, 10, 37, 60]) {
        const { mitre, bevel } = compoundMitre(sides, slope);
        const ring = ringOf(mitre, bevel);
        expect(ring?.sides).toBe(sides);
        expect(ring?.slope).toBeCloseTo(slope, 6);
      }
    expect(ringOf(40, 3)).toBeUndefined();
  });
});

describe('edges', () => {
  const edge = (kind: EdgeCut['kind'], size: number): EdgeCut => ({
    kind,
    id: 'e',
    by: 'e',
    stage: ON_PART,
    edges: [
      { a: 'face', b: 'faceEdge' },
      { a: 'face', b: 'end1' },
    ],
    size,
  });

  it('SET-24: ends first; SET-14: never over the mark', () => {
    const [setUp] = plan(pieceOf([part('top', [900, 200, 20], [edge('round-over', 6)])])).setups;
    expect(setUp?.runs[0]?.passes).toEqual(['face side, end 1', 'face side, face edge']);
    expect(figure(setUp, 'speed')).toBe(20000);
    expect(setUp?.settings.find(s => s.name === 'speed')?.how).toContain('marked 20000 at most');
    const slow = shop();
    slow.cutters = slow.cutters.map(c => (c.id === 'round-6' ? { ...c, maxSpeed: 6000 } : c));
    const refused = plan(pieceOf([part('top', [900, 200, 20], [edge('round-over', 6)])]), slow).setups[0];
    expect(refused?.machine).toBe('hand tools');
    expect(refused?.refused?.[0]?.reason).toBe(
      'round-over 6 is marked 6000 at most, a router turns 8000 at the least',
    );
  });

  it('a radius nobody has is planed; a big top goes to the hand router', () => {
    const found = plan(pieceOf([part('top', [900, 200, 20], [edge('round-over', 4)])])).setups[0];
    expect(found?.machine).toBe('hand tools');
    expect(found?.refused?.[0]?.reason).toBe('no round-over cutter of 4.0; there are 6.0');
    expect(plan(pieceOf([part('top', [1380, 380, 27], [edge('chamfer', 3)])])).setups[0]?.machine).toBe(
      'hand router',
    );
    expect(
      plan(
        pieceOf([part('top', [900, 200, 20], [edge('chamfer', 3)])]),
        without(shop(), 'router table', 'hand router', 'hand tools'),
      ).unmade,
    ).toHaveLength(1);
  });
});
