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
import { COMMANDS } from '../cli/commands.ts';
import { bundleCommands, bundleLauncher, bundleLibrary, type Files } from './bundle.ts';
import { PREPARED, prepareFonts } from './prepare-fonts.ts';
import { makeCaches } from './warm.ts';

const TOP = join(import.meta.dirname, '../..');
const DIST = join(TOP, 'dist');

function write(files: Files): void {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(DIST, name)), { recursive: true });
    writeFileSync(join(DIST, name), text);
  }
}

function hashOf(files: Files): string {
  const hash = createHash('sha256');
  for (const [name, text] of Object.entries(files)) hash.update(`${name}\n${text.length}\n${text}`);
  return hash.digest('hex').slice(0, 12);
}

const within = (folder: string, files: Files): Files =>
  Object.fromEntries(Object.entries(files).map(([name, text]) => [`${folder}/${name}`, text]));

const manifest = JSON.parse(readFileSync(join(TOP, 'package.json'), 'utf8')) as { readonly version: string };

await prepareFonts(PREPARED);
const { files, byCommand } = await bundleCommands({
  top: TOP,
  commands: COMMANDS.map((command) => command.name),
  version: manifest.version,
});
const folder = hashOf(files);
const cli = await bundleLauncher(TOP, folder, byCommand, false);
const library = await bundleLibrary(TOP, join(TOP, 'src/index.ts'));

rmSync(DIST, { recursive: true, force: true });
write({
  'package.json': '{"type":"commonjs","sideEffects":false}\n',
  ...within(folder, files),
  ...library,
  'cli.js': cli,
});
chmodSync(join(DIST, 'cli.js'), 0o755);
makeCaches(TOP, await bundleLauncher(TOP, folder, byCommand, true));
const tsc = join(TOP, 'node_modules/typescript/bin/tsc');
execFileSync(process.execPath, [tsc, '-p', join(TOP, 'src/dev/declarations.json')], { stdio: 'inherit' });
