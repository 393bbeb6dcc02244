import type { CutDraft, JointType, MakeContext } from '../setting-out/joint-type.ts';
import {
  across,
  beyond,
  deep,
  FACE_AXIS,
  flatArea,
  limit,
  longAxis,
  rule,
  sunk,
  wholeMm,
  withSpan,
} from './shape.ts';

const TG1 = rule(
  'TG-1',
  'The tongue is a third of the board thick.',
  'Both cheeks of the groove keep their strength.',
);
const TG2 = rule(
  'TG-2',
  'The tongue is as long as it is thick, 6 mm at least.',
  'Longer breaks off; shorter lets go when the boards shrink.',
);
const TG3 = rule(
  'TG-3',
  'The groove is 1 mm deeper than the tongue and 0.2 mm wider.',
  'The faces must close, and dry boards must slide.',
);

export const tongueAndGroove: JointType = {
  type: 'tongue-and-groove',
  title: 'Tongue and groove',
  says: 'A tongue along the edge of one board in a groove along the edge of the next.',
  meets: 'edge to face',
  many: true,
  needs: ['a grooving blade or a pair of slot cutters'],
  rules: [TG1, TG2, TG3],
  figures: [
    {
      name: 'tongue.thickness',
      positive: true,
      label: 'tongue thickness',
      kind: 'length',
      rule: TG1,
      formula: "a third of the board's thickness, whole mm",
      value: r => wholeMm(r.size('from', 'thickness') / 3),
    },
    {
      name: 'tongue.length',
      positive: true,
      label: 'tongue length',
      kind: 'length',
      rule: TG2,
      formula: 'as long as thick, 6 mm at least',
      value: r => Math.max(6, r.figure('tongue.thickness')),
    },
    {
      name: 'groove.deeper',
      label: 'groove deeper by',
      kind: 'length',
      rule: TG3,
      formula: '1 mm',
      value: () => 1,
    },
    { name: 'fit', label: 'groove wider by', kind: 'length', rule: TG3, formula: '0.2 mm', value: () => 0.2 },
  ],
  adds: () => 'tongue.length',
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const [thickness, length] = [c.figure('tongue.thickness'), c.figure('tongue.length')];
  const cheek = (from.body.thickness - thickness) / 2;
  const strip = beyond(contact.inFrom, contact.fromFace, from.body, length);
  const run = longAxis(contact.inFrom, contact.fromFace);
  const rebate = (face: 'back' | 'face', low: number, high: number): CutDraft => ({
    kind: 'rebate',
    face,
    box: withSpan(strip, 'z', low, high),
    run,
    through: false,
    corner: 'square',
    clearance: c.figure('fit'),
  });
  const tongue = withSpan(strip, 'z', cheek, cheek + thickness);
  let groove = sunk(
    across(c, 'from', tongue),
    contact.intoFace,
    into.body,
    length + c.figure('groove.deeper'),
  );
  const grooveRun = longAxis(groove, contact.intoFace);
  const thin = (['x', 'y', 'z'] as const).find(a => a !== grooveRun && a !== FACE_AXIS[contact.intoFace])!;
  groove = withSpan(
    groove,
    thin,
    groove.min[thin] - c.figure('fit') / 2,
    groove.max[thin] + c.figure('fit') / 2,
  );
  const whole = deep(contact, into.body);
  return {
    cuts: [
      { role: 'from' as const, cut: rebate('back', 0, cheek) },
      { role: 'from' as const, cut: rebate('face', cheek + thickness, from.body.thickness) },
      {
        role: 'into' as const,
        cut: {
          kind: 'groove' as const,
          face: contact.intoFace,
          box: groove,
          run: grooveRun,
          through: false,
          corner: 'square' as const,
          clearance: c.figure('fit'),
        },
      },
    ],
    mates: [[0, 2]] as [number, number][],
    glue: [
      {
        area: 2 * length * (strip.max[run] - strip.min[run]) + flatArea(contact.inInto),
        grain: 'long' as const,
      },
    ],
    fasteners: [],
    limits: [
      limit(
        TG1,
        'tongue.thickness',
        thickness,
        { min: from.body.thickness / 4, max: from.body.thickness / 2 },
        'attend',
        `Make the tongue ${wholeMm(from.body.thickness / 3)} mm thick.`,
      ),
    ],
    ...(thickness >= from.body.thickness
      ? {
          impossible: [
            {
              figure: 'tongue.thickness',
              fault: `the tongue is ${thickness} mm thick, the board only ${from.body.thickness}`,
              mend: `give ${wholeMm(from.body.thickness / 3)} mm`,
            },
          ],
        }
      : length + c.figure('groove.deeper') >= whole
        ? {
            impossible: [
              {
                figure: 'tongue.length',
                fault: `the groove is ${length + c.figure('groove.deeper')} mm deep, the board only ${whole}`,
                mend: `give ${Math.floor(whole / 2)} mm`,
              },
            ],
          }
        : {}),
  };
}
