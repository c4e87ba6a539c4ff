import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, Page, Worker } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import { built } from '../built.ts';
import { launchProgram } from './program.ts';

export { noBrowser, wants } from './program.ts';

/** A browser, once there is a page to open in it. */
async function launch(): Promise<Browser> {
  await built();
  return launchProgram();
}

const pageFile = async (): Promise<string> => pathToFileURL(join(await built(), 'matwright.html')).href;

/** A page that is watched: what it says on the console, what it asks for, what its policy forbade, in its workers too. */
export interface Watched {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Fails where anything went wrong, or was tried, since it was opened. */
  readonly expectQuiet: () => Promise<void>;
}

interface Witness {
  violations?: string[];
}

/** Runs in the page and in each of its workers, before anything else can. */
function watchViolations(): void {
  const witness = globalThis as Witness;
  witness.violations = [];
  globalThis.addEventListener('securitypolicyviolation', (event) => {
    const { violatedDirective, blockedURI } = event as SecurityPolicyViolationEvent;
    witness.violations?.push(`${violatedDirective} ${blockedURI}`);
  });
}

const violationsOf = (): readonly string[] => (globalThis as Witness).violations ?? ['nobody watched'];

export interface HowOpened {
  readonly url?: string;
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  readonly touch?: boolean;
  readonly context?: BrowserContext;
}

/** A browser for the tests of a group, closed after them; what it gives opens the page by its file, the network off. */
export function inBrowser(): (how?: HowOpened) => Promise<Watched> {
  let browser: Browser | undefined;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(() => browser?.close());
  return (how) => openPage(browser!, how);
}

async function openPage(browser: Browser, how: HowOpened = {}): Promise<Watched> {
  const context =
    how.context ??
    (await browser.newContext({
      viewport: { width: how.width ?? 1200, height: how.height ?? 800 },
      colorScheme: how.dark === true ? 'dark' : 'light',
      hasTouch: how.touch === true,
      acceptDownloads: true,
    }));
  if (how.url === undefined) await context.setOffline(true);
  const wrong: string[] = [];
  const workers: Worker[] = [];
  context.on('request', (request) => {
    const url = request.url();
    const own =
      how.url === undefined
        ? url.startsWith('file:')
        : url === how.url || (how.url.endsWith('/') && url.startsWith(how.url));
    if (!own && !/^(?:blob|data):/u.test(url)) wrong.push(`request ${url.slice(0, 200)}`);
  });
  const page = await context.newPage();
  await page.addInitScript(watchViolations);
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) wrong.push(`console ${message.text()}`);
  });
  page.on('pageerror', (error) => wrong.push(`error ${error.message}`));
  page.on('worker', (worker) => {
    workers.push(worker);
    worker.evaluate(watchViolations).catch(() => undefined);
  });
  await page.goto(how.url ?? (await pageFile()));
  const expectQuiet = async (): Promise<void> => {
    const own = await page.evaluate(violationsOf);
    const theirs = await Promise.all(workers.map((worker) => worker.evaluate(violationsOf).catch(() => [])));
    expect([...wrong, ...own, ...theirs.flat()]).toEqual([]);
  };
  return { page, context, expectQuiet };
}

/** Opens a starter by the first words of what it says of itself. */
export async function start(page: Page, words: RegExp): Promise<void> {
  await page.getByRole('button', { name: words }).first().click();
  await page.locator('svg.face').waitFor();
}

/** Drops a file of this text on the page, wherever one is. */
export const drop = (page: Page, name: string, text: string): Promise<void> =>
  page.locator('body').evaluate(
    (body, [file, words]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([words!], file!));
      body.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
    },
    [name, text],
  );

/** The field that most tests type into. */
export const outer = (page: Page) => page.getByLabel('Outer size', { exact: true });

/** Goes to a place of the page, or presses another button, by all of its words. */
export const place = (page: Page, name: string): Promise<void> =>
  page.getByRole('button', { name, exact: true }).click();

/** Waits until it is said that the piece is kept. */
export const kept = (page: Page) =>
  expect.poll(() => page.locator('.kept').textContent()).toContain('kept in this browser only');

/** A double mat, changed to 17 x 21 and kept. */
export async function keepDouble(page: Page): Promise<void> {
  await start(page, /^Double mat/);
  await outer(page).fill('17 x 21');
  await kept(page);
}

/** Chooses texts as files. */
export const give = (page: Page, ...files: readonly (readonly [name: string, text: string])[]): Promise<void> =>
  page
    .locator('#files')
    .setInputFiles(files.map(([name, text]) => ({ name, mimeType: 'application/yaml', buffer: Buffer.from(text) })));

/** Opens all fields that are seldom said. What lies in the last part is there a moment after it was opened: only then are they counted. */
export async function openSeldom(page: Page): Promise<void> {
  await page.getByText('Names, bench and paper').click();
  await page.getByText('More of the piece').waitFor();
  for (const each of await page.getByText(/^More of /).all()) await each.click();
}

/** The job's text, as the text view has it. */
export async function jobText(page: Page): Promise<string> {
  const toggle = page.getByRole('button', { name: 'Text', exact: true });
  if ((await toggle.getAttribute('aria-pressed')) !== 'true') await toggle.click();
  return page.getByLabel('The job as text').last().inputValue();
}

/** Waits until the picture is that of the text that stands there. */
export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(() => document.documentElement.dataset.asking === 'no');
}
