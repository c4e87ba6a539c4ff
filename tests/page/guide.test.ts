import { readFile } from 'node:fs/promises';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { guideHtml } from '../../src/dev/guide/html.ts';
import { launch, noBrowser, openPage, wants } from './browser.ts';

describe.skipIf(noBrowser)(`the guide in the page${wants}`, () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(() => browser.close());

  test('is saved as the one file that it is, the network off', async () => {
    const { page, expectQuiet } = await openPage(browser);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the guide' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('guide.html');
    expect(await readFile(await download.path(), 'utf8')).toBe(guideHtml('.'));
    await page.getByText('The guide was saved as guide.html among your downloads.').waitFor();
    await expectQuiet();
  });
});
