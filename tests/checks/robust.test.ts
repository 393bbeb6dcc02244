import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runChecks } from '../../src/checks/index.ts';
import { box } from '../../src/geometry/box.ts';
import { vec } from '../../src/geometry/vector.ts';
import type { Cut } from '../../src/results/cuts.ts';
import type { Assembly, Instance, JointMade } from '../../src/results/piece.ts';
import {
  at,
  commission,
  hole,
  input,
  joint,
  LYING,
  PORCH,
  part,
  pieceOf,
  pocket,
  STANDING,
  tenon,
} from './fixtures.ts';

/** Jobs half written: parts without a size, joints to parts that are not there, cuts outside the wood. */
const size = fc.oneof(fc.constant(0), fc.double({ min: 0.1, max: 2000, noNaN: true }));
const place = fc.double({ min: -100, max: 2000, noNaN: true });
const name = fc.constantFrom('Seat', 'Top', 'Shelf', 'Leg', 'Bar', 'Rail');
const id = fc.constantFrom('a', 'b', 'c', 'd', 'missing');

const anyCut: fc.Arbitrary<Cut> = fc
  .record({
    kind: fc.constantFrom('hole', 'pocket', 'tenon'),
    by: fc.constantFrom('j0', 'j1', 'f0'),
    role: fc.constantFrom('plain', 'pilot', 'clearance', 'dowel', 'bar', 'slot'),
    pocketKind: fc.constantFrom('mortise', 'groove', 'recess', 'rebate'),
    face: fc.constantFrom('face', 'back', 'faceEdge', 'backEdge', 'end1', 'end2'),
    through: fc.boolean(),
    p: fc.tuple(place, place, place, place, place, place),
    diameter: fc.double({ min: 0, max: 60, noNaN: true }),
  })
  .map(g => {
    const common = { id: `${g.by}.1`, by: g.by, through: g.through };
    const [x0, y0, z0, x1, y1, z1] = g.p;
    if (g.kind === 'tenon') return tenon({ ...common, length: Math.abs(x0) });
    if (g.kind === 'pocket')
      return pocket({
        ...common,
        kind: g.pocketKind as 'mortise',
        face: g.face as 'face',
        box: box(x0, y0, z0, x1, y1, z1),
      });
    return hole({
      ...common,
      role: g.role as 'plain',
      face: g.face as 'face',
      at: vec(x0, y0, z0),
      depth: Math.abs(z1),
      diameter: g.diameter,
    });
  });

const anyPart = (key: string): fc.Arbitrary<Instance> =>
  fc
    .record({
      name,
      size: fc.tuple(size, size, size),
      kind: fc.constantFrom('timber', 'sheet', 'bar', 'tube', 'bought-in'),
      material: fc.constantFrom(
        'ash-european',
        'birch-plywood',
        'stainless-304',
        'mild-steel',
        'nothing-known',
      ),
      standing: fc.boolean(),
      p: fc.tuple(place, place, place),
      cuts: fc.array(anyCut, { maxLength: 4 }),
      loose: fc.boolean(),
      round: fc.boolean(),
      held: fc.boolean(),
    })
    .map(g =>
      part(key, {
        name: g.name,
        size: g.size,
        kind: g.kind as Instance['kind'],
        material: g.material,
        frame: at(g.standing ? STANDING : LYING, ...g.p),
        cuts: g.cuts,
        loose: g.loose,
        round: g.round,
        added: g.held ? { end1: 10, end2: 10 } : {},
      }),
    );

const anyJoint = (key: string): fc.Arbitrary<JointMade> =>
  fc
    .record({
      ends: fc.tuple(id, id),
      p: fc.tuple(place, place, place, place, place, place),
      grain: fc.constantFrom('long', 'end', 'cross', 'sheet', 'metal'),
      room: fc.option(
        fc.record({
          instance: id,
          width: fc.double({ min: 0, max: 900, noNaN: true }),
          swell: fc.double({ min: 0, max: 9, noNaN: true }),
          shrink: fc.double({ min: 0, max: 9, noNaN: true }),
          what: fc.constantFrom('panel in groove', 'slotted screw', 'button', 'glued', 'free'),
        }),
      ),
      bond: fc.option(
        fc.record({
          sheet: id,
          core: id,
          recess: fc.option(fc.double({ min: 0, max: 9, noNaN: true })),
          both: fc.boolean(),
        }),
      ),
      screw: fc.boolean(),
      dry: fc.boolean(),
    })
    .map(g =>
      joint(key, g.ends, {
        contact: box(...g.p),
        glue: g.dry ? [] : [{ between: g.ends, area: 100, grain: g.grain as 'long' }],
        dry: g.dry,
        fasteners: g.screw ? [{ item: '4 x 40', kind: 'screw', quantity: 1, length: 40, diameter: 4 }] : [],
        ...(g.room ? { room: g.room as NonNullable<JointMade['room']> } : {}),
        ...(g.bond
          ? {
              bond: {
                sheet: g.bond.sheet,
                core: g.bond.core,
                adhesive: '',
                glueLine: 0.1,
                bothFaces: g.bond.both,
                ...(g.bond.recess === null ? {} : { recessDepth: g.bond.recess }),
              },
            }
          : {}),
      }),
    );

const anyAssembly = (key: string, order: number): fc.Arbitrary<Assembly> =>
  fc
    .record({
      instances: fc.array(id, { maxLength: 3 }),
      assemblies: fc.array(fc.constantFrom('x', 'y'), { maxLength: 2 }),
      glue: fc.option(fc.constantFrom('pva', 'epoxy', 'odd')),
    })
    .map(g => ({
      id: key,
      name: key,
      instances: g.instances,
      assemblies: g.assemblies,
      joints: ['j0:a+b', 'j1:b+c'],
      ...(g.glue === null ? {} : { glue: g.glue }),
      dryFit: true,
      order,
    }));

const anyJob = fc
  .record({
    parts: fc.tuple(anyPart('a'), anyPart('b'), anyPart('c'), anyPart('d')),
    joints: fc.tuple(anyJoint('j0'), anyJoint('j1')),
    assemblies: fc.tuple(anyAssembly('x', 1), anyAssembly('y', 2)),
    assembled: fc.boolean(),
    site: fc.boolean(),
    title: fc.constantFrom('Bench', 'Table', 'Cabinet', 'Thing'),
  })
  .map(g =>
    input(pieceOf(g.parts, g.joints, g.assembled ? g.assemblies : []), {
      commission: commission({ title: g.title, ...(g.site ? { site: PORCH } : {}) }),
    }),
  );

describe('checks of half-written jobs', () => {
  it('never break, and never say a figure that is none', () => {
    fc.assert(
      fc.property(anyJob, job => {
        const found = runChecks(job);
        const keys = found.map(c => `${c.check}:${c.subject}`);
        expect(keys.filter((k, i) => keys.indexOf(k) !== i)).toEqual([]);
        for (const check of found) {
          expect(Number.isNaN(check.figure ?? 0), `${check.check} ${check.title}`).toBe(false);
          expect(Number.isNaN(check.limit ?? 0), `${check.check} ${check.title}`).toBe(false);
          const names = [...check.say.template.matchAll(/\{(\w+)\}/g)].map(m => m[1]!);
          expect(names.filter(n => check.say.values[n] === undefined)).toEqual([]);
          expect(check.remedy === '', `${check.check} ${check.title}`).toBe(check.severity === 'pass');
          expect(check.title).not.toMatch(/undefined|NaN|\s\s/);
        }
      }),
      { seed: 51, numRuns: 400 },
    );
  });
});
