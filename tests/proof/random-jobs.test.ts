import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Frame, toWorld } from '../../src/geometry/frame.ts';
import { rotateAbout, type Vec3, vec } from '../../src/geometry/vector.ts';
import type { MeshSolid } from '../../src/host/mesh-kernel.ts';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { checkJobDocument } from '../../src/job-file/read.ts';
import { JOINT_CATALOGUE } from '../../src/joints/index.ts';
import { prove } from '../../src/proof/prove.ts';
import type { Piece } from '../../src/results/piece.ts';
import { setOut } from '../../src/setting-out/set-out.ts';
import { SolidCache } from '../../src/solids/shapes.ts';

const mesh = await loadMeshKernel();
const WOOD = { kind: 'timber', material: 'ash-european' } as const;
const EXTRA = { length: 20, width: 5, thickness: 4 };

interface Sizes {
  length: number;
  depth: number;
  height: number;
  leg: number;
  rail: number;
  thick: number;
  slats: number;
  joint: string;
}

/** A low table frame: four legs, rails between them, slats let into the long rails. */
function frameOf(s: Sizes): { piece: Piece; faults: string[] } {
  const inLeg = { type: s.joint, into: 'leg', count: 4 };
  const short = s.joint === 'mortise-and-tenon' ? { set: { 'tenon.length': s.leg * 0.4 } } : {};
  const { document, faults } = checkJobDocument({
    scantling: 'job/1',
    title: 'Frame',
    parameters: { length: s.length, depth: s.depth, leg: s.leg, slat: 40 },
    parts: {
      leg: {
        ...WOOD,
        length: s.height,
        width: 'leg',
        thickness: 'leg',
        along: 'up',
        facing: 'front',
        at: { left: 0, front: 0, bottom: 0 },
        mirror: { x: 'length / 2', y: 'depth / 2' },
      },
      long_rail: {
        ...WOOD,
        width: s.rail,
        thickness: s.thick,
        along: 'right',
        facing: 'front',
        at: { left: 'leg.right', right: 'leg_x.left', centre_y: 'leg.centre_y', top: s.height - 10 },
        mirror: { y: 'depth / 2' },
      },
      end_rail: {
        ...WOOD,
        width: s.rail,
        thickness: s.thick,
        along: 'back',
        facing: 'left',
        at: { centre_x: 'leg.centre_x', front: 'leg.back', back: 'leg_y.front', top: s.height - 10 },
        mirror: { x: 'length / 2' },
      },
      slat: {
        ...WOOD,
        width: 'slat',
        thickness: 14,
        along: 'back',
        facing: 'up',
        at: {
          left: 'leg.right + 30 mm',
          front: 'long_rail.back',
          back: 'long_rail_y.front',
          top: s.height - 20,
        },
        repeat: { count: s.slats, along: 'x', step: 70 },
      },
    },
    joints: {
      long: { ...inLeg, from: 'long_rail', ...short },
      end: { ...inLeg, from: 'end_rail', ...short },
      slats: { type: 'housing', from: 'slat', into: 'long_rail', count: 2 * s.slats },
    },
  });
  const made = setOut(document!, JOINT_CATALOGUE, {
    allowances: { timber: EXTRA, sheet: EXTRA, bar: EXTRA, tube: EXTRA },
    density: () => 700,
  });
  return { piece: made.piece, faults: [...faults, ...made.faults].map(f => `${f.place}: ${f.fault}`) };
}

const whole = (min: number, max: number) => fc.integer({ min, max });
const sizes: fc.Arbitrary<Sizes> = fc.record({
  length: whole(600, 1600),
  depth: whole(350, 700),
  height: whole(300, 900),
  leg: whole(44, 80),
  rail: whole(60, 120),
  thick: whole(20, 32),
  slats: whole(2, 5),
  joint: fc.constantFrom('mortise-and-tenon', 'dowelled'),
});

/** The same piece turned about an axis of the world and moved. */
const turned = (piece: Piece, angle: number, about: 'x' | 'y' | 'z'): Piece => {
  const turn = (v: Vec3): Vec3 => rotateAbout(v, about, angle);
  const moved = ({ origin, x, y, z }: Frame): Frame => {
    const o = turn(origin);
    return { origin: vec(o.x + 123, o.y - 45, o.z + 6), x: turn(x), y: turn(y), z: turn(z) };
  };
  return { ...piece, instances: piece.instances.map(i => ({ ...i, frame: moved(i.frame) })) };
};

