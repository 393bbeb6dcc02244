import type { EndName } from '../results/cuts.ts';
import type { CutDraft, JointReader, JointType, MakeContext } from '../setting-out/joint-type.ts';
import { across, beyond, deep, FACE_AXIS, limit, rule, SIZE_OF_AXIS, wholeMm, withSpan } from './shape.ts';

const CB1 = rule(
  'CB-1',
  'The tongue of a bridle is a third of the thickness.',
  'The fork keeps two cheeks of the same strength.',
  { text: 'trade books; Bridle joint, a weak web source', basis: 'memory' },
);
const CB2 = rule(
  'CB-2',
  'A bridle closes flush: tongue and slot go the whole depth.',
  'It is open on the end; what is short shows as a step.',
);
const CB3 = rule(
  'CB-3',
  'A glued bridle has 0.1 mm play in its thickness.',
  'It lives on its glue alone, so the cheeks must touch all over.',
  { text: 'remembered fit for water-based glue lines, 0.05 to 0.15 mm', basis: 'memory' },
);

const thin = (r: JointReader): number => Math.min(r.size('from', 'thickness'), r.size('from', 'width'));

export const cornerBridle: JointType = {
  type: 'corner-bridle',
  title: 'Corner bridle',
  says: 'A rail with an open tongue astride which a post is forked at its end.',
  meets: 'end to face',
  many: false,
  needs: ['an upright jig on the table saw, or a tenon saw'],
  rules: [CB1, CB2, CB3],
  figures: [
    {
      name: 'tenon.thickness',
      positive: true,
      label: 'tongue thickness',
      kind: 'length',
      rule: CB1,
      formula: "a third of the rail's thickness, whole mm",
      value: r => wholeMm(thin(r) / 3),
    },
    {
      name: 'tenon.length',
      positive: true,
      label: 'tongue length',
      kind: 'length',
      rule: CB2,
      formula: 'the depth of the post',
      value: r => r.depthOf('into'),
    },
    {
      name: 'cheek.face',
      label: 'taken from the face side',
      kind: 'length',
      rule: CB1,
      formula: 'half of what the tongue leaves',
      value: r => (thin(r) - r.figure('tenon.thickness')) / 2,
    },
    {
      name: 'fit',
      label: 'play in the thickness',
      kind: 'length',
      rule: CB3,
      formula: '0.1 mm in all',
      value: () => 0.1,
    },
  ],
  adds: () => 'tenon.length',
  make,
};

function make(c: MakeContext) {
  const { contact, from, into } = c;
  const cheeks = from.body.thickness <= from.body.width ? 'z' : 'y';
  const whole = from.body[SIZE_OF_AXIS[cheeks]];
  const thickness = c.figure('tenon.thickness');
  const length = c.figure('tenon.length');
  const taken = { low: whole - thickness - c.figure('cheek.face'), high: c.figure('cheek.face') };
  const none = { low: 0, high: 0 };
  const tenon: CutDraft = {
    kind: 'tenon',
    end: contact.fromFace as EndName,
    length,
    y: cheeks === 'y' ? taken : none,
    z: cheeks === 'z' ? taken : none,
    cheeks,
    through: true,
    clearance: c.figure('fit'),
  };
  const tongue = beyond(
    withSpan(contact.inFrom, cheeks, taken.low, whole - taken.high),
    contact.fromFace,
    from.body,
    length,
  );
  let slot = across(c, 'from', tongue);
  // The fork is open on the end of the post nearest to the rail.
  const nearHigh = into.body.length - slot.max.x <= slot.min.x;
  slot = withSpan(slot, 'x', nearHigh ? slot.min.x : 0, nearHigh ? into.body.length : slot.max.x);
  const step = nearHigh ? into.body.length - contact.inInto.max.x : contact.inInto.min.x;
  const axis = FACE_AXIS[contact.intoFace];
  slot = withSpan(slot, axis, 0, into.body[SIZE_OF_AXIS[axis]]);
  const depth = deep(contact, into.body);
  const wide = cheeks === 'z' ? from.body.width : from.body.thickness;
  return {
    cuts: [
      { role: 'from' as const, cut: tenon },
      {
        role: 'into' as const,
        cut: {
          kind: 'open-mortise' as const,
          face: nearHigh ? ('end2' as const) : ('end1' as const),
          box: slot,
          run: axis,
          through: true,
          corner: 'square' as const,
          clearance: c.figure('fit'),
        },
      },
    ],
    mates: [[0, 1]] as [number, number][],
    glue: [{ area: 2 * length * wide, grain: 'long' as const }],
    fasteners: [],
    limits: [
      limit(
        CB1,
        'tenon.thickness',
        thickness,
        { min: whole / 4, max: whole / 2 },
        'attend',
        `Make the tongue ${wholeMm(whole / 3)} mm thick.`,
      ),
      limit(
        CB2,
        'tenon.length',
        length,
        { min: depth },
        'attend',
        `The post is ${depth} mm deep: give ${depth}.`,
      ),
      limit(
        CB2,
        'step at the end',
        step,
        { max: 0.5 },
        'attend',
        'Bring the rail flush with the end of the post, or use a mortise.',
      ),
    ],
    ...(thickness < whole && taken.low < -1e-6
      ? {
          impossible: [
            {
              figure: 'cheek.face',
              fault: `${taken.high} mm from the face side and a tongue of ${thickness} mm are more than the rail's ${whole}`,
              mend: `take ${(whole - thickness) / 2} mm from the face side`,
            },
          ],
        }
      : {}),
    ...(thickness >= whole
      ? {
          impossible: [
            {
              figure: 'tenon.thickness',
              fault: `the tongue is ${thickness} mm thick, the rail only ${whole}`,
              mend: `give ${wholeMm(whole / 3)} mm`,
            },
          ],
        }
      : {}),
  };
}
