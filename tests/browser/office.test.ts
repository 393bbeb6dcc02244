import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { JOB_PAGES, PAGE_NAMES } from '../../src/office/route.ts';
import { axeFaults, type Desk, type Opened, overflow, ROOT, startDesk } from './desk.ts';

const JOB = '/jobs/porch-bench';

/** Waits for what follows; a busy machine draws slowly. */
const soon = <T>(read: () => Promise<T>) => expect.poll(read, { timeout: 20_000 });

let desk: Desk;
beforeAll(async () => {
  desk = await startDesk();
});
afterAll(() => desk.close());

/** Opens a page of the demo job and waits until its results stand. */
async function openJob(page = 'setting-out', options: Parameters<Desk['open']>[0] = {}): Promise<Opened> {
  const opened = await desk.open({ ...options, place: `${JOB}/${page}` });
  await opened.page.locator('.foot .cell.big b').first().waitFor();
  return opened;
}

const textOf = async (at: Locator): Promise<string> => (await at.textContent()) ?? '';
const offer = (page: Page): Promise<string> => textOf(page.locator('.foot .cell.big b').first());
const cell = (page: Page, part: string, column: number): Promise<string> =>
  textOf(page.locator('.parts tbody tr', { hasText: part }).locator('th,td').nth(column));
const size = (page: Page, id: string) => page.locator(`input[data-parameter="${id}"]`);
const saved = (page: Page) => page.locator('.foot .end em', { hasText: /^Saved/ }).waitFor();

describe('the list of jobs', () => {
  test('opens with the demo jobs, finds by word, and leads to a job', async () => {
    const { page, troubles } = await desk.open();
    await page.getByRole('link', { name: 'Porch bench' }).waitFor();
    expect(await page.locator('.joblist tbody tr').count()).toBeGreaterThanOrEqual(2);
    await page.getByRole('searchbox').fill('bench');
    await soon(() => page.locator('.joblist tbody tr').count()).toBe(1);
    await page.getByRole('searchbox').fill('no such job');
    await page.getByText('No job has all of these words.').waitFor();
    await page.getByRole('searchbox').fill('');
    await page.getByRole('link', { name: 'Porch bench' }).click();
    await page.getByRole('heading', { name: 'Porch bench' }).waitFor();
    expect(troubles).toEqual([]);
    await page.close();
  });

  test('begins a new job and brings in a job file', async () => {
    const { page, troubles } = await desk.open();
    await page.getByRole('button', { name: 'New job' }).click();
    await page.getByLabel('What it is').fill('A stool for the workshop');
    await page.getByRole('button', { name: 'Begin' }).click();
    await page.getByRole('heading', { name: 'A stool for the workshop' }).waitFor();
    await page.getByRole('link', { name: 'Scantling' }).click();
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Bring in a job file' }).click(),
    ]);
    await chooser.setFiles({
      name: 'shelf.yaml',
      mimeType: 'text/yaml',
      buffer: Buffer.from('scantling: job/1\ntitle: A shelf <b>brought in</b>\n'),
    });
    await page.getByRole('heading', { name: 'A shelf <b>brought in</b>' }).waitFor();
    await page.getByRole('link', { name: 'Scantling' }).click();
    const [again] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Bring in a job file' }).click(),
    ]);
    await again.setFiles({
      name: 'broken.yaml',
      mimeType: 'text/yaml',
      buffer: Buffer.from('scantling: job/1\ntitle: A broken one\nparts:\n  leg: { kind: timbr }\n'),
    });
    await page.getByText('broken.yaml is taken in').waitFor();
    await page.getByText('parts.leg').first().waitFor();
    await page.getByRole('link', { name: 'open the job' }).click();
    await page.getByRole('heading', { name: 'A broken one' }).waitFor();
    expect(troubles).toEqual([]);
    await page.close();
  });
});

