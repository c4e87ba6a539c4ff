import { describe, expect, test } from 'vitest';
import { drop, inBrowser, noBrowser, outer, place, start, wants } from './browser.ts';

describe.skipIf(noBrowser)(`undoing by keys${wants}`, () => {
  const openPage = inBrowser();

  test('shows in the field that has the focus what the text says, and types on from there', async () => {
    const { page, context, expectQuiet } = await openPage();
    await start(page, /^Double mat/);
    await outer(page).fill('17 x 21');
    await page.keyboard.press('Control+z');
    await expect.poll(() => outer(page).inputValue()).toBe('16 x 20');
    await page.keyboard.press('Control+Shift+z');
    await expect.poll(() => outer(page).inputValue()).toBe('17 x 21');
    await outer(page).fill('17 1/2 x 21 ');
    expect(await outer(page).inputValue()).toBe('17 1/2 x 21 ');
    await expectQuiet();
    await context.close();
  });

  test('leaves a piece alone that is not to be seen', async () => {
    const { page, context, expectQuiet } = await openPage();
    await start(page, /^Double mat/);
    await outer(page).fill('17 x 21');
    for (const name of ['The day', 'Pieces']) {
      await place(page, name);
      await page.keyboard.press('Control+z');
    }
    await place(page, 'The day');
    await page.getByLabel('The table', { exact: true }).pressSequentially('title');
    await page.keyboard.press('Control+z');
    expect(await page.getByLabel('The table', { exact: true }).inputValue()).not.toBe('title');
    await place(page, 'Describe');
    expect(await outer(page).inputValue()).toBe('17 x 21');
    await expectQuiet();
    await context.close();
  });

  test('a piece that is dropped on another shows its own sizes, in the field with the focus too', async () => {
    const { page, context, expectQuiet } = await openPage();
    await start(page, /^Double mat/);
    await outer(page).fill('17 x 21 ');
    await drop(page, 'other.yaml', 'mat: {outer: 10 x 12}\nopenings: [{size: 6 x 8}]\n');
    await expect.poll(() => outer(page).inputValue()).toBe('10 x 12');
    await expectQuiet();
    await context.close();
  });
});
