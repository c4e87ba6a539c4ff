import { describe, expect, test } from 'vitest';
import { drop, inBrowser, noBrowser, settled, wants } from './browser.ts';

describe.skipIf(noBrowser)(`where a problem is told${wants}`, () => {
  const openPage = inBrowser();

  test('what is wrong in the shop’s file is told with its name and line, at no field of a piece, also after that file was open', async () => {
    const { page, context, expectQuiet } = await openPage();
    await drop(page, 'shop.yaml', 'units: furlong\nboards:\n  b-4: {name: Bone, thickness: much}\n');
    await page
      .getByRole('button', { name: /^Double mat/ })
      .first()
      .click();
    await settled(page);
    const expectTold = async (): Promise<void> => {
      const told = page.locator('form > .told.above');
      await expect.poll(() => told.textContent()).toContain('shop.yaml, line 1: Furlong is not known here');
      expect(await told.textContent()).toContain('shop.yaml, line 3: ');
      expect(await page.locator('.field .told').count()).toBe(0);
    };
    await expectTold();
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    expect(await page.locator('.lines .error').count()).toBe(0);
    await page.getByRole('button', { name: 'The shop', exact: true }).click();
    await page.getByRole('heading', { name: 'Boards (look here)' }).click();
    await page.getByRole('heading', { name: 'b-4' }).click();
    await expect.poll(() => page.locator('.field .told').textContent()).toContain('is not a length');
    await page.getByRole('button', { name: 'Describe' }).click();
    await settled(page);
    await expectTold();
    await page.getByRole('button', { name: 'At the cutter' }).click();
    await expect.poll(() => page.locator('.cutter .told').textContent()).toContain('shop.yaml, line 1: ');
    await expectQuiet();
    await context.close();
  });
});
