import { describe, expect, test } from 'vitest';
import { pieceOf, proofOf, timber } from '../setting-out/piece.ts';

const leg = timber({
  length: 400,
  width: 40,
  thickness: 40,
  along: 'up',
  facing: 'front',
  at: { left: 0, front: 0, bottom: 0 },
});
const rail = (over: object = {}) =>
  timber({
    length: 300,
    width: 60,
    thickness: 21,
    along: 'right',
    facing: 'front',
    at: { left: 40, front: 5, top: 400 },
    ...over,
  });
const joined = (type: string, set: object, from: object = rail(), into: object = leg) =>
  pieceOf({ parts: { from, into }, joints: { j: { type, from: 'from', into: 'into', set } } });

describe('tenons that cannot be cut are told, and nothing is cut', () => {
  test.each([
    [{ 'tenon.thickness': 0 }, 'tenon.thickness: a tenon of 0 mm is none'],
    [{ 'tenon.length': 0 }, 'tenon.length: a tenon of 0 mm is none'],
    [{ 'cheek.face': 30 }, 'cheek.face: 30 mm from the face side and a tenon of 7 mm'],
    [{ kind: 'haunched', 'haunch.length': 60 }, 'haunch.length: the haunch is 60 mm long, the tenon only 26'],
  ])('%j', (set, said) => {
    const made = joined('mortise-and-tenon', set);
    expect(made.said).toHaveLength(1);
    expect(made.said[0]).toContain(`joints.j.set.${said}`);
    expect(made.instance('into').cuts).toEqual([]);
  });

  test('a rail that overhangs a narrow member gets no mortise through its sides', () => {
    const narrow = timber({
      length: 400,
      width: 40,
      thickness: 15,
      along: 'up',
      facing: 'left',
      at: { left: 0, front: 0, bottom: 0 },
    });
    const flat = rail({ facing: 'up', at: { left: 15, front: -10, top: 300 } });
    const made = joined('mortise-and-tenon', {}, flat, narrow);
    expect(made.said[0]).toMatch(/the mortise for a tenon 46 x 7 mm runs out of the side of into/);
    expect(made.instance('into').cuts).toEqual([]);
  });

  test('a bridle tongue beside the rail is told', () => {
    expect(joined('corner-bridle', { 'cheek.face': 18 }).said[0]).toMatch(
      /cheek\.face: 18 mm from the face side/,
    );
  });
});

test('a bridle that is not flush with the end of the post leaves an open fork, and its check says by how much', () => {
  const step = (top: number) => {
    const made = joined('corner-bridle', {}, rail({ thickness: 40, at: { left: 40, front: 0, top } }));
    expect(made.said).toEqual([]);
    return made.piece.joints[0]!.limits.find(l => l.figure === 'step at the end');
  };
  expect(step(400)).toMatchObject({ value: 0, max: 0.5 });
  expect(step(380)).toMatchObject({ value: 20, max: 0.5, severity: 'attend' });
});

test('a shelf wider than its side has shoulders where it stands over, no ears beside it', async () => {
  const side = timber({
    length: 400,
    width: 150,
    thickness: 18,
    along: 'up',
    facing: 'left',
    at: { left: 0, front: 25, bottom: 0 },
  });
  const shelf = timber({
    length: 300,
    width: 200,
    thickness: 18,
    along: 'right',
    facing: 'up',
    at: { left: 18, front: 0, bottom: 200 },
  });
  const made = joined('housing', {}, shelf, side);
  expect(made.said).toEqual([]);
  const { overlaps, volumes } = await proofOf(made);
  expect(overlaps).toEqual([]);
  // 306 long with the housing of 6; 25 mm on either side are cut back by those 6.
  expect(volumes.from).toBeCloseTo(306 * 200 * 18 - 2 * 25 * 6 * 18, 3);
});

test('a bar thicker than the face it enters is refused', () => {
  const bar = {
    kind: 'bar',
    material: 'steel-mild',
    diameter: 60,
    length: 100,
    along: 'right',
    at: { left: 40, centre_y: 20, centre_z: 200 },
  };
  const made = joined('bar-in-hole', {}, bar);
  expect(made.said[0]).toMatch(/a bar of 60 mm runs off the face of into, which holds 40 of it/);
  expect(made.instance('into').cuts).toEqual([]);
});

describe('screws', () => {
  const top = timber({
    length: 400,
    width: 150,
    thickness: 12,
    along: 'right',
    facing: 'up',
    at: { left: 0, front: 0, bottom: 40 },
  });
  const under = timber({
    length: 300,
    width: 40,
    thickness: 20,
    along: 'right',
    facing: 'front',
    at: { left: 18, front: 20, bottom: 0 },
  });

  test('of a size that no table has are refused, never replaced by another', () => {
    const made = joined('screwed', { size: '9.9', sunk: 30 }, under, top);
    expect(made.said).toEqual(['joints.j.set.size: no screw of size 9.9 is in the table']);
    expect(made.piece.instances.flatMap(i => i.cuts)).toEqual([]);
  });

  test('may be written 4, 4.0 or 4 mm', () => {
    const cuts = [4, '4.0', '4 mm'].map(size => {
      const made = joined('screwed', { size, sunk: 30, length: 16 }, under, top);
      expect(made.said).toEqual([]);
      return made.instance('from').cuts;
    });
    expect(cuts[1]).toEqual(cuts[0]);
    expect(cuts[2]).toEqual(cuts[0]);
  });

  test('with heads sunk through the part are refused with a depth that would do', () => {
    const made = joined('screwed', { size: '4.0', sunk: 45 }, under, top);
    expect(made.said).toEqual(['joints.j.set.sunk: a head sunk by 45 mm goes through a part of 40']);
    expect(made.faults[0]!.mend).toBe('sink it by 32 mm at most');
  });

  test('that come through are not mended by the same screw', () => {
    const thin = timber({
      length: 400,
      width: 150,
      thickness: 4,
      along: 'right',
      facing: 'up',
      at: { left: 0, front: 0, bottom: 40 },
    });
    const made = joined('screwed', { size: '4.0', sunk: 32 }, under, thin);
    expect(made.faults[0]!.fault).toMatch(/comes through/);
    expect(made.faults[0]!.mend).toMatch(/^the shortest sold is \d+ mm: sink the head less/);
  });
});
