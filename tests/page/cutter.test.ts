import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { solveJob } from '../../src/outputs/solve-job.ts';
import { inBrowser, noBrowser, start, wants } from './browser.ts';

const TOP = join(import.meta.dirname, '../..');
const templateText = (name: string): string => readFileSync(join(TOP, `templates/${name}.yaml`), 'utf8');

const HAND = `heads:
  hand: {bevel: 45, opening: right, straightedge: 1 1/2 in, start: 1 mm, stop: 1 mm}
`;

describe.skipIf(noBrowser)(`at the cutter${wants}`, () => {
  const openPage = inBrowser();

  const atCutter = async (page: Page): Promise<void> => {
    await page.getByRole('button', { name: 'At the cutter' }).click();
    await page.locator('.step').waitFor();
  };
  const give = async (page: Page, name: string, text: string): Promise<void> => {
    await page.locator('#files').setInputFiles({ name, mimeType: 'application/yaml', buffer: Buffer.from(text) });
    await page.locator('svg.face').waitFor();
  };
  const count = (page: Page) => page.locator('.between p').first().textContent();

  test('a double mat is cut step by step with a pedal, and what is done stays done over a reload', async () => {
    const { page, context, expectQuiet } = await openPage({ width: 1024, height: 768 });
    await start(page, /^Double mat/);
    // What is kept has something to be kept for.
    await page.getByLabel('Overlap', { exact: true }).fill('3/8');
    await expect.poll(() => page.locator('.kept').textContent()).toContain('kept in this browser');
    await atCutter(page);
    const all = Number(/of (\d+)/u.exec((await count(page))!)![1]);
    for (let i = 1; i <= 5; i++) {
      await page.keyboard.press(i % 2 === 0 ? 'PageDown' : ' ');
      await expect.poll(() => count(page)).toBe(`${i} of ${all} done`);
    }
    const title = await page.locator('.step h2').textContent();
    await page.waitForTimeout(200);
    await page.reload();
    await page.getByRole('button', { name: /^Double mat double\.yaml/ }).click();
    await atCutter(page);
    expect(await count(page)).toBe(`5 of ${all} done`);
    expect(await page.locator('.step h2').textContent()).toBe(title);
    await page.keyboard.press('PageUp');
    expect(await count(page)).toBe(`4 of ${all} done`);
    while ((await page.locator('.step h2').textContent()) !== 'All steps are done')
      await page.keyboard.press('PageDown');
    expect(await count(page)).toBe(`${all} of ${all} done`);
    await expectQuiet();
    await context.close();
  });

  test('a button with the focus is pressed once by the pedal, and steps may be taken in another order', async () => {
    const { page, context, expectQuiet } = await openPage();
    await start(page, /^Single mat: one board/);
    await atCutter(page);
    await page.getByRole('button', { name: 'Done, next' }).focus();
    await page.keyboard.press(' ');
    expect(await count(page)).toMatch(/^1 of/u);
    await page.getByRole('button', { name: 'All steps' }).click();
    await page.locator('.steps button').nth(4).click();
    await page.keyboard.press('PageDown');
    await page.getByRole('button', { name: 'All steps' }).click();
    const lines = await page.locator('.steps li').allTextContents();
    expect(lines.map((line) => line.startsWith('✓')).slice(0, 6)).toEqual([true, false, false, false, true, false]);
    await expectQuiet();
    await context.close();
  });

  test.each([
    ['triple', undefined],
    ['reverse', undefined],
    ['hand-held', HAND],
  ])(
    'every cut of a %s shows its reading, as the engine has it, a tenth of the screen high',
    { timeout: 120_000 },
    async (name, shop) => {
      const text =
        name === 'reverse'
          ? templateText('single').replace(/ {4}- board:.*\n/u, (line) => `${line}      bevel: {reverse: true}\n`)
          : name === 'triple'
            ? templateText('triple')
            : `units: in\nmat: {outer: 12 x 16}\nopenings: [{size: 7 x 10}]\nbench: {head: hand}\n`;
      const solved = solveJob(text, shop === undefined ? {} : { shop: { file: 'shop.yaml', text: shop } });
      if (!solved.ok) throw new Error(JSON.stringify(solved.problems));
      for (const [width, height] of [
        [1024, 768],
        [360, 740],
      ] as const) {
        const { page, context, expectQuiet } = await openPage({ width, height });
        if (shop !== undefined)
          await page
            .locator('#files')
            .setInputFiles({ name: 'shop.yaml', mimeType: 'application/yaml', buffer: Buffer.from(shop) });
        await give(page, 'job.yaml', text);
        await atCutter(page);
        const readings: string[] = [];
        while ((await page.locator('.step h2').textContent()) !== 'All steps are done') {
          const number = page.locator('.number');
          const box = (await number.boundingBox())!;
          // Its digits, without the room above and below them: the face's are 698 thousandths of an em high.
          const digits = 0.698 * (await number.evaluate((each) => Number.parseFloat(getComputedStyle(each).fontSize)));
          if ((await page.locator('.number.words').count()) === 0)
            expect(digits, (await page.locator('.step').textContent()) ?? '').toBeGreaterThanOrEqual(height / 10);
          const column = (await page.locator('.told-step').first().boundingBox())!;
          expect(box.x + box.width).toBeLessThanOrEqual(column.x + column.width + 1);
          const pedal = (await page.getByRole('button', { name: 'Done, next' }).boundingBox())!;
          expect(pedal.y + pedal.height).toBeLessThanOrEqual(height);
          if (/^Cut \d/u.test((await page.locator('.step h2').textContent())!))
            readings.push(await number.evaluate((each) => (each.querySelector('.heard') ?? each).textContent ?? ''));
          await page.keyboard.press('PageDown');
        }
        // Borders of 2 1/2 and 3 in and the slope of 1.4 mm lead to the line, and the straightedge lies 1 1/2 in before it.
        const expected =
          name === 'hand-held'
            ? ['1 1/16', '1 1/16', '1 9/16', '1 9/16']
            : solved.value.strokes.map(({ beyondGuide, setting, rest }) =>
                beyondGuide ? rest?.setting.amount : setting.amount,
              );
        expect(readings.toSorted()).toEqual(expected.toSorted());
        await expectQuiet();
        await context.close();
      }
    },
  );
});
