import type { CutGroup } from './cuts.ts';
import type { OrderOfWork } from './order-of-work.ts';
import type { PartView, View } from './view.ts';

/** Rules that look at what belongs together across parts: rows of dovetails, hardware of one door. */
export function addFurtherRules(view: View, work: OrderOfWork, groups: readonly CutGroup[]): void {
  tailsBeforePins(work, groups);
  hingesBeforeHandles(view, work);
}

/** Pins are drawn on the end of their board, so their waste runs along it; waste between tails runs across. */
const onTheEnd = (group: CutGroup): boolean =>
  group.cuts.some(({ cut }) => cut.kind === 'dovetail' && cut.axis === 'x');

/** The pins are marked from the tails as they were cut. */
function tailsBeforePins(work: OrderOfWork, groups: readonly CutGroup[]): void {
  const rows = groups.filter(group => group.kind === 'dovetail');
  for (const pins of rows.filter(onTheEnd))
    for (const tails of rows.filter(group => group.by === pins.by && !onTheEnd(group)))
      if (tails.part !== pins.part) work.link(tails.id, pins.id, 18);
}

const named = (part: PartView, words: RegExp): boolean =>
  part.kind === 'bought-in' && words.test(`${part.name} ${part.material}`.toLowerCase());

/** A door hangs before what closes it is fitted: both on one part. */
function hingesBeforeHandles(view: View, work: OrderOfWork): void {
  const hosts = (part: PartView): Set<string> =>
    new Set(part.copies.flatMap(copy => (view.jointsOf.get(copy.id) ?? []).flatMap(j => j.instances)));
  for (const hinge of view.parts.filter(part => named(part, /hinge/)))
    for (const handle of view.parts.filter(part => named(part, /knob|handle|pull|catch|lock/))) {
      const hung = hosts(hinge);
      if ([...hosts(handle)].some(id => hung.has(id))) work.link(`fit:${hinge.id}`, `fit:${handle.id}`, 54);
    }
}
