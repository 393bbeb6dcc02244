import type { JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { type Refusal, type RoleCut, refused, runOf, spots } from './fixing.ts';
import { behind, platePilot, plateScrew } from './plate-screws.ts';
import { known } from './screw-sizes.ts';
import { across, deep, limit, longAxis, otherAxis, rule, SIZE_OF_AXIS, sunk, withSpan } from './shape.ts';

const BC1 = rule(
  'BC-1',
  'Sizes follow the connector in hand: its plates, measured, and the reach of its hooks.',
  'Makers differ; a loose recess lets the bed rock.',
);
const BC2 = rule(
  'BC-2',
  'Let-in plates lie flush: each recess is as deep as its plate is thick.',
  'Deeper, the shoulder takes no load; shallower, it stays open.',
);
const BC3 = rule(
  'BC-3',
  'The plate stays 10 mm short of the edges of the rail, in its middle.',
  'Its screws need wood beyond them.',
);
const BC4 = rule(
  'BC-4',
  'Hooks have 2 mm of room beyond them, and 15 mm below them to drop.',
  'They go in above and drop home.',
);
const BC5 = rule(
  'BC-5',
  'A screw beyond and between the hooks, one more than hooks: 50 mm long in end grain, in the post what it bears.',
  'End grain holds screws badly.',
  {
    text: 'remembered',
    basis: 'memory',
  },
);

const SCREW = known('4.0');

const wide = (r: JointReader): number => runOf(r.contact).long;

export const bedConnector: JointType = {
  type: 'bed-connector',
  title: 'Bed connector',
  says: 'Two plates with hooks, let into the end of a rail and the face of a post or screwed upon them.',
  meets: 'end to face',
  many: false,
  needs: ['the connector in hand', 'a router with a template, and chisels', 'screws for the plates'],
  rules: [BC1, BC2, BC3, BC4, BC5],
  figures: [
    {
      name: 'kind',
      label: 'kind',
      kind: 'text',
      rule: BC1,
      formula: 'let in unless said',
      choices: ['let in', 'on the surface'],
      value: () => 'let in',
    },
    {
      name: 'plate.length',
      positive: true,
      label: 'plate length',
      kind: 'length',
      rule: BC3,
      formula: 'as yours is; 20 mm less than the rail, 130 at most',
      value: r => Math.min(130, Math.max(1, Math.round(wide(r) - 20))),
    },
    {
      name: 'plate.width',
      positive: true,
      label: 'plate width',
      kind: 'length',
      rule: BC1,
      formula: 'as yours is; 16 mm, or two thirds of the rail where that is less',
      value: r => Math.min(16, Math.round((runOf(r.contact).short * 2) / 3)),
    },
    {
      name: 'plate.thickness',
      positive: true,
      label: 'plate thickness',
      kind: 'length',
      rule: BC2,
      formula: 'as yours is; 2 mm',
      value: () => 2,
    },
    {
      name: 'hooks',
      label: 'hooks',
      kind: 'count',
      rule: BC1,
      formula: 'as yours has; two, one where the plate is under 60 mm',
      value: r => (r.figure('plate.length') < 60 ? 1 : 2),
    },
    {
      name: 'hook.reach',
      positive: true,
      label: 'hooks reach in',
      kind: 'length',
      rule: BC4,
      formula: 'as yours do; 10 mm, a third of the post at most',
      value: r => Math.min(10, Math.round(r.depthOf('into') / 3)),
    },
    {
      name: 'hook.width',
      positive: true,
      label: 'hook thickness',
      kind: 'length',
      rule: BC1,
      formula: 'as yours are; 3 mm',
      value: () => 3,
    },
    {
      name: 'hook.height',
      positive: true,
      label: 'slot for a hook, along the post',
      kind: 'length',
      rule: BC4,
      formula: 'as yours need; 25 mm with the drop, a third of the plate at most',
      value: r => Math.min(25, Math.floor(r.figure('plate.length') / 3)),
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const along = longAxis(contact.inFrom, contact.fromFace);
  const side = otherAxis(contact.fromFace, along);
  const middle = (a: 'x' | 'y' | 'z'): number => (contact.inFrom.min[a] + contact.inFrom.max[a]) / 2;
  const centred = (length: number, width: number, at = middle(along)) =>
    withSpan(
      withSpan(contact.inFrom, along, at - length / 2, at + length / 2),
      side,
      middle(side) - width / 2,
      middle(side) + width / 2,
    );
  const [length, width, thick] = [
    c.figure('plate.length'),
    c.figure('plate.width'),
    c.figure('plate.thickness'),
  ];
  const plate = centred(length, width);
  const letIn = c.word('kind') === 'let in';
  const recess = (role: 'from' | 'into'): RoleCut => {
    const [face, body, mouth] =
      role === 'from'
        ? [contact.fromFace, from.body, plate]
        : [contact.intoFace, into.body, across(c, 'from', plate)];
    const box = sunk(mouth, face, body, thick);
    return {
      role,
      cut: {
        kind: 'recess',
        face,
        box,
        run: longAxis(box, face),
        through: false,
        corner: 'square',
        clearance: 0.2,
      },
    };
  };
  const reach = thick + c.figure('hook.reach') + 2;
  const n = Math.max(1, Math.round(c.figure('hooks')));
  const slots = Array.from({ length: n }, (_, i): RoleCut => {
    const at = middle(along) - length / 2 + (length * (2 * i + 1)) / (2 * n);
    const box = sunk(
      across(c, 'from', centred(c.figure('hook.height'), c.figure('hook.width') + 1, at)),
      contact.intoFace,
      into.body,
      reach,
    );
    return {
      role: 'into',
      cut: {
        kind: 'mortise',
        face: contact.intoFace,
        box,
        run: longAxis(box, contact.intoFace),
        through: false,
        corner: 'round',
      },
    };
  });
  const whole = deep(contact, into.body);
  // Screws stand in the middle of what the slots leave of the plate.
  const free = (length - n * c.figure('hook.height')) / n;
  const screws = Array.from({ length: n + 1 }, (_, i) => {
    const at = (length * i) / n;
    return i === 0 ? free / 4 : i === n ? length - free / 4 : at;
  });
  const lengths = {
    from: plateScrew(SCREW, 50, behind(c, 'from'), thick),
    into: plateScrew(SCREW, 50, whole, thick),
  };
  const pilots = (['from', 'into'] as const).flatMap(role =>
    screws.map(station =>
      platePilot(
        c,
        role,
        {
          ...spots(c, 1, 0)[0]!,
          [along]: middle(along) - length / 2 + station,
          [side]: middle(side),
        },
        { size: SCREW, length: lengths[role], plate: thick },
      ),
    ),
  );
  const { long, short } = runOf(contact);
  return {
    cuts: letIn ? [recess('from'), recess('into'), ...slots, ...pilots] : [],
    ...(letIn ? { mates: [[0, 1]] as [number, number][] } : {}),
    glue: [],
    fasteners: [
      {
        item: `bed connector, plate ${length} x ${width} x ${thick}, pair`,
        kind: 'other' as const,
        quantity: 1,
        length,
        diameter: width,
      },
      ...(['from', 'into'] as const).map(role => ({
        item: `${SCREW.key} x ${lengths[role]} screw`,
        kind: 'screw' as const,
        quantity: screws.length,
        length: lengths[role],
        diameter: SCREW.shankMm,
      })),
    ],
    limits: [
      limit(
        BC5,
        'behind the screws',
        whole - thick - lengths.into,
        { min: 1 },
        'attend',
        `Use a post of ${Math.ceil(thick + lengths.into + 3)} mm or more.`,
      ),
      limit(
        BC3,
        'beside the plate',
        letIn ? (short - width) / 2 : 3,
        { min: 2 },
        'attend',
        `Use a plate no wider than ${Math.floor(short - 4)} mm.`,
      ),
      limit(
        BC4,
        'behind the hooks',
        letIn ? whole - reach : 5,
        { min: 5 },
        'attend',
        'Use shorter hooks, or a thicker post.',
      ),
    ],
    ...refused(letIn ? refusals(c, { long, short, whole, reach, rail: from.body[SIZE_OF_AXIS[side]] }) : []),
  };
}

function refusals(
  c: MakeContext,
  m: { long: number; short: number; whole: number; reach: number; rail: number },
): Refusal[] {
  const found: Refusal[] = [];
  if (c.figure('plate.length') > m.long - 4)
    found.push({
      figure: 'plate.length',
      fault: `a plate ${c.figure('plate.length')} mm long breaks out of a rail of ${Math.round(m.long)}`,
      mend: `use one of ${Math.floor(m.long - 20)} mm, or a wider rail`,
    });
  if (c.figure('plate.width') > m.short - 2)
    found.push({
      figure: 'plate.width',
      fault: `a plate ${c.figure('plate.width')} mm wide does not go into ${Math.round(m.short)}`,
      mend: `use one of ${Math.floor(m.short - 4)} mm, or a connector on the surface`,
    });
  if (m.reach >= m.whole)
    found.push({
      figure: 'hook.reach',
      fault: `the hooks need ${m.reach} mm, the post is ${m.whole} deep`,
      mend: `use hooks that reach ${Math.max(1, Math.floor(m.whole - 7 - c.figure('plate.thickness')))} mm`,
    });
  if (c.figure('hooks') * c.figure('hook.height') > c.figure('plate.length'))
    found.push({
      figure: 'hook.height',
      fault: `${c.figure('hooks')} slots of ${c.figure('hook.height')} mm are more than the plate's ${c.figure('plate.length')}`,
      mend: `give ${Math.floor(c.figure('plate.length') / c.figure('hooks') - 2)} mm`,
    });
  return found;
}
