import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { forget } from '../../src/cli/files/this-run.ts';
import { servedPage } from '../../src/cli/page-file.ts';
import { serve } from '../../src/cli/serve/server.ts';
import { built } from '../built.ts';
import { inBrowser, noBrowser, place, settled, wants } from './browser.ts';

const JOB = '# by hand\nmat: {outer: 10 x 12}\nopenings: [{size: 6 x 8}]\n';
const shopOf = (name: string): string =>
  `units: in\nboards:\n  b-4: {name: ${name}, thickness: 1.4 mm, colour: "#efe9dc", sheets: [32 x 40 in]}\n`;

describe.skipIf(noBrowser)(`the folder’s shop, and files that go, on the served page${wants}`, () => {
  const folder = mkdtempSync(join(tmpdir(), 'matwright-served-shop-'));
  const openPage = inBrowser();
  beforeAll(async () => {
    vi.spyOn(process, 'argv', 'get').mockReturnValue(['node', join(await built(), 'cli.js')]);
  });
  beforeEach(() => {
    // A server is a run of its own.
    forget();
    for (const name of ['job.yaml', 'two.yaml']) writeFileSync(join(folder, name), JOB);
    writeFileSync(join(folder, 'shop.yaml'), shopOf('Bone'));
    mkdirSync(join(folder, 'show'), { recursive: true });
    writeFileSync(join(folder, 'show/job.yaml'), JOB);
    writeFileSync(join(folder, 'show/shop.yaml'), shopOf('Moss'));
  });
  afterAll(() => {
    vi.restoreAllMocks();
    rmSync(folder, { recursive: true });
  });

  const opened = async () => {
    const site = await serve(folder, (base) => servedPage(base, 'monday'));
    const watched = await openPage({ url: site.address });
    await ready(watched.page);
    return { site, ...watched };
  };
  const ready = (page: Page) => page.locator('.card svg.small').first().waitFor();
  const onDisk = (name: string) => readFileSync(join(folder, name), 'utf8');
  const said = (page: Page) => expect.poll(() => page.locator('.saying').textContent());
  const shopText = async (page: Page) => {
    await place(page, 'The shop');
    await page.getByRole('heading', { name: 'Calibrate' }).waitFor();
    const toggle = page.getByRole('button', { name: 'Text', exact: true });
    if ((await toggle.getAttribute('aria-pressed')) !== 'true') await toggle.click();
    return page.locator('#text');
  };
  const openJob = async (page: Page, name: string): Promise<void> => {
    await page.getByRole('button', { name, exact: true }).click();
    await page.locator('svg.face').waitFor();
    await settled(page);
  };
  const boards = (page: Page) =>
    page
      .getByRole('group', { name: /^Boards of the shop/ })
      .first()
      .textContent();

  test('the shop is saved over the file that it came from, and what is not saved yet is there after a reload', async () => {
    const { site, page, context, expectQuiet } = await opened();
    const text = await shopText(page);
    await text.fill(shopOf('Slate'));
    await place(page, 'Save the shop');
    await said(page).toContain('Saved into shop.yaml');
    expect(onDisk('shop.yaml')).toBe(shopOf('Slate'));
    await text.fill(shopOf('Ink'));
    await place(page, 'Pieces');
    await page.reload();
    await ready(page);
    expect(await (await shopText(page)).inputValue()).toBe(shopOf('Ink'));
    await place(page, 'Save the shop');
    await expect.poll(() => onDisk('shop.yaml')).toBe(shopOf('Ink'));
    await expectQuiet();
    // What something else writes there is noticed, and taken as a change of the shop.
    writeFileSync(join(folder, 'shop.yaml'), shopOf('Chalk'));
    await text.fill(shopOf('Dusk'));
    await place(page, 'Save the shop');
    await expect.poll(() => page.getByRole('alert').textContent()).toContain('changed by something else');
    await place(page, 'Take what is there');
    await expect.poll(() => text.inputValue()).toBe(shopOf('Chalk'));
    await place(page, 'Undo');
    expect(await text.inputValue()).toBe(shopOf('Dusk'));
    await place(page, 'Save the shop');
    await expect.poll(() => onDisk('shop.yaml')).toBe(shopOf('Dusk'));
    await context.close();
    await site.close();
  });

  test('a job has the shop beside it, also after the shop was looked at', async () => {
    const { site, page, context, expectQuiet } = await opened();
    await openJob(page, 'show/job.yaml');
    expect(await boards(page)).toContain('Moss');
    expect(await (await shopText(page)).inputValue()).toBe(shopOf('Moss'));
    await place(page, 'Describe');
    await settled(page);
    expect(await boards(page)).toContain('Moss');
    await place(page, 'Pieces');
    await openJob(page, 'job.yaml');
    expect(await boards(page)).toContain('Bone');
    await expectQuiet();
    await context.close();
    await site.close();
  });

  test('of two jobs that are asked for one after the other the last is open, whichever comes first', async () => {
    const { site, page, context, expectQuiet } = await opened();
    let letGo = (): void => undefined;
    const held = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    await page.route(/\/file\?name=job\.yaml$/u, async (route) => {
      await held;
      await route.continue();
    });
    const answered = page.waitForResponse(/\/file\?name=job\.yaml$/u);
    await page.getByRole('button', { name: 'job.yaml', exact: true }).click();
    await openJob(page, 'two.yaml');
    letGo();
    await (await answered).finished();
    await page.getByLabel('Outer size', { exact: true }).fill('11 x 12');
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('two.yaml');
    expect(await boards(page)).toContain('Bone');
    await expectQuiet();
    await context.close();
    await site.close();
  });

  test('a job whose file was removed is saved there anew, and what is told of one job is not told of another', async () => {
    const { site, page, context } = await opened();
    await openJob(page, 'job.yaml');
    // Pressed twice it is saved twice, one after the other.
    await page.getByLabel('Outer size', { exact: true }).fill('12 x 12');
    await page.getByRole('button', { name: 'Save the job' }).dblclick();
    await said(page).toContain('Saved into job.yaml');
    await page.getByLabel('Outer size', { exact: true }).fill('11 x 12');
    expect(await page.getByRole('alert').count()).toBe(0);
    rmSync(join(folder, 'job.yaml'));
    await place(page, 'Save the job');
    await said(page).toContain('Saved into job.yaml');
    expect(onDisk('job.yaml')).toBe(JOB.replace('10 x 12', '11 x 12'));
    writeFileSync(join(folder, 'job.yaml'), 'title: other\n');
    await place(page, 'Save the job');
    await expect.poll(() => page.getByRole('alert').textContent()).toContain('changed by something else');
    await place(page, 'Pieces');
    await openJob(page, 'two.yaml');
    expect(await page.getByRole('alert').count()).toBe(0);
    await place(page, 'Pieces');
    await page.getByRole('button', { name: /^job\.yaml job\.yaml/ }).click();
    await place(page, 'Save the job');
    await expect.poll(() => page.getByRole('alert').textContent()).toContain('changed by something else');
    rmSync(join(folder, 'job.yaml'));
    await page.getByRole('alert').getByRole('button', { name: 'Save over it' }).click();
    await expect.poll(() => existsSync(join(folder, 'job.yaml'))).toBe(true);
    expect(onDisk('job.yaml')).toBe(JOB.replace('10 x 12', '11 x 12'));
    expect(onDisk('two.yaml')).toBe(JOB);
    await context.close();
    await site.close();
  });

  test('what is made for a day lies in a folder of its own, whatever piece is open', async () => {
    const { site, page, context, expectQuiet } = await opened();
    await openJob(page, 'job.yaml');
    await page.getByLabel('Outer size', { exact: true }).fill('11 x 12');
    await place(page, 'The day');
    await page.getByRole('heading', { name: 'Pieces (1)' }).waitFor();
    await page.getByRole('button', { name: 'Save Ticket book' }).click();
    await expect.poll(() => page.locator('.became').textContent(), { timeout: 20_000 }).toContain('saved into day');
    expect([existsSync(join(folder, 'day/ticket.pdf')), existsSync(join(folder, 'job'))]).toEqual([true, false]);
    await expectQuiet();
    await context.close();
    await site.close();
  });
});
