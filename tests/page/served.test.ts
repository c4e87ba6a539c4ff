import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { forget } from '../../src/cli/files/this-run.ts';
import { main } from '../../src/cli/main.ts';
import { servedPage } from '../../src/cli/page-file.ts';
import { serve } from '../../src/cli/serve/server.ts';
import { built } from '../built.ts';
import { MARK } from '../pictures/marks.ts';
import { readPdf } from '../readers/pdf-lines.ts';
import { inBrowser, noBrowser, outer, settled, wants } from './browser.ts';

const JOB = '# by hand\nmat: {outer: 10 x 12}\nopenings: [{size: 6 x 8}]\n';

describe.skipIf(noBrowser)(`the page served with a folder${wants}`, () => {
  const folder = mkdtempSync(join(tmpdir(), 'matwright-served-'));
  const openPage = inBrowser();
  beforeAll(async () => {
    vi.spyOn(process, 'argv', 'get').mockReturnValue(['node', join(await built(), 'cli.js')]);
  });
  beforeEach(() => {
    // A server is a run of its own; the command line of another test has read the job.
    forget();
    writeFileSync(join(folder, 'job.yaml'), JOB);
  });
  afterAll(() => {
    vi.restoreAllMocks();
    rmSync(folder, { recursive: true });
  });

  const opened = async () => {
    const site = await serve(folder, (base) => servedPage(base, 'monday'));
    const watched = await openPage({ url: site.address });
    const { page } = watched;
    await page.getByRole('heading', { name: 'In the folder monday' }).waitFor();
    await page.getByRole('button', { name: 'job.yaml' }).click();
    await page.locator('svg.face').waitFor();
    return { site, ...watched };
  };
  const onDisk = () => readFileSync(join(folder, 'job.yaml'), 'utf8');

  test('reads a job there and saves it back, and outputs as the command line makes them', async () => {
    const { site, page, context, expectQuiet } = await opened();
    await outer(page).fill('11 x 12');
    await page.getByRole('button', { name: 'Save the job' }).click();
    await expect.poll(() => page.locator('.saying').textContent()).toContain('Saved into job.yaml');
    expect(onDisk()).toBe(JOB.replace('10 x 12', '11 x 12'));
    // Once more, over what was just saved.
    await outer(page).fill('12 x 12');
    await page.getByRole('button', { name: 'Save the job' }).click();
    await expect.poll(onDisk).toBe(JOB.replace('10 x 12', '12 x 12'));
    await settled(page);
    await page.getByRole('button', { name: 'Print and save' }).click();
    await page.getByRole('button', { name: 'Save Bench ticket' }).click();
    await expect.poll(() => page.locator('.became').textContent(), { timeout: 20_000 }).toContain('saved into job');
    vi.spyOn(process.stdout, 'write').mockReturnValue(true);
    const code = await main(['ticket', join(folder, 'job.yaml'), '--out', join(folder, 'cli')], '0');
    vi.mocked(process.stdout.write).mockRestore();
    expect(code).toBe(0);
    expect(readFileSync(join(folder, 'job/ticket.pdf')).equals(readFileSync(join(folder, 'cli/ticket.pdf')))).toBe(
      true,
    );
    await expectQuiet();
    await context.close();
    await site.close();
  });

  test('after a reload a piece is saved over the file that it came from, without being asked', async () => {
    const { site, page, context, expectQuiet } = await opened();
    await outer(page).fill('11 x 12');
    await page.getByRole('button', { name: 'Save the job' }).click();
    await expect.poll(onDisk).toBe(JOB.replace('10 x 12', '11 x 12'));
    await expect.poll(() => page.locator('.kept').textContent()).toContain('kept in this browser');
    await page.waitForTimeout(600);
    await page.reload();
    await page.getByRole('button', { name: /^job\.yaml job\.yaml/ }).click();
    await page.locator('svg.face').waitFor();
    await outer(page).fill('12 x 12');
    await page.getByRole('button', { name: 'Save the job' }).click();
    await expect.poll(onDisk).toBe(JOB.replace('10 x 12', '12 x 12'));
    expect(await page.getByRole('alert').count()).toBe(0);
    await expectQuiet();
    // What something else has changed since the reload is noticed all the same.
    writeFileSync(join(folder, 'job.yaml'), 'title: other\n');
    await outer(page).fill('13 x 12');
    await page.getByRole('button', { name: 'Save the job' }).click();
    await expect.poll(() => page.getByRole('alert').textContent()).toContain('changed by something else');
    await context.close();
    await site.close();
  });

  test('what something else has changed meanwhile is not saved over without being asked', async () => {
    const { site, page, context } = await opened();
    await outer(page).fill('11 x 12');
    writeFileSync(join(folder, 'job.yaml'), 'title: other\n');
    await page.getByRole('button', { name: 'Save the job' }).click();
    await expect.poll(() => page.getByRole('alert').textContent()).toContain('changed by something else');
    expect(onDisk()).toBe('title: other\n');
    await page.getByRole('button', { name: 'Save over it' }).click();
    await expect.poll(onDisk).toBe(JOB.replace('10 x 12', '11 x 12'));
    await context.close();
    await site.close();
  });

  test('where the server is gone nothing is lost: it is told, and saved as a download', async () => {
    const { site, page, context } = await opened();
    await outer(page).fill('11 x 12');
    await expect.poll(() => page.locator('.kept').textContent()).toContain('kept in this browser');
    await site.close();
    await page.getByRole('button', { name: 'Save the job' }).click();
    await expect.poll(() => page.getByRole('alert').textContent()).toContain('does not answer any more');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as a download' }).click(),
    ]);
    expect(readFileSync((await download.path())!, 'utf8')).toBe(JOB.replace('10 x 12', '11 x 12'));
    expect(onDisk()).toBe(JOB);
    await context.close();
  });
});

