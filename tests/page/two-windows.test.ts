import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { inBrowser, keepDouble, kept, noBrowser, outer, settled, start, wants } from './browser.ts';

describe.skipIf(noBrowser)(`one piece in two windows${wants}`, () => {
  const openPage = inBrowser();

  const twoWindows = async (): Promise<{ context: BrowserContext; one: Page; two: Page }> => {
    const { page: one, context } = await openPage();
    await keepDouble(one);
    const { page: two } = await openPage({ context });
    await two.getByRole('button', { name: /^Double mat double\.yaml/ }).click();
    await outer(two).fill('18 x 22');
    await kept(two);
    await expect.poll(() => one.getByRole('alert').textContent()).toContain('Another window has changed this piece');
    return { context, one, two };
  };

  test('two windows do not overwrite each other: one may take the other', async () => {
    const { context, one } = await twoWindows();
    await one.getByRole('button', { name: 'Take the other' }).click();
    await expect.poll(() => outer(one).inputValue()).toBe('18 x 22');
    await context.close();
  });

  test('a piece that is only opened in another window is no change of it, nor is closing that window', async () => {
    const { page: one, context } = await openPage();
    await keepDouble(one);
    await one.evaluate(() => {
      const heard: unknown[] = [];
      Object.assign(globalThis, { heard });
      new BroadcastChannel('matwright').addEventListener('message', (event) => heard.push(event.data));
    });
    const { page: two } = await openPage({ context });
    await two.getByRole('button', { name: /^Double mat double\.yaml/ }).click();
    await settled(two);
    // Longer than a change waits to be kept.
    await two.waitForTimeout(400);
    await two.reload();
    await two.getByRole('button', { name: /^Double mat double\.yaml/ }).click();
    await two.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => one.getByRole('alert').textContent()).toContain('Another window has changed this piece');
    const heard = await one.evaluate(() => (globalThis as typeof globalThis & { readonly heard: unknown[] }).heard);
    expect(heard).toHaveLength(1);
    // The other is taken: that is no change either.
    await one.getByRole('button', { name: 'Take the other' }).click();
    await expect.poll(() => outer(one).inputValue()).toBe('16 x 20');
    await two.waitForTimeout(400);
    expect(await two.getByRole('alert').count()).toBe(0);
    await context.close();
  });

  test('what is left while another window has a later one lies beside it', async () => {
    const { context, one } = await twoWindows();
    await outer(one).fill('19 x 23');
    await one.getByRole('button', { name: 'Pieces', exact: true }).click();
    await start(one, /^Single mat/);
    await expect.poll(() => one.getByRole('alert').count()).toBe(0);
    await outer(one).fill('9 x 11');
    await kept(one);
    await one.getByRole('button', { name: 'Pieces', exact: true }).click();
    await expect.poll(() => one.locator('.drafts li').count()).toBe(3);
    await context.close();
  });

  test('a piece that another window forgets is kept here no more, until it is changed', async () => {
    const { page: one, context } = await openPage();
    await keepDouble(one);
    const { page: two } = await openPage({ context });
    await two.getByRole('button', { name: 'Forget Double mat' }).click();
    await expect.poll(() => one.locator('.kept').textContent()).toBe('not saved to a file');
    await outer(one).fill('18 x 22');
    await expect.poll(() => two.locator('.drafts li').count()).toBe(1);
    expect(await one.getByRole('alert').count()).toBe(0);
    await context.close();
  });

  test('or keep its own', async () => {
    const { context, one, two } = await twoWindows();
    await one.getByRole('button', { name: 'Keep what is here' }).click();
    await expect.poll(() => two.getByRole('alert').textContent()).toContain('Another window');
    await two.getByRole('button', { name: 'Take the other' }).click();
    await expect.poll(() => outer(two).inputValue()).toBe('17 x 21');
    await context.close();
  });
});
