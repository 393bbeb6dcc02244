import { describe, expect, it } from 'vitest';
import { act, newOffice } from './office.ts';

describe('the workshop over HTTP', () => {
  it('is edited, replaced whole as one edit, undone, and goes out as a file', async () => {
    const { ask } = await newOffice();
    const operations = [{ path: ['rates', 'hour'], value: 4200 }];
    expect((await ask('POST', '/api/workshop/edits', { ...act(0), operations })).body).toMatchObject({
      document: { rates: { hour: 4200 } },
      version: 1,
    });
    const document = { name: 'New shop', blades: { rip: { kerf: 2.8 } } };
    expect((await ask('PUT', '/api/workshop', { ...act(1), document })).body).toMatchObject({
      document,
      version: 2,
    });
    expect((await ask('PUT', '/api/workshop', { ...act(2), document })).body).toMatchObject({ version: 2 });
    expect(await ask('PUT', '/api/workshop', { ...act(1), document: {} })).toMatchObject({ status: 409 });
    expect((await ask('POST', '/api/workshop/undo', act(2))).body).toMatchObject({
      document: { name: 'Shop', rates: { hour: 4200 } },
    });
    expect((await ask('POST', '/api/workshop/redo', act(3))).body).toMatchObject({ document });
    expect((await ask('GET', '/api/workshop')).body).toMatchObject({ document, version: 4 });
    expect((await ask('GET', '/api/workshop/file.yaml')).text).toContain('kerf: 2.8');
  });
});

describe('clients over HTTP', () => {
  it('are kept, changed and erased', async () => {
    const { ask } = await newOffice();
    const hale = { name: 'Oznur Hale', address: '3 Quarrystone Row' };
    expect(await ask('POST', '/api/clients', hale)).toMatchObject({
      status: 201,
      body: { id: 'client-1', ...hale },
    });
    expect(await ask('PUT', '/api/clients/client-1', { ...hale, phone: '01632 960 112' })).toMatchObject({
      body: { phone: '01632 960 112' },
    });
    expect((await ask('GET', '/api/clients')).body).toMatchObject({ clients: [hale] });
    expect((await ask('DELETE', '/api/clients/client-1')).body).toMatchObject({
      name: '',
      address: '',
      phone: '',
    });
    expect((await ask('GET', '/api/clients/client-1')).text).not.toContain('Quarrystone');
    for (const method of ['GET', 'DELETE'] as const)
      expect(await ask(method, '/api/clients/none')).toMatchObject({ status: 404 });
    expect(await ask('PUT', '/api/clients/none', hale)).toMatchObject({ status: 404 });
    expect(await ask('POST', '/api/clients', { name: '' })).toMatchObject({ status: 400 });
  });
});

describe('measurements and ticks over HTTP', () => {
  it('are added and listed', async () => {
    const { ask } = await newOffice();
    const said = {
      id: 'm-1',
      at: '2026-11-25T10:00:00.000Z',
      actor: 'maker',
      device: 'phone',
      subject: 'leg',
    };
    const size = { ...said, figure: 'thickness', value: 44.6, unit: 'mm' };
    expect(await ask('POST', '/api/jobs/bench/measurements', size)).toMatchObject({ status: 201 });
    expect((await ask('GET', '/api/jobs/bench/measurements')).body).toEqual({ measurements: [size] });
    const tick = { ...said, id: 't-1', done: true, madeFrom: 'f00d' };
    expect(await ask('POST', '/api/jobs/bench/ticks', tick)).toMatchObject({ status: 201 });
    expect((await ask('GET', '/api/jobs/bench/ticks')).body).toEqual({ ticks: [tick] });
    expect(await ask('POST', '/api/jobs/none/ticks', tick)).toMatchObject({ status: 404 });
    expect(await ask('POST', '/api/jobs/none/measurements', size)).toMatchObject({ status: 404 });
    expect(await ask('POST', '/api/jobs/bench/measurements', { ...size, value: null })).toMatchObject({
      status: 400,
    });
  });
});
