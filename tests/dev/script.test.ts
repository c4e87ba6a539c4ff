import { execFileSync } from 'node:child_process';
import { cpSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { TOP } from '../../src/dev/build.ts';
import { packed } from '../packed.ts';

let folder = '';
beforeAll(async () => {
  folder = await packed();
  cpSync(join(TOP, 'examples/script'), folder, { recursive: true });
}, 400_000);
afterAll(() => rmSync(dirname(folder), { recursive: true }));

const node = (args: readonly string[]): string =>
  execFileSync(process.execPath, [...args], { cwd: folder, encoding: 'utf8', stdio: 'pipe' });

describe('the script of the examples, beside the installed package', () => {
  it('compiles strictly, and makes patterns, faces and a list of sizes', { timeout: 180_000 }, () => {
    const tsc = join(TOP, 'node_modules/typescript/bin/tsc');
    const types = ['--typeRoots', join(TOP, 'node_modules/@types'), '--types', 'node'];
    const how = ['--strict', '--module', 'nodenext', '--target', 'es2023', '--outDir', 'made', ...types];
    expect(node([tsc, ...how, 'show.mts'])).toBe('');
    node(['made/show.mjs', 'prints.csv', 'out']);
    expect(readFileSync(join(folder, 'out/sizes.csv'), 'utf8')).toBe(
      'title,blank width mm,blank height mm\n"Heron",397.0,497.0\n"Tern over the bar",397.0,497.0\n"Samphire, low water",497.0,397.0\n',
    );
    expect(readdirSync(join(folder, 'out/heron')).sort()).toEqual(['face.svg', 'pattern-1.pdf']);
    expect(readFileSync(join(folder, 'out/heron/face.svg'), 'utf8')).toMatch(/^<svg /);
  });
});
