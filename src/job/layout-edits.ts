import type { StockUse } from '../results/cutting.ts';
import type { EditOperation, Json, JsonObject } from './edits.ts';
import { isObject } from './edits.ts';

/** What keeps a layout as it stands: the layout whole, with the hash of what it was made from. */
export function keepLayout(document: JsonObject, use: StockUse, madeFrom: string): EditOperation {
  return put(document, use.id, laidOf(use, madeFrom));
}

function laidOf({ kept: _, ...layout }: StockUse, madeFrom: string): Json {
  return { made_from: madeFrom, layout: plain(layout) };
}

/** The same for several at once, in one edit. */
export function keepLayouts(
  document: JsonObject,
  kept: readonly { use: StockUse; madeFrom: string }[],
): EditOperation {
  const cutting = isObject(document.cutting) ? document.cutting : undefined;
  const laid = {
    ...(cutting && isObject(cutting.laid) ? cutting.laid : {}),
    ...Object.fromEntries(kept.map(({ use, madeFrom }) => [use.id, laidOf(use, madeFrom)])),
  };
  return cutting ? { path: ['cutting', 'laid'], value: laid } : { path: ['cutting'], value: { laid } };
}

/** Lets a layout go: its blanks are planned with the rest again. */
export const releaseLayout = (id: string): EditOperation => ({ path: ['cutting', 'laid', id] });

export interface MeasuredOffcut {
  length: number;
  width: number;
}

/** The job's side of a layout that has been cut: the day, and what was left as measured. Keeps it as well. */
export function layoutDone(
  document: JsonObject,
  use: StockUse,
  madeFrom: string,
  day: string,
  offcuts: readonly MeasuredOffcut[],
): EditOperation {
  const { kept: _, ...layout } = use;
  const value = { made_from: madeFrom, layout: plain(layout), done: day, offcuts: plain(offcuts) };
  return put(document, use.id, value);
}

/**
 * The workshop's side: stock from the rack is taken off it, and each offcut goes on it with its measured size
 * and its share of the stock's value by area. `tag` makes ids of the offcuts that nothing else carries.
 */
export function rackAfter(
  workshop: JsonObject,
  use: StockUse,
  offcuts: readonly MeasuredOffcut[],
  tag: string,
): EditOperation[] {
  const rack = isObject(workshop.rack) ? workshop.rack : {};
  const operations: EditOperation[] = [];
  const item = rack[use.item];
  if (use.from === 'rack' && isObject(item)) {
    const quantity = typeof item.quantity === 'number' ? item.quantity : 1;
    operations.push(
      quantity > 1
        ? { path: ['rack', use.item, 'quantity'], value: quantity - 1 }
        : { path: ['rack', use.item] },
    );
  }
  const whole = Math.max(1e-9, use.length * use.width);
  const added = offcuts.map((offcut, i): [string, Json] => [
    freeKey(rack, `offcut-${tag}-${i + 1}`),
    {
      kind: use.kind === 'bar' || use.kind === 'tube' ? use.kind : 'offcut',
      material: use.material,
      label: `Offcut of ${use.label}`.slice(0, 200),
      length: offcut.length,
      ...(use.round ? { diameter: use.width } : { width: offcut.width, thickness: use.thickness }),
      ...(use.wall === undefined ? {} : { wall: use.wall }),
      ...(use.section === undefined ? {} : { section: use.section }),
      value: Math.round((use.price * offcut.length * offcut.width) / whole) / 100,
    },
  ]);
  if (isObject(workshop.rack))
    operations.push(...added.map(([id, value]) => ({ path: ['rack', id], value })));
  else if (added.length > 0) operations.push({ path: ['rack'], value: Object.fromEntries(added) });
  return operations;
}

function freeKey(rack: JsonObject, key: string): string {
  let free = key;
  for (let n = 2; Object.hasOwn(rack, free); n++) free = `${key}-${n}`;
  return free;
}

const plain = (value: unknown): Json => JSON.parse(JSON.stringify(value)) as Json;

/** Beside the others, or with the levels that are still missing. */
function put(document: JsonObject, id: string, value: Json): EditOperation {
  const cutting = isObject(document.cutting) ? document.cutting : undefined;
  if (!cutting) return { path: ['cutting'], value: { laid: { [id]: value } } };
  return isObject(cutting.laid)
    ? { path: ['cutting', 'laid', id], value }
    : { path: ['cutting', 'laid'], value: { [id]: value } };
}