describe('the setting-out', () => {
  test('a size that is typed moves parts and price at once; Escape restores; nothing is saved', async () => {
    const { page, troubles } = await openJob();
    const before = [await offer(page), await cell(page, 'Stretcher', 3)];
    const field = size(page, 'length');
    await field.fill('1480');
    await soon(() => cell(page, 'Stretcher', 3)).toBe('1457');
    await soon(() => offer(page)).not.toBe(before[0]);
    await field.press('Escape');
    await soon(() => cell(page, 'Stretcher', 3)).toBe(before[1]);
    expect(await offer(page)).toBe(before[0]);
    expect(await field.inputValue()).toBe('1380');
    expect(troubles).toEqual([]);
    await page.close();
  });

  test('any unit may be typed, arrow keys step, what is wrong names its mend', async () => {
    const { page } = await openJob();
    const field = size(page, 'length');
    await field.fill('1.4 m');
    await soon(() => cell(page, 'Stretcher', 3)).toBe('1377');
    await field.press('ArrowUp');
    expect(await field.inputValue()).toBe('1401');
    await field.press('Shift+ArrowDown');
    expect(await field.inputValue()).toBe('1391');
    await field.fill('13,8');
    await page.getByRole('alert').filter({ hasText: 'full stop as decimal mark' }).waitFor();
    expect(await field.getAttribute('aria-invalid')).toBe('true');
    await field.fill('99999');
    await page
      .getByRole('alert')
      .filter({ hasText: 'the most is' })
      .or(page.getByText('The most is'))
      .waitFor();
    await field.press('Escape');
    await page.close();
  });

  test('an expression that cannot be read says so, leaves the results, and is not kept', async () => {
    const { page } = await openJob();
    const field = size(page, 'length');
    await field.fill('leg * wid');
    await page.getByRole('alert').filter({ hasText: 'wid' }).waitFor();
    expect(await cell(page, 'Stretcher', 3)).toBe('1357');
    await field.press('Enter');
    expect(await field.inputValue()).toBe('leg * wid');
    await field.fill('leg * 30');
    await soon(() => cell(page, 'Stretcher', 3)).toBe('1327');
    expect(await page.locator('.parts .ask[data-changed]').count()).toBeGreaterThan(0);
    await field.press('Escape');
    await soon(() => cell(page, 'Stretcher', 3)).toBe('1357');
    await page.close();
  });

  test('Enter keeps it over a reload; undo and redo by button and key', async () => {
    const { page, troubles } = await openJob();
    const field = size(page, 'length');
    await field.fill('1440');
    await field.press('Enter');
    await soon(() => cell(page, 'Stretcher', 3)).toBe('1417');
    await saved(page);
    await page.reload();
    await soon(() => size(page, 'length').inputValue()).toBe('1440');
    expect(await cell(page, 'Stretcher', 3)).toBe('1417');
    await page.getByRole('button', { name: 'Undo' }).last().click();
    await soon(() => size(page, 'length').inputValue()).toBe('1380');
    await page.locator('h1').click();
    await page.keyboard.press('Control+Shift+Z');
    await soon(() => size(page, 'length').inputValue()).toBe('1440');
    await page.keyboard.press('Control+Z');
    await soon(() => size(page, 'length').inputValue()).toBe('1380');
    await saved(page);
    expect(troubles).toEqual([]);
    await page.close();
  });

  test('what was entered while the program was away is saved when it is started again', async () => {
    const { page } = await openJob();
    await desk.stop();
    await size(page, 'length').fill('1350');
    await size(page, 'length').press('Enter');
    await page.locator('.foot .end em', { hasText: 'Not saved' }).waitFor();
    await desk.startAgain();
    await saved(page);
    await page.reload();
    await page.locator('.foot .cell.big b').first().waitFor();
    expect(await size(page, 'length').inputValue()).toBe('1350');
    await page.getByRole('button', { name: 'Undo' }).click();
    await saved(page);
    await page.close();
  });

  test('Enter pressed before the results are there keeps what is sound and refuses what is not', async () => {
    const { page } = await openJob();
    const field = size(page, 'height');
    await field.fill('wobble');
    await field.press('Enter');
    await page.locator('.par-field.wrong').waitFor();
    await field.press('Escape');
    await field.fill('440');
    await field.press('Enter');
    await soon(() => field.getAttribute('data-typing')).toBe('false');
    await saved(page);
    await page.reload();
    await page.locator('.foot .cell.big b').first().waitFor();
    expect(await field.inputValue()).toBe('440');
    await page.getByRole('button', { name: 'Undo' }).click();
    await soon(() => field.inputValue()).toBe('450');
    await saved(page);
    await page.close();
  });

  test('an edit in one window shows in another', async () => {
    const [one, two] = [await openJob(), await openJob()];
    await size(one.page, 'length').fill('1360');
    await size(one.page, 'length').press('Enter');
    await soon(() => size(two.page, 'length').inputValue()).toBe('1360');
    await one.page.getByRole('button', { name: 'Undo' }).last().click();
    await soon(() => size(two.page, 'length').inputValue()).toBe('1380');
    expect([...one.troubles, ...two.troubles]).toEqual([]);
    await Promise.all([one.page.close(), two.page.close()]);
  });

  test('every figure answers why, down to what was entered', async () => {
    const { page, troubles } = await openJob();
    await page.locator('.parts tbody tr', { hasText: 'Stretcher' }).locator('.ask').first().click();
    const why = page.getByRole('region', { name: 'Why' });
    await why.getByText('Why 1357').waitFor();
    await why.getByRole('button', { name: 'All of it' }).click();
    expect(await why.locator('.whytree li').count()).toBeGreaterThan(2);
    await page.locator('.foot .ask').first().click();
    await why.getByText(/Why £/).waitFor();
    expect(troubles).toEqual([]);
    await page.close();
  });

  test('a picked part marks its row and shows its stations and name on the drawing', async () => {
    const { page, troubles } = await openJob();
    await page.locator('.stage .over text').first().waitFor({ state: 'attached' });
    await page.getByRole('button', { name: 'Stretcher' }).click();
    expect(await textOf(page.locator('.parts tr.on'))).toContain('Stretcher');
    const texts = (): Promise<string[]> => page.locator('.stage .over text').allTextContents();
    await soon(async () => (await texts()).join(' ')).toContain('1357 × 70 × 32');
    expect(await texts()).toEqual(expect.arrayContaining(['11.5', '98.5', '1281.5', '1368.5']));
    await page.getByRole('button', { name: 'Front', exact: true }).click();
    await soon(async () => (await texts()).join(' ')).toContain('1281.5');
    await page.getByRole('button', { name: 'Take apart' }).click();
    await page.getByRole('slider').waitFor();
    expect(await textOf(page.locator('.apart output'))).toMatch(/^\d of \d/);
    expect(troubles).toEqual([]);
    await page.close();
  });

  test('the drawing is picked by the pointer and turned by keys', async () => {
    const { page } = await openJob();
    const stage = page.locator('.stage');
    await page.locator('.stage .over text').first().waitFor({ state: 'attached' });
    await page.waitForTimeout(400);
    const box = (await stage.boundingBox())!;
    await page.mouse.click(box.x + box.width * 0.5, box.y + box.height * 0.27);
    await page.locator('.parts tr.on').waitFor();
    const before = await page.locator('.stage .under').innerHTML();
    await stage.focus();
    await page.keyboard.press('ArrowLeft');
    await soon(() => page.locator('.stage .under').innerHTML()).not.toBe(before);
    await page.close();
  });

  test("units and ground are the person's own and stay", async () => {
    const { page } = await openJob();
    await page.getByRole('button', { name: 'in mm' }).click();
    await page.getByText('inches', { exact: true }).click();
    await page.getByText('dark', { exact: true }).click();
    await page.keyboard.press('Escape');
    expect(await size(page, 'length').inputValue()).toBe('54 21/64');
    await page.reload();
    await soon(() => size(page, 'length').inputValue()).toBe('54 21/64');
    expect(await page.evaluate(() => document.documentElement.dataset.ground)).toBe('dark');
    await page.close();
  });

  test('a setting-out is kept, and what changed since is told', async () => {
    const { page, troubles } = await openJob();
    await page.getByRole('button', { name: 'Keep this setting-out' }).click();
    await page.getByLabel('What it is called, if anything').fill('As offered');
    await page.getByRole('button', { name: /^Keep setting-out/ }).click();
    await page.getByText('Since setting-out 1').waitFor();
    const field = size(page, 'length');
    await field.fill('1480');
    await field.press('Enter');
    await soon(() => textOf(page.locator('.foot .chg b'))).toContain('1380');
    await soon(() => textOf(page.locator('.foot .chg em'))).toMatch(/[+−]£/);
    await page.getByRole('button', { name: 'Undo' }).last().click();
    await soon(() => textOf(page.locator('.foot .chg b'))).toBe('nothing changed');
    await field.fill('1300');
    await field.press('Enter');
    await soon(() => textOf(page.locator('.foot .chg b'))).toContain('1300');
    await page.getByRole('button', { name: 'Keep this setting-out' }).click();
    await page.getByRole('button', { name: 'Go back to 1' }).click();
    await soon(() => size(page, 'length').inputValue()).toBe('1380');
    await soon(() => textOf(page.locator('.foot .chg b'))).toBe('nothing changed');
    expect(troubles).toEqual([]);
    await page.close();
  });
});

