import type { FigureBook } from '../figures/book.ts';
import { type Fault, fault } from '../results/fault.ts';
import type { JobDocument, PartDocument } from './schema.ts';

/** Tubes and open sections that cannot be: each with the figure that would do. */
export function sectionFaults(document: JobDocument, book: FigureBook): Fault[] {
  return Object.entries(document.parts ?? {}).flatMap(([id, part]) => {
    const found = sectionFault(id, part, book);
    return found ? [found] : [];
  });
}

function sectionFault(id: string, part: PartDocument, book: FigureBook): Fault | undefined {
  const { section } = part;
  const at = `parts.${id}`;
  if (section !== undefined && part.kind !== 'bar')
    return fault(
      `${at}.section`,
      `only a bar is ${an(section)}, and this is ${part.kind}`,
      'write kind: bar',
    );
  if (section !== undefined && part.diameter !== undefined)
    return fault(
      `${at}.diameter`,
      `${an(section)} has no diameter`,
      'give its width and thickness outside in place of the diameter',
    );
  if (section !== undefined && part.wall === undefined)
    return fault(`${at}.wall`, `${an(section)} has no wall`, 'write how thick its legs are, such as wall: 3');
  if (part.wall === undefined) return undefined;
  const [wall, width, deep] = ['wall', 'width', 'thickness'].map(name => book.number(`${at}.${name}`));
  if (wall === undefined || width === undefined || deep === undefined) return undefined;
  const most =
    section === 'angle'
      ? Math.min(width, deep)
      : section
        ? Math.min(width / 2, deep)
        : Math.min(width, deep) / 2;
  if (wall > 0 && wall < most) return undefined;
  const what = section ? an(section) : 'a tube';
  return fault(
    `${at}.wall`,
    `a wall of ${wall} mm leaves no hollow in ${what} of ${width} x ${deep}`,
    `give a wall above 0 and under ${most} mm`,
  );
}

const an = (section: string): string => (section === 'angle' ? 'an angle' : `a ${section}`);
