import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { inBrowser, noBrowser, openSeldom, settled, start, type Watched, wants } from './browser.ts';

const TERNS = join(import.meta.dirname, '../../examples/terns/shop.yaml');

/** Two pieces of a shop that counts its sheets. */
async function day(page: Page): Promise<void> {
  const file = (name: string, text: string) => ({ name, mimeType: 'application/yaml', buffer: Buffer.from(text) });
  const job = (i: number) =>
    `title: Print ${i}\ndue: 2031-03-1${i}\nmat: {outer: 1${i} x 14, layers: [{board: bone-4}]}\nopenings: [{size: 5 x 7}]\n`;
  const shop =
    'units: in\nboards:\n  bone-4: {name: Bone, thickness: 1.4 mm, sheets: [{size: 32 x 40 in, count: 5}]}\n';
  await page.locator('#files').setInputFiles(file('shop.yaml', shop));
  await page.locator('#files').setInputFiles([file('one.yaml', job(1)), file('two.yaml', job(2))]);
  await page.locator('td svg.small').last().waitFor();
}

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
  'a table of prints': async (page) => {
    await page.getByRole('button', { name: 'The day', exact: true }).click();
    await page.getByLabel('The table', { exact: true }).fill('title\tno such thing\nPrint\t1');
    await page.getByRole('button', { name: 'Make a piece of each row' }).click();
    await page.locator('.typed .told li').first().waitFor();
  },
  'the day': async (page) => {
    await day(page);
    await page.getByRole('checkbox', { name: 'Print 1: cut' }).check();
    await page.getByRole('button', { name: 'Lay the blanks on sheets' }).click();
    await page.locator('.sheet-to-cut').first().waitFor({ timeout: 20_000 });
    await page
      .getByRole('checkbox', { name: /^Cut 1:/ })
      .first()
      .check();
  },
  'a run at the cutter': async (page) => {
    await day(page);
    await page.getByRole('button', { name: 'Cut them as one run' }).click();
    await page.locator('.step').waitFor();
    for (let i = 0; i < 3; i++) await page.keyboard.press('PageDown');
  },
  'all that a piece can say': async (page) => {
    await start(page, /^Double mat/);
    await openSeldom(page);
    await page.getByRole('button', { name: 'Overlap: each side by itself' }).click();
    await settled(page);
  },
  'the shop’s machines, with text': async (page) => {
    await page.locator('#files').setInputFiles(TERNS);
    await page.getByRole('button', { name: 'The shop', exact: true }).click();
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    for (const each of ['Machines', 'laser', 'Heads', 'Guide', 'Prices']) {
      await page.locator('summary', { hasText: new RegExp(`^${each}$`, 'u') }).click();
    }
  },
  'what readings come to': async (page) => {
    await page.locator('#files').setInputFiles(TERNS);
    await page.getByRole('button', { name: 'The shop', exact: true }).click();
    await page.getByRole('button', { name: 'Laser, by its coupon' }).click();
    await page.getByRole('button', { name: 'Text', exact: true }).click();
    await page
      .locator('#text')
      .fill('machine: laser\nstripsX: [98 mm, 98.02 mm, 97.98 mm, 98 mm, 95 mm]\nstripsY: [98 mm]\n');
    await page.locator('.dot.wild').waitFor();
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

const ALL = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
/** In the dark nothing else is another. */
const OF_COLOURS = ['color-contrast', 'link-in-text-block'];

describe.skipIf(noBrowser)(`every view${wants}`, () => {
  const openPage = inBrowser();

  describe.each(NAMES)('%s', (name) => {
    let opened: Watched;
    beforeAll(async () => {
      opened = await openPage();
      await VIEWS[name]!(opened.page);
      await settled(opened.page);
    });
    afterAll(() => opened.context.close());

    test('tells those who do not see it what it told them', async () => {
      // Whether the browser has kept the change already is a matter of a moment.
      const told = (await opened.page.locator('#page').ariaSnapshot()).replace('kept in this browser only; ', '');
      await expect(told).toMatchFileSnapshot(`told/${name.replaceAll(/[^a-z]+/gu, '-')}.txt`);
    });

    test.each(['light', 'dark'] as const)(
      'holds in %s what WCAG 2.2 AA asks, as far as a program can tell',
      async (colorScheme) => {
        const { page, expectQuiet } = opened;
        await page.emulateMedia({ colorScheme });
        // Colours go over into one another.
        await page.evaluate(() => Promise.all(document.getAnimations().map(({ finished }) => finished)));
        const axe = new AxeBuilder({ page }).options({ resultTypes: ['violations'] });
        const { violations } = await (colorScheme === 'light'
          ? axe.withTags(ALL)
          : axe.withRules(OF_COLOURS)
        ).analyze();
        expect(
          violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`),
        ).toEqual([]);
        await expectQuiet();
      },
    );

    test('has no bar across at any width, and nothing small to hit', async () => {
      const { page } = opened;
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
    });
  });

  test('dark is another look', async () => {
    const { page, context } = await openPage();
    const ground = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    const light = await ground();
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await ground()).not.toBe(light);
    await context.close();
  });
});
