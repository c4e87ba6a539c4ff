/**
 * `npm run build`: fonts prepared, then `dist/` from nothing, the same bytes each time.
 *
 *     cli.js                 the command, see launcher.ts
 *     cli/                   what it loads: a file for each command, and what they share
 *     index.mjs              the library for browsers, node.mjs for Node, worker.mjs for workers in browsers; chunks/ is
 *                            what they share
 *     fonts/                 letter outlines, fonts to embed and whole fonts, for both
 *     types/                 its declarations
 *     matwright.html         the page, one file
 *     guide.html             the guide, one file
 */
import { execFileSync } from 'node:child_process';
import { chmodSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bundleFonts, bundleLauncher, bundleLibrary, bundleProgram, type Files } from './bundle.ts';
import { bundlePage } from './bundle-page.ts';
import { keepReached } from './declarations.ts';
import { guideHtml } from './guide/html.ts';
import { PREPARED, prepareFonts } from './prepare-fonts.ts';

export const TOP = join(dirname(fileURLToPath(import.meta.url)), '../..');

/** Puts everything into `dist`, an absolute path; what was there is gone. */
export async function build(dist: string): Promise<void> {
  await prepareFonts(PREPARED);
  const files = await bundles(TOP);
  rmSync(dist, { recursive: true, force: true });
  write(dist, { 'package.json': '{"type":"commonjs","sideEffects":["./node.mjs","./worker.mjs"]}\n', ...files });
  chmodSync(join(dist, 'cli.js'), 0o755);
  const tsc = join(TOP, 'node_modules/typescript/bin/tsc');
  const project = ['-p', join(TOP, 'src/dev/declarations.json'), '--outDir', join(dist, 'types')];
  execFileSync(process.execPath, [tsc, ...project], { stdio: 'inherit' });
  keepReached(join(dist, 'types'), ['index.d.ts']);
}

/** All programs that the build makes of the sources in `top`. */
export async function bundles(top: string): Promise<Files> {
  const { version } = JSON.parse(readFileSync(join(top, 'package.json'), 'utf8')) as { readonly version: string };
  const made = await Promise.all([
    bundleLauncher(top),
    bundleProgram(top, version),
    bundleLibrary(top),
    bundleFonts(top),
    bundlePage(top),
  ]);
  return Object.assign({ 'guide.html': guideHtml(top) }, ...made);
}

function write(folder: string, files: Files): void {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await build(join(TOP, 'dist'));
