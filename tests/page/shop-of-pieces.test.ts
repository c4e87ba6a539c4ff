import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { drop, inBrowser, kept, noBrowser, outer, place, settled, start, wants } from './browser.ts';

const shopOf = (name: string): string =>
  `units: in\nboards:\n  b-4: {name: ${name}, thickness: 1.4 mm, colour: "#efe9dc", sheets: [32 x 40 in]}\n`;

describe.skipIf(noBrowser)(`the shop that pieces have${wants}`, () => {
  const openPage = inBrowser();

  const boards = (page: Page) =>
    page
      .getByRole('group', { name: /^Boards of the shop/ })
      .first()
      .textContent();
  const shopText = async (page: Page): Promise<string> => {
    await place(page, 'The shop');
    await page.getByRole('heading', { name: 'Calibrate' }).waitFor();
    const toggle = page.getByRole('button', { name: 'Text', exact: true });
    if ((await toggle.getAttribute('aria-pressed')) !== 'true') await toggle.click();
    return page.locator('#text').inputValue();
  };

  test('is the one that is there now, whatever a piece was kept with', async () => {
    const { page, context, expectQuiet } = await openPage();
    await drop(page, 'shop.yaml', shopOf('Bone'));
    await expect.poll(() => page.locator('.saying').textContent()).toContain('The shop is now');
    await start(page, /^Double mat/);
    await outer(page).fill('17 x 21');
    await kept(page);
    await place(page, 'Pieces');
    await start(page, /^Single mat/);
    await place(page, 'Pieces');
    await drop(page, 'shop.yaml', shopOf('Slate'));
    await expect.poll(() => shopText(page)).toBe(shopOf('Slate'));
    await kept(page);
    await page.reload();
    await page.getByRole('button', { name: /^Double mat double\.yaml/ }).click();
    await page.locator('svg.face').waitFor();
    await settled(page);
    expect(await boards(page)).toContain('Slate');
    await expectQuiet();
    await context.close();
  });

  test('a file dropped where the shop is open is a change of it; one taken elsewhere leaves what was kept a step behind', async () => {
    const { page, context, expectQuiet } = await openPage();
    await drop(page, 'shop.yaml', shopOf('Bone'));
    await expect.poll(() => page.locator('.saying').textContent()).toContain('The shop is now');
    expect(await shopText(page)).toBe(shopOf('Bone'));
    await drop(page, 'shop.yaml', shopOf('Slate'));
    await expect.poll(() => page.locator('#text').inputValue()).toBe(shopOf('Slate'));
    await kept(page);
    expect(await page.getByRole('alert').count()).toBe(0);
    await place(page, 'Pieces');
    await drop(page, 'shop.yaml', shopOf('Moss'));
    await expect.poll(() => shopText(page)).toBe(shopOf('Moss'));
    for (const name of ['Slate', 'Bone']) {
      await page.getByRole('button', { name: 'Undo' }).click();
      expect(await page.locator('#text').inputValue()).toBe(shopOf(name));
    }
    await drop(page, 'heron.png', 'no matter');
    await expect.poll(() => page.getByRole('alert').textContent()).toContain('Open a piece first');
    await expectQuiet();
    await context.close();
  });

  test('its history is whole however quickly one goes to and fro', async () => {
    const { page, context, expectQuiet } = await openPage();
    await drop(page, 'shop.yaml', shopOf('Bone'));
    await expect.poll(() => page.locator('.saying').textContent()).toContain('The shop is now');
    expect(await shopText(page)).toBe(shopOf('Bone'));
    await page.locator('#text').fill(shopOf('Slate'));
    await page.evaluate(() => {
      const press = (name: string): void =>
        [...document.querySelectorAll<HTMLElement>('.places button')]
          .find((each) => each.textContent === name)
          ?.click();
      press('Pieces');
      press('The shop');
    });
    await expect.poll(() => page.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(true);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await page.locator('#text').inputValue()).toBe(shopOf('Bone'));
    await kept(page);
    expect(await page.getByRole('alert').count()).toBe(0);
    await expectQuiet();
    await context.close();
  });

  test('a change of the shop is no change of the pieces that two windows have open', async () => {
    const { page: one, context } = await openPage();
    await drop(one, 'shop.yaml', shopOf('Bone'));
    await expect.poll(() => one.locator('.saying').textContent()).toContain('The shop is now');
    await start(one, /^Double mat/);
    await outer(one).fill('17 x 21');
    await kept(one);
    const { page: two } = await openPage({ context });
    await two.getByRole('button', { name: /^Double mat double\.yaml/ }).click();
    await two.locator('svg.face').waitFor();
    await settled(two);
    // A field is entered and left: nothing of it is a change either.
    await outer(two).focus();
    await two.getByLabel('Overlap', { exact: true }).focus();
    await drop(two, 'shop.yaml', shopOf('Slate'));
    await expect.poll(() => boards(one)).toContain('Slate');
    await place(two, 'Pieces');
    await start(two, /^Single mat/);
    // Longer than a change waits to be kept.
    await one.waitForTimeout(400);
    expect(await one.getByRole('alert').count()).toBe(0);
    expect(await two.getByRole('alert').count()).toBe(0);
    await outer(one).fill('18 x 22');
    await kept(one);
    expect(await one.getByRole('alert').count()).toBe(0);
    await context.close();
  });
});
