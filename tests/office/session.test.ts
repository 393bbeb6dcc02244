import { describe, expect, test } from 'vitest';
import { applyEdit, type EditOperation, type JsonObject } from '../../src/job/edits.ts';
import { type Deriver, type JobState, type OfficeApi, Refusal, type Shaper } from '../../src/office/ports.ts';
import { JobSession } from '../../src/office/session.ts';
import { fault } from '../../src/results/fault.ts';
import { derived } from './fixtures/derived.ts';

const FIRST: JsonObject = { title: 'Porch bench', parameters: { length: 1380, bar: 16 } };

const OFFERED: JsonObject = { title: 'Porch bench', parameters: { length: 1200, bar: 12 } };

const operations = (id: string, value: number | string): EditOperation[] => [
  { path: ['parameters', id], value },
];
const lengthOf = (document: JsonObject | undefined): unknown =>
  (document?.parameters as JsonObject | undefined)?.length;

/** A store in memory that refuses what is made on an older version, and what it is told to refuse. */
function desk() {
  let state: JobState = {
    id: 'bench',
    document: FIRST,
    version: 1,
    settingOut: 1,
    canUndo: false,
    canRedo: false,
    createdAt: '',
    savedAt: '',
  };
  const log: JsonObject[] = [];
  const kept = [{ number: 1, name: 'As offered', at: '2026-11-20', document: OFFERED }];
  const asked = { refuse: false, away: false, elsewhere: 0, noShapes: false, bases: [] as number[] };
  const api = {
    job: async () => state,
    workshop: async () => ({}),
    keptList: async () => kept.map(({ document: _whole, ...line }) => ({ ...line, note: '', version: 0 })),
    kept: async (_id: string, number: number) => kept.find(k => k.number === number)!,
    watch: () => () => undefined,
    edit: async (_id: string, base: number, ops: readonly EditOperation[]) => {
      asked.bases.push(base);
      if (asked.refuse) throw new Refusal('parameters.length: it is too long; write less');
      if (asked.away) throw new Refusal('the drawing office is not running', 'away');
      if (asked.elsewhere-- > 0) state = { ...state, version: state.version + 1 };
      if (base !== state.version) throw new Refusal('stale', 'stale', state);
      const applied = applyEdit(state.document, { operations: ops });
      if (!applied.ok) throw new Refusal('faults');
      log.push(state.document);
      state = { ...state, document: applied.document, version: base + 1, canUndo: true };
      return state;
    },
    undo: async (_id: string, base: number) => {
      state = {
        ...state,
        document: log.pop() ?? FIRST,
        version: base + 1,
        canUndo: log.length > 0,
        canRedo: true,
      };
      return state;
    },
  } as unknown as OfficeApi;
  const deriver: Deriver = {
    derive: async document => {
      const length = lengthOf(document);
      const faults =
        typeof length === 'string'
          ? [fault('parameters.length', 'there is no figure wid', 'check the name')]
          : [];
      return { ...derived, faults, title: String(length) };
    },
    compare: async () => derived,
    why: async () => undefined,
    longer: async () => ({ now: 0, cost: 0, bound: 0, uses: [] }),
    close: () => undefined,
  };
  const shaper: Shaper = {
    shapes: async () => {
      if (asked.noShapes) throw new Error('no kernel');
      return {
        surfaces: new Map([['leg', { positions: new Float32Array(), indices: new Uint32Array() }]]),
        checks: [],
      };
    },
    ways: async () => [],
    close: () => undefined,
  };
  return {
    session: new JobSession('bench', { api, deriver, shaper, today: () => '2026-11-25', retryAfter: 10 }),
    asked,
  };
}

const settled = (): Promise<void> => new Promise(resolve => setTimeout(resolve, 5));

