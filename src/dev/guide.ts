/**
 * `npm run guide`: everything in the pages of `examples/guide/` that the program makes, made anew: what commands say, files,
 * numbers, tables, pictures. With `-- --check` nothing is written, and what is out of date is named.
 */
import '../node.ts';
import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { makeGuide } from './guide/make.ts';

const TOP = join(import.meta.dirname, '../..');
const FOLDER = join(TOP, 'examples/guide');

const { check, program } = parseArgs({
  options: {
    check: { type: 'boolean', default: false },
    /** The built `cli.js`, where it is not in `dist/`. */
    program: { type: 'string', default: join(TOP, 'dist/cli.js') },
  },
}).values;

const { files, faults } = await makeGuide(TOP, program);
const there = (await readdir(FOLDER, { recursive: true, withFileTypes: true }))
  .filter((entry) => entry.isFile())
  .map((entry) => join(entry.parentPath, entry.name).slice(FOLDER.length + 1));
const orphans = there.filter((name) => !files.has(name));
const pictures = orphans.filter((name) => name.startsWith('pictures'));
const changed: string[] = [];
for (const [name, bytes] of files) {
  const old = await readFile(join(FOLDER, name)).catch(() => undefined);
  if (old === undefined || !old.equals(bytes)) changed.push(name);
}
if (!check) {
  for (const name of changed) {
    await mkdir(dirname(join(FOLDER, name)), { recursive: true });
    await writeFile(join(FOLDER, name), files.get(name)!);
  }
  for (const name of pictures) await rm(join(FOLDER, name));
}
const said = check
  ? [...changed.map((name) => `out of date: ${name}`), ...orphans.map((name) => `belongs to no page: ${name}`)]
  : [...changed.map((name) => `written: ${name}`), ...pictures.map((name) => `taken away: ${name}`)];
for (const line of [...said, ...faults]) console.log(line);
if (faults.length > 0 || (check && said.length > 0)) process.exitCode = 1;
