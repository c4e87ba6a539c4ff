import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { inBrowser, noBrowser, outer, start, wants } from './browser.ts';

interface Written {
  written?: Record<string, string>;
}

describe.skipIf(noBrowser)(`saving to a file${wants}`, () => {
  const openPage = inBrowser();

  const kept = (page: Page) => expect.poll(() => page.locator('.kept').textContent());
  /** The browser's own dialog, in which these files are chosen; what is written into them is kept by name. */
  const choose = async (page: Page, files: Readonly<Record<string, string>>): Promise<void> => {
    await page.evaluate((all) => {
      const written: Record<string, string> = { ...all };
      const pick = async () =>
        Object.keys(all).map((name) => ({
          name,
          getFile: async () => new File([written[name]!], name),
          createWritable: async () => ({
            write: async (blob: Blob) => {
              written[name] = await blob.text();
            },
            close: async () => undefined,
          }),
        }));
      Object.assign(globalThis, { written, showOpenFilePicker: pick });
    }, files);
    await page.getByRole('button', { name: 'Pieces', exact: true }).click();
    await page.getByRole('button', { name: 'Open files' }).click();
  };
  const written = (page: Page) => page.evaluate(() => (globalThis as Written).written);
  const job = (outerSize: string): string => `mat: {outer: ${outerSize}}\nopenings: [{size: 5 x 7}]\n`;

  test('is told of the piece that was saved, whatever was open meanwhile', async () => {
    const { page, context, expectQuiet } = await openPage();
    await start(page, /^Double mat/);
    await outer(page).fill('17 x 21');
    await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save the job' }).click()]);
    await kept(page).toContain('saved to a file at');
    await page.getByRole('button', { name: 'Pieces', exact: true }).click();
    await start(page, /^Single mat/);
    await kept(page).toContain('not saved to a file');
    await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save the job' }).click()]);
    await page.getByRole('button', { name: 'Pieces', exact: true }).click();
    await page.getByRole('button', { name: /^Double mat double\.yaml/ }).click();
    await kept(page).toMatch(/kept in this browser only; saved to a file at/u);
    await expectQuiet();
    await context.close();
  });

  test('goes back into the file that was chosen, never into another of the same name', async () => {
    const { page, context, expectQuiet } = await openPage();
    await choose(page, { 'job.yaml': job('10 x 12') });
    await page.locator('svg.face').waitFor();
    await outer(page).fill('11 x 12');
    await page.getByRole('button', { name: 'Save the job' }).click();
    await expect.poll(() => written(page)).toEqual({ 'job.yaml': job('11 x 12') });
    // Of another folder, as pieces of a day: none of them is the one that is open.
    const there = { 'job.yaml': job('14 x 18'), 'other.yaml': job('20 x 24') };
    await page.getByRole('button', { name: 'Pieces', exact: true }).click();
    await page
      .locator('#files')
      .setInputFiles({ name: 'job.yaml', mimeType: 'application/yaml', buffer: Buffer.from(job('9 x 11')) });
    await expect.poll(() => outer(page).inputValue()).toBe('9 x 11');
    await choose(page, there);
    await page.getByRole('heading', { name: /^Pieces \(/u }).waitFor();
    await page.getByRole('button', { name: 'Describe' }).click();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the job' }).click(),
    ]);
    expect(readFileSync((await download.path())!, 'utf8')).toBe(job('9 x 11'));
    expect(await written(page)).toEqual(there);
    await expectQuiet();
    await context.close();
  });
});
