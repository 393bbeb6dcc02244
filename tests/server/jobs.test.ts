import { describe, expect, it } from 'vitest';
import { act, bench, newOffice, setHeight } from './office.ts';

describe('a job over HTTP', () => {
  it('is read, edited, undone and redone', async () => {
    const { ask } = await newOffice();
    const first = await ask('GET', '/api/jobs/bench');
    expect(first.body).toMatchObject({
      id: 'bench',
      document: bench,
      version: 0,
      settingOut: 1,
      canUndo: false,
    });
    const edited = await ask('POST', '/api/jobs/bench/edits', setHeight(0, 410));
    expect(edited).toMatchObject({ status: 200, body: { version: 1, canUndo: true, canRedo: false } });
    expect(edited.body).toMatchObject({ document: { parameters: { height: 410 } } });
    const undone = await ask('POST', '/api/jobs/bench/undo', act(1));
    expect(undone.body).toMatchObject({ document: bench, version: 2, canUndo: false, canRedo: true });
    const redone = await ask('POST', '/api/jobs/bench/redo', act(2));
    expect(redone.body).toMatchObject({ document: { parameters: { height: 410 } }, version: 3 });
    expect(await ask('POST', '/api/jobs/bench/redo', act(3))).toMatchObject({ status: 422 });
  });

  it('an edit made on an older version is refused with the newer job', async () => {
    const { ask } = await newOffice();
    await ask('POST', '/api/jobs/bench/edits', setHeight(0, 410));
    const late = await ask('POST', '/api/jobs/bench/edits', setHeight(0, 500));
    expect(late.status).toBe(409);
    expect(late.body).toMatchObject({
      faults: [{ place: 'edit' }],
      state: { version: 1, document: { parameters: { height: 410 } } },
    });
  });

  it('other windows are told of each change, and not of what was refused', async () => {
    const { ask, parts } = await newOffice();
    const heard: unknown[] = [];
    parts.events.listen(event => heard.push(event));
    await ask('POST', '/api/jobs/bench/edits', setHeight(0, 410));
    await ask('POST', '/api/jobs/bench/edits', setHeight(0, 500));
    await ask('POST', '/api/jobs/bench/undo', act(1));
    expect(heard).toEqual([
      { id: 'bench', version: 1 },
      { id: 'bench', version: 2 },
    ]);
  });

  it('one that is not there is said so, and the workshop is no job', async () => {
    const { ask } = await newOffice();
    for (const id of ['none', 'workshop']) {
      expect(await ask('GET', `/api/jobs/${id}`)).toMatchObject({ status: 404 });
      expect(await ask('POST', `/api/jobs/${id}/edits`, setHeight(0, 1))).toMatchObject({ status: 404 });
      expect(await ask('GET', `/api/jobs/${id}/file.yaml`)).toMatchObject({ status: 404 });
      expect(await ask('GET', `/api/jobs/${id}/revisions`)).toMatchObject({ status: 404 });
      expect(await ask('GET', `/api/jobs/${id}/changes`)).toMatchObject({ status: 404 });
      expect(await ask('GET', `/api/jobs/${id}/ticks`)).toMatchObject({ status: 404 });
    }
  });

  it('a wrong request names the place and what is wrong', async () => {
    const { ask } = await newOffice();
    const wrong = await ask('POST', '/api/jobs/bench/edits', {
      ...setHeight(0, 1),
      at: 'yesterday',
      base: -1,
    });
    expect(wrong.status).toBe(400);
    expect(wrong.body).toMatchObject({ faults: [{ place: 'body.at' }, { place: 'body.base' }] });
    expect(await ask('GET', '/api/jobs?limit=100000')).toMatchObject({
      status: 400,
      body: { faults: [{ place: 'query.limit' }] },
    });
    expect(await ask('GET', '/api/jobs/a%2fb')).toMatchObject({ status: 400 });
    expect(await ask('GET', '/api/nothing')).toMatchObject({ status: 404 });
  });
});

