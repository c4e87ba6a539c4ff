import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { main } from '../../src/cli/main.ts';
import { inBrowser, noBrowser, settled, start, wants } from './browser.ts';

const SHOP = `# Our own words stay.
units: in
boards:
  bone-4: {name: Bone, thickness: 1.4 mm, colour: "#efe9dc", sheets: [32 x 40 in]}
heads:
  pull: {bevel: 45, opening: left, start: 1 mm, stop: 1 mm}
machines:
  laser: {kind: laser, bed: 600 x 400 mm, kerf: 0.2 mm}
  knife: {kind: knife, bed: 600 x 400 mm}
  bevel: {kind: bevel, bed: 600 x 400 mm}
`;

const GUIDE = `strips:
  - {setting: 1 in, width: 25.9 mm}
  - {setting: 2 in, width: 51.3 mm}
  - {setting: 3 in, width: 76.7 mm}
  - {setting: 4 in, width: 106 mm}
  - {setting: 5 in, width: 127.5 mm}
  - {setting: 6 in, width: 152.9 mm}
`;
const SIDE = '{start: 4.2 mm, stop: 2.6 mm}';
const HEAD = `head: pull
pieces:
  - {thickness: 1.4 mm, top: ${SIDE}, right: {start: 4.3 mm, stop: 2.5 mm}, bottom: ${SIDE}, left: {start: 7 mm, stop: 2.6 mm}}
  - {thickness: 1.4 mm, top: ${SIDE}, right: ${SIDE}, bottom: {start: 4.1 mm, stop: 2.7 mm}, left: ${SIDE}}
`;
const LASER = 'machine: laser\nstripsX: [98.02 mm, 98.00 mm, 97.98 mm, 98 mm, 95 mm]\nstripsY: [97.96 mm, 97.98 mm]\n';
const KNIFE = 'machine: knife\nsides: [40.01 mm, 39.99 mm, 40 mm, 40 mm, 41 mm]\ndiagonals: [56.25 mm, 56.27 mm]\n';
const BEVEL = `machine: bevel
thickness: 1.4 mm
starts: [4.2 mm, 4.1 mm, 4.2 mm, 4.3 mm]
stops: [2.6 mm, 2.7 mm, 2.6 mm, 2.5 mm]
face: [80 mm, 80.02 mm, 80 mm, 80 mm, 81 mm]
back: [77.2 mm, 77.22 mm]
`;
const PRINTER = `printer: office
sheets:
  - {across: 199.3, down: 199.6}
  - {across: 199.4, down: 199.6}
  - {across: 197, down: 199.5}
`;

