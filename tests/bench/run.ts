/** `npm run bench -- NAME [ARGS…]` runs tests/bench/NAME.bench.ts; without a name, every light one. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { nearest } from '../../src/problems/nearest.ts';

export interface Bench {
  /** What it measures, in a line. */
  readonly about: string;
  /** Light ones take less than half a minute, and run when no name is given. */
  readonly light: boolean;
  readonly run: (args: readonly string[]) => void | Promise<void>;
}

const ENDING = '.bench.ts';
const names = readdirSync(import.meta.dirname)
  .filter((file) => file.endsWith(ENDING))
  .map((file) => file.slice(0, -ENDING.length))
  .sort();

const load = async (name: string): Promise<Bench> =>
  import(pathToFileURL(join(import.meta.dirname, `${name}${ENDING}`)).href);

const [asked, ...args] = process.argv.slice(2);
if (asked === undefined) {
  for (const name of names) {
    const bench = await load(name);
    console.log(`\n${name}: ${bench.about}${bench.light ? '' : ` (npm run bench -- ${name})`}`);
    if (bench.light) await bench.run([]);
  }
} else if (names.includes(asked)) {
  await (await load(asked)).run(args);
} else {
  const near = nearest(asked, names);
  console.error(`no bench ${JSON.stringify(asked)}${near === undefined ? '' : `; did you mean ${near}?`}`);
  console.error(`there are: ${names.join(', ')}`);
  process.exitCode = 2;
}