describe('a setting-out with a fault', () => {
  test('gives out no offer, no date and no proof as if it were whole', async () => {
    const { page } = await desk.open();
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      page.getByRole('button', { name: 'Bring in a job file' }).click(),
    ]);
    const whole = readFileSync(join(ROOT, 'examples/porch-bench.yaml'), 'utf8');
    await chooser.setFiles({
      name: 'faulty.yaml',
      mimeType: 'text/yaml',
      buffer: Buffer.from(
        whole.replace('value: 1380,', 'value: abc,').replace('Porch bench', 'Faulty bench'),
      ),
    });
    await soon(() => page.evaluate(() => location.hash)).toContain('/setting-out');
    await soon(() => offer(page)).toBe('not known');
    await page.goto(`${page.url().replace(/\/setting-out$/, '')}/price`);
    await page.locator('.partial').waitFor();
    expect(await textOf(page.locator('.partial'))).toContain('only what could be worked out');
    expect(await page.locator('tr.total td').first().textContent()).toBe('Of what could be worked out');
    await page.close();
  });
});

describe('the checks', () => {
  test('solids are made in the background and say whether parts share room', async () => {
    const { page, troubles } = await openJob('checks');
    await page.getByText('No two parts share room').waitFor();
    expect(await page.locator('.check-list li').count()).toBeGreaterThan(5);
    await page.getByRole('button', { name: /^Pass/ }).click();
    expect(await page.locator('.check-list .state.pass').count()).toBe(
      await page.locator('.check-list li').count(),
    );
    expect(troubles).toEqual([]);
    await page.close();
  });
});

