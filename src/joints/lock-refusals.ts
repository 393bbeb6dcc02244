import type { Axis } from '../geometry/vector.ts';
import type { MakeContext } from '../setting-out/joint-type.ts';
import { type Refusal, runOf } from './fixing.ts';
import { deep } from './shape.ts';

/** Why a lock of these sizes cannot be let in here; empty when it can. */
export function lockRefusals(
  c: MakeContext,
  m: { whole: number; reach: number; centre: number; along: Axis; deepFrom: number; boltRoom: number },
): Refusal[] {
  const found: Refusal[] = [];
  const { inFrom } = c.contact;
  if (c.figure('body.thickness') >= m.whole)
    found.push({
      figure: 'body.thickness',
      fault: `a lock ${c.figure('body.thickness')} mm thick in wood of ${m.whole}`,
      mend: `use one of ${Math.max(1, Math.floor(m.whole - 4))} mm`,
    });
  if (c.figure('body.depth') >= m.deepFrom)
    found.push({
      figure: 'body.depth',
      fault: `a lock ${c.figure('body.depth')} mm deep in a part ${m.deepFrom} wide`,
      mend: `use one of ${Math.floor(m.deepFrom - 10)} mm or less`,
    });
  if (c.figure('plate.width') > m.whole)
    found.push({
      figure: 'plate.width',
      fault: `a plate ${c.figure('plate.width')} mm wide on an edge of ${m.whole}`,
      mend: `use one of ${m.whole} mm or less`,
    });
  const half = Math.max(c.figure('plate.length'), c.figure('body.length')) / 2;
  if (m.centre - half < inFrom.min[m.along] - 1e-6 || m.centre + half > inFrom.max[m.along] + 1e-6)
    found.push({
      figure: 'at',
      fault: `a plate ${2 * half} mm long runs off the edge at ${c.figure('at')} mm`,
      mend: `set its middle between ${half} and ${Math.max(half, Math.floor(runOf(c.contact).long - half))} mm`,
    });
  if (m.reach >= deep(c.contact, c.into.body))
    found.push({
      figure: 'bolt.reach',
      fault: `the bolt needs ${m.reach} mm of ${c.into.instance}, which is ${deep(c.contact, c.into.body)} there`,
      mend: `use a bolt of ${Math.max(1, Math.floor(deep(c.contact, c.into.body) - 4))} mm`,
    });
  if (c.figure('keyhole.in') <= c.figure('keyhole') || c.figure('keyhole.in') >= c.figure('body.depth'))
    found.push({
      figure: 'keyhole.in',
      fault: `a keyhole ${c.figure('keyhole.in')} mm in is beside a lock ${c.figure('body.depth')} deep`,
      mend: `give ${c.figure('body.depth') / 2} mm`,
    });
  const room = m.boltRoom;
  if (c.figure('bolt.width') + 1 > room)
    found.push({
      figure: 'bolt.width',
      fault: `a bolt ${c.figure('bolt.width')} mm thick runs out of the edge of ${c.into.instance}, which leaves ${Math.round(room * 10) / 10} for it`,
      mend: `use one of ${Math.max(1, Math.floor(room - 1))} mm or less`,
    });
  return found;
}
