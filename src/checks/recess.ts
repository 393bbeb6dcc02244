/** A thin sheet let in: the recess is as deep as the sheet in hand and its glue line. */
import { roundTo } from '../quantities/length.ts';
import type { Check, Mend } from '../results/checks.ts';
import { say } from '../results/message.ts';
import type { JointMade } from '../results/piece.ts';
import { mm, text } from '../results/quantity.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { gather, type View } from './view.ts';
import { capital, inMm, mid } from './words.ts';

export const CHK_11 = rule(
  'CHK-11',
  'A recess is as deep as the sheet that lies in it and its glue line, within 0.1 mm.',
  'Proud metal is sanded through or catches; sunk metal leaves an edge that cannot be flushed.',
  'common practice',
  'common practice',
);

const WITHIN = 0.1;

/** To the hundredth: a recess is set by feeler or test cut, not by the rule. */
function recessMend(joint: JointMade, wanted: number): Mend {
  const value = roundTo(wanted, 2);
  return {
    parameter: `joints.${joint.joint}.recess.depth`,
    value,
    label: `Recess ${inMm(value, 2)} deep`,
    edit: { path: ['joints', joint.joint, 'set', 'recess.depth'], value: inMm(value, 2) },
  };
}

function judgeRecess(joint: JointMade, view: View): Check[] {
  const { bond } = joint;
  const sheet = bond && view.instance(bond.sheet);
  if (!bond || bond.recessDepth === undefined || !sheet) return [];
  const measured = sheet.measured?.thickness;
  const thickness = measured ?? sheet.size.thickness;
  const wanted = thickness + bond.glueLine;
  const off = bond.recessDepth - wanted;
  const right = Math.abs(off) <= WITHIN + 1e-9;
  const values = {
    sheet: text(capital(sheet.name)),
    thickness: mm(thickness),
    glue: mm(bond.glueLine),
    recess: mm(bond.recessDepth),
    wanted: mm(wanted),
  };
  return [
    finding({
      check: 'recess',
      subject: joint.joint,
      severity: !right ? 'attend' : measured === undefined ? 'unknown' : 'pass',
      rule: CHK_11,
      title: !right
        ? `${capital(sheet.name)} will ${off < 0 ? 'stand proud' : 'lie low'} by ${inMm(Math.abs(off), 2)}`
        : measured === undefined
          ? `Thickness of ${mid(sheet.name)} in hand`
          : `Recess fits ${mid(sheet.name)}`,
      figure: bond.recessDepth,
      limit: wanted,
      unit: 'length',
      remedy: !right
        ? `Make the recess ${inMm(wanted, 2)} deep.`
        : measured === undefined
          ? 'Measure the sheet and enter what the calipers say.'
          : '',
      mend: right ? undefined : recessMend(joint, wanted),
      say: say(
        measured === undefined && right
          ? '{sheet} is {thickness} by its name and has not been measured; with {glue} of glue the recess is {recess}.'
          : '{sheet} is {thickness} and its glue {glue}: {wanted} deep; the recess is {recess}.',
        values,
      ),
      sources:
        measured === undefined
          ? [{ text: 'thickness as ordered', basis: 'maker' }]
          : [{ text: 'thickness by the calipers', basis: 'measured' }],
    }),
  ];
}

const judge = ({ piece }: CheckInput, view: View): Check[] =>
  gather(
    piece.joints.filter(j => j.bond),
    j => j.joint,
  ).flatMap(of => judgeRecess(of[0]!, view));

export const recessCheck: CheckMaker = { name: 'recess', rules: [CHK_11], judge };
