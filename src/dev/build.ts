/**
 * `npm run build`: fonts prepared, then `dist/` from nothing.
 *
 *     cli.js                 the command, see launcher.ts
 *     HASH/COMMAND.js        its bundles, each with a code cache beside it
 *     index.mjs, chunks/     the library
 *     types/                 its declarations
 *
 * Everything but the code caches, which are V8's own, has the same bytes each time.
 */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { chmodSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { COMMANDS } from '../cli/commands.ts';
import { bundleCommands, bundleLauncher, bundleLibrary, type Files } from './bundle.ts';
import { makeCaches } from './code-caches.ts';
import { PREPARED, prepareFonts } from './prepare-fonts.ts';

export const TOP = join(dirname(fileURLToPath(import.meta.url)), '../..');

/** Puts everything into `dist`, an absolute path; what was there is gone. */
export async function build(dist: string): Promise<void> {
  const { version } = JSON.parse(readFileSync(join(TOP, 'package.json'), 'utf8')) as { readonly version: string };
  await prepareFonts(PREPARED);
  const commands = COMMANDS.map((command) => command.name);
  const { files, byCommand } = await bundleCommands({ top: TOP, commands, version });
  const folder = hashOf(files);
  const launcher = await bundleLauncher(TOP, folder, byCommand, false);
  const library = await bundleLibrary(TOP, join(TOP, 'src/index.ts'));

  rmSync(dist, { recursive: true, force: true });
  write(dist, { 'package.json': '{"type":"commonjs","sideEffects":false}\n', 'cli.js': launcher, ...library });
  write(join(dist, folder), files);
  chmodSync(join(dist, 'cli.js'), 0o755);
  makeCaches(TOP, dist, await bundleLauncher(TOP, folder, byCommand, true), commands);
  const tsc = join(TOP, 'node_modules/typescript/bin/tsc');
  const project = ['-p', join(TOP, 'src/dev/declarations.json'), '--outDir', join(dist, 'types')];
  execFileSync(process.execPath, [tsc, ...project], { stdio: 'inherit' });
}

function write(folder: string, files: Files): void {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
}

function hashOf(files: Files): string {
  const hash = createHash('sha256');
  for (const name of Object.keys(files).sort()) hash.update(`${name}\n${files[name]!.length}\n${files[name]}`);
  return hash.digest('hex').slice(0, 12);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await build(join(TOP, 'dist'));
