import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { rolldown } from 'rolldown';
import { afterAll, expect, test } from 'vitest';
import { loadedWhenCalled } from '../../src/dev/loaded-when-called.ts';

const folder = mkdtempSync(join(tmpdir(), 'matwright-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** Sources as CommonJS in a folder of its own, with those of `far` in a file that is loaded when one of them is called. */
async function builtOf(name: string, sources: Readonly<Record<string, string>>): Promise<NodeJS.Require> {
  const top = join(folder, name);
  const write = (file: string, text: string): void => writeFileSync(join(top, file), text);
  mkdirSync(top, { recursive: true });
  for (const [file, text] of Object.entries(sources)) write(file, text);
  const far = Object.keys(sources).filter((file) => file.startsWith('far'));
  const { input, plugin } = loadedWhenCalled(top, { distance: far });
  const bundle = await rolldown({
    input: { main: join(top, 'main.js'), ...input },
    plugins: [plugin],
    platform: 'node',
    preserveEntrySignatures: 'allow-extension',
  });
  await bundle.write({
    dir: join(top, 'built'),
    format: 'cjs',
    entryFileNames: '[name].js',
    chunkFileNames: '[name].js',
  });
  await bundle.close();
  return createRequire(join(top, 'built', 'main.js'));
}

const loaded = (load: NodeJS.Require): boolean =>
  Object.keys(load.cache).some((file) => file.startsWith(folder) && file.endsWith('distance.js'));

test('a source is read when one of its functions is called for the first time', async () => {
  const load = await builtOf('called', {
    'main.js': `import { double, twice } from './far.js'; export const ask = (n) => twice(n); export const also = double;`,
    'far.js': `import { add } from './far-add.js'; export function double(n) { return add(n, n); } export const twice = (n) => [double(n), double(n)];`,
    'far-add.js': 'export const add = (a, b) => a + b;',
  });
  const { ask, also } = load('./main.js');
  expect(loaded(load)).toBe(false);
  expect(ask(3)).toEqual([6, 6]);
  expect(loaded(load)).toBe(true);
  expect(also(4)).toBe(8);
});

test('functions of several sources may have one name', async () => {
  const load = await builtOf('alike', {
    'main.js': `import { name as first } from './far-1.js'; import { name as second } from './far-2.js'; export const names = () => [first(), second()];`,
    'far-1.js': `export const name = () => 'first';`,
    'far-2.js': `export const name = () => 'second';`,
  });
  expect(load('./main.js').names()).toEqual(['first', 'second']);
});

test('what is no function comes with its source, and is the same to all', async () => {
  const load = await builtOf('others', {
    'main.js': `import { KNOWN, know } from './far.js'; export const all = () => { know('b'); return KNOWN; };`,
    'far.js': `export const KNOWN = ['a']; export function know(name) { KNOWN.push(name); }`,
  });
  expect(load('./main.js').all()).toEqual(['a', 'b']);
});
