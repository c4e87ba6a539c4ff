import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { launchProgram } from '../page/program.ts';

export const about =
  'the page in Chromium: file to first picture, key to new picture (goal 16 ms for a double mat, 150 ms for 400 openings), heap after a thousand edits';
export const light = false;

const FILE = join(import.meta.dirname, '../../dist/matwright.html');

const openings = (count: number, columns: number): string =>
  `units: mm\nmat: {border: 60}\nopenings:\n${Array.from({ length: count }, (_, i) => `  - {name: print ${i + 1}, artwork: ${50 + ((i * 7) % 13)} x ${60 + ((i * 5) % 11)}}`).join('\n')}\narrange: {columns: ${columns}, gap: 15}\n`;

const JOBS: Readonly<Record<string, string>> = {
  'a double mat':
    'units: in\nmat:\n  outer: 16 x 20\n  layers:\n    - {board: {name: Bone, thickness: 1.4 mm, colour: "#efe9dc"}}\n    - {board: {name: Slate, thickness: 1.4 mm, colour: "#5c6670"}, reveal: 1/4}\nopenings: [{artwork: 10 1/2 x 13 1/2, overlap: 1/4}]\n',
  'seven openings': openings(7, 4),
  '400 openings': openings(400, 20),
};

/** From a change of the text to the elements that show it, and to the frame that has them; ms. */
interface Taken {
  readonly shown: number;
  readonly frame: number;
}

async function opened(browser: Browser, text: string): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1200, height: 800 } });
  // What runs these files gives functions that are sent to the page their names by it.
  await page.addInitScript({ content: 'globalThis.__name = (named) => named;' });
  await page.goto(pathToFileURL(FILE).href);
  await page
    .locator('#files')
    .setInputFiles({ name: 'job.yaml', mimeType: 'application/yaml', buffer: Buffer.from(text) });
  await page.locator('svg.face').waitFor();
  await page.waitForFunction(() => document.documentElement.dataset.asking === 'no');
  return page;
}

/** Types sizes into a field, measured within the page. */
async function typed(page: Page, id: string, values: readonly string[]): Promise<readonly Taken[]> {
  return page.evaluate(
    async ([field, all]) => {
      const input = document.getElementById(field) as HTMLInputElement;
      const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!;
      const answered = (): Promise<void> =>
        new Promise((resolve) => {
          const seen = new MutationObserver(() => {
            if (document.documentElement.dataset.asking === 'yes') return;
            seen.disconnect();
            resolve();
          });
          seen.observe(document.documentElement, { attributes: true, attributeFilter: ['data-asking'] });
        });
      const frame = (): Promise<void> => new Promise((resolve) => requestAnimationFrame(() => resolve()));
      const taken: { shown: number; frame: number }[] = [];
      input.focus();
      for (const value of all) {
        await frame();
        // Keys come when they please, not with a frame.
        await new Promise((resolve) => setTimeout(resolve, 40 + Math.random() * 17));
        const start = performance.now();
        const answer = answered();
        set.call(input, value);
        input.dispatchEvent(new InputEvent('input', { bubbles: true }));
        await answer;
        await Promise.resolve();
        const shown = performance.now() - start;
        await frame();
        taken.push({ shown, frame: performance.now() - start });
      }
      return taken;
    },
    [id, [...values]] as const,
  );
}

const quantile = (values: readonly number[], part: number): string =>
  [...values]
    .sort((a, b) => a - b)
    [Math.min(values.length - 1, Math.floor(part * values.length))]!.toFixed(1)
    .padStart(6);

/** `[KEYS]`, 60 unless given. */
export async function run([keys = '60']: readonly string[]): Promise<void> {
  if (!existsSync(FILE)) throw new Error('build it first: npm run build');
  const browser = await launchProgram();
  try {
    for (const [name, text] of Object.entries(JOBS)) {
      const page = await opened(browser, text);
      const [id, values] =
        name === 'a double mat'
          ? (['at-mat-outer', ['16 x 20', '16 1/2 x 20', '16 1/2 x 21', '17 x 21']] as const)
          : (['at-mat-border', ['60', '61', '62.5', '64']] as const);
      const all = Array.from({ length: Number(keys) }, (_, i) => values[(i + 1) % values.length]!);
      await typed(page, id, all.slice(0, 8));
      const taken = await typed(page, id, all);
      const [shown, frame] = [taken.map((each) => each.shown), taken.map((each) => each.frame)];
      console.log(
        `  ${name.padEnd(15)} key to new picture ${quantile(shown, 0.5)} ms (p95 ${quantile(shown, 0.95)}), to the frame with it ${quantile(frame, 0.5)} ms (p95 ${quantile(frame, 0.95)})`,
      );
      await page.close();
    }
    await firstPictures(browser);
    await heap(browser);
  } finally {
    await browser.close();
  }
}

async function firstPictures(browser: Browser): Promise<void> {
  const times: number[] = [];
  for (let i = 0; i < 5; i++) {
    const page = await browser.newPage();
    const start = performance.now();
    await page.goto(pathToFileURL(FILE).href);
    await page.locator('.card svg.small').first().waitFor();
    times.push(performance.now() - start);
    await page.close();
  }
  console.log(`  file to first picture ${quantile(times, 0.5)} ms (most ${quantile(times, 1)})`);
}

async function heap(browser: Browser): Promise<void> {
  const page = await opened(browser, JOBS['a double mat']!);
  const session = await page.context().newCDPSession(page);
  await session.send('Performance.enable');
  const used = async (): Promise<number> => {
    await session.send('HeapProfiler.collectGarbage');
    const { metrics } = await session.send('Performance.getMetrics');
    return (metrics.find(({ name }) => name === 'JSHeapUsedSize')?.value ?? 0) / 2 ** 20;
  };
  const before = await used();
  // Each leaves the field, so that it is a step of its own.
  await page.evaluate(async () => {
    const input = document.getElementById('at-mat-outer') as HTMLInputElement;
    const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!;
    for (let i = 0; i < 1000; i++) {
      input.focus();
      set.call(input, `${16 + (i % 7)} x 20`);
      input.dispatchEvent(new InputEvent('input', { bubbles: true }));
      input.blur();
      await new Promise((resolve) => setTimeout(resolve));
    }
  });
  await page.waitForFunction(() => document.documentElement.dataset.asking === 'no');
  await page.waitForTimeout(1500);
  console.log(`  heap ${before.toFixed(1)} MiB, after a thousand edits ${(await used()).toFixed(1)} MiB`);
  await page.close();
}