describe('an open job', () => {
  test('shows results of the saved document', async () => {
    const { session } = desk();
    await session.open();
    await settled();
    expect(session.snapshot()).toMatchObject({ behind: false, saving: 'saved' });
    expect(session.snapshot().derived?.title).toBe('1380');
  });

  test('results follow while typing, and nothing is saved', async () => {
    const { session, asked } = desk();
    await session.open();
    session.preview(operations('length', 1400));
    await settled();
    expect(session.snapshot().derived?.title).toBe('1400');
    expect(session.snapshot().state?.version).toBe(1);
    session.settle();
    await settled();
    expect(session.snapshot().derived?.title).toBe('1380');
    expect(asked.bases).toEqual([]);
  });

  test('a size that cannot be read says so and leaves the last results standing', async () => {
    const { session } = desk();
    await session.open();
    session.preview(operations('length', 'leg * wid'));
    await settled();
    expect(session.snapshot().typedFaults).toMatchObject([{ mend: 'check the name' }]);
    expect(session.snapshot().derived?.title).toBe('1380');
    session.preview(operations('length', 1400));
    await settled();
    expect(session.snapshot()).toMatchObject({ typedFaults: [], behind: false });
    expect(session.snapshot().derived?.title).toBe('1400');
  });

  test('edits made in a row are saved one on the other', async () => {
    const { session, asked } = desk();
    await session.open();
    const saves = [1390, 1400, 1410].map(n => session.commit(operations('length', n)));
    expect(lengthOf(session.snapshot().document)).toBe(1410);
    expect(session.snapshot().saving).toBe('saving');
    await Promise.all(saves);
    await settled();
    expect(asked.bases).toEqual([1, 2, 3]);
    expect(session.snapshot()).toMatchObject({ saving: 'saved', trouble: undefined });
    expect(lengthOf(session.snapshot().state?.document)).toBe(1410);
  });

  test('a refused edit says why and the screen goes back to what is kept', async () => {
    const { session, asked } = desk();
    await session.open();
    asked.refuse = true;
    await session.commit(operations('length', 9000));
    await settled();
    expect(session.snapshot().saving).toBe('not saved');
    expect(session.snapshot().trouble).toContain('write less');
    expect(lengthOf(session.snapshot().document)).toBe(1380);
    asked.refuse = false;
    await session.commit(operations('length', 1400));
    expect(session.snapshot()).toMatchObject({ saving: 'saved', trouble: undefined });
  });

  test('solids follow the figures; without a kernel their check is not known, never a pass', async () => {
    const { session, asked } = desk();
    const seen: string[][] = [];
    session.subscribe(() =>
      seen.push(
        (session.snapshot().derived?.checks ?? []).filter(c => c.check === 'overlap').map(c => c.severity),
      ),
    );
    await session.open();
    await settled();
    expect(seen.some(s => s.includes('pending'))).toBe(true);
    expect(session.snapshot().surfaces.has('leg')).toBe(true);
    asked.noShapes = true;
    await session.commit(operations('length', 1400));
    await settled();
    expect(session.snapshot().derived?.checks.at(-1)).toMatchObject({
      check: 'overlap',
      severity: 'unknown',
    });
  });

  test('while the store is away an edit waits, and is saved when it is back', async () => {
    const { session, asked } = desk();
    await session.open();
    asked.away = true;
    await session.commit(operations('length', 1400));
    expect(session.snapshot()).toMatchObject({ saving: 'not saved' });
    expect(session.unsaved).toBe(true);
    expect(lengthOf(session.snapshot().document)).toBe(1400);
    asked.away = false;
    await new Promise(resolve => setTimeout(resolve, 40));
    expect(session.snapshot()).toMatchObject({ saving: 'saved', trouble: undefined });
    expect(lengthOf(session.snapshot().state?.document)).toBe(1400);
  });

  test('an edit made on an older version goes on from the newer one', async () => {
    const { session, asked } = desk();
    await session.open();
    asked.elsewhere = 1;
    await session.commit(operations('length', 1400));
    expect(session.snapshot()).toMatchObject({ saving: 'saved', trouble: undefined });
    expect(session.snapshot().state?.version).toBe(3);
  });

  test('goes back to a kept setting-out in one edit', async () => {
    const { session } = desk();
    await session.open();
    await settled();
    expect(session.snapshot().before?.kept.name).toBe('As offered');
    await session.goBackTo(1);
    expect(session.snapshot().state?.document).toEqual(OFFERED);
    expect(session.snapshot().state?.version).toBe(2);
  });

  test('undo takes back the last edit', async () => {
    const { session } = desk();
    await session.open();
    await session.commit(operations('length', 1400));
    await session.undo();
    await settled();
    expect(session.snapshot().derived?.title).toBe('1380');
    expect(session.snapshot().state?.canRedo).toBe(true);
  });
});