/** Volume of all parts as one solid, mm3: the union itself, not a sum less what is shared. */
function unionOf(piece: Piece, cache: SolidCache): number {
  const bodies = piece.instances.map(i => {
    const { origin: o, x, y, z } = i.frame;
    const { body } = cache.of(i) as MeshSolid;
    return body.transform([x.x, x.y, x.z, 0, y.x, y.y, y.z, 0, z.x, z.y, z.z, 0, o.x, o.y, o.z, 1]);
  });
  const all = bodies.reduce((sum, body) => sum.add(body));
  return all.volume();
}

const OF_ONE = 1e-6;

test('random frames: no part shares room, the parts together are their sum, every blank holds its part', () => {
  let tried = 0;
  fc.assert(
    fc.property(sizes, s => {
      const { piece, faults } = frameOf(s);
      expect(faults).toEqual([]);
      const cache = new SolidCache(mesh);
      const proved = prove({ piece }, mesh, { cache });
      expect(proved.overlaps).toEqual([]);
      const sum = Object.values(proved.volumes).reduce((a, b) => a + b, 0);
      expect(Math.abs(unionOf(piece, cache) / sum - 1)).toBeLessThan(OF_ONE);
      for (const i of piece.instances) {
        const { blank } = piece.groups.find(g => g.instances.includes(i.id))!;
        const { positions } = cache.surface(i);
        const reach = (k: number): number => {
          const at = Array.from(positions).filter((_, n) => n % 3 === k);
          return Math.max(...at) - Math.min(...at);
        };
        expect([reach(0) <= blank.length, reach(1) <= blank.width, reach(2) <= blank.thickness]).toEqual([
          true,
          true,
          true,
        ]);
        expect(blank.length - i.size.length).toBeCloseTo(EXTRA.length, 6);
      }
      cache.keep([]);
      tried += 1;
    }),
    { numRuns: 25, seed: 31 },
  );
  expect(tried).toBe(25);
});

test('rotated, mirrored and repeated copies agree', () => {
  fc.assert(
    fc.property(
      sizes,
      whole(1, 359),
      fc.constantFrom('x' as const, 'y' as const, 'z' as const),
      (s, degrees, about) => {
        const { piece } = frameOf(s);
        const cache = new SolidCache(mesh);
        const { volumes } = prove({ piece }, mesh, { cache });
        const by = new Map(piece.instances.map(i => [i.id, i]));
        const centre = (id: string): Vec3 => toWorld(by.get(id)!.frame, cache.of(by.get(id)!).centre());
        const same = (a: string, b: string): void =>
          expect(Math.abs(volumes[a]! / volumes[b]! - 1), `${a} and ${b}`).toBeLessThan(OF_ONE);
        for (const id of ['leg_x', 'leg_y', 'leg_x_y'].filter(copy => by.has(copy))) same('leg', id);
        same('long_rail', 'long_rail_y');
        same('end_rail', 'end_rail_x');
        for (const id of [...by.keys()].filter(k => /^slat_\d+$/.test(k))) same('slat', id);
        // Mirror images weigh alike, and their centres of gravity are mirror images, too.
        const [one, other] = [centre('leg'), centre('leg_x')];
        expect(one.x + other.x).toBeCloseTo(s.length, 2);
        expect([one.y - other.y, one.z - other.z].map(d => Math.round(d * 100) / 100 || 0)).toEqual([0, 0]);
        // Turned as a whole nothing changes: same volumes, no overlap, the same room shared when one part is moved.
        const angle = (degrees * Math.PI) / 180;
        const again = prove({ piece: turned(piece, angle, about) }, mesh, { cache });
        expect(again.overlaps).toEqual([]);
        expect(again.volumes).toEqual(volumes);
        const shifted: Piece = {
          ...piece,
          instances: piece.instances.map(i =>
            i.id === 'end_rail'
              ? { ...i, frame: { ...i.frame, origin: { ...i.frame.origin, y: i.frame.origin.y - 5 } } }
              : i,
          ),
        };
        const room = (p: Piece): number[] => prove({ piece: p }, mesh, { cache }).overlaps.map(o => o.volume);
        const [upright, slant] = [room(shifted), room(turned(shifted, angle, about))];
        expect(upright.length).toBeGreaterThan(0);
        expect(slant).toHaveLength(upright.length);
        for (const [n, volume] of upright.entries())
          expect(Math.abs(slant[n]! / volume - 1)).toBeLessThan(1e-4);
        cache.keep([]);
      },
    ),
    { numRuns: 12, seed: 32 },
  );
});
