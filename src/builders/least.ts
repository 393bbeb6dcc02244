import type { DrawerDocument, JobDocument, ParameterDocument } from '../setting-out/schema.ts';

/** What an opening must leave room for, as figures with a limit: told with both when they do not keep it. */

type Row = [name: string, label: string, value: string, least: string];

/** Parameters named after the builder, each with the least it may be. Expressions, lengths. */
export const roomFor = (id: string, name: string, rows: Row[]): Record<string, ParameterDocument> =>
  Object.fromEntries(
    rows.map(([which, label, value, min]) => [
      `${id}_room_${which}`,
      { value, label: `${name}, ${label}`, min },
    ]),
  );

/** Sizes of a part across the face by which an opening names it. */
const THROUGH = { left: 'x', right: 'x', bottom: 'z', top: 'z' } as const;
const EXTENT = { x: ['left', 'right'], z: ['bottom', 'top'] } as const;

/**
 * How far a false front may lap: no further than the parts that bound its opening are wide, where the opening
 * names them by a face, as in `divider.right`. Nothing when it does not lap.
 */
export function lapRoom(
  id: string,
  name: string,
  d: DrawerDocument,
  document: JobDocument,
  t: (text: string | number | undefined) => string,
): Record<string, ParameterDocument> {
  const overlap = d.front?.overlap;
  if (overlap === undefined) return {};
  const { left, right, bottom, top } = d.opening;
  const widths = [left, right, bottom, top].flatMap(text => {
    const [, part, face] = /^\s*(\w+)\.(left|right|bottom|top)\s*$/.exec(String(text)) ?? [];
    if (!part || !isPart(document, part)) return [];
    const [low, high] = EXTENT[THROUGH[face as keyof typeof THROUGH]];
    return [`${part}.${high} - ${part}.${low}`];
  });
  const most =
    widths.length === 0 ? {} : { max: widths.length === 1 ? widths[0]! : `min(${widths.join(', ')})` };
  return {
    [`${id}_room_lap`]: {
      value: t(overlap),
      label: `${name}, front over its frame`,
      min: '0 mm',
      ...most,
    },
  };
}

/** A part of the job, or a copy of one. */
const isPart = (document: JobDocument, id: string): boolean =>
  Object.keys(document.parts ?? {}).some(part => id === part || id.startsWith(`${part}_`));
