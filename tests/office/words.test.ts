import { describe, expect, test } from 'vitest';
import type { JsonObject } from '../../src/job/edits.ts';
import type { JobState, KeptSettingOut } from '../../src/office/ports.ts';
import type { JobView } from '../../src/office/session.ts';
import { cardHash, passCount, passWords, runName, runWords } from '../../src/office/set-ups/words.ts';
import { worstFirst } from '../../src/office/setting-out/worst-first.ts';
import { changedSince } from '../../src/office/shell/changes.ts';
import { checks, derived, setups } from './fixtures/derived.ts';

const show = { unit: 'mm', currency: 'GBP' } as const;

describe('checks', () => {
  test('stand worst first; not known and working never as pass', () => {
    expect(worstFirst(checks).map(c => c.severity)).toEqual([
      'stop',
      'attend',
      'unknown',
      'pending',
      'note',
      'pass',
      'pass',
    ]);
  });
});

describe('the words of a set-up', () => {
  const setup = setups[0]!;
  const run = setup.runs[0]!;

  test('name marks once and ends each', () => {
    expect(runWords(setup)).toBe('C');
    expect(runName(run)).toBe('C, end 1');
    expect(passCount(setup)).toBe(8);
  });

  test('tell passes in few words, and in full where they differ', () => {
    expect(passWords(run)).toBe('face, turned');
    const many = ['face', 'face, pass 2', 'turned', 'turned, pass 2'];
    expect(passWords({ ...run, passes: many })).toBe('face, turned, 2 passes each');
    expect(passWords({ ...run, passes: ['face', 'face, pass 2', 'face, pass 3'] })).toBe('face, 3 passes');
    expect(passWords({ ...run, passes: ['face', 'face, pass 2', 'turned'] })).toBe(
      'face, face, pass 2, turned',
    );
    expect(passWords({ ...run, passes: [] })).toBe('');
  });

  test('a tick is made from settings and runs, not from the title', () => {
    expect(cardHash({ ...setup, title: 'Other words' })).toBe(cardHash(setup));
    const moved = {
      ...setup,
      settings: [{ ...setup.settings[0]!, value: { kind: 'length' as const, value: 40 } }],
    };
    expect(cardHash(moved)).not.toBe(cardHash(setup));
  });
});

describe('what changed since the last kept setting-out', () => {
  const now: JsonObject = {
    title: 'Porch bench',
    parameters: { bar: 16, length: 1380 },
    parts: { leg: { kind: 'timber' } },
  };
  const view = (before: JsonObject): JobView => ({
    state: {} as JobState,
    document: now,
    derived,
    surfaces: new Map(),
    behind: false,
    typedFaults: [],
    before: {
      kept: { number: 3, name: '', at: '', document: before } satisfies KeptSettingOut,
      derived: {
        ...derived,
        parameters: derived.parameters.map(p =>
          p.id === 'bar' ? { ...p, value: { kind: 'length', value: 12 } } : p,
        ),
      },
    },
    saving: 'saved',
    trouble: undefined,
  });

  test('a size is told with both figures, sizes before parts', () => {
    const before = { ...now, parameters: { bar: 12, length: 1380 }, parts: {} };
    expect(changedSince(view(before), show)).toEqual({ first: 'Bar 12\u202fmm \u2192 16\u202fmm', more: 1 });
  });

  test('a part is told by what became of it', () => {
    expect(changedSince(view({ ...now, parts: {} }), show)?.first).toBe('part leg changed');
    const more = { ...now, parts: { leg: { kind: 'timber' }, rail: { kind: 'timber' } } };
    expect(changedSince(view(more), show)?.first).toBe('part rail taken out');
    expect(changedSince(view({ ...now, title: 'Bench' }), show)?.first).toBe('title changed');
  });

  test('nothing is told where nothing changed or nothing was kept', () => {
    expect(changedSince(view(now), show)).toEqual({ first: '', more: 0 });
    expect(changedSince({ ...view(now), before: undefined }, show)).toBeUndefined();
  });
});
