import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { faceSvg, solveJob } from '../../src/node.ts';
import { forBrowser } from '../dev/browser.ts';
import { launchProgram, noBrowser, wants } from './program.ts';

const TOP = join(import.meta.dirname, '../..');

describe.skipIf(noBrowser)(`SVG built in a browser's own tree${wants}`, () => {
  let browser: Browser;
  let script = '';
  beforeAll(async () => {
    browser = await launchProgram();
    const entry = "export { faceSvg, solveJob } from './index.ts';";
    script = (await forBrowser({ contents: entry, resolveDir: join(TOP, 'src'), loader: 'ts' })).text;
  });
  afterAll(() => browser.close());

  test.each(['double', 'roundels', 'own-outline'])('has the bytes that Node writes: %s', async (name) => {
    const text = readFileSync(join(TOP, `templates/${name}.yaml`), 'utf8').replace(
      /^title:.*$/mu,
      'title: "A & <b> \\"c\\""',
    );
    const here = solveJob(text);
    if (!here.ok) throw new Error(JSON.stringify(here.problems));
    const expected = await faceSvg(here.value);
    if (!expected.ok) throw new Error(JSON.stringify(expected.problems));
    const page = await browser.newPage();
    await page.addScriptTag({ content: script });
    const made = await page.evaluate(async (job) => {
      const { matwright } = globalThis as typeof globalThis & {
        readonly matwright: typeof import('../../src/index.ts');
      };
      const solved = matwright.solveJob(job);
      if (!solved.ok) return solved.problems[0]?.message ?? '';
      const svg = await matwright.faceSvg(solved.value);
      return svg.ok ? svg.value : (svg.problems[0]?.message ?? '');
    }, text);
    expect(made).toBe(expected.value);
    await page.close();
  });
});
