/** A sheet bonded on one face only bows the panel when the two move unlike. */
import { metal } from '../reference/metals.ts';
import { sheetFigures, sheetMaterial } from '../reference/sheet-materials.ts';
import { type Band, middle, sourceOf } from '../reference/sourced.ts';
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import type { Instance, JointMade } from '../results/piece.ts';
import { mm, q, text } from '../results/quantity.ts';
import { bondedCurvature, bow } from '../timber/bonded-sheet.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import { gather, type View } from './view.ts';
import { capital, mid } from './words.ts';

export const CHK_12 = rule(
  'CHK-12',
  'What is bonded on one face is bonded on the other too, of the same thickness; a bow over 1 in 500 of the length shows.',
  'One face moves with the air and the other does not, and the panel bows like the strip of a thermostat.',
  'Timoshenko, Analysis of bi-metal thermostats, J. Opt. Soc. Am. 11 (1925); the limit is common practice',
  'common practice',
);

const SHOWS = 1 / 500;

/** Stiffness (MPa) and growth for 1 % of moisture and for 1 K of a bonded layer. Solid timber has two of each and is not judged. */
interface Moves {
  stiffness: Band;
  perPercent: number;
  perKelvin: number;
  sources: Band[];
}

function movesOf(part: Instance): Moves | undefined {
  if (!(part.size.thickness > 0)) return undefined;
  const board = sheetMaterial(part.material);
  if (board) {
    const stiffness = sheetFigures(board, part.size.thickness).stiffnessAlongMPa;
    return {
      stiffness,
      perPercent: middle(board.movementInPlane),
      perKelvin: 0,
      sources: [stiffness, board.movementInPlane],
    };
  }
  const alloy = metal(part.material);
  if (alloy?.stiffnessMPa && alloy.expansionPerK) {
    return {
      stiffness: alloy.stiffnessMPa,
      perPercent: 0,
      perKelvin: middle(alloy.expansionPerK),
      sources: [alloy.stiffnessMPa, alloy.expansionPerK],
    };
  }
  return undefined;
}

function judgeBond(joint: JointMade, input: CheckInput, view: View): Check[] {
  const { bond } = joint;
  const [sheet, core] = [bond && view.instance(bond.sheet), bond && view.instance(bond.core)];
  // A sheet let into solid timber is held by the wood round it; what the wood does across the grain is CHK-3.
  if (!bond || !sheet || !core || core.kind === 'timber') return [];
  const common = { check: 'bow', subject: joint.joint, rule: CHK_12, unit: 'length' as const };
  const both = `Bond the same sheet on the other face of ${mid(core.name)} too, on the same day.`;
  if (bond.bothFaces) {
    return [
      finding({
        ...common,
        severity: 'pass',
        title: `${capital(core.name)} is faced on both sides`,
        figure: 0,
        limit: sheet.size.length * SHOWS,
        remedy: '',
        say: say('{sheet} on both faces: what one side pulls, the other pulls back.', {
          sheet: text(capital(sheet.name)),
        }),
      }),
    ];
  }
  const [face, back] = [movesOf(sheet), movesOf(core)];
  const site = input.commission.site;
  if (!face || !back || !view.room || !site?.temperature) {
    return [
      finding({
        ...common,
        severity: 'unknown',
        title: `How far ${mid(core.name)} bows`,
        figure: null,
        limit: sheet.size.length * SHOWS,
        remedy: both,
        say: say('{sheet} is on one face only, and {why} is not known.', {
          sheet: text(capital(sheet.name)),
          why: text(view.room ? 'how the two move' : 'the air of the room'),
        }),
      }),
    ];
  }
  const made = view.made(core.id).percent;
  const percent = Math.max(view.room.high - made, made - view.room.low);
  const kelvin = site.temperature.high - site.temperature.low;
  // Damp air is cool and dry air warm, so a metal's heat and a board's moisture pull the same way.
  const growth = (of: Moves): number => of.perPercent * percent - of.perKelvin * kelvin;
  const rise = Math.abs(
    bow(
      bondedCurvature([
        {
          thicknessMm: sheet.size.thickness,
          stiffnessMPa: middle(face.stiffness),
          freeGrowth: growth(face),
        },
        { thicknessMm: core.size.thickness, stiffnessMPa: middle(back.stiffness), freeGrowth: growth(back) },
      ]),
      sheet.size.length,
    ),
  );
  const limit = sheet.size.length * SHOWS;
  const bad = rise > limit;
  return [
    finding({
      ...common,
      severity: bad ? 'stop' : 'pass',
      title: bad ? `${capital(core.name)} bows` : `${capital(core.name)} stays flat`,
      figure: rise,
      limit,
      remedy: bad ? both : '',
      say: say(
        '{sheet} on one face only: {core} bows {bow} over {length} when its moisture changes by {change}; {limit} shows.',
        {
          sheet: text(capital(sheet.name)),
          core: text(mid(core.name)),
          bow: mm(rise),
          length: mm(sheet.size.length),
          change: q('moisture', percent),
          limit: mm(limit),
        },
      ),
      sources: [...face.sources, ...back.sources].map(sourceOf),
    }),
  ];
}

const judge = (input: CheckInput, view: View): Check[] =>
  gather(
    input.piece.joints.filter(j => j.bond),
    j => j.joint,
  ).flatMap(of => judgeBond(of[0]!, input, view));

export const bowCheck: CheckMaker = { name: 'bow', rules: [CHK_12], judge };
