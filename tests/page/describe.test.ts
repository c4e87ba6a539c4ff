import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { inBrowser, jobText, noBrowser, openSeldom, settled, start, type Watched, wants } from './browser.ts';

describe.skipIf(noBrowser)(`describing a piece${wants}`, () => {
  const openPage = inBrowser();

  const opened = async (words: RegExp): Promise<Watched> => {
    const watched = await openPage();
    await start(watched.page, words);
    return watched;
  };
  const closed = async ({ context, expectQuiet }: Watched): Promise<void> => {
    await expectQuiet();
    await context.close();
  };
  const given = (page: Page, label: string) => page.getByLabel(label, { exact: true });

  test('makes a first mat in five actions', async () => {
    const watched = await opened(/^Single mat: one board/);
    const { page } = watched;
    await given(page, 'Outer size').fill('12 x 16');
    await given(page, 'Artwork').fill('8 1/2 x 11');
    await page.getByRole('button', { name: 'Print and save' }).click();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save Pattern' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('pattern-1.pdf');
    await closed(watched);
  });

  test('takes a double mat from a frame, and says what follows', async () => {
    const watched = await opened(/^Double mat/);
    const { page } = watched;
    await page.getByRole('radio', { name: 'A frame' }).check();
    await given(page, 'Frame').fill('16 1/8 x 20 1/8');
    await given(page, 'Lip').fill('1/4');
    await settled(page);
    await page.getByText('All sizes in words').click();
    await expect.poll(() => page.locator('.described li').first().textContent()).toContain('16 × 20 in, 2 layers');
    expect(await jobText(page)).toContain('frame: {inside: 16 1/8 x 20 1/8, lip: 1/4}');
    await closed(watched);
  });

  test('makes a row of five', async () => {
    const watched = await opened(/^Row of three/);
    const { page } = watched;
    for (const i of [4, 5]) {
      await page.getByRole('button', { name: 'Add an opening' }).click();
      await given(page, 'Name').fill(`Print ${i}`);
    }
    await settled(page);
    await expect.poll(() => page.locator('h2', { hasText: 'Openings (5)' }).count()).toBe(1);
    await page.getByText('All sizes in words').click();
    await expect.poll(() => page.locator('.described li').first().textContent()).toContain('5 openings');
    expect((await jobText(page)).match(/name: /gu)).toHaveLength(6);
    await closed(watched);
  });

  test.each([
    ['by letting the border be worked out', 'Let the border at the sides be worked out', '(2 3/4 in)', ''],
    ['by the border that goes with the rest', 'Make it 2 3/4 in', '(2 3/4 in)', '2 3/4 in'],
    ['by letting the outer size be worked out', 'Let the outer width be worked out', '(3 in)', '3'],
  ])('says a contradiction at both fields, and resolves it %s', async (_, way, shown, value) => {
    const watched = await opened(/^Double mat/);
    const { page } = watched;
    await given(page, 'Sides').fill('3');
    const outer = page.locator('.field', { has: given(page, 'Outer size') });
    await expect.poll(() => outer.locator('.told').textContent()).toContain('16 1/2 in');
    expect(
      await page
        .locator('.field', { has: given(page, 'Sides') })
        .locator('.told')
        .textContent(),
    ).toContain('16 in');
    expect(await page.getByText('as it last went together').count()).toBe(1);
    await page.getByRole('button', { name: way }).first().click();
    await expect.poll(() => page.locator('.told .error').count()).toBe(0);
    expect(await given(page, 'Sides').inputValue()).toBe(value);
    if (value === '') expect(await given(page, 'Sides').getAttribute('placeholder')).toBe(shown);
    await closed(watched);
  });

  test('takes a decimal comma and any unit, and shows another unit without changing a length', async () => {
    const watched = await opened(/^Single mat: one board/);
    const { page } = watched;
    await given(page, 'Outer size').fill('41,9 cm x 20"');
    await settled(page);
    expect(await jobText(page)).toContain('outer: 41.9 cm x 20"\n');
    const before = await jobText(page);
    await page.getByRole('button', { name: 'millimetres' }).click();
    await expect.poll(() => page.locator('.sizes .outside').first().textContent()).toBe('419 mm');
    expect(await jobText(page)).toBe(before);
    await given(page, 'Overlap').fill('5');
    expect(await jobText(page)).toContain('overlap: 5 mm');
    await closed(watched);
  });

  test('says what a size follows from', async () => {
    const watched = await opened(/^Double mat/);
    const { page } = watched;
    await page.getByRole('button', { name: 'Sides: what it follows from' }).click();
    await expect.poll(() => page.locator('.sum').textContent()).toContain('left border = (16 in');
    await closed(watched);
  });

  test('changes the shape, with what that shape needs', async () => {
    const watched = await opened(/^Single mat: one board/);
    const { page } = watched;
    await given(page, 'Shape').selectOption('arch');
    await given(page, 'Rise').fill('1 1/2');
    await settled(page);
    expect(await page.locator('.told .error').count()).toBe(0);
    expect(await jobText(page)).toMatch(/shape: arch\n +rise: 1 1\/2/u);
    await given(page, 'Shape').selectOption('oval');
    expect(await jobText(page)).not.toContain('rise');
    await closed(watched);
  });

  test('keeps comments, order and quotes, and follows the text as the text follows the form', async () => {
    const watched = await opened(/^Double mat/);
    const { page } = watched;
    const before = await jobText(page);
    await given(page, 'Outer size').fill('17 x 21');
    expect(await jobText(page)).toBe(before.replace('outer: 16 x 20', 'outer: 17 x 21'));
    await page.locator('#text').fill(before.replace('overlap: 1/4', 'overlap: 3/8 # by eye'));
    await expect.poll(() => given(page, 'Overlap').inputValue()).toBe('3/8');
    await closed(watched);
  });

  test('marks a broken text at its line, and keeps the last picture', async () => {
    const watched = await opened(/^Double mat/);
    const { page } = watched;
    const before = await jobText(page);
    await page.locator('#text').fill(before.replace('outer: 16 x 20', 'outer: [16 x 20'));
    await expect.poll(() => page.locator('.lines .error').count()).toBeGreaterThan(0);
    expect(await page.locator('svg.face').count()).toBe(1);
    expect(await page.getByText('as it last went together').count()).toBe(1);
    await page.locator('#text').fill(before);
    await expect.poll(() => page.locator('.lines .error').count()).toBe(0);
    await closed(watched);
  });

  test('whatever a job can say has a field: the seldom said ones are opened first', async () => {
    const watched = await opened(/^Double mat/);
    const { page } = watched;
    await openSeldom(page);
    await given(page, 'Mark').selectOption('pencil');
    await given(page, 'Hinge').selectOption('left');
    await given(page, 'Due').fill('2031-03-12');
    await given(page, 'Lap').fill('3/4');
    await given(page, 'The slope shows').first().selectOption('reverse');
    await page.getByRole('button', { name: 'Overlap: each side by itself' }).click();
    await given(page, 'Overlap, bottom').fill('3/8');
    await settled(page);
    const text = await jobText(page);
    expect(text).toMatch(/mark: pencil/u);
    expect(text).toMatch(/hinge: left/u);
    expect(text).toMatch(/^due: 2031-03-12$/mu);
    expect(text).toMatch(/lap: 3\/4/u);
    expect(text).toMatch(/bevel: \{?\s*reverse: true/u);
    expect(text).toMatch(/overlap:[^a-z]*\{?\s*top: 1\/4,?\s*right: 1\/4,?\s*bottom: 3\/8/u);
    await page.getByRole('button', { name: 'Overlap: one for all sides' }).click();
    await settled(page);
    expect(await jobText(page)).toMatch(/overlap: 1\/4/u);
    await closed(watched);
  });

  test('of many openings the picture comes first, in a handful of elements, and what sizes follow from behind it', async () => {
    const watched = await openPage();
    const { page } = watched;
    const openings = Array.from({ length: 15 }, (_, i) => `  - {name: print ${i + 1}, size: 4 x 5}\n`).join('');
    const text = `units: in\nmat: {outer: 40 x 30}\nopenings:\n${openings}arrange: {rows: 3, gap: 1}\n`;
    await page
      .locator('#files')
      .setInputFiles({ name: 'many.yaml', mimeType: 'application/yaml', buffer: Buffer.from(text) });
    await page.locator('svg.face').waitFor();
    expect(await page.locator('svg.face g[aria-hidden] path').count()).toBeLessThan(15);
    const sides = given(page, 'Sides');
    await expect.poll(() => sides.getAttribute('placeholder'), { timeout: 10_000 }).toBe('(8 in)');
    await given(page, 'Outer size').fill('42 x 30');
    await expect.poll(() => sides.getAttribute('placeholder'), { timeout: 10_000 }).toBe('(9 in)');
    await page.getByRole('button', { name: 'Sides: what it follows from' }).click();
    await expect.poll(() => page.locator('.sum').textContent()).toContain('left border = (42 in');
    // A key in between is answered before what comes behind the picture.
    await given(page, 'Outer size').fill('43 x 30');
    await given(page, 'Outer size').fill('44 x 30');
    await expect.poll(() => page.locator('.sizes .outside').first().textContent()).toBe('44 in');
    await settled(page);
    expect(await sides.getAttribute('placeholder')).toBe('(10 in)');
    await closed(watched);
  });

  test('cuts letters, which want more than the small worker has', async () => {
    const watched = await opened(/^Single mat: one board/);
    const { page } = watched;
    await page.getByText('Names, bench and paper').click();
    await page.getByRole('button', { name: 'Add lettering' }).click();
    await given(page, 'Text').fill('HERON');
    await settled(page);
    await expect.poll(() => page.locator('.told .error').count()).toBe(0);
    await closed(watched);
  });

  test('measures between two edges, by keys too', async () => {
    const watched = await opened(/^Double mat/);
    const { page } = watched;
    await page.getByRole('button', { name: 'Measure between two edges' }).click();
    await page.getByRole('button', { name: 'left edge of the mat' }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: /^left edge of .*top mat/ }).focus();
    await page.keyboard.press('Enter');
    await expect
      .poll(() => page.locator('.measured').textContent())
      .toContain('2 3/4 in from the left edge of the mat');
    // It is the distance in the piece as it is now.
    await page.getByLabel('Outer size', { exact: true }).fill('17 x 20');
    await expect
      .poll(() => page.locator('.measured').textContent())
      .toContain('3 1/4 in from the left edge of the mat');
    await closed(watched);
  });
});
