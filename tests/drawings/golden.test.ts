import { describe, expect, it } from 'vitest';
import { cardDrawing } from '../../src/drawings/card.ts';
import { fortnight } from '../../src/drawings/fortnight.ts';
import { layoutDrawing } from '../../src/drawings/layout.ts';
import type { DisplayList, Item } from '../../src/drawings/list.ts';
import { BENCH, DESK, list, PAPER, small } from '../../src/drawings/manner.ts';
import { STATE_WORD, stateMark } from '../../src/drawings/marks.ts';
import { partPlan } from '../../src/drawings/part-plan.ts';
import { lyingRod, standingRod } from '../../src/drawings/rod.ts';
import { type Ground, toSvg } from '../../src/drawings/svg.ts';
import { todayRod } from '../../src/drawings/today.ts';
import { elevationView, turnedView } from '../../src/drawings/view.ts';
import { waitsDrawing } from '../../src/drawings/waits.ts';
import { DERIVED } from './bench-derived.ts';
import { PIECE } from './bench-piece.ts';
import { DRILL_CARD, JIG_CARD, LONG_CARD } from './bench-setups.ts';

const by = (id: string) => PIECE.instances.find(i => i.id === id)!;
const show = { unit: 'mm' as const, currency: 'GBP' };
const fine = { ...show, decimals: 1 };
const uses = DERIVED.cutting.materials.flatMap(m => m.uses);
const states = Object.keys(STATE_WORD) as (keyof typeof STATE_WORD)[];
const stations = [0, 60, 98.5, 105, 690, 1275, 1281.5, 1380].map(at => ({
  at,
  label: `${at}`,
  centre: at === 690,
  pencil: at === 98.5,
}));

const DRAWINGS: Record<string, { drawing: DisplayList; ground?: Ground }> = {
  'turned-desk': {
    drawing: turnedView(PIECE, { width: 900, height: 560, manner: DESK, show, picked: 'stretcher' }),
  },
  'turned-paper': {
    drawing: turnedView(PIECE, { width: 150, height: 90, manner: PAPER, show }),
    ground: 'print',
  },
  front: { drawing: elevationView(PIECE, 'front', { width: 900, height: 400, manner: DESK, show }) },
  end: { drawing: elevationView(PIECE, 'end', { width: 400, height: 400, manner: small(DESK), show }) },
  plan: {
    drawing: elevationView(PIECE, 'plan', { width: 160, height: 90, manner: PAPER, show }),
    ground: 'print',
  },
  'layout-board': {
    drawing: layoutDrawing(uses[0]!, { scale: 0.3, manner: DESK, show, now: 1, picked: 'E2' }),
  },
  'layout-bar': { drawing: layoutDrawing(uses[2]!, { scale: 0.3, manner: DESK, show }) },
  'layout-sheet': { drawing: layoutDrawing(uses[3]!, { scale: 0.1, manner: PAPER, show }), ground: 'print' },
  'card-bench': {
    drawing: cardDrawing(JIG_CARD, { width: 390, height: 420, manner: BENCH, show: fine, id: 'cheeks' }),
  },
  'card-broken': {
    drawing: cardDrawing(LONG_CARD, {
      width: 108,
      height: 110,
      manner: PAPER,
      show: fine,
      scales: [1, 0.5],
      id: 'l',
    }),
    ground: 'print',
  },
  'card-tilted': {
    drawing: cardDrawing(
      { ...LONG_CARD, blade: { ...LONG_CARD.blade, tilt: 45 } },
      { width: 390, height: 420, manner: BENCH, show: fine, id: 'tilted' },
    ),
  },
  'card-drill': {
    drawing: cardDrawing(DRILL_CARD, {
      width: 108,
      height: 110,
      manner: PAPER,
      show: fine,
      scales: [1, 0.5],
      id: 'd',
    }),
    ground: 'print',
  },
  today: {
    drawing: todayRod(DERIVED.days.days[0]!, {
      width: 470,
      height: 560,
      manner: DESK,
      now: '2026-11-25T10:20',
      done: new Set(['glue-seat']),
      notes: { 'glue-seat': 'in clamps until Thu 9:20' },
    }),
  },
  waits: {
    drawing: waitsDrawing(
      DERIVED.days.waits.map((wait, i) => ({
        title: wait.operation,
        job: 'Porch bench',
        what: wait.what,
        start: wait.start,
        end: wait.end,
        say: 'may be handled',
        ...(i === 2 ? { latest: '2026-12-03T03:00' } : {}),
      })),
      {
        width: 1000,
        manner: DESK,
        from: '2026-11-25T06:00',
        to: '2026-12-04T12:00',
        now: '2026-11-25T10:20',
      },
    ),
  },
  fortnight: {
    drawing: fortnight(
      [
        {
          name: 'Porch bench',
          ready: 'ready Tue 8 Dec',
          promised: true,
          plan: DERIVED.days,
          words: Object.fromEntries(DERIVED.operations.map(o => [o.id, o.id])),
        },
      ],
      { width: 1500, manner: DESK, from: '2026-11-25', now: '2026-11-25T10:20' },
    ),
  },
  'part-rail': {
    drawing: partPlan(by('rail'), { width: 168, height: 96, manner: PAPER, show, scales: [1, 0.5, 0.2] }),
    ground: 'print',
  },
  'part-stretcher': {
    drawing: partPlan(by('stretcher'), {
      width: 700,
      height: 400,
      manner: DESK,
      show,
      scales: [1.5, 1, 0.5],
    }),
  },
  marks: {
    drawing: list(
      DESK,
      'States',
      260,
      40,
      states.flatMap((s, i) => stateMark(s, [10 + i * 40, 12], 16)),
    ),
  },
  rods: {
    drawing: list(DESK, 'Rods', 900, 500, [
      ...lyingRod({ at: [120, 20], length: 740, total: 1380, stations, seed: 3, manner: DESK }),
      ...standingRod({ at: [80, 150], length: 320, total: 1380, stations, seed: 4, manner: DESK }),
    ]),
  },
};

