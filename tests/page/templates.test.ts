import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { main } from '../../src/cli/main.ts';
import { inBrowser, jobText, noBrowser, settled, start, wants } from './browser.ts';

const TOP = join(import.meta.dirname, '../..');
const NAMES = readdirSync(join(TOP, 'templates')).filter((file) => file !== 'shop.yaml' && file.endsWith('.yaml'));

/** One of each kind: straight, curved, stepped, of an outline, lettered, grooved, in a row, floated; what is equal for these is so for others alike. */
const MADE = [
  'double',
  'oval-portrait',
  'stepped-corners',
  'own-outline',
  'lettered',
  'groove',
  'row-three',
  'float',
].map((name) => `${name}.yaml`);

/** The commands whose files the page puts into one zip. */
const COMMANDS = ['pattern', 'ticket', 'proof', 'placement', 'labels', 'blanks', 'stock', 'intake'];

describe.skipIf(noBrowser)(`every template in a browser${wants}`, () => {
  const folder = mkdtempSync(join(tmpdir(), 'matwright-page-'));
  const openPage = inBrowser();
  afterAll(() => rmSync(folder, { recursive: true }));

  /** Opened by its starter, and a customer put in; its text then. */
  async function changedIn(page: Page, file: string): Promise<string> {
    const text = readFileSync(join(TOP, 'templates', file), 'utf8');
    const words = /^# (?!yaml-)(.{12})/mu.exec(text)![1]!;
    await start(page, new RegExp(words.replace(/[()]/gu, '.'), 'u'));
    await page.getByText('Names, bench and paper').click();
    await page.getByLabel('Customer').fill('Saltmarsh <b>Print</b> Room & Co');
    await settled(page);
    const changed = await jobText(page);
    expect(changed, file).not.toBe(text);
    // Every other line stands as it was.
    const others = changed.split('\n').filter((line) => !line.startsWith('customer:'));
    expect(others.join('\n'), file).toBe(text);
    return changed;
  }

  test('the others are opened and changed, one after the other', { timeout: 120_000 }, async () => {
    const { page, context, expectQuiet } = await openPage();
    for (const file of NAMES.filter((each) => !MADE.includes(each))) {
      await changedIn(page, file);
      await page.getByRole('button', { name: 'Pieces', exact: true }).click();
    }
    await expectQuiet();
    await context.close();
  });

  test.each(MADE)(
    '%s is opened, changed, and comes out as from the command line',
    { timeout: 120_000 },
    async (file) => {
      const { page, context, expectQuiet } = await openPage();
      const changed = await changedIn(page, file);
      await page.getByRole('button', { name: 'Print and save' }).click();
      const [download] = await Promise.all([
        page.waitForEvent('download', { timeout: 90_000 }),
        page.getByRole('button', { name: 'Save everything as one zip' }).click(),
      ]);
      const files = unzipSync(readFileSync((await download.path())!));
      await expectQuiet();
      await context.close();

      const own = join(folder, basename(file, '.yaml'));
      const job = join(folder, file);
      writeFileSync(job, changed);
      vi.spyOn(process.stdout, 'write').mockReturnValue(true);
      vi.spyOn(process.stderr, 'write').mockReturnValue(true);
      const made = changed.includes('artwork:') ? COMMANDS : COMMANDS.filter((each) => each !== 'placement');
      for (const command of made) expect(await main([command, job, '--out', own], '0'), command).toBe(0);
      vi.restoreAllMocks();
      // What the command line notes of its own runs is no output.
      const expected = readdirSync(own)
        .filter((name) => name !== '.matwright.json')
        .sort();
      expect(Object.keys(files).sort()).toEqual(expected);
      for (const name of expected) {
        expect(Buffer.from(files[name]!).equals(readFileSync(join(own, name))), name).toBe(true);
      }
    },
  );
});
