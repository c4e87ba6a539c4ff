import { execFileSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { TOP } from '../src/dev/build.ts';
import { built } from './built.ts';

const npm = (args: readonly string[], cwd: string): string =>
  execFileSync('npm', [...args], { cwd, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });

/** What the package is made of, beside `dist/`. */
const PARTS = ['package.json', 'README.md', 'LICENSE', 'templates', 'examples', 'src/fonts/LICENSES.md'];

/** A new folder in which the package of this checkout is installed as a user does, with nothing else in it. */
export async function packed(): Promise<string> {
  const top = mkdtempSync(join(tmpdir(), 'matwright-packed-'));
  const staged = join(top, 'staged');
  const folder = join(top, 'installed');
  for (const each of [staged, folder]) mkdirSync(each);
  cpSync(await built(), join(staged, 'dist'), { recursive: true });
  for (const part of PARTS)
    if (existsSync(join(TOP, part))) cpSync(join(TOP, part), join(staged, part), { recursive: true });
  const [{ filename }] = JSON.parse(npm(['pack', '--ignore-scripts', '--json', '--pack-destination', top], staged));
  npm(['install', '--prefer-offline', '--no-audit', '--no-fund', '--ignore-scripts', join(top, filename)], folder);
  return folder;
}
