/**
 * `dist/cli.js`: picks the bundle of the command that is asked for and runs it, from V8's code cache where that fits.
 * The build fills in the constants below. A bundle is one function expression in ASCII.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Script } from 'node:vm';
import { askedCommand } from '../cli/asked.ts';

/** Inside `dist/`; its name is the hash of all bundles, so that no cache can meet another bundle than its own. */
declare const FOLDER: string;
/** Command → file of its bundle; `''` serves everything else. */
declare const BUNDLES: Readonly<Record<string, string>>;
/** What the caches were made by. */
declare const CACHES_OF: string;
/** True in the copy that the build runs to make the caches. */
declare const MAKES_CACHES: boolean;

const ofNode = require;

type Wrapped = (exports: unknown, require: (id: string) => unknown, module: { exports: unknown }) => void;

const modules = new Map<string, { exports: unknown }>();
const scripts = new Map<string, Script>();

function cacheOf(file: string): Buffer | undefined {
  if (MAKES_CACHES || CACHES_OF !== `${process.arch} ${process.versions.v8}`) return undefined;
  try {
    return readFileSync(`${file}.cache`);
  } catch {
    return undefined;
  }
}

function load(name: string): unknown {
  const known = modules.get(name);
  if (known !== undefined) return known.exports;
  const module = { exports: {} as unknown };
  modules.set(name, module);
  const filename = join(__dirname, FOLDER, name);
  const cachedData = cacheOf(filename);
  const script = new Script(readFileSync(filename, 'latin1'), { filename, ...(cachedData && { cachedData }) });
  if (MAKES_CACHES) scripts.set(filename, script);
  const run = script.runInThisContext() as Wrapped;
  run(module.exports, (id) => (id.startsWith('./') ? load(id.slice(2)) : ofNode(id)), module);
  return module.exports;
}

if (Number.parseInt(process.versions.node, 10) < 20) {
  process.stderr.write(`Matwright needs Node 20 or later; this is ${process.version}.\n`);
  process.exitCode = 1;
} else {
  if (MAKES_CACHES) {
    process.on('exit', () => {
      for (const [file, script] of scripts) writeFileSync(`${file}.cache`, script.createCachedData());
    });
  }
  const asked = askedCommand(process.argv.slice(2)) ?? '';
  load(Object.hasOwn(BUNDLES, asked) ? BUNDLES[asked]! : BUNDLES['']!);
}