describe.skipIf(noBrowser)(`the shop${wants}`, () => {
  const folder = mkdtempSync(join(tmpdir(), 'matwright-shop-'));
  const openPage = inBrowser();
  afterAll(() => rmSync(folder, { recursive: true }));

  const withShop = async () => {
    const watched = await openPage();
    const { page } = watched;
    await page
      .locator('#files')
      .setInputFiles({ name: 'shop.yaml', mimeType: 'application/yaml', buffer: Buffer.from(SHOP) });
    await expect.poll(() => page.locator('.saying').textContent()).toContain('shop.yaml');
    await page.getByRole('button', { name: 'The shop', exact: true }).click();
    await page.getByRole('heading', { name: 'Boards' }).waitFor();
    return watched;
  };
  const text = async (page: Page): Promise<string> => {
    const toggle = page.getByRole('button', { name: 'Text', exact: true });
    if ((await toggle.getAttribute('aria-pressed')) !== 'true') await toggle.click();
    return page.locator('#text').inputValue();
  };
  /** What the command line makes of the same shop and readings. */
  const byCommand = async (kind: string, readings: string, ...more: readonly string[]): Promise<string> => {
    const [shop, file] = [join(folder, 'shop.yaml'), join(folder, `${kind}.yaml`)];
    writeFileSync(shop, SHOP);
    writeFileSync(file, readings);
    vi.spyOn(process.stdout, 'write').mockReturnValue(true);
    vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    const code = await main(['calibrate', kind, file, ...more], '0');
    vi.restoreAllMocks();
    expect(code).toBe(0);
    return readFileSync(shop, 'utf8');
  };

  test('has a new board with its sheet and price, which a piece can be made of, and takes it back', async () => {
    const { page, context, expectQuiet } = await withShop();
    await page.getByRole('heading', { name: 'Boards' }).click();
    await page.getByLabel('Another one, by the name that jobs call it').fill('slate-4');
    await page.getByRole('button', { name: 'Add', exact: true }).click();
    await page.getByRole('heading', { name: 'slate-4' }).click();
    await page.getByLabel('Name', { exact: true }).fill('Slate');
    await page.getByLabel('Price', { exact: true }).fill('11.5');
    await page.getByLabel('Sheets, 1', { exact: true }).fill('40 x 60 in');
    await settled(page);
    expect(await page.locator('.told .error').count()).toBe(0);
    const now = await text(page);
    expect(now.startsWith('# Our own words stay.\n')).toBe(true);
    expect(now).toMatch(/slate-4:[\s\S]*name: Slate/u);
    expect(now).toContain('40 x 60 in');
    expect(now).toContain('11.5');
    await page.getByRole('button', { name: 'Pieces', exact: true }).click();
    await start(page, /^Single mat: one board/);
    await page
      .getByRole('group', { name: /^Boards of the shop/ })
      .getByRole('button', { name: 'Slate' })
      .click();
    await settled(page);
    expect(await text(page)).toContain('board: slate-4');
    await page.getByRole('button', { name: 'The shop', exact: true }).click();
    await page.getByRole('heading', { name: 'Boards' }).waitFor();
    // Its history comes from the browser's store a moment after its fields.
    const undo = page.getByRole('button', { name: 'Undo' });
    await expect.poll(() => undo.isEnabled()).toBe(true);
    while (await undo.isEnabled()) await undo.click();
    expect(await text(page)).toBe(SHOP);
    await page.getByRole('button', { name: 'Describe' }).click();
    await page.locator('svg.face').waitFor();
    expect(await text(page)).toContain('board: slate-4');
    await expectQuiet();
    await context.close();
  });

  test('sets prices, and says at its field what is wrong', async () => {
    const { page, context, expectQuiet } = await withShop();
    await page.getByRole('heading', { name: 'Prices' }).click();
    await page.getByLabel('Labour', { exact: true }).fill('25');
    await page.getByLabel('Currency', { exact: true }).fill('GBP');
    await settled(page);
    expect(await text(page)).toMatch(/prices:\s+\{?\s*labour: 25/u);
    await page.getByLabel('Labour', { exact: true }).fill('much');
    const field = page.locator('.field', { has: page.getByLabel('Labour', { exact: true }) });
    await expect.poll(() => field.locator('.error').count()).toBe(1);
    await expectQuiet();
    await context.close();
  });

  test('calibrates the printer by its form, as the command line does, and keeps it over a reload', async () => {
    const { page, context, expectQuiet } = await withShop();
    await page.getByRole('button', { name: 'Printer', exact: true }).click();
    await page.getByLabel('Printer', { exact: true }).fill('office');
    await page.getByRole('button', { name: 'Sheets: add one' }).click();
    await page.getByLabel('Across', { exact: true }).fill('199.3');
    await page.getByLabel('Down', { exact: true }).fill('199.6');
    await page.getByRole('button', { name: 'Accept it into the shop' }).click();
    await page.getByRole('heading', { name: 'Printers' }).waitFor();
    await settled(page);
    const expected = await byCommand('printer', 'printer: office\nsheets:\n  - {across: 199.3, down: 199.6}\n');
    expect(await text(page)).toBe(expected);
    await expect.poll(() => page.locator('.kept').textContent()).toContain('kept in this browser');
    await page.waitForTimeout(300);
    await page.reload();
    await page.locator('.card svg.small').first().waitFor();
    await page.getByRole('button', { name: 'The shop', exact: true }).click();
    await page.getByRole('heading', { name: 'Printers' }).waitFor();
    expect(await text(page)).toBe(expected);
    await expectQuiet();
    await context.close();
  });

  test.each([
    ['Guide', 'guide', GUIDE, 1],
    ['Head', 'head', HEAD, 1],
    ['Printer', 'printer', PRINTER, 1],
    ['Laser, by its coupon', 'laser', LASER, 1],
    ['Drag knife, by its coupon', 'knife', KNIFE, 1],
    ['Bevel head of a machine, by its coupon', 'bevel-coupon', BEVEL, 1],
  ] as const)('calibrates by readings, what stands out told: %s', async (name, kind, readings, wild) => {
    const { page, context, expectQuiet } = await withShop();
    await page.getByRole('button', { name, exact: true }).click();
    await text(page);
    await page.locator('#text').fill(readings);
    await page.locator('.outcome .words').waitFor();
    await expect.poll(() => page.locator('.told .warning').count()).toBeGreaterThanOrEqual(wild);
    expect(await page.locator('.dot.wild').count()).toBeGreaterThanOrEqual(wild);
    const yes = page.getByRole('button', { name: 'Yes, accept that too' });
    const offered = (await yes.count()) > 0;
    await (offered ? yes : page.getByRole('button', { name: 'Accept it into the shop' })).click();
    await page.getByRole('heading', { name: 'Boards' }).waitFor();
    await settled(page);
    expect(await text(page)).toBe(await byCommand(kind, readings, ...(offered ? ['--yes'] : [])));
    await expectQuiet();
    await context.close();
  });

  test('prints the sheet of a tool straight from the page, at its own size', async () => {
    const { page, context, expectQuiet } = await withShop();
    await page.evaluate(() => {
      globalThis.print = () => {
        document.documentElement.dataset.printed = 'yes';
      };
    });
    await page.getByRole('button', { name: 'Guide', exact: true }).click();
    await page.getByRole('button', { name: 'Print its sheet' }).click();
    await page.waitForFunction(() => document.documentElement.dataset.printed === 'yes');
    const sheets = page.locator('#print svg');
    expect(await sheets.count()).toBeGreaterThan(0);
    expect([await sheets.first().getAttribute('width'), await sheets.first().getAttribute('height')]).toEqual([
      '215.9mm',
      '279.4mm',
    ]);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    expect(pdf.toString('latin1').match(/\/Type \/Page\b/gu)).toHaveLength(await sheets.count());
    await expectQuiet();
    await context.close();
  });

  test('saves the coupon of a machine, as the command line makes it', async () => {
    const { page, context, expectQuiet } = await withShop();
    await page.getByRole('button', { name: 'Laser, by its coupon' }).click();
    await page.getByLabel('Machine', { exact: true }).fill('laser');
    const [download] = await Promise.all([
      page.waitForEvent('download', { timeout: 20_000 }),
      page.getByRole('button', { name: 'Save the coupon for laser' }).click(),
    ]);
    const name = download.suggestedFilename();
    writeFileSync(join(folder, 'shop.yaml'), SHOP);
    vi.spyOn(process.stdout, 'write').mockReturnValue(true);
    vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    const job = join(folder, 'coupon.yaml');
    writeFileSync(job, 'mat: {outer: 10 x 12 in}\nopenings: [{size: 6 x 8 in}]\n');
    expect(await main(['cutfile', job, '--machine', 'laser', '--coupon', '--out', join(folder, 'out')], '0')).toBe(0);
    vi.restoreAllMocks();
    expect(readFileSync((await download.path())!).equals(readFileSync(join(folder, 'out', name)))).toBe(true);
    await expectQuiet();
    await context.close();
  });

  const twoWindows = async () => {
    const { page: one, context, expectQuiet } = await withShop();
    const { page: two } = await openPage({ context });
    await two.locator('.card svg.small').first().waitFor();
    return { one, two, context, expectQuiet };
  };
  const addBoard = async (page: Page, name: string): Promise<void> => {
    await page.getByLabel('Another one, by the name that jobs call it').fill(name);
    await page.getByRole('button', { name: 'Add', exact: true }).click();
    await expect.poll(() => page.locator('.kept').textContent()).toContain('kept in this browser');
  };
  const boards = async (page: Page): Promise<void> => {
    await page.getByRole('button', { name: 'The shop', exact: true }).click();
    await page.getByRole('heading', { name: 'Boards' }).click();
  };

  test('two windows on the shop do not overwrite each other', async () => {
    const { one, two, context, expectQuiet } = await twoWindows();
    await one.getByRole('heading', { name: 'Boards' }).click();
    await boards(two);
    await addBoard(one, 'slate-4');
    await expect.poll(() => two.getByRole('alert').textContent()).toContain('Another window has changed the shop');
    await two.getByRole('button', { name: 'Take the other' }).click();
    expect(await text(two)).toContain('slate-4');
    await expectQuiet();
    await context.close();
  });

  test('a window in which the shop is not open has it as it is in the other', async () => {
    const { one, two, context, expectQuiet } = await twoWindows();
    await start(two, /^Single mat: one board/);
    await one.getByRole('heading', { name: 'Boards' }).click();
    await addBoard(one, 'slate-4');
    await two
      .getByRole('group', { name: /^Boards of the shop/ })
      .getByRole('button', { name: /slate/iu })
      .waitFor();
    await boards(two);
    await addBoard(two, 'ink-8');
    await expect.poll(() => one.getByRole('alert').textContent()).toContain('Another window');
    await one.getByRole('button', { name: 'Take the other' }).click();
    expect(await text(one)).toMatch(/slate-4[\s\S]*ink-8/u);
    await expectQuiet();
    await context.close();
  });
});
