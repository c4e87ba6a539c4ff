import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { inBrowser, keepDouble, kept, noBrowser, outer, start, wants } from './browser.ts';

describe.skipIf(noBrowser)(`leaving the page${wants}`, () => {
  const openPage = inBrowser();

  const pieces = (page: Page) => page.getByRole('button', { name: 'Pieces', exact: true }).click();
  const ready = (page: Page) => page.locator('.card svg.small').first().waitFor();
  const drafts = (page: Page) => page.locator('.drafts li').count();

  test('what was typed in the last moment before it is there again, and can be taken back', async () => {
    const { page, context, expectQuiet } = await openPage();
    await start(page, /^Double mat/);
    await outer(page).fill('17 x 21');
    await page.reload();
    await page.getByRole('button', { name: /^Double mat double\.yaml/ }).click();
    expect(await outer(page).inputValue()).toBe('17 x 21');
    await outer(page).fill('18 x 22');
    await page.reload();
    await page.getByRole('button', { name: /^Double mat double\.yaml/ }).click();
    expect(await outer(page).inputValue()).toBe('18 x 22');
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await outer(page).inputValue()).toBe('16 x 20');
    await expectQuiet();
    await context.close();
  });

  test('while another window has a later one, what is here lies beside that', async () => {
    const { page: one, context } = await openPage();
    await keepDouble(one);
    const { page: two } = await openPage({ context });
    await two.getByRole('button', { name: /^Double mat double\.yaml/ }).click();
    await outer(two).fill('18 x 22');
    await expect.poll(() => one.getByRole('alert').textContent()).toContain('Another window has changed this piece');
    await outer(one).fill('19 x 23');
    await one.reload();
    await expect.poll(() => drafts(one)).toBe(2);
    await one.locator('.drafts li button').first().click();
    const first = await outer(one).inputValue();
    await pieces(one);
    await one.locator('.drafts li button.plain').nth(1).click();
    expect([first, await outer(one).inputValue()].sort()).toEqual(['18 x 22', '19 x 23']);
    await context.close();
  });

  test('a piece that could not be kept is not lost by opening another', async () => {
    const { page, context } = await openPage();
    await start(page, /^Double mat/);
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('no room left', 'QuotaExceededError');
      };
    });
    await outer(page).fill('17 x 21');
    await expect.poll(() => page.getByRole('alert').textContent()).toContain('no room left');
    await pieces(page);
    await start(page, /^Single mat/);
    await expect.poll(() => page.getByRole('alert').textContent()).toContain('the last change of Double mat');
    await page.getByRole('button', { name: 'Back to that piece' }).click();
    expect(await outer(page).inputValue()).toBe('17 x 21');
    await pieces(page);
    await start(page, /^Single mat/);
    await outer(page).fill('9 x 11');
    await page.reload();
    await expect.poll(() => drafts(page)).toBe(2);
    await context.close();
  });

  test('a piece that is forgotten while it is open is kept anew with the next change alone', async () => {
    const { page, context, expectQuiet } = await openPage();
    await start(page, /^Double mat/);
    await outer(page).fill('17 x 21');
    await kept(page);
    await pieces(page);
    await page.getByRole('button', { name: 'Forget Double mat' }).click();
    await expect.poll(() => drafts(page)).toBe(0);
    await page.getByRole('button', { name: 'Describe' }).click();
    expect(await page.locator('.kept').textContent()).toBe('not saved to a file');
    await page.reload();
    await ready(page);
    expect(await drafts(page)).toBe(0);
    await expectQuiet();
    await context.close();
  });

  test('a store that could not be opened once is opened when it is wanted next', async () => {
    const { page, context, expectQuiet } = await openPage();
    await page.addInitScript(() => {
      const { open } = IDBFactory.prototype;
      IDBFactory.prototype.open = function (this: IDBFactory, ...how: Parameters<typeof open>) {
        IDBFactory.prototype.open = open;
        throw new DOMException(`${how[0]} is busy`, 'UnknownError');
      };
    });
    await page.reload();
    await start(page, /^Double mat/);
    await outer(page).fill('17 x 21');
    await kept(page);
    await pieces(page);
    await expect.poll(() => drafts(page)).toBe(1);
    await expectQuiet();
    await context.close();
  });
});
