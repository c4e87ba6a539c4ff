import { readFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { guideHtml } from '../../src/dev/guide/html.ts';
import { inBrowser, noBrowser, wants } from './browser.ts';

describe.skipIf(noBrowser)(`the guide in the page${wants}`, () => {
  const openPage = inBrowser();

  test('is saved as the one file that it is, the network off', async () => {
    const { page, expectQuiet } = await openPage();
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
