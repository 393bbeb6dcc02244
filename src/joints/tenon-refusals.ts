import type { Box } from '../geometry/box.ts';
import type { MakeContext } from '../setting-out/joint-type.ts';
import { FACE_AXIS, SIZE_OF_AXIS, wholeMm } from './shape.ts';

/** Does the mortise break out beside the way it goes in? */
function runsOut(c: MakeContext, { min, max }: Box): boolean {
  const entry = FACE_AXIS[c.contact.intoFace];
  return (['x', 'y', 'z'] as const).some(
    a => a !== entry && (min[a] < -0.05 || max[a] > c.into.body[SIZE_OF_AXIS[a]] + 0.05),
  );
}

/** Why a tenon of these figures cannot be cut, or its mortise not; empty when both can. */
export function refusals(
  c: MakeContext,
  rail: { thick: number; wide: number },
  depth: number,
  through: boolean,
  far: number,
  pocket: Box,
) {
  const found: { figure: string; fault: string; mend: string }[] = [];
  const [thickness, length, width] = [
    c.figure('tenon.thickness'),
    c.figure('tenon.length'),
    c.figure('tenon.width'),
  ];
  for (const [figure, value] of [
    ['tenon.thickness', thickness],
    ['tenon.length', length],
    ['tenon.width', width],
  ] as const)
    if (value <= 0)
      found.push({
        figure,
        fault: `a tenon of ${value} mm is none`,
        mend: 'give more than 0, or a dowelled joint',
      });
  const face = c.figure('cheek.face');
  if (thickness < rail.thick && thickness + face > rail.thick + 1e-6)
    found.push({
      figure: 'cheek.face',
      fault: `${face} mm from the face side and a tenon of ${thickness} mm are more than the rail's ${rail.thick}`,
      mend: `take ${(rail.thick - thickness) / 2} mm from the face side`,
    });
  if (c.figure('haunch.length') > length + 1e-6)
    found.push({
      figure: 'haunch.length',
      fault: `the haunch is ${c.figure('haunch.length')} mm long, the tenon only ${length}`,
      mend: `give ${Math.min(10, length)} mm`,
    });
  if (c.figure('haunch.length') > 0 && c.figure('shoulder.near') <= 0)
    found.push({
      figure: 'shoulder.near',
      fault: 'a haunch stands beside the tenon, and no wood is left for it there',
      mend: `give ${Math.max(1, wholeMm(rail.wide - width))} mm, or make it a stub`,
    });
  if (found.length === 0 && runsOut(c, pocket))
    found.push({
      figure: 'tenon.width',
      fault: `the mortise for a tenon ${width} x ${thickness} mm runs out of the side of ${c.into.instance}`,
      mend: 'make the tenon smaller, or let the rail stand wholly on the member',
    });
  if (thickness >= rail.thick)
    found.push({
      figure: 'tenon.thickness',
      fault: `the tenon is ${thickness} mm thick, the rail only ${rail.thick}`,
      mend: `give ${wholeMm(rail.thick / 3)} mm`,
    });
  if (width > rail.wide + 1e-6 || far < -1e-6)
    found.push({
      figure: 'tenon.width',
      fault: `tenon ${width} mm and shoulder ${c.figure('shoulder.near')} mm are more than the rail's ${rail.wide}`,
      mend: `give a tenon of ${rail.wide - c.figure('shoulder.near')} mm or a smaller shoulder`,
    });
  if (!through && length > depth)
    found.push({
      figure: 'tenon.length',
      fault: `the tenon is ${length} mm long, the member only ${depth} deep`,
      mend: `give at most ${Math.floor((depth * 2) / 3)} mm, or make it a through tenon`,
    });
  if (through && length < depth - 1e-6)
    found.push({
      figure: 'tenon.length',
      fault: `a through tenon of ${length} mm does not reach through ${depth}`,
      mend: `give ${depth} mm or more, or make it a stub`,
    });
  return found.length > 0 ? { impossible: found } : {};
}
