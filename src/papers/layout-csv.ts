import { roundTo } from '../quantities/length.ts';
import type { Derived } from '../results/derived.ts';
import { csv } from './csv.ts';
import { instanceMarks } from './names.ts';

const mm = (value: number): number => roundTo(value, 2);

/** What lies where: one row to a blank or a piece left, places from the end and edge worked from, mm. */
export function layoutsCsv(derived: Derived): Uint8Array {
  const marks = instanceMarks(derived.piece);
  const rows = derived.cutting.materials.flatMap(({ uses }) =>
    uses.flatMap(use => {
      const stock = [use.id, use.label, use.material, use.from === 'rack' ? 'rack' : 'to buy'];
      const sizes = [mm(use.length), mm(use.width), mm(use.thickness)];
      const at = (r: { x: number; y: number; length: number; width: number }): number[] =>
        [r.x, r.y, r.length, r.width].map(mm);
      return [
        ...use.placed.map(one => [
          ...stock,
          ...sizes,
          one.purpose === 'part' ? (marks.get(one.instance) ?? one.mark) : one.mark,
          one.purpose,
          ...at(one),
          one.turned ? 'turned' : '',
        ]),
        ...use.left.map(one => [...stock, ...sizes, '', one.fate, ...at(one), '']),
      ];
    }),
  );
  return csv([
    [
      'stock id',
      'stock',
      'material',
      'from',
      'stock length mm',
      'stock width mm',
      'thickness mm',
      'mark',
      'what',
      'x mm',
      'y mm',
      'length mm',
      'width mm',
      'turned',
    ],
    ...rows,
  ]);
}

/** Saw cuts in their order, one a row, with the setting of fence or stop, mm. */
export function sawCutsCsv(derived: Derived): Uint8Array {
  const rows = derived.cutting.materials.flatMap(({ uses }) =>
    uses.flatMap(use =>
      use.cuts.map(cut => [
        use.id,
        use.label,
        cut.order,
        cut.trim ? `${cut.kind}, trim` : cut.kind,
        mm(cut.setting),
        mm(cut.at),
        mm(cut.from),
        mm(cut.to),
        mm(use.kerf),
      ]),
    ),
  );
  return csv([
    ['stock id', 'stock', 'cut', 'kind', 'setting mm', 'at mm', 'from mm', 'to mm', 'kerf mm'],
    ...rows,
  ]);
}
