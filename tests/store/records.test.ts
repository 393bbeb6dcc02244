import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { changesSince } from '../../src/job/revisions.ts';
import { act, bench, newFolder, newStore, setHeight } from './folder.ts';

const hale = {
  name: 'Öznur Hale',
  address: '3 Quarrystone Row',
  email: 'oznur@hale.example',
  phone: '01632 960 112',
  notes: '',
};

describe('list of jobs', () => {
  it('finds by title, number, brief and client, whatever case or accents, last saved first', async () => {
    const { documents, clients, jobs } = await newStore();
    await clients.save('hale', hale);
    await documents.create('bench', 'job', bench);
    await documents.create('table', 'job', { title: 'Writing table', number: '26-015' });
    const found = async (search: string) => (await jobs({ search })).jobs.map(job => job.id);
    expect(await found('')).toEqual(['table', 'bench']);
    expect(await found('PORCH')).toEqual(['bench']);
    expect(await found('oznur')).toEqual(['bench']);
    expect(await found('26-01')).toEqual(['table', 'bench']);
    expect(await found('unheated hale')).toEqual(['bench']);
    expect(await found('100%')).toEqual([]);
    expect(await found('_')).toEqual([]);
    await documents.edit('bench', setHeight(0, 410));
    expect(await found('')).toEqual(['bench', 'table']);
  });

  it('follows the document: title, number, client, deadline, setting-out', async () => {
    const { documents, revisions, clients, jobs } = await newStore();
    await clients.save('hale', hale);
    await documents.create('bench', 'job', bench);
    await revisions.freeze('bench', 'as offered', '');
    const operations = [
      { path: ['title'], value: 'Hall bench' },
      { path: ['deadline'], value: '2027-02-01' },
    ];
    await documents.edit('bench', { ...act(0), operations });
    expect((await jobs()).jobs).toEqual([
      {
        id: 'bench',
        title: 'Hall bench',
        number: '26-014',
        client: { id: 'hale', name: 'Öznur Hale' },
        deadline: '2027-02-01',
        settingOut: 2,
        savedAt: expect.any(String),
      },
    ]);
  });

  it('comes in pages and counts all; the workshop is not in it', async () => {
    const { documents, jobs } = await newStore();
    await documents.create('workshop', 'workshop', { name: 'Bench shop' });
    for (const n of [1, 2, 3, 4, 5]) await documents.create(`job-${n}`, 'job', { title: `Job ${n}` });
    const page = await jobs({ limit: 2, offset: 2 });
    expect(page.total).toBe(5);
    expect(page.jobs.map(job => job.id)).toEqual(['job-3', 'job-2']);
  });
});

describe('revisions', () => {
  it('freeze the setting-out under the next number and stay as they were', async () => {
    const { documents, revisions } = await newStore();
    await documents.create('bench', 'job', bench);
    expect(await revisions.freeze('bench', 'as offered', 'before the visit')).toMatchObject({
      number: 1,
      version: 0,
    });
    await documents.edit('bench', setHeight(0, 410));
    expect(await revisions.freeze('bench', 'lower', '')).toMatchObject({ number: 2, version: 1 });
    expect((await revisions.list('bench')).map(line => line.name)).toEqual(['lower', 'as offered']);
    const first = (await revisions.get('bench', 1))!;
    expect(first.document).toEqual(bench);
    const now = (await documents.get('bench'))!;
    expect(now.settingOut).toBe(3);
    expect(changesSince(first, now.document)).toEqual([
      { path: ['parameters', 'height'], old: 450, new: 410 },
    ]);
    expect(await revisions.freeze('none', '', '')).toBeUndefined();
    expect(await revisions.get('bench', 9)).toBeUndefined();
  });
});

describe('clients', () => {
  it('are erased without leaving their details in any file of the store', async () => {
    const folder = newFolder();
    const { clients, documents, jobs } = await newStore(folder);
    await clients.save('hale', hale);
    await clients.save('hale', { ...hale, notes: 'Rings after six' });
    await documents.create('bench', 'job', bench);
    const everything = () =>
      readdirSync(folder)
        .filter(name => name.startsWith('scantling'))
        .map(name => readFileSync(join(folder, name), 'latin1'))
        .join('');
    expect(everything()).toContain('Quarrystone');
    expect(await clients.erase('hale')).toBe(true);
    for (const secret of ['Quarrystone', 'oznur', '960 112', 'Rings after six'])
      expect(everything()).not.toContain(secret);
    expect(await clients.get('hale')).toMatchObject({ name: '', address: '', erasedAt: expect.any(String) });
    expect((await jobs()).jobs[0]).toMatchObject({ client: { id: 'hale', name: '' } });
    expect((await jobs({ search: 'oznur' })).total).toBe(0);
    expect(await clients.erase('nobody')).toBe(false);
  });

  it('are listed by name', async () => {
    const { clients } = await newStore();
    await clients.save('b', { ...hale, name: 'Reed' });
    await clients.save('a', { ...hale, name: 'Mills' });
    expect((await clients.list()).map(client => client.name)).toEqual(['Mills', 'Reed']);
  });
});

describe('what was measured and done', () => {
  it('is only added to; the same word twice counts once', async () => {
    const { documents, done } = await newStore();
    await documents.create('bench', 'job', bench);
    const who = { documentId: 'bench', actor: 'maker', device: 'phone', at: '2026-11-25T10:00:00Z' };
    const size = { ...who, id: 'm1', subject: 'leg', figure: 'thickness', value: 44.6, unit: 'mm' };
    await done.measure(size);
    await done.measure({ ...size, value: 1 });
    expect(await done.measurements('bench')).toEqual([size]);
    const tick = { ...who, id: 't1', subject: 'setup-3/leg_x', done: true, madeFrom: 'f00d' };
    await done.tick(tick);
    await done.tick({ ...tick, id: 't2', done: false, at: '2026-11-25T10:05:00Z' });
    expect(await done.ticks('bench')).toEqual([
      tick,
      { ...tick, id: 't2', done: false, at: '2026-11-25T10:05:00Z' },
    ]);
  });
});
