import { NECESSARY, ORDER_RULES } from '../src/operations/order-rules.ts';

/** Rules of the trade's list that nothing here applies: what they say, and what would be needed. */
// biome-ignore format: a table, one rule a line
export const NOT_APPLIED: readonly [number: number, says: string, needs: string][] = [
  [9, 'Blade change before sizing, not in the middle of a batch', 'no rule of its own: parts of one setting share a set-up, so a blade is never changed within one (ORD-8)'],
  [19, 'Leave horns, glue, trim horns', 'horns are no part of the setting-out'],
  [26, 'Lipping before veneer if hidden, veneer before lipping if it protects', 'a choice of the panel: its strips go on as the panel is drawn, no veneer is laid'],
  [27, 'Both faces veneered the same day', 'no operation lays veneer'],
  [28, 'Veneer before joints and bores', 'no operation lays veneer'],
  [29, 'Oversize pressed, trimmed, then edged', 'no operation lays veneer'],
  [31, 'Patina, rinse and dry before it is near wood', 'recipes know no patina step; metal with a recipe is finished before it is fixed for good (ORD-32)'],
  [33, 'Metal inlay glued, flushed, then the wood sanded', 'a metal sheet let in is not told from one that stands proud'],
  [35, 'A steel screw cuts the thread before the brass one', 'the metal of a screw is not in the job file'],
  [40, 'Fill before the final grit', 'nothing in a job file says that something is filled'],
  [52, 'Seat or shelf between legs before the last side is on', 'the order of closing is the order of the assemblies as the job has them'],
  [55, 'Drawer runs before its front is fixed', 'drawers are built with solid fronts'],
  [63, 'The way in measured before the joint is chosen', 'the check of the way in says it; a joint already chosen is not an operation'],
  [65, 'Levelled and scribed, fixed to the wall, then doors adjusted', 'the operations end with packing'],
  [66, 'Tip strap before loading', 'the operations end with packing'],
  [67, 'Inspected and signed off before the final invoice', 'the operations end with packing'],
];

/** docs/order-rules.md, from the rules themselves. */
export function orderRulesPage(): string {
  const cell = (text: string): string => text.replaceAll('|', '/');
  const applied = ORDER_RULES.map(
    r =>
      `| ${r.number} | ${cell(r.says)} | ${r.hard ? 'hard' : 'soft'} | ${cell(r.reason)} | ${cell(r.unless ?? '')} | ${NECESSARY.has(r.number) ? 'no' : 'yes'} | ${cell(r.source.text)} |`,
  );
  const missing = NOT_APPLIED.map(([number, says, needs]) => `| ORD-${number} | ${says} | ${needs} |`);
  return `${[
    '# Rules of the order of work',
    '',
    'What comes before what, and what goes wrong else. ORD-1 to ORD-67 are numbered as in a list of the trade; ORD-68 and up are what that list takes for granted. Most put one operation before another; ORD-8 is a shared set-up; ORD-50, 58 and 60 stand on the work as cautions; ORD-36 and 59 close a window as well.',
    '',
    'A rule is set aside in the job file, with your reason:',
    '',
    '```yaml',
    'overruled:',
    '  order.ORD-10: { reason: my jig sizes both to the cutter }',
    '```',
    '',
    'The plan then no longer keeps to it. What waited through it for earlier work on its own parts goes on waiting for that. The risk and your reason stand on the checks, on the days, on the card of the set-up and in `scantling why JOB order.ORD-10`. Cautions and shared set-ups stay; a rule without which nothing could be made cannot be set aside.',
    '',
    'Where rules contradict each other, the ring is shown as it is, with the rule to relax; the plan opens it there for now and says so.',
    '',
    `## Applied: ${ORDER_RULES.length}`,
    '',
    '| number | first, then | kind | else | unless | may be set aside | source |',
    '|---|---|---|---|---|---|---|',
    ...applied,
    '',
    `## Of the list, not applied: ${NOT_APPLIED.length}`,
    '',
    '| number | first, then | why not |',
    '|---|---|---|',
    ...missing,
  ].join('\n')}\n`;
}
