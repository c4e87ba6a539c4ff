import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { give, inBrowser, noBrowser, place, settled, start, wants } from './browser.ts';

describe.skipIf(noBrowser)(`ticks at the cutter${wants}`, () => {
  const openPage = inBrowser();

  /** The steps that are ticked, in words. */
  const ticked = async (page: Page): Promise<readonly string[]> => {
    await page.getByRole('button', { name: 'All steps' }).click();
    const all = await page.locator('.steps li').allTextContents();
    return all.filter((line) => line.startsWith('✓')).map((line) => line.slice(2));
  };
  const press = async (page: Page, times: number): Promise<void> => {
    await page.locator('.step').waitFor();
    for (let i = 1; i <= times; i++) await page.keyboard.press('PageDown');
    await expect.poll(() => page.locator('.between p').first().textContent()).toMatch(new RegExp(`^${times} of`, 'u'));
  };

  test('are those of another blank or another board no longer, though it is cut with the same settings', async () => {
    const { page, context, expectQuiet } = await openPage();
    const text = (width: number, board: string): string =>
      `mat: {outer: ${width} x 12, border: {left: 2, top: 2, bottom: 2}, layers: [{board: {name: ${board}, thickness: 1.4 mm}}]}\nopenings: [{size: 6 x 8}]\n`;
    await give(page, ['job.yaml', text(10, 'Bone')]);
    await page.locator('svg.face').waitFor();
    await place(page, 'At the cutter');
    await press(page, 6);
    for (const other of [text(11, 'Bone'), text(10, 'Slate')]) {
      await place(page, 'Describe');
      const toggle = page.getByRole('button', { name: 'Text', exact: true });
      if ((await toggle.getAttribute('aria-pressed')) !== 'true') await toggle.click();
      await page.locator('#text').fill(other);
      await settled(page);
      await place(page, 'At the cutter');
      await page.locator('.step').waitFor();
      expect((await ticked(page)).filter((line) => line.includes('Cut'))).toEqual([]);
    }
    await expectQuiet();
    await context.close();
  });

  test('stay with their piece when another piece of the run was changed and comes later now', async () => {
    const { page, context, expectQuiet } = await openPage();
    const job = (title: string, outer: string): string =>
      `title: ${title}\nmat: {outer: ${outer}}\nopenings: [{size: 5 x 7}]\n`;
    await give(page, ['heron.yaml', job('Heron', '10 x 12')], ['tern.yaml', job('Tern', '18 x 20')]);
    await page.getByRole('heading', { name: 'Pieces (2)' }).waitFor();
    await page.getByRole('button', { name: 'Cut them as one run' }).click();
    await page.locator('.step').waitFor();
    await page.getByRole('button', { name: 'All steps' }).click();
    await page
      .locator('.steps button', { hasText: /^Tern.*Cut 1/u })
      .first()
      .click();
    await press(page, 2);
    const before = await ticked(page);
    expect(before.every((line) => line.startsWith('Tern'))).toBe(true);
    await place(page, 'The day');
    await page.getByRole('button', { name: 'Heron', exact: true }).click();
    await page.getByLabel('Outer size', { exact: true }).fill('11 x 12');
    await place(page, 'The day');
    await expect
      .poll(() => page.locator('[aria-label="Pieces of the day"] td:nth-child(3)').allTextContents())
      .toEqual(['Tern', 'Heron']);
    await page.getByRole('button', { name: 'Cut them as one run' }).click();
    await page.locator('.step').waitFor();
    expect(await ticked(page)).toEqual(before);
    await expectQuiet();
    await context.close();
  });

  test('of two windows are all kept', async () => {
    const { page: one, context } = await openPage();
    await start(one, /^Single mat: one board/);
    await one.getByLabel('Outer size', { exact: true }).fill('12 x 15');
    await expect.poll(() => one.locator('.kept').textContent()).toContain('kept in this browser');
    const { page: two } = await openPage({ context });
    await two.getByRole('button', { name: /^Single mat single\.yaml/ }).click();
    await two.locator('svg.face').waitFor();
    for (const page of [one, two]) {
      await place(page, 'At the cutter');
      await page.locator('.step').waitFor();
    }
    await press(one, 2);
    await two.getByRole('button', { name: 'All steps' }).click();
    await two.locator('.steps button').nth(4).click();
    await press(two, 1);
    await place(two, 'Describe');
    await place(two, 'At the cutter');
    await two.locator('.step').waitFor();
    expect(await ticked(two)).toHaveLength(3);
    await context.close();
  });

  test('cannot be kept where the browser keeps nothing, but it is cut all the same', async () => {
    const { page, context } = await openPage();
    await start(page, /^Single mat: one board/);
    await page.evaluate(() => {
      for (const name of ['get', 'put'] as const)
        IDBObjectStore.prototype[name] = () => {
          throw new DOMException('the disk is broken', 'UnknownError');
        };
    });
    await place(page, 'At the cutter');
    await press(page, 2);
    await expect.poll(() => page.getByRole('alert').textContent()).toContain('could not keep the last tick');
    await context.close();
  });
});
