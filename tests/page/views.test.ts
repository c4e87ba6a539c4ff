import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launch, noBrowser, openPage, settled, start, wants } from './browser.ts';

/** Every view, by how one gets there. */
const VIEWS: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  pieces: async (page) => {
    await page.locator('.card svg.small').last().waitFor();
  },
  describe: async (page) => {
    await start(page, /^Double mat/);
    await settled(page);
  },
  contradiction: async (page) => {
    await start(page, /^Double mat/);
    await page.getByLabel('Sides', { exact: true }).fill('3');
    await page.locator('.told .error').first().waitFor();
  },
  'a row, with text': async (page) => {
    await start(page, /^Row of three/);
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    await page.getByText('Names, bench and paper').click();
    await settled(page);
  },
  measure: async (page) => {
    await start(page, /^Double mat/);
    await page.getByRole('button', { name: 'Measure between two edges' }).click();
  },
  back: async (page) => {
    await start(page, /^Single mat: one board/);
    await page.getByRole('tab', { name: 'Back' }).click();
    await page.locator('.backs svg').waitFor();
  },
  paper: async (page) => {
    await start(page, /^Single mat: one board/);
    await page.getByRole('tab', { name: 'Paper' }).click();
    await page.locator('.pages svg').first().waitFor();
  },
  'at the cutter': async (page) => {
    await start(page, /^Double mat/);
    await page.getByRole('button', { name: 'At the cutter' }).click();
    await page.locator('.step').waitFor();
    for (let i = 0; i < 4; i++) await page.keyboard.press('PageDown');
  },
  'all steps': async (page) => {
    await start(page, /^Double mat/);
    await page.getByRole('button', { name: 'At the cutter' }).click();
    await page.locator('.step').waitFor();
    await page.keyboard.press('PageDown');
    await page.getByRole('button', { name: 'All steps' }).click();
  },
  'the shop': async (page) => {
    await page.getByRole('button', { name: 'The shop', exact: true }).click();
    await page.getByRole('heading', { name: 'Boards' }).click();
    await page.getByLabel('Another one, by the name that jobs call it').fill('bone-4');
    await page.getByRole('button', { name: 'Add', exact: true }).click();
    await page.getByRole('heading', { name: 'bone-4' }).click();
  },
  readings: async (page) => {
    await page.getByRole('button', { name: 'The shop', exact: true }).click();
    await page.getByRole('button', { name: 'Guide', exact: true }).click();
    await page.getByRole('button', { name: 'Strips: add one' }).click();
  },
  'print and save': async (page) => {
    await start(page, /^Double mat/);
    await page.getByRole('button', { name: 'Print and save' }).click();
  },
};

const NAMES = Object.keys(VIEWS);
const WIDTHS = [360, 1024, 1920];

describe.skipIf(noBrowser)(`every view${wants}`, () => {
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(() => browser.close());

  describe.each([
    ['light', false],
    ['dark', true],
  ])('in %s', (_, dark) => {
    test.each(NAMES)('%s holds what WCAG 2.2 AA asks, as far as a program can tell', async (name) => {
      const { page, context, expectQuiet } = await openPage(browser, { dark });
      await VIEWS[name]!(page);
      const { violations } = await new AxeBuilder({ page })
        .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
        .analyze();
      expect(
        violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`),
      ).toEqual([]);
      await expectQuiet();
      await context.close();
    });
  });

  test.each(NAMES)('%s has no bar across at any width, and nothing small to hit', async (name) => {
    const { page, context } = await openPage(browser, { width: 360 });
    await VIEWS[name]!(page);
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height: 800 });
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(wide, `at ${width}`).toBeLessThanOrEqual(width);
      const small = await page.evaluate(() =>
        [...document.querySelectorAll('button, select, summary, input:not([type=radio]):not([hidden])')].flatMap(
          (each) => {
            const { width: w, height: h } = each.getBoundingClientRect();
            const around = each.closest('label')?.getBoundingClientRect();
            return w === 0 || Math.max(h, around?.height ?? 0) >= 43.5
              ? []
              : [`${each.outerHTML.slice(0, 80)} ${w} × ${h}`];
          },
        ),
      );
      expect(small, `at ${width}`).toEqual([]);
    }
    await context.close();
  });

  test.each(['describe', 'contradiction', 'measure', 'print and save', 'at the cutter'])(
    'what %s tells those who do not see it is as it was',
    async (name) => {
      const { page, context } = await openPage(browser);
      await VIEWS[name]!(page);
      await settled(page);
      // Whether the browser has kept the change already is a matter of a moment.
      const told = (await page.locator('#page').ariaSnapshot()).replace('kept in this browser only; ', '');
      await expect(told).toMatchFileSnapshot(`told/${name.replaceAll(' ', '-')}.txt`);
      await context.close();
    },
  );
});
