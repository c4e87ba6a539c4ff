import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test, vi } from 'vitest';
import { main } from '../../src/cli/main.ts';
import { inBrowser, noBrowser, wants } from './browser.ts';

const SHOP = `units: in
boards:
  bone-4: {name: Bone, thickness: 1.4 mm, sheets: [{size: 32 x 40 in, count: 5}]}
`;
const job = (i: number): string =>
  `title: Print ${i}\ndue: 2031-03-${10 + i}\nmat: {outer: ${8 + i} x ${10 + i}, layers: [{board: bone-4}]}\nopenings: [{size: 5 x 7}]\n`;

describe.skipIf(noBrowser)(`a day${wants}`, () => {
  const openPage = inBrowser();

  const give = (page: Page, files: readonly (readonly [name: string, text: string])[]) =>
    page
      .locator('#files')
      .setInputFiles(files.map(([name, text]) => ({ name, mimeType: 'application/yaml', buffer: Buffer.from(text) })));
  const day = async (page: Page): Promise<void> => {
    await page.getByRole('button', { name: 'The day', exact: true }).click();
    await page.getByRole('heading', { name: /^Pieces/ }).waitFor();
  };

  test('twelve jobs are taken, ticked, kept over a reload, and cut in one run', async () => {
    const { page, context, expectQuiet } = await openPage();
    await give(page, [['shop.yaml', SHOP]]);
    await give(
      page,
      Array.from({ length: 12 }, (_, i) => [`print-${i + 1}.yaml`, job(i + 1)] as const),
    );
    await page.getByRole('heading', { name: 'Pieces (12)' }).waitFor();
    await expect.poll(() => page.locator('td svg.small').count()).toBe(12);
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

  test('forty prints are pasted from a spreadsheet, and a row that is wrong is told by its number', {
    timeout: 90_000,
  }, async () => {
    const { page, context, expectQuiet } = await openPage();
    await day(page);
    const artwork = (i: number): string => `${8 + (i % 5)} x ${10 + (i % 4)}`;
    const table = (outer: (i: number) => string): string => {
      const rows = Array.from({ length: 40 }, (_, i) => `Print ${i + 1}\t${outer(i)}\t${artwork(i)}`);
      return ['title\tmat.outer\topenings[0].artwork', ...rows].join('\n');
    };
    // Of what the mat is like it is 11 × 14 in, too small for a print of 12 in.
    await page.getByLabel('The table', { exact: true }).fill(table((i) => (i === 4 ? '' : '18 x 20')));
    await page.getByRole('button', { name: 'Make a piece of each row' }).click();
    await expect.poll(() => page.locator('.typed .told').textContent(), { timeout: 20_000 }).toMatch(/^Row 6: /u);
    expect(await page.getByRole('heading', { name: 'Pieces (0)' }).count()).toBe(1);
    await page.getByLabel('The table', { exact: true }).fill(table(() => '18 x 20'));
    await page.getByRole('button', { name: 'Make a piece of each row' }).click();
    await page.getByRole('heading', { name: 'Pieces (40)' }).waitFor({ timeout: 30_000 });
    await page.getByLabel('The table', { exact: true }).fill('title\tno such thing\nPrint\t1');
    await page.getByRole('button', { name: 'Make a piece of each row' }).click();
    await expect.poll(() => page.locator('.typed .told').textContent(), { timeout: 20_000 }).toMatch(/no such thing/u);
    await expectQuiet();
    await context.close();
  });

  test('prints are typed cell by cell, or pasted into a cell, and a row that is wrong is told by its number', async () => {
    const { page, context, expectQuiet } = await openPage();
    await day(page);
    const cell = (words: string, row: number) => page.getByLabel(`${words}, row ${row}`, { exact: true });
    await cell('Title', 1).fill('Heron, linocut');
    await cell('Title', 1).press('Enter');
    await page.keyboard.type('Tern');
    await cell('Artwork', 2).fill('much');
    await cell('Title', 3).focus();
    await page.evaluate(() => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text/plain', 'Curlew\tSaltmarsh\t7 x 9\r\nPlover\t\t8" x 10"\r\n');
      document.activeElement?.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }),
      );
    });
    expect(await cell('Customer', 3).inputValue()).toBe('Saltmarsh');
    expect(await cell('Artwork', 4).inputValue()).toBe('8" x 10"');
    // Something is looked up elsewhere meanwhile.
    await page.getByRole('button', { name: 'The shop', exact: true }).click();
    await page.getByRole('heading', { name: 'Boards' }).waitFor();
    await day(page);
    expect(await cell('Artwork', 4).inputValue()).toBe('8" x 10"');
    await page.getByRole('button', { name: 'Make these pieces' }).click();
    await expect.poll(() => page.locator('.typed .told').textContent(), { timeout: 20_000 }).toMatch(/^Row 2: .*much/u);
    // Nothing is made before all of it goes.
    expect(await page.getByRole('heading', { name: 'Pieces (0)' }).count()).toBe(1);
    await cell('Artwork', 2).fill('6 x 8');
    await page.getByRole('button', { name: 'Make these pieces' }).click();
    await page.getByRole('heading', { name: 'Pieces (4)' }).waitFor({ timeout: 20_000 });
    expect((await page.locator('[aria-label="Pieces of the day"] td:nth-child(3)').allTextContents()).sort()).toEqual([
      'Curlew',
      'Heron, linocut',
      'Plover',
      'Tern',
    ]);
    expect(await cell('Title', 1).inputValue()).toBe('');
    await expectQuiet();
    await context.close();
  });

  test('a stock plan is laid, booked in the shop, and taken back', async () => {
    const { page, context, expectQuiet } = await openPage();
    await give(page, [['shop.yaml', SHOP]]);
    await give(page, [
      ['one.yaml', job(1)],
      ['two.yaml', job(2)],
    ]);
    await page.getByRole('heading', { name: 'Pieces (2)' }).waitFor();
    await page.getByRole('button', { name: 'Lay the blanks on sheets' }).click();
    await page.locator('.sheet-to-cut').first().waitFor({ timeout: 20_000 });
    await page.getByRole('button', { name: 'Book the stock plan as cut' }).click();
    await page.getByRole('heading', { name: 'Boards' }).waitFor({ timeout: 20_000 });
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    expect(await page.locator('#text').inputValue()).toContain('count: 4');
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await page.locator('#text').inputValue()).toBe(SHOP);
    await expectQuiet();
    await context.close();
  });

  test('where no sheet is counted there is nothing to book, and that is said', async () => {
    const { page, context, expectQuiet } = await openPage();
    const whole = '{title: Whole, mat: {outer: 32 x 40, layers: [{board: bone-4}]}, openings: [{size: 20 x 30}]}\n';
    await give(page, [['shop.yaml', SHOP.replace('[{size: 32 x 40 in, count: 5}]', '[32 x 40 in]')]]);
    await give(page, [
      ['one.yaml', whole],
      ['two.yaml', whole.replace('Whole', 'Other')],
    ]);
    await page.getByRole('heading', { name: 'Pieces (2)' }).waitFor();
    await page.getByRole('button', { name: 'Book the stock plan as cut' }).click();
    await expect
      .poll(() => page.locator('.saying').textContent(), { timeout: 20_000 })
      .toMatch(/^Plan \d{4}-\d{4} has nothing to book/u);
    expect(await page.getByRole('heading', { name: 'Pieces (2)' }).count()).toBe(1);
    await expectQuiet();
    await context.close();
  });

  test('sheets of board are cut cut by cut, and what is ticked stays ticked over a reload', async () => {
    const { page, context, expectQuiet } = await openPage();
    await give(page, [['shop.yaml', SHOP]]);
    await give(page, [
      ['one.yaml', job(1)],
      ['two.yaml', job(2)],
    ]);
    const lay = async (): Promise<void> => {
      await page.getByRole('button', { name: 'Lay the blanks on sheets' }).click();
      await page.locator('.sheet-to-cut').first().waitFor({ timeout: 20_000 });
    };
    await lay();
    const boxes = page.locator('.stop input');
    const stops = await page.locator('.stop legend').allTextContents();
    expect(stops.every((each) => /^Stop \d/u.test(each))).toBe(true);
    const count = await boxes.count();
    expect(count).toBeGreaterThan(3);
    expect(await page.locator('.stock-sheet .cut').count()).toBe(count);
    await boxes.nth(0).check();
    await boxes.nth(1).check();
    expect(await page.locator('.stock-sheet .made').count()).toBe(2);
    expect(await page.locator('.stop .next').textContent()).toMatch(/^Cut 3:/u);
    await page.waitForTimeout(200);
    await page.reload();
    await page.locator('.card svg.small').first().waitFor();
    await day(page);
    await lay();
    expect(await page.locator('.stop input:checked').count()).toBe(2);
    expect(await page.locator('.stock-sheet').getAttribute('aria-label')).toContain(`2 of ${count} cuts made`);
    // Of another plan nothing is made yet.
    await page.getByRole('checkbox', { name: 'Print 2: in the run' }).uncheck();
    await lay();
    await expect.poll(() => page.locator('.stop input:checked').count(), { timeout: 20_000 }).toBe(0);
    await expectQuiet();
    await context.close();
  });

  test('the run list, the ticket book and the stock plan come out as from the command line', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'matwright-day-'));
    const { page, context, expectQuiet } = await openPage();
    const files = [
      ['shop.yaml', SHOP],
      ['one.yaml', job(1)],
      ['two.yaml', job(2)],
    ] as const;
    for (const [name, text] of files) writeFileSync(join(folder, name), text);
    await give(page, files.slice(0, 1));
    await give(page, files.slice(1));
    await page.getByRole('heading', { name: 'Pieces (2)' }).waitFor();
    vi.spyOn(process.stdout, 'write').mockReturnValue(true);
    vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    for (const [words, name, ...args] of [
      ['Run list', 'run-list.pdf', 'ticket', '--run'],
      ['Ticket book', 'ticket.pdf', 'ticket'],
      ['Stock plan', 'stock.pdf', 'stock'],
    ] as const) {
      const [download] = await Promise.all([
        page.waitForEvent('download', { timeout: 30_000 }),
        page.getByRole('button', { name: `Save ${words}` }).click(),
      ]);
      expect(download.suggestedFilename()).toBe(name);
      const jobs = await page
        .locator('[aria-label="Pieces of the day"] td:nth-child(3)')
        .allTextContents()
        .then((titles) => titles.map((title) => join(folder, title === 'Print 1' ? 'one.yaml' : 'two.yaml')));
      expect(await main([args[0], ...jobs, ...args.slice(1), '--out', join(folder, 'out')], '0')).toBe(0);
      expect(readFileSync((await download.path())!).equals(readFileSync(join(folder, 'out', name))), name).toBe(true);
    }
    vi.restoreAllMocks();
    await expectQuiet();
    await context.close();
    rmSync(folder, { recursive: true });
  });
});
