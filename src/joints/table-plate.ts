import type { CutDraft, JointType, MakeContext } from '../setting-out/joint-type.ts';
import {
  badRow,
  bored,
  countFor,
  innerFace,
  pointAcross,
  type Refusal,
  type RoleCut,
  refused,
  runOf,
  spots,
} from './fixing.ts';
import { known, pilotFor } from './screw-sizes.ts';
import { deep, isHigh, limit, longAxis, otherAxis, rule, SIZE_OF_AXIS, sunk, withSpan } from './shape.ts';

const FE1 = rule(
  'FE-1',
  'A plate of two rings lies in a round recess in the edge of the rail, as deep as it is thick.',
  'It must lie flush, or the top rides on it.',
  { text: 'woodcraft.com, tabletop fasteners; sizes as in hand', basis: 'common practice' },
);
const FE2 = rule(
  'FE-2',
  'The recess is 1 mm wider than the ring and open to the inner face, so that the plate swings.',
  'It follows a solid top by turning.',
);
const FE3 = rule(
  'FE-3',
  'Plates stand at most 300 mm apart, two at least.',
  'The top must lie flat between them.',
);
const FE4 = rule(
  'FE-4',
  'The hole for the screw of the top stands 5 mm or more clear of the inner face.',
  'A driver must reach it beside the rail.',
);

/** How far a swinging plate lets a top move: twice the throw at 30 degrees (geometry of the plate). */
const throwOf = (centres: number): number => Math.floor(centres * Math.sin(Math.PI / 6));

export const tablePlate: JointType = {
  type: 'table-plate',
  title: 'Swinging plate for a solid top',
  says: 'Plates of two rings: one screwed in a recess of the rail, the other to the top, which may move.',
  meets: 'face to face',
  many: true,
  needs: ['a forstner bit or a router', 'plates of two rings, two screws each'],
  rules: [FE1, FE2, FE3, FE4],
  figures: [
    {
      name: 'ring',
      positive: true,
      label: 'ring diameter',
      kind: 'length',
      rule: FE1,
      formula: 'as yours are; 19 mm',
      value: () => 19,
    },
    {
      name: 'thickness',
      positive: true,
      label: 'plate thickness',
      kind: 'length',
      rule: FE1,
      formula: 'as yours are; 2.5 mm',
      value: () => 2.5,
    },
    {
      name: 'centres',
      positive: true,
      label: 'between the two holes',
      kind: 'length',
      rule: FE4,
      formula: 'as yours are; 16 mm',
      value: () => 16,
    },
    {
      name: 'inset',
      label: 'middle of the recess from the inner face',
      kind: 'length',
      rule: FE2,
      formula: 'a third of the ring, a third of the rail at most',
      value: r => Math.min(Math.round(r.figure('ring') / 3), Math.round(runOf(r.contact).short / 3)),
    },
    {
      name: 'plates',
      label: 'plates',
      kind: 'count',
      rule: FE3,
      formula: 'one for each 300 mm begun, two at least',
      value: r => countFor(r, 300),
    },
    {
      name: 'end',
      label: 'first plate from the end',
      kind: 'length',
      rule: FE3,
      formula: 'a sixth of the run, 60 mm at most',
      value: r => Math.min(60, Math.round(runOf(r.contact).long / 6)),
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const along = longAxis(contact.inFrom, contact.fromFace);
  const side = otherAxis(contact.fromFace, along);
  const inner = innerFace(c, side);
  const whole = from.body[SIZE_OF_AXIS[side]];
  const out = isHigh(inner) ? 1 : -1;
  const face = isHigh(inner) ? whole : 0;
  const [ring, thick, inset, centres] = [
    c.figure('ring'),
    c.figure('thickness'),
    c.figure('inset'),
    c.figure('centres'),
  ];
  const s = known('4.0');
  // Round at its end and open to the inner face, where the plate swings.
  const recess = (centre: number): CutDraft => {
    const reach = face - out * (inset + (ring + 1) / 2);
    const mouth = withSpan(
      withSpan(contact.inFrom, along, centre - (ring + 1) / 2, centre + (ring + 1) / 2),
      side,
      face,
      reach,
    );
    const box = sunk(mouth, contact.fromFace, from.body, thick);
    return { kind: 'recess', face: contact.fromFace, box, run: side, through: false, corner: 'round' };
  };
  const cuts = spots(c, c.figure('plates'), c.figure('end')).flatMap((spot): RoleCut[] => {
    const at = { ...spot, [side]: face - out * inset };
    const beyond = { ...spot, [side]: face - out * inset + out * centres };
    return [
      { role: 'from', cut: recess(spot[along]) },
      {
        role: 'from',
        cut: bored(contact.fromFace, from.body, at, {
          role: 'pilot',
          diameter: pilotFor(s, from.material),
          depth: thick + 20,
        }),
      },
      {
        role: 'into',
        cut: bored(contact.intoFace, into.body, pointAcross(c, 'from', beyond), {
          role: 'pilot',
          diameter: pilotFor(s, into.material),
          depth: Math.max(3, Math.min(15, deep(contact, into.body) - 5)),
        }),
      },
    ];
  });
  const n = Math.max(1, Math.round(c.figure('plates')));
  const travel = throwOf(centres);
  const panel = c.panel('into');
  const half = (v: number): number => Math.abs(v - (panel.min.y + panel.max.y) / 2);
  return {
    cuts,
    glue: [],
    fasteners: [
      {
        item: `swinging plate, rings ${ring} x ${thick}`,
        kind: 'other' as const,
        quantity: n,
        length: ring + centres,
        diameter: ring,
      },
      { item: '4.0 x 16 screw', kind: 'screw' as const, quantity: 2 * n, length: 16, diameter: 4 },
    ],
    limits: [
      limit(
        FE2,
        'outside the recess',
        whole - inset - (ring + 1) / 2,
        { min: 1 },
        'attend',
        `Set the plates ${Math.floor(whole - (ring + 1) / 2 - 1)} mm in, or use smaller ones.`,
      ),
      limit(
        FE4,
        'screw clear of the rail',
        centres - inset,
        { min: 5 },
        'attend',
        `Set the plates ${Math.floor(centres - 5)} mm in at most.`,
      ),
    ],
    ...(into.kind === 'timber'
      ? {
          room: {
            instance: into.instance,
            width: Math.max(half(contact.inInto.min.y), half(contact.inInto.max.y)),
            swell: travel,
            shrink: travel,
            what: 'button' as const,
          },
        }
      : {}),
    ...refused([...refusals(c, whole, from.body), ...badRow(c, 'end', ring / 2 + 2, 'plate')]),
  };
}

function refusals(c: MakeContext, whole: number, body: MakeContext['from']['body']): Refusal[] {
  const found: Refusal[] = [];
  const [ring, inset, thick] = [c.figure('ring'), c.figure('inset'), c.figure('thickness')];
  if (inset >= whole || inset <= 0)
    found.push({
      figure: 'inset',
      fault: `a recess ${inset} mm in from the face of a rail ${whole} thick`,
      mend: `give ${Math.round(Math.min(ring / 3, whole / 3))} mm`,
    });
  const deepest = Math.max(body.width, body.thickness);
  if (thick <= 0 || thick + 20 >= deepest)
    found.push({
      figure: 'thickness',
      fault: `plate and screw need ${thick + 20} mm of a rail of ${deepest}`,
      mend: 'use a deeper rail or a thinner plate',
    });
  return found;
}
