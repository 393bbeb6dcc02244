import type { JointType, MakeContext } from '../setting-out/joint-type.ts';
import { type Refusal, refused } from './fixing.ts';
import { FACE_AXIS, flatArea, longAxis, rule, SIZE_OF_AXIS, sunk } from './shape.ts';

const SL1 = rule(
  'SL-1',
  'The recess is as deep as the sheet, measured, and the glue line.',
  'Deeper and the edge stands proud of the sheet; shallower and it cannot be flushed without going through.',
);

export const sheetLetIn: JointType = {
  type: 'sheet-let-in',
  title: 'Sheet let into a face',
  says: 'A sheet glued flush into a recess.',
  meets: 'overlap',
  many: true,
  needs: ['a router with a template or fence'],
  rules: [SL1],
  figures: [
    { name: 'glue.line', label: 'glue line', kind: 'length', rule: SL1, formula: '0.1 mm', value: () => 0.1 },
    {
      name: 'recess.depth',
      positive: true,
      label: 'recess depth',
      kind: 'length',
      rule: SL1,
      formula: "the sheet's thickness and the glue line",
      value: r => r.size('from', 'thickness') + r.figure('glue.line'),
    },
  ],
  adds: () => undefined,
  make,
};

function make(c: MakeContext) {
  const { contact, into } = c;
  const depth = c.figure('recess.depth');
  const face = contact.intoFace;
  const box = sunk(contact.inInto, face, into.body, depth);
  const whole = into.body[SIZE_OF_AXIS[FACE_AXIS[face]]];
  return {
    cuts: [
      {
        role: 'into' as const,
        cut: {
          kind: 'recess' as const,
          face,
          box,
          run: longAxis(box, face),
          through: false,
          corner: 'round' as const,
        },
      },
    ],
    glue: [{ area: flatArea(contact.inInto), grain: 'sheet' as const }],
    fasteners: [],
    limits: [],
    bond: {
      sheet: c.from.instance,
      core: c.into.instance,
      adhesive: c.adhesive ?? '',
      glueLine: c.figure('glue.line'),
      recessDepth: depth,
      bothFaces: false,
    },
    ...refused(refusals(c, depth, whole)),
  };
}

function refusals(c: MakeContext, depth: number, whole: number): Refusal[] {
  if (depth >= whole)
    return [
      {
        figure: 'recess.depth',
        fault: `the recess is ${depth} mm deep, the core only ${whole}`,
        mend: 'use a thinner sheet or a thicker core',
      },
    ];
  const axis = FACE_AXIS[c.contact.intoFace];
  const lies = c.contact.inInto.max[axis] - c.contact.inInto.min[axis];
  return depth < lies - 1e-6
    ? [
        {
          figure: 'recess.depth',
          fault: `the recess is ${depth} mm deep, the sheet lies ${Math.round(lies * 100) / 100} mm in`,
          mend: `give ${Math.round((lies + c.figure('glue.line')) * 100) / 100} mm, or place the sheet higher`,
        },
      ]
    : [];
}