const points = (item: Item): (readonly [number, number])[] => {
  if (item.kind === 'group') return item.items.flatMap(points);
  if (item.kind === 'text') return [item.at];
  if (item.kind === 'circle') return [item.centre];
  if (item.kind === 'path')
    return item.d.flatMap(c => (c[0] === 'M' || c[0] === 'L' ? [[c[1], c[2]] as const] : []));
  return [...item.points];
};

describe('drawings as golden files', () => {
  it.each(Object.keys(DRAWINGS))('%s', async name => {
    const { drawing, ground = 'screen' } = DRAWINGS[name]!;
    await expect(toSvg(drawing, { ground })).toMatchFileSnapshot(`golden/${name}.svg`);
  });

  it.each(Object.keys(DRAWINGS))('%s stays on its sheet', name => {
    const { drawing } = DRAWINGS[name]!;
    for (const [x, y] of drawing.items.flatMap(points)) {
      expect(x).toBeGreaterThanOrEqual(-1);
      expect(x).toBeLessThanOrEqual(drawing.width + 1);
      expect(y).toBeGreaterThanOrEqual(-1);
      expect(y).toBeLessThanOrEqual(drawing.height + 1);
    }
  });

  it('draws the work at its true size on paper, and says so', () => {
    const card = cardDrawing(JIG_CARD, {
      width: 108,
      height: 122,
      manner: PAPER,
      show: fine,
      scales: [1, 0.5],
      id: 'c',
    });
    expect(card.scale).toBe(1);
    expect(card.broken).toBe(false);
    const long = cardDrawing(LONG_CARD, {
      width: 108,
      height: 122,
      manner: PAPER,
      show: fine,
      scales: [1, 0.5],
      id: 'l',
    });
    expect(long).toMatchObject({ scale: 1, broken: true });
  });

  it('gauges a part from end 1, the face edge and the face side', () => {
    const plan = partPlan(by('rail'), { width: 168, height: 96, manner: PAPER, show, scales: [1, 0.5, 0.2] });
    const said = plan.items.flatMap(i => (i.kind === 'text' ? [i.runs.map(r => r.text).join('')] : []));
    // Tenons 45 long, 60 of 80 wide, 11 of 32 thick: shoulders at 45 and 295, cheeks at 10.5 and 21.5, edges at 10 and 70.
    for (const figure of ['45', '295', '340', '10', '70', '80', '10.5', '21.5', '32'])
      expect(said).toContain(figure);
  });
});
