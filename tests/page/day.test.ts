import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launch, noBrowser, openPage, wants } from './browser.ts';

const SHOP = `units: in
boards:
  bone-4: {name: Bone, thickness: 1.4 mm, sheets: [{size: 32 x 40 in, count: 5}]}
`;
const job = (i: number): string =>
  `title: Print ${i}\ndue: 2031-03-${10 + i}\nmat: {outer: ${8 + i} x ${10 + i}, layers: [{board: bone-4}]}\nopenings: [{size: 5 x 7}]\n`;

describe.skipIf(noBrowser)(`a day${wants}`, () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(() => browser.close());

  const give = (page: Page, files: readonly (readonly [name: string, text: string])[]) =>
    page
      .locator('#files')
      .setInputFiles(files.map(([name, text]) => ({ name, mimeType: 'application/yaml', buffer: Buffer.from(text) })));
  const day = async (page: Page): Promise<void> => {
    await page.getByRole('button', { name: 'The day', exact: true }).click();
    await page.getByRole('heading', { name: /^Pieces/ }).waitFor();
  };

  test('twelve jobs are taken, ticked, kept over a reload, and cut in one run', async () => {
    const { page, context, expectQuiet } = await openPage(browser);
    await give(page, [['shop.yaml', SHOP]]);
    await give(
      page,
      Array.from({ length: 12 }, (_, i) => [`print-${i + 1}.yaml`, job(i + 1)] as const),
    );
    await page.getByRole('heading', { name: 'Pieces (12)' }).waitFor();
    await page.getByRole('checkbox', { name: 'Print 3: cut' }).check();
    await page.getByRole('checkbox', { name: 'Print 3: in the run' }).uncheck();
    await expect.poll(() => page.locator('.together h2').textContent()).toBe('For the run: 11 pieces');
    expect(await page.locator('tbody tr', { hasText: 'Print 4' }).textContent()).toContain('2031-03-14');
    await page.waitForTimeout(200);
    await page.reload();
    await page.locator('.card svg.small').first().waitFor();
    await day(page);
    expect(await page.getByRole('checkbox', { name: 'Print 3: cut' }).isChecked()).toBe(true);
    await page.getByRole('button', { name: 'Cut them as one run' }).click();
    await page.locator('.step').waitFor();
    const [, all] = /of (\d+) done/u.exec((await page.locator('.between p').first().textContent())!)!;
    // Four cuts of each piece at least.
    expect(Number(all)).toBeGreaterThanOrEqual(44);
    await page.keyboard.press('PageDown');
    await expect.poll(() => page.locator('.between p').first().textContent()).toBe(`1 of ${all} done`);
    await expectQuiet();
    await context.close();
  });

  test('forty prints are pasted from a spreadsheet, and a row that is wrong is told by its number', async () => {
    const { page, context, expectQuiet } = await openPage(browser);
    await day(page);
    const rows = Array.from({ length: 40 }, (_, i) => `Print ${i + 1}\t${8 + (i % 5)} x ${10 + (i % 4)}`);
    await page.getByLabel('The table', { exact: true }).fill(['title\topenings[0].artwork', ...rows].join('\n'));
    await page.getByRole('button', { name: 'Make a piece of each row' }).click();
    await page.getByRole('heading', { name: 'Pieces (40)' }).waitFor({ timeout: 20_000 });
    await page.getByLabel('The table', { exact: true }).fill('title\tno such thing\nPrint\t1');
    await page.getByRole('button', { name: 'Make a piece of each row' }).click();
    await expect.poll(() => page.locator('.typed .told').textContent()).toMatch(/no such thing/u);
    await expectQuiet();
    await context.close();
  });

  test('a stock plan is laid, booked in the shop, and taken back', async () => {
    const { page, context, expectQuiet } = await openPage(browser);
    await give(page, [['shop.yaml', SHOP]]);
    await give(page, [
      ['one.yaml', job(1)],
      ['two.yaml', job(2)],
    ]);
    await page.getByRole('heading', { name: 'Pieces (2)' }).waitFor();
    await page.getByRole('button', { name: 'Lay the blanks on sheets' }).click();
    await page.locator('.sheets figure').first().waitFor({ timeout: 20_000 });
    await page.getByRole('button', { name: 'Book the stock plan as cut' }).click();
    await page.getByRole('heading', { name: 'Boards' }).waitFor({ timeout: 20_000 });
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    expect(await page.locator('#text').inputValue()).toContain('count: 4');
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await page.locator('#text').inputValue()).toBe(SHOP);
    await expectQuiet();
    await context.close();
  });
});
