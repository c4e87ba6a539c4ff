/** `npx tsx tests/page/picture.ts FILE.png` makes the README's picture of the page, of the page in `dist/`. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import sharp from 'sharp';
import { launchProgram } from './program.ts';

const [, , file] = process.argv;
if (file === undefined) throw new Error('name the file to write');
const browser = await launchProgram();
const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
await page.goto(pathToFileURL(join(import.meta.dirname, '../../dist/matwright.html')).href);
await page.getByRole('button', { name: /^Double mat/ }).click();
await page.locator('svg.face').waitFor();
await page.getByLabel('Sides', { exact: true }).focus();
await page.mouse.move(900, 780);
writeFileSync(
  file,
  await sharp(await page.screenshot())
    .png({ palette: true, colours: 64, effort: 10 })
    .toBuffer(),
);
await browser.close();