describe.skipIf(noBrowser)(`the shop’s mark on the served page${wants}`, () => {
  const folder = mkdtempSync(join(tmpdir(), 'matwright-marked-'));
  const openPage = inBrowser();
  afterAll(() => rmSync(folder, { recursive: true }));

  test('goes onto the intake form as on the command line', async () => {
    forget();
    writeFileSync(join(folder, 'job.yaml'), JOB);
    writeFileSync(join(folder, 'shop.yaml'), 'shop: {name: Saltmarsh Print Room, mark: mark.svg}\n');
    writeFileSync(join(folder, 'mark.svg'), MARK);
    vi.spyOn(process, 'argv', 'get').mockReturnValue(['node', join(await built(), 'cli.js')]);
    const site = await serve(folder, (base) => servedPage(base, 'marked'));
    const { page, context } = await openPage({ url: site.address });
    await page.getByRole('heading', { name: 'In the folder marked' }).waitFor();
    await page.getByRole('button', { name: 'job.yaml' }).click();
    await page.locator('svg.face').waitFor();
    await settled(page);
    await page.getByRole('button', { name: 'Print and save' }).click();
    await page.getByRole('button', { name: 'Save Intake form' }).click();
    await expect.poll(() => page.locator('.became').textContent(), { timeout: 20_000 }).toContain('saved into job');
    vi.spyOn(process.stdout, 'write').mockReturnValue(true);
    const code = await main(['intake', join(folder, 'job.yaml'), '--out', join(folder, 'cli')], '0');
    vi.mocked(process.stdout.write).mockRestore();
    expect(code).toBe(0);
    const [ofPage, ofLine] = ['job', 'cli'].map((each) => readFileSync(join(folder, each, 'intake.pdf')));
    expect(ofPage!.equals(ofLine!)).toBe(true);
    const { pages } = await readPdf(new Uint8Array(ofPage!));
    expect(pages[0]!.lines.some(({ fill }) => fill === '#1d4e63')).toBe(true);
    await context.close();
    await site.close();
    vi.restoreAllMocks();
  });
});
