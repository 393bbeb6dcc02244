/** Enough clamps, long enough, for every width that is glued up of boards. */
import { CLAMP_FROM_END_MM, CLAMP_SPACING_MM } from '../reference/adhesives.ts';
import { sourceOf } from '../reference/sourced.ts';
import type { Check } from '../results/checks.ts';
import { say } from '../results/message.ts';
import { count, mm, text } from '../results/quantity.ts';
import { clampCount } from '../timber/clamps.ts';
import type { Workshop } from '../workshop/workshop.ts';
import { type CheckInput, type CheckMaker, finding, rule } from './check.ts';
import type { Panel, View } from './view.ts';
import { capital, inMm, mid } from './words.ts';

export const CHK_39 = rule(
  'CHK-39',
  'Boards glued edge to edge take a clamp within 50 mm of each end and one every 300 mm between, longer than the width.',
  'Between clamps too far apart the joint stays open.',
  CLAMP_SPACING_MM.source,
  'read',
);

/** A clamp must open past the width to take its blocks, mm. */
const BLOCKS = 40;

const longEnough = (workshop: Workshop, width: number): number =>
  workshop.clamps.reduce((n, set) => (set.length >= width + BLOCKS ? n + set.quantity : n), 0);

const lengthOf = (panel: Panel): number => Math.max(...panel.instances.map(i => i.size.length));

function judgePanel(panel: Panel, workshop: Workshop): Check {
  const needed = clampCount(lengthOf(panel), CLAMP_FROM_END_MM.high, CLAMP_SPACING_MM.high);
  const owned = longEnough(workshop, panel.width);
  const enough = owned >= needed;
  const part = panel.instances[0]!;
  return finding({
    check: 'clamps',
    subject: part.part,
    severity: enough ? 'pass' : 'attend',
    rule: CHK_39,
    title: enough ? `Clamps enough for ${mid(part.name)}` : `Too few clamps for ${mid(part.name)}`,
    figure: owned,
    limit: needed,
    unit: 'count',
    remedy: enough
      ? ''
      : `Borrow ${needed - owned} over ${inMm(panel.width + BLOCKS, 0)}, or glue it up in halves.`,
    say: say(
      '{part}: {width} wide and {length} long takes {needed} clamps; {owned} of the shop are long enough.',
      {
        part: text(capital(part.name)),
        width: mm(panel.width),
        length: mm(lengthOf(panel)),
        needed: count(needed),
        owned: count(owned),
      },
    ),
    sources: [sourceOf(CLAMP_FROM_END_MM)],
  });
}

/** A workshop file without clamps says nothing of them. The panel that asks for most clamps speaks for the rest. */
function judge({ workshop }: CheckInput, view: View): Check[] {
  const glued = view.panels.filter(p => p.instances.length > 1);
  if (glued.length === 0 || workshop.clamps.length === 0) return [];
  const shortBy = (p: Panel): number =>
    clampCount(lengthOf(p), CLAMP_FROM_END_MM.high, CLAMP_SPACING_MM.high) - longEnough(workshop, p.width);
  return [
    judgePanel(
      glued.reduce((w, p) => (shortBy(p) > shortBy(w) ? p : w)),
      workshop,
    ),
  ];
}

export const clampsCheck: CheckMaker = { name: 'clamps', rules: [CHK_39], judge };
