import { describe, expect, test } from 'vitest';
import { loadMeshKernel } from '../../src/host/mesh-kernel-node.ts';
import { checkJobDocument } from '../../src/job-file/read.ts';
import { JOINT_CATALOGUE, JOINTS } from '../../src/joints/index.ts';
import { prove } from '../../src/proof/prove.ts';
import { setOut } from '../../src/setting-out/set-out.ts';
import { pieceOf, proofOf } from '../setting-out/piece.ts';
import { PIECES } from './pieces/index.ts';
import { turnedParts } from './pieces/turned.ts';

const none = { length: 0, width: 0, thickness: 0 };
const context = { allowances: { timber: none, sheet: none, bar: none, tube: none }, density: () => 600 };
function make(type: string, t: number, set: object = {}) {
  const { parts, set: own } = PIECES[type]!(t);
  const given = { ...own, ...set };
  const { document, faults } = checkJobDocument({
    scantling: 'job/1',
    title: type,
    parts,
    joints: {
      j: {
        type,
        from: 'from',
        into: 'into',
        count: 1,
        ...(Object.keys(given).length > 0 ? { set: given } : {}),
      },
    },
  });
  const out = setOut(document!, JOINT_CATALOGUE, context);
  return { ...out, faults: [...faults, ...out.faults] };
}

test('every joint is tried here', () => {
  expect(Object.keys(PIECES).sort()).toEqual(JOINTS.map(j => j.type).sort());
});

describe.each(JOINTS.map(j => j.type))('%s', type => {
  test.each([12, 20, 45])('at %i mm: no fault, no overlap, limits kept by the defaults', async t => {
    const { piece, faults } = make(type, t);
    expect(faults).toEqual([]);
    expect(piece.joints).toHaveLength(1);
    expect(prove({ piece }, await loadMeshKernel()).overlaps).toEqual([]);
    for (const l of piece.joints[0]!.limits.filter(l => l.severity !== 'note'))
      expect([
        l.figure,
        l.min === undefined || l.value >= l.min - 1e-9,
        l.max === undefined || l.value <= l.max + 1e-9,
      ]).toEqual([l.figure, true, true]);
  });

  test('every default quotes a numbered rule and its formula', () => {
    const joint = JOINT_CATALOGUE.get(type)!;
    const { book } = make(type, 20);
    for (const f of joint.figures) {
      expect(JOINTS.flatMap(j => j.rules)).toContain(f.rule);
      const why = book.why(`joints.j.${f.name}`);
      expect([f.name, why?.how, why?.formula, why?.value === undefined]).toEqual([
        f.name,
        'rule',
        f.formula,
        false,
      ]);
    }
  });

  test('cuts stay inside their parts and mates name each other', () => {
    const { piece } = make(type, 20);
    const byId = new Map(piece.instances.map(i => [i.id, i]));
    for (const i of piece.instances)
      for (const cut of i.cuts) {
        if (cut.mate)
          expect(byId.get(cut.mate.instance)?.cuts.find(c => c.id === cut.mate?.cut)?.mate).toEqual({
            instance: i.id,
            cut: cut.id,
          });
        if (!('box' in cut)) continue;
        for (const [k, whole] of [
          ['x', i.size.length],
          ['y', i.size.width],
          ['z', i.size.thickness],
        ] as const) {
          expect(cut.box.min[k], `${cut.kind} ${k}`).toBeGreaterThanOrEqual(-1e-6);
          expect(cut.box.max[k], `${cut.kind} ${k}`).toBeLessThanOrEqual(whole + 1e-6);
        }
      }
  });
});

test('no two rules share a number; joints may share a rule', () => {
  const rules = [...new Set(JOINTS.flatMap(j => j.rules))];
  expect(new Set(rules.map(r => r.number)).size).toBe(rules.length);
});

describe('proportions of the mortise and tenon', () => {
  test.each([
    ['MT-1: a third, whole mm', 'tenon.thickness', 32, 11],
    ['MT-2: two thirds of the depth', 'tenon.length', 20, 26],
    ['MT-3: the rail less two face shoulders', 'tenon.width', 20, 47],
    ['MT-4: the mortise 2 mm deeper', 'mortise.deeper', 20, 2],
  ])('%s', (_rule, figure, t, wanted) => {
    expect(make('mortise-and-tenon', t).book.number(`joints.j.${figure}`)).toBe(wanted);
  });

  test('MT-5: haunched, two thirds tenon and one third haunch towards the end of the post', () => {
    const { book, piece } = make('mortise-and-tenon', 20, { kind: 'haunched' });
    expect([book.number('joints.j.tenon.width'), book.number('joints.j.shoulder.near')]).toEqual([40, 20]);
    const tenon = piece.instances.find(i => i.id === 'from')!.cuts[0]!;
    expect(tenon).toMatchObject({
      kind: 'tenon',
      y: { low: 0, high: 20 },
      haunch: { side: 'high', width: 20, length: 10 },
    });
  });

  test('MT-8: through, as long as the post is deep; shorter is refused with the figure that works', () => {
    expect(make('mortise-and-tenon', 20, { kind: 'through' }).book.number('joints.j.tenon.length')).toBe(40);
    expect(make('mortise-and-tenon', 20, { kind: 'through', 'tenon.length': 30 }).faults[0]).toMatchObject({
      place: 'joints.j.set.tenon.length',
      mend: 'give 40 mm or more, or make it a stub',
    });
  });
});

describe('mirrored and lifted copies', () => {
  test.each(JOINTS.map(j => j.type))(
    '%s: each copy has the joint, no overlap, and the same wood',
    async type => {
      const { parts, set } = PIECES[type]!(20);
      const mirrored = (p: object) => ({ ...p, mirror: { x: '-700 mm', y: '-900 mm' } });
      const made = pieceOf({
        parts: { ...parts, from: mirrored(parts.from!), into: mirrored(parts.into!) },
        joints: { j: { type, from: 'from', into: 'into', count: 4, ...(set ? { set } : {}) } },
      });
      expect(made.said).toEqual([]);
      const { overlaps, volumes } = await proofOf(made);
      expect(overlaps).toEqual([]);
      for (const id of ['from', 'into'])
        for (const copy of ['_x', '_y', '_xy'])
          expect([id + copy, volumes[id + copy]!.toFixed(2)]).toEqual([id + copy, volumes[id]!.toFixed(2)]);
    },
  );
});

describe('laid along every axis', () => {
  /** Joints that mean up and down: a shelf on pins lies level or not at all. */
  const UPRIGHT = ['shelf-pins'];

  test.each(JOINTS.map(j => j.type))('%s: the same wood whichever way it lies', async type => {
    const sample = PIECES[type]!(20);
    const made = (parts: typeof sample.parts) =>
      pieceOf({
        parts,
        joints: { j: { type, from: 'from', into: 'into', ...(sample.set ? { set: sample.set } : {}) } },
      });
    const usual = (await proofOf(made(sample.parts))).volumes;
    let parts = sample.parts;
    for (let turns = 1; turns < 3; turns++) {
      parts = turnedParts(parts);
      const laid = made(parts);
      if (UPRIGHT.includes(type)) {
        expect(laid.said[0]).toMatch(/does not lie level/);
        continue;
      }
      expect(laid.said).toEqual([]);
      const { overlaps, volumes } = await proofOf(laid);
      expect(overlaps).toEqual([]);
      for (const id of ['from', 'into']) expect(volumes[id]).toBeCloseTo(usual[id]!, 1);
    }
  });
});
