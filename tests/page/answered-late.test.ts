import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { drop, give, inBrowser, noBrowser, place, start, wants } from './browser.ts';

interface Held {
  held?: (() => void)[];
}

/** Questions of one name wait until they are let go. */
const hold = (page: Page, name: string) =>
  page.evaluate((which) => {
    const held: (() => void)[] = [];
    (globalThis as Held).held = held;
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function (this: Worker, message: { readonly name: string }): void {
      if (message.name === which) held.push(() => post.call(this, message));
      else post.call(this, message);
    };
  }, name);
const isHeld = (page: Page) => page.evaluate(() => ((globalThis as Held).held ?? []).length > 0);
const letGo = (page: Page) =>
  page.evaluate(() => {
    for (const go of (globalThis as Held).held?.splice(0) ?? []) go();
  });

describe.skipIf(noBrowser)(`answers that come when something else is there${wants}`, () => {
  const openPage = inBrowser();

  test('what was made of a piece has its name, and is told of that piece alone', async () => {
    const { page, context, expectQuiet } = await openPage();
    await start(page, /^Double mat/);
    await page.getByLabel('Outer size', { exact: true }).fill('17 x 21');
    await place(page, 'Print and save');
    await hold(page, 'make');
    await page.getByRole('button', { name: 'Save everything as one zip' }).click();
    await expect.poll(() => isHeld(page)).toBe(true);
    await place(page, 'Pieces');
    await start(page, /^Single mat: one board/);
    await place(page, 'Print and save');
    const [download] = await Promise.all([page.waitForEvent('download', { timeout: 25_000 }), letGo(page)]);
    expect(download.suggestedFilename()).toBe('double.zip');
    await expect.poll(() => page.locator('.saying').textContent()).toContain('double.zip');
    expect(await page.locator('.became').count()).toBe(0);
    await expectQuiet();
    await context.close();
  });

  test('readings are accepted only as they stand there', async () => {
    const { page, context, expectQuiet } = await openPage();
    await give(page, ['shop.yaml', 'units: in\nprinters:\n  office: {}\n']);
    await expect.poll(() => page.locator('.saying').textContent()).toContain('The shop is now');
    await place(page, 'The shop');
    await place(page, 'Printer');
    await place(page, 'Text');
    const readings = (across: string): string => `printer: office\nsheets:\n  - {across: ${across}, down: 199.6}\n`;
    await page.locator('#text').fill(readings('199.3'));
    const accept = page.getByRole('button', { name: 'Accept it into the shop' });
    await expect.poll(() => accept.isEnabled(), { timeout: 20_000 }).toBe(true);
    await hold(page, 'calibrating');
    await page.locator('#text').fill(readings('199.9'));
    await expect.poll(() => isHeld(page)).toBe(true);
    expect(await accept.isDisabled()).toBe(true);
    await letGo(page);
    await expect.poll(() => accept.isEnabled()).toBe(true);
    await accept.click();
    await page.getByRole('heading', { name: 'Calibrate' }).waitFor();
    // Accepted a moment after they were typed: they are begun anew the next time.
    await place(page, 'Printer');
    await expect.poll(() => page.locator('#text').inputValue()).toBe('# Readings: Printer\n');
    await expectQuiet();
    await context.close();
  });

  test('a plan is booked in no other shop than the one that it was worked out for', async () => {
    const { page, context, expectQuiet } = await openPage();
    const shop = (count: number): string =>
      `boards:\n  bone-4: {name: Bone, thickness: 1.4 mm, sheets: [{size: 32 x 40 in, count: ${count}}]}\n`;
    const job = 'mat: {outer: 10 x 12, layers: [{board: bone-4}]}\nopenings: [{size: 5 x 7}]\n';
    await give(page, ['shop.yaml', shop(5)], ['one.yaml', job], ['two.yaml', job]);
    await page.getByRole('heading', { name: 'Pieces (2)' }).waitFor();
    await hold(page, 'book');
    await page.getByRole('button', { name: 'Book the stock plan as cut' }).click();
    await expect.poll(() => isHeld(page)).toBe(true);
    await drop(page, 'shop.yaml', shop(9));
    await expect.poll(() => page.locator('.saying').textContent()).toBe('The shop is now shop.yaml.');
    await letGo(page);
    await expect.poll(() => page.locator('.saying').textContent(), { timeout: 20_000 }).toContain('book it once more');
    await place(page, 'The shop');
    await place(page, 'Text');
    expect(await page.locator('#text').inputValue()).toBe(shop(9));
    await expectQuiet();
    await context.close();
  });
});
