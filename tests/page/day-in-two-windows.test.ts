import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { inBrowser, noBrowser, outer, settled, wants } from './browser.ts';

const job = (title: string, outer = '10 x 12'): string =>
  `title: ${title}\nmat: {outer: ${outer}}\nopenings: [{size: 5 x 7}]\n`;

describe.skipIf(noBrowser)(`a day that changes while it is looked at${wants}`, () => {
  const openPage = inBrowser();

  const give = (page: Page, ...titles: readonly string[]) =>
    page.locator('#files').setInputFiles(
      titles.map((title) => ({
        name: `${title}.yaml`,
        mimeType: 'application/yaml',
        buffer: Buffer.from(job(title)),
      })),
    );
  const day = async (page: Page, count: number): Promise<void> => {
    await page.getByRole('button', { name: 'The day', exact: true }).click();
    await page.getByRole('heading', { name: `Pieces (${count})` }).waitFor();
  };
  const cut = (page: Page, title: string) => page.getByRole('checkbox', { name: `${title}: cut` });

  test('ticks of two windows are all kept', async () => {
    const { page: one, context } = await openPage();
    await give(one, 'Heron', 'Tern');
    await one.getByRole('heading', { name: 'Pieces (2)' }).waitFor();
    const { page: two } = await openPage({ context });
    await day(two, 2);
    await cut(one, 'Heron').check();
    await cut(two, 'Tern').check();
    await two.getByRole('button', { name: 'Pieces', exact: true }).click();
    await day(two, 2);
    await expect.poll(() => cut(two, 'Heron').isChecked()).toBe(true);
    expect(await cut(two, 'Tern').isChecked()).toBe(true);
    await context.close();
  });

  test('what another window makes of a piece is what is cut, and sheets of before are shown no more', async () => {
    const { page: one, context, expectQuiet } = await openPage();
    await give(one, 'Heron', 'Tern');
    await one.getByRole('heading', { name: 'Pieces (2)' }).waitFor();
    const lay = async (): Promise<void> => {
      await one.getByRole('button', { name: 'Lay the blanks on sheets' }).click();
      await one.locator('.sheet-to-cut').first().waitFor({ timeout: 20_000 });
    };
    await lay();
    const chosen = one.getByRole('checkbox', { name: 'Tern: in the run' });
    const made = one.locator('.stop input:checked');
    await one.locator('.stop input').first().check();
    await chosen.uncheck();
    expect(await one.locator('.sheet-to-cut').count()).toBe(0);
    // Of the run that it was laid for it holds still.
    await chosen.check();
    expect(await one.locator('.sheet-to-cut').count()).toBeGreaterThan(0);
    // Ticks of another plan take none of this one's away.
    await chosen.uncheck();
    await lay();
    await one.locator('.stop input').nth(1).check();
    await chosen.check();
    await lay();
    await expect.poll(() => made.count()).toBe(1);
    expect(await one.locator('.stop input').first().isChecked()).toBe(true);
    const { page: two } = await openPage({ context });
    await two.getByRole('button', { name: /^Heron / }).click();
    await settled(two);
    await outer(two).fill('18 x 20');
    await expect.poll(() => two.locator('.kept').textContent()).toContain('kept in this browser');
    await expect.poll(() => one.locator('.sheet-to-cut').count()).toBe(0);
    await one.getByRole('button', { name: 'Cut them as one run' }).click();
    await one.getByRole('button', { name: 'All steps' }).click();
    const steps = (await one.locator('.steps li').allTextContents()).join('\n');
    // A border of 6 1/2 in left and right where it was 2 1/2 in.
    expect(steps).toContain('6 1/2');
    await expectQuiet();
    await context.close();
  });
});
