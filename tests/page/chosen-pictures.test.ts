import { appendFileSync, copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { inBrowser, noBrowser, settled, start, wants } from './browser.ts';

const HERON = join(import.meta.dirname, '../../examples/heron/heron.png');

describe.skipIf(noBrowser)(`a picture that was chosen${wants}`, () => {
  const folder = mkdtempSync(join(tmpdir(), 'matwright-picture-'));
  const openPage = inBrowser();
  afterAll(() => rmSync(folder, { recursive: true }));

  test('is held as it was, though its file is changed on the disk since, and may be chosen anew', async () => {
    const file = join(folder, 'heron.png');
    copyFileSync(HERON, file);
    const { page, context, expectQuiet } = await openPage();
    await start(page, /^Double mat/);
    await page.locator('#picture-0').setInputFiles(file);
    await expect.poll(() => page.locator('svg.face image').count()).toBe(1);
    // Where it stood there still, the same file chosen once more would be no change.
    expect(await page.locator('#picture-0').inputValue()).toBe('');
    appendFileSync(file, 'changed');
    await settled(page);
    await page.getByRole('button', { name: 'At the cutter' }).click();
    await page.locator('.step').waitFor();
    await expectQuiet();
    await context.close();
  });
});
