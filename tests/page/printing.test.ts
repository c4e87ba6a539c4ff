import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { built } from '../built.ts';
import { inBrowser, jobText, noBrowser, settled, start, wants } from './browser.ts';

/** Bytes that the file may have, without PNG. */
const MOST = 4_500_000;

// It may be the first that wants a build.
test('the file is no larger than it may be', { timeout: 200_000 }, async () => {
  const html = readFileSync(join(await built(), 'matwright.html'));
  process.stdout.write(`the page: ${html.length} bytes, ${gzipSync(html).length} gzipped\n`);
  expect(html.length).toBeLessThanOrEqual(MOST);
});

describe.skipIf(noBrowser)(`out of the page${wants}`, () => {
  const openPage = inBrowser();

  test.each([
    ['Letter', /^Single mat: one board/, { width: 215.9, height: 279.4 }],
    ['A4', /^Three roundels/, { width: 210, height: 297 }],
  ])('prints pages of %s at their own size, the line of the check 100 mm long', async (_, words, paper) => {
    const { page, context, expectQuiet } = await openPage();
    await page.evaluate(() => {
      globalThis.print = () => {
        document.documentElement.dataset.printed = 'yes';
      };
    });
    await start(page, words);
    await settled(page);
    await page.getByRole('button', { name: 'Print and save' }).click();
    await page.getByRole('button', { name: 'Print Pattern' }).click();
    await page.waitForFunction(() => document.documentElement.dataset.printed === 'yes');
    const sheets = await page.locator('#print svg').count();
    const pdf = await page.pdf({ preferCSSPageSize: true });
    await expectQuiet();
    await context.close();
    const pages = await pagesOf(pdf);
    expect(pages).toHaveLength(sheets);
    for (const { width, height } of pages) {
      // A printer takes whole points.
      const [short, long] = [Math.min(width, height), Math.max(width, height)];
      expect(Math.abs(short - paper.width)).toBeLessThan(0.36);
      expect(Math.abs(long - paper.height)).toBeLessThan(0.36);
    }
    const lines = pages[0]!.lines;
    expect(Math.min(...lines.map((length) => Math.abs(length - 100)))).toBeLessThan(0.02);
  });

  test('works from a static server whose policy names the script by its hash', async () => {
    const html = readFileSync(join(await built(), 'matwright.html'), 'utf8');
    // As the file itself publishes it, in its own policy.
    const [hash] = /(?<=script-src )'sha256-[^']+'/u.exec(html)!;
    const server: Server = createServer((request, response) => {
      const found = request.url === '/matwright.html';
      response.writeHead(found ? 200 : 404, {
        'content-type': 'text/html; charset=utf-8',
        'content-security-policy': `default-src 'none'; script-src ${hash}; style-src 'unsafe-inline'; worker-src blob:; font-src data:; img-src blob: data:`,
      });
      response.end(found ? html : '');
    });
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
    const { port } = server.address() as AddressInfo;
    const { page, context, expectQuiet } = await openPage({ url: `http://127.0.0.1:${port}/matwright.html` });
    await start(page, /^Double mat/);
    await page.getByRole('tab', { name: 'Back' }).click();
    await page.locator('.backs svg').first().waitFor();
    await expectQuiet();
    await context.close();
    await new Promise((resolve) => server.close(resolve));
  });

  test('long work can be stopped, and made anew', async () => {
    const { page, context, expectQuiet } = await openPage();
    await start(page, /^Group of seven/);
    await page.getByRole('button', { name: 'Print and save' }).click();
    await page.getByRole('button', { name: 'Save everything as one zip' }).click();
    await page.getByRole('button', { name: 'Stop' }).click();
    await expect.poll(() => page.locator('.became').textContent()).toContain('nothing was saved');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save Bench ticket' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('ticket.pdf');
    await expectQuiet();
    await context.close();
  });

  test('says beside each row what it takes, before it is made', async () => {
    const { page, context, expectQuiet } = await openPage();
    await start(page, /^Single mat: one board/);
    await page.getByRole('button', { name: 'Print and save' }).click();
    const row = (name: string) => page.locator('.row', { has: page.getByRole('heading', { name, exact: true }) });
    await expect
      .poll(() => row('Pattern').locator('.takes').textContent(), { timeout: 20_000 })
      .toMatch(/^\d+ sheets of Letter$/u);
    await expect
      .poll(() => row('Bench ticket').locator('.takes').textContent(), { timeout: 20_000 })
      .toBe('one sheet of Letter');
    await expect
      .poll(() => row('Cut file: laser').locator('.takes').textContent(), { timeout: 20_000 })
      .toMatch(/ in of the bed$/u);
    await expectQuiet();
    await context.close();
  });

  test('saves the job itself, byte for byte as its text', async () => {
    const { page, context } = await openPage();
    await start(page, /^Double mat/);
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save the job' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('double.yaml');
    expect(readFileSync((await download.path())!, 'utf8')).toBe(await jobText(page));
    await context.close();
  });
});

interface PrintedPage {
  /** mm. */
  readonly width: number;
  readonly height: number;
  /** How long its straight strokes are, mm. */
  readonly lines: readonly number[];
}

/** What another reader finds on the pages of a PDF. */
async function pagesOf(pdf: Buffer): Promise<readonly PrintedPage[]> {
  const { getDocument, OPS } = await import('pdfjs-dist/legacy/build/pdf.mjs');
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  const mm = (points: number): number => (points * 25.4) / 72;
  const pages: PrintedPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { width, height } = page.getViewport({ scale: 1 });
    const { fnArray, argsArray } = await page.getOperatorList();
    const lines: number[] = [];
    const stack: number[][] = [];
    let matrix = [1, 0, 0, 1];
    fnArray.forEach((fn, i) => {
      const args = argsArray[i];
      if (fn === OPS.save) stack.push(matrix);
      if (fn === OPS.restore) matrix = stack.pop() ?? matrix;
      if (fn === OPS.transform) {
        const [a, b, c, d] = args as [number, number, number, number];
        const [p, q, r, s] = matrix as [number, number, number, number];
        matrix = [a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s];
      }
      if (fn !== OPS.constructPath) return;
      const [p, q, r, s] = matrix as [number, number, number, number];
      const [, numbers] = args as [readonly number[], readonly number[]];
      for (let k = 0; k + 3 < numbers.length; k += 2) {
        const [dx, dy] = [numbers[k + 2]! - numbers[k]!, numbers[k + 3]! - numbers[k + 1]!];
        lines.push(mm(Math.hypot(dx * p + dy * r, dx * q + dy * s)));
      }
    });
    pages.push({ width: mm(width), height: mm(height), lines });
  }
  return pages;
}
