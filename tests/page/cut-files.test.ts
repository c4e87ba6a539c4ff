import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { unzipSync } from 'fflate';
import type { Download } from 'playwright-core';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { main } from '../../src/cli/main.ts';
import { inBrowser, noBrowser, settled, wants } from './browser.ts';

const EXAMPLES = join(import.meta.dirname, '../../examples');
const SHOP = readFileSync(join(EXAMPLES, 'terns/shop.yaml'));
const PICTURE = readFileSync(join(EXAMPLES, 'heron/heron.png'));
const JOB = readFileSync(join(EXAMPLES, 'terns/job.yaml'), 'utf8').replace(
  'overlap: 6}',
  'overlap: 6, picture: heron.png}',
);

/** What is saved, by the row's title and its format, and the command that makes the same. */
const SAVED: readonly (readonly [title: string, format: string, command: readonly string[]])[] = [
  ...(['laser', 'knife', 'bevel'] as const).flatMap((machine) =>
    ['svg', 'dxf', 'hpgl'].map((format) => {
      return [`Cut file: ${machine}`, format, ['cutfile', '--machine', machine, '--format', format]] as const;
    }),
  ),
  ...['pdf', 'svg'].map((format) => ['Proof', format, ['proof', '--format', format]] as const),
  ...['pdf', 'svg', 'tiles'].map((format) => ['Pattern', format, ['pattern', '--format', format]] as const),
];

describe.skipIf(noBrowser)(`out of a piece with a picture, in a shop with machines${wants}`, () => {
  const folder = mkdtempSync(join(tmpdir(), 'matwright-cut-files-'));
  const openPage = inBrowser();
  afterAll(() => rmSync(folder, { recursive: true }));

  /** The files that were saved: those of a zip, where it was one. */
  async function bytesOf(downloads: readonly Download[]): Promise<ReadonlyMap<string, Buffer>> {
    const all = new Map<string, Buffer>();
    for (const download of downloads) {
      const bytes = readFileSync((await download.path())!);
      if (!download.suggestedFilename().endsWith('.zip')) all.set(download.suggestedFilename(), bytes);
      else for (const [name, each] of Object.entries(unzipSync(bytes))) all.set(name, Buffer.from(each));
    }
    return all;
  }

  test('every format has the bytes of the command line', { timeout: 180_000 }, async () => {
    for (const [name, bytes] of [
      ['shop.yaml', SHOP],
      ['job.yaml', JOB],
      ['heron.png', PICTURE],
    ] as const)
      writeFileSync(join(folder, name), bytes);
    const { page, context, expectQuiet } = await openPage();
    await page
      .locator('#files')
      .setInputFiles([join(folder, 'shop.yaml'), join(folder, 'job.yaml'), join(folder, 'heron.png')]);
    await page.locator('svg.face image').waitFor();
    await settled(page);
    await page.getByRole('button', { name: 'Print and save' }).click();
    vi.spyOn(process.stdout, 'write').mockReturnValue(true);
    vi.spyOn(process.stderr, 'write').mockReturnValue(true);
    for (const [i, [title, format, command]] of SAVED.entries()) {
      const downloads: Download[] = [];
      const take = (download: Download): number => downloads.push(download);
      page.on('download', take);
      const row = page.locator('.row', { has: page.getByRole('heading', { name: title, exact: true }) });
      await row.getByLabel(`Format of ${title}`).selectOption(format);
      await row.getByRole('button', { name: `Save ${title}` }).click();
      await expect.poll(() => row.locator('.became').textContent(), { timeout: 60_000 }).toMatch(/saved|Saved/u);
      const out = join(folder, `out-${i}`);
      const [name, ...options] = command;
      expect(await main([name!, join(folder, 'job.yaml'), ...options, '--out', out], '0'), `${command}`).toBe(0);
      const expected = readdirSync(out).filter((file) => file !== '.matwright.json');
      const zipped = expected.length > 3;
      await expect.poll(() => downloads.length).toBe(zipped ? 1 : expected.length);
      page.off('download', take);
      const saved = await bytesOf(downloads);
      expect([...saved.keys()].sort(), `${title}, ${format}`).toEqual(expected.sort());
      for (const [file, bytes] of saved)
        expect(bytes.equals(readFileSync(join(out, file))), `${file}, ${format}`).toBe(true);
    }
    vi.restoreAllMocks();
    await expectQuiet();
    await context.close();
  });
});
