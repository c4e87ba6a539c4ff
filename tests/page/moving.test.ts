import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { inBrowser, jobText, noBrowser, settled, start, wants } from './browser.ts';

describe.skipIf(noBrowser)(`moving what is in the picture${wants}`, () => {
  const openPage = inBrowser();

  /** Where the left edge of the opening is on the screen, and how many pixels an inch has. */
  const edge = async (page: Page) => {
    const box = (await page.locator('#grip-border-left').boundingBox())!;
    const mat = (await page.locator('#grip-outer-height').boundingBox())!;
    return { x: box.x + box.width / 2, y: box.y + box.height / 3, inch: mat.width / 16 };
  };

  test('drags a border in steps of the guide, as one step of undo', async () => {
    const { page, context, expectQuiet } = await openPage();
    await start(page, /^Double mat/);
    const before = await jobText(page);
    const { x, y, inch } = await edge(page);
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= 10; i++) await page.mouse.move(x + (i * inch) / 10 + 1, y);
    await page.mouse.up();
    await settled(page);
    const dragged = await jobText(page);
    expect(dragged).toMatch(/border: \{?\s*left: 3 (?:11|3|13)\/(?:16|4)/u);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await jobText(page)).toBe(before);
    await page.getByRole('button', { name: 'Redo' }).click();
    expect(await jobText(page)).toBe(dragged);
    await expectQuiet();
    await context.close();
  });

  test('a trembling hand moves nothing', async () => {
    const { page, context } = await openPage();
    await start(page, /^Double mat/);
    const before = await jobText(page);
    const { x, y } = await edge(page);
    await page.mouse.move(x, y);
    await page.mouse.down();
    await page.mouse.move(x + 4, y + 3);
    await page.mouse.up();
    expect(await jobText(page)).toBe(before);
    await context.close();
  });

  test('a finger drags too', async () => {
    const { page, context, expectQuiet } = await openPage({ touch: true });
    await start(page, /^Double mat/);
    const { x, y, inch } = await edge(page);
    const session = await context.newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', by: number) =>
      session.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x: x + by, y }] });
    await touch('touchStart', 0);
    for (let i = 1; i <= 8; i++) await touch('touchMove', (i * inch) / 16);
    await touch('touchEnd', 0);
    await settled(page);
    expect(await jobText(page)).toMatch(/left: 3 (?:3|1|5)\/(?:16|4)/u);
    await expectQuiet();
    await context.close();
  });

  test('keys move an edge by graduations, what follows moves with it, and leaving it ends the step', async () => {
    const { page, context, expectQuiet } = await openPage();
    await start(page, /^Double mat/);
    const grip = page.getByRole('slider', { name: 'right edge of the mat' });
    await grip.focus();
    for (let i = 0; i < 4; i++) {
      await page.keyboard.press('ArrowRight');
      await settled(page);
    }
    expect(await grip.getAttribute('aria-valuetext')).toBe('16 1/4 in');
    expect(await page.getByLabel('Sides', { exact: true }).getAttribute('placeholder')).toBe('(2 7/8 in)');
    expect(await page.getByRole('button', { name: 'Undo' }).isEnabled()).toBe(true);
    await page.keyboard.press('Control+z');
    await settled(page);
    expect(await jobText(page)).toContain('outer: 16 x 20');
    await expectQuiet();
    await context.close();
  });

  test('keys move a reveal and a gap, each where the text says it', async () => {
    const { page, context, expectQuiet } = await openPage();
    await start(page, /^Double mat/);
    await page.getByRole('slider', { name: /, reveal$/ }).focus();
    await page.keyboard.press('ArrowDown');
    await settled(page);
    expect(await jobText(page)).toContain('reveal: 5/16');
    await page.getByRole('button', { name: 'Pieces' }).click();
    await start(page, /^Row of three/);
    await settled(page);
    const before = await jobText(page);
    const gap = page.getByRole('slider', { name: 'gap between neighbours' });
    await gap.focus();
    const was = await gap.getAttribute('aria-valuenow');
    await page.keyboard.press('ArrowRight');
    await settled(page);
    expect(Number(await gap.getAttribute('aria-valuenow')) - Number(was)).toBeCloseTo(25.4 / 16, 1);
    expect(await jobText(page)).not.toBe(before);
    await expectQuiet();
    await context.close();
  });

  test.each([
    ['a mouse', false],
    ['a finger', true],
  ])('%s drags a reveal in steps of the guide', async (_, touch) => {
    const { page, context, expectQuiet } = await openPage({ touch });
    await start(page, /^Double mat/);
    // The text beside the form makes the picture smaller: first of all.
    const before = await jobText(page);
    const line = page.locator('#grip-reveal-1 .hit');
    const { inch } = await edge(page);
    const box = (await line.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    if (touch) {
      const session = await context.newCDPSession(page);
      const send = (type: 'touchStart' | 'touchMove' | 'touchEnd', by: number) =>
        session.send('Input.dispatchTouchEvent', {
          type,
          touchPoints: type === 'touchEnd' ? [] : [{ x, y: y + by }],
        });
      await send('touchStart', 0);
      for (let i = 1; i <= 8; i++) await send('touchMove', (i * inch) / 16);
      await send('touchEnd', 0);
    } else {
      await page.mouse.move(x, y);
      await page.mouse.down();
      for (let i = 1; i <= 8; i++) await page.mouse.move(x, y + (i * inch) / 16);
      await page.mouse.up();
    }
    await settled(page);
    // Half an inch more than a quarter, the picture growing a little meanwhile.
    expect(await jobText(page)).toMatch(/reveal: (?:11\/16|3\/4|13\/16)/u);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await jobText(page)).toBe(before);
    await expectQuiet();
    await context.close();
  });

  test('a gap is dragged, and what is held stays under the pointer', async () => {
    const { page, context, expectQuiet } = await openPage();
    const openings = '{artwork: 5 x 7}, {artwork: 5 x 7}, {artwork: 5 x 7}';
    await page.locator('#files').setInputFiles({
      name: 'row.yaml',
      mimeType: 'application/yaml',
      buffer: Buffer.from(`mat: {outer: 30 x 14}\nopenings: [${openings}]\narrange: {gap: 1}\n`),
    });
    await page.locator('svg.face').waitFor();
    await settled(page);
    const grip = page.locator('#grip-gap-across');
    const box = (await grip.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= 8; i++) await page.mouse.move(x - 5 * i, y);
    await page.mouse.up();
    await settled(page);
    const after = (await grip.boundingBox())!;
    expect(Math.abs(after.x + after.width / 2 - (x - 40))).toBeLessThan(4);
    await expectQuiet();
    await context.close();
  });

  test('tells every change with the old value, the new one and its age', async () => {
    const { page, context } = await openPage();
    await start(page, /^Double mat/);
    await page.getByLabel('Outer size', { exact: true }).fill('17 x 21');
    await page.getByLabel('Overlap', { exact: true }).fill('3/8');
    await page.getByText('Changes (2)').click();
    expect(await page.locator('.changes li').allTextContents()).toEqual([
      'Overlap 1/4 → 3/8 just now',
      'Outer size 16 x 20 → 17 x 21 just now',
    ]);
    await context.close();
  });
});