describe('the set-ups at the bench', () => {
  test('a card on the phone does not scroll, has large targets, and is ticked', async () => {
    const { page, troubles } = await desk.open({ width: 390, height: 844, place: `${JOB}/set-ups/1` });
    const done = page.getByRole('button', { name: 'Done', exact: true });
    await done.waitFor();
    const box = (await done.boundingBox())!;
    expect(box.height).toBeGreaterThanOrEqual(64);
    expect(box.y + box.height).toBeLessThanOrEqual(844);
    expect(
      await page.evaluate(() => document.documentElement.scrollHeight - innerHeight),
    ).toBeLessThanOrEqual(0);
    await done.click();
    await page.getByText('Set-up 2 of').waitFor();
    await page.goBack();
    await page.getByRole('button', { name: 'Done already' }).waitFor();
    expect(troubles).toEqual([]);
    await page.close();
  });
});

describe('a trial cut', () => {
  test('entered on the card gives the correction with its direction, and is there when the page is loaded again', async () => {
    const { page, troubles } = await openJob('set-ups');
    await page.getByRole('link', { name: /Tenon cheeks, lower cross rail/ }).click();
    const field = page.getByLabel(/Measured on trial 1, fence at/);
    await field.fill('11.1');
    await page.getByText(/11\.1 measured, 0\.2 over: fence closer by 0\.1/).waitFor();
    await page.getByRole('button', { name: 'Keep', exact: true }).click();
    await page.getByLabel(/Measured on trial 2, fence at/).waitFor();
    await page.waitForTimeout(600);
    await page.reload();
    await page.getByRole('button', { name: 'Take back' }).click();
    await page.getByLabel(/Measured on trial 1, fence at/).waitFor();
    expect(troubles).toEqual([]);
    await page.close();
  });
});

describe('the papers', () => {
  test('each one that is offered can be had', async () => {
    const { page, troubles } = await openJob('papers');
    const links = await page
      .locator('.papers a.btn')
      .evaluateAll(all => all.map(a => (a as HTMLAnchorElement).href));
    expect(links.length).toBeGreaterThanOrEqual(4);
    for (const link of links) {
      const answer = await page.request.get(link);
      expect(answer.status(), link).toBe(200);
      expect((await answer.body()).length, link).toBeGreaterThan(40);
    }
    const pack = await page.request.get(links.find(l => l.endsWith('pack.pdf'))!);
    expect((await pack.body()).subarray(0, 5).toString()).toBe('%PDF-');
    expect(troubles).toEqual([]);
    await page.close();
  });
});

describe('every page', () => {
  for (const ground of ['light', 'dark'] as const)
    for (const width of [1600, 1024, 390])
      test(`at ${width} px, ${ground}: no sideways scrolling, nothing serious for axe, no errors`, async () => {
        const { page, troubles } = await openJob('setting-out', { width, height: 900, ground });
        for (const name of JOB_PAGES) {
          await page.goto(`${desk.address}#${JOB}/${name}`);
          await page.locator('nav a[aria-current="page"]', { hasText: PAGE_NAMES[name] }).waitFor();
          await page.locator('main').waitFor();
          await page.waitForTimeout(300);
          expect(await overflow(page), name).toBeLessThanOrEqual(0);
          if (width !== 1024) expect(await axeFaults(page), name).toEqual([]);
        }
        await page.goto(`${desk.address}#/`);
        await page.locator('.joblist').waitFor();
        expect(await overflow(page)).toBeLessThanOrEqual(0);
        expect(await axeFaults(page)).toEqual([]);
        expect(troubles).toEqual([]);
        await page.close();
      });

  test('at 200 % zoom of a 1280 window the page folds and does not scroll sideways', async () => {
    const { page } = await openJob('setting-out', { width: 640, height: 500 });
    expect(await overflow(page)).toBeLessThanOrEqual(0);
    await page.close();
  });

  test('prints black on white without the controls', async () => {
    const { page } = await openJob('price', { ground: 'dark' });
    await page.emulateMedia({ media: 'print' });
    expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe(
      'rgb(255, 255, 255)',
    );
    expect(await page.getByRole('navigation').isVisible()).toBe(false);
    await page.close();
  });
});
