import type { FigureBook } from '../figures/book.ts';
import { AXES } from '../geometry/vector.ts';
import { type Fault, fault } from '../results/fault.ts';
import { type Copy, copiesOf, copyFromId } from './copies.ts';
import type { JobDocument } from './schema.ts';

const MOST_COPIES = 400;
/** Pieces in all, mirrored ones counted: what the rest of the program is measured for. */
const MOST_INSTANCES = 2000;

/** The copies that are really made of each part, within the caps; what is left out is told. */
export class CopyLists {
  private readonly lists = new Map<string, Copy[]>();
  private readonly document: JobDocument;
  private readonly book: FigureBook;
  private readonly tell: (f: Fault) => void;

  constructor(document: JobDocument, book: FigureBook, tell: (f: Fault) => void) {
    this.document = document;
    this.book = book;
    this.tell = tell;
  }

  /** Copies of a part; a faulty count gives none and is told by the figure's own fault. */
  of(part: string): Copy[] {
    const kept = this.lists.get(part);
    if (kept) return kept;
    const document = this.document.parts?.[part];
    if (!document) return [];
    const name = document.repeat ? 'repeat.count' : document.count === undefined ? undefined : 'count';
    const wanted = name === undefined ? 1 : this.book.number(`parts.${part}.${name}`);
    const count = wanted === undefined ? 0 : this.allowed(part, name ?? 'count', wanted);
    const copies = copiesOf(part, document, count).filter(c => this.ownName(c));
    this.lists.set(part, copies);
    return copies;
  }

  /** A copy whose name already stands for something else is told and left out: ids must stay apart. */
  private ownName(copy: Copy): boolean {
    const owner = copyFromId(copy.id, this.document.parts ?? {});
    if (owner?.part === copy.part) return true;
    this.tell(
      fault(
        `parts.${owner?.part ?? copy.id}`,
        `a copy of ${copy.part} is called ${copy.id} too`,
        'give one of the two parts another id',
      ),
    );
    return false;
  }

  /** A copy that is really made; undefined for a name beyond the count. */
  made(id: string): Copy | undefined {
    const copy = copyFromId(id, this.document.parts ?? {});
    return copy && this.of(copy.part).find(c => c.id === copy.id);
  }

  private allowed(part: string, name: string, wanted: number): number {
    const place = `parts.${part}.${name}`;
    if (wanted < 0 || !Number.isInteger(wanted)) {
      this.tell(
        fault(
          place,
          `the count comes to ${wanted}`,
          'it must be a whole number, 0 or more: use round, ceil or floor',
          'a whole number',
        ),
      );
      return wanted < 0 ? 0 : Math.floor(wanted);
    }
    const hands = 2 ** AXES.filter(a => this.document.parts?.[part]?.mirror?.[a] !== undefined).length;
    const others = [...this.lists.values()].reduce((sum, list) => sum + list.length, 0);
    const most = Math.min(MOST_COPIES, Math.floor(Math.max(0, MOST_INSTANCES - others) / hands));
    if (wanted <= most) return wanted;
    if (wanted <= 1) {
      this.tell(
        fault(
          'parts',
          `there are more than ${MOST_INSTANCES} pieces in all`,
          'split the piece over several jobs',
        ),
      );
      return 0;
    }
    this.tell(
      fault(
        place,
        `${wanted} copies${hands > 1 ? `, each in ${hands} hands,` : ''} are more than can be set out (${most} here)`,
        'check the count; split the piece if it is meant',
        `at most ${MOST_COPIES} of one part, ${MOST_INSTANCES} in all`,
      ),
    );
    return Math.min(1, most);
  }
}