describe('new jobs', () => {
  it('from a template, a text, or a title alone', async () => {
    const { ask } = await newOffice();
    expect((await ask('GET', '/api/templates')).body).toEqual({
      templates: [{ id: 'stool', title: 'Stool' }],
    });
    const stool = await ask('POST', '/api/jobs', { template: 'stool', title: 'Step stool' });
    expect(stool).toMatchObject({ status: 201, body: { faults: [], state: { id: 'job-1' } } });
    expect(stool.body).toMatchObject({
      state: { document: { title: 'Step stool', parts: { leg: { length: 400 } } } },
    });
    const text = await ask('POST', '/api/jobs', { text: 'title: Shelf' });
    expect(text.body).toMatchObject({ state: { document: { title: 'Shelf' } } });
    const bare = await ask('POST', '/api/jobs', { title: 'Chest' });
    expect(bare.body).toMatchObject({ state: { document: { scantling: 'job/1', title: 'Chest' } } });
    expect((await ask('GET', '/api/jobs?search=stool')).body).toMatchObject({ total: 1 });
    expect(await ask('POST', '/api/jobs', { template: 'none' })).toMatchObject({ status: 404 });
    expect(await ask('POST', '/api/jobs', { template: 'stool', text: 'a: 1' })).toMatchObject({
      status: 400,
    });
  });

  it('go out as a file and come in again the same', async () => {
    const { ask } = await newOffice();
    const out = await ask('GET', '/api/jobs/bench/file.yaml');
    expect(out.headers['content-disposition']).toBe('attachment; filename="porch-bench.yaml"');
    const back = await ask('POST', '/api/jobs/import', { text: out.text });
    expect(back.body).toMatchObject({ state: { document: bench } });
    expect(await ask('POST', '/api/jobs/import', { text: '{{' })).toMatchObject({
      status: 422,
      body: { faults: [{ place: 'file' }] },
    });
  });
});

describe('revisions over HTTP', () => {
  it('freeze, list, read, and say what has changed since', async () => {
    const { ask } = await newOffice();
    expect(await ask('GET', '/api/jobs/bench/changes')).toMatchObject({ status: 404 });
    const frozen = await ask('POST', '/api/jobs/bench/revisions', { name: 'as offered' });
    expect(frozen).toMatchObject({ status: 201, body: { number: 1, name: 'as offered', note: '' } });
    await ask('POST', '/api/jobs/bench/edits', setHeight(0, 410));
    await ask('POST', '/api/jobs/bench/revisions', { name: 'lower', note: 'after the visit' });
    expect((await ask('GET', '/api/jobs/bench')).body).toMatchObject({ settingOut: 3 });
    expect((await ask('GET', '/api/jobs/bench/revisions')).body).toMatchObject({
      revisions: [{ number: 2 }, { number: 1 }],
    });
    expect((await ask('GET', '/api/jobs/bench/revisions/1')).body).toMatchObject({ document: bench });
    const since = await ask('GET', '/api/jobs/bench/changes?since=1');
    expect(since.body).toEqual({
      since: frozen.body,
      changes: [{ path: ['parameters', 'height'], old: 450, new: 410 }],
    });
    expect((await ask('GET', '/api/jobs/bench/changes')).body).toMatchObject({
      since: { number: 2 },
      changes: [],
    });
    expect(await ask('GET', '/api/jobs/bench/revisions/9')).toMatchObject({ status: 404 });
    expect(await ask('POST', '/api/jobs/bench/revisions', { name: '' })).toMatchObject({ status: 400 });
  });
});

describe('papers', () => {
  it('are made from the job, and once issued stay as they were', async () => {
    const { ask } = await newOffice();
    const now = await ask('GET', '/api/jobs/bench/papers/parts.csv');
    expect(now).toMatchObject({ status: 200, text: 'leg\n1' });
    expect(now.headers['content-disposition']).toBe('attachment; filename="porch-bench-parts.csv"');
    const issued = await ask('POST', '/api/jobs/bench/papers/parts.csv/issue', {});
    expect(issued).toMatchObject({ status: 201, body: { id: 'paper-1', kind: 'parts', tablesHash: 'beef' } });
    const operations = [{ path: ['parts', 'rail'], value: { length: 900 } }];
    await ask('POST', '/api/jobs/bench/edits', { ...act(0), operations });
    expect((await ask('GET', '/api/jobs/bench/papers/parts.csv')).text).toBe('leg\nrail\n1');
    expect((await ask('GET', '/api/issued/paper-1')).text).toBe('leg\n1');
    expect((await ask('GET', '/api/jobs/bench/issued')).body).toEqual({ issued: [issued.body] });
    expect(await ask('GET', '/api/jobs/bench/papers/none.pdf')).toMatchObject({ status: 404 });
    expect(await ask('GET', '/api/jobs/bench/papers/..%2fsecret.txt')).toMatchObject({ status: 400 });
    expect(await ask('GET', '/api/issued/none')).toMatchObject({ status: 404 });
  });

  it('that cannot be made say what is missing', async () => {
    const { ask } = await newOffice();
    await ask('POST', '/api/jobs/bench/edits', { ...act(0), operations: [{ path: ['parts'] }] });
    expect(await ask('GET', '/api/jobs/bench/papers/parts.csv')).toMatchObject({
      status: 422,
      body: { faults: [{ place: 'parts', mend: 'add a part' }] },
    });
  });
});
