/**
 * `dist/cli.js`, in words that any Node understands, so that an old one can say which it needs. Where Node keeps
 * compiled code by itself, it does: it looks after the fit, and `NODE_DISABLE_COMPILE_CACHE` turns it off.
 */
import module from 'node:module';
import { setFlagsFromString } from 'node:v8';

/** The file that it starts, from its own; the build fills it in. */
declare const PROGRAM: string;

/** Node 20 does not have it yet. */
const { enableCompileCache } = module as { readonly enableCompileCache?: () => unknown };

/**
 * Most commands are over before code that V8 optimises on the side has paid for that: it waits thirteen times as long as
 * it does by itself (67,584 bytes of byte code), and still optimises what a picture or thousands of blanks take. Where it
 * waits twenty times as long a proof with its picture takes 3 % more processor time, at eight times an SVG 4 % more; a
 * pattern cares for neither. Tried with the V8 of Node 20; another one may not know the flag and would say so.
 */
const PATIENCE = '--interrupt-budget=900000';
const TRIED = 20;

const version = Number.parseInt(process.versions.node, 10);
if (version < 20) {
  process.stderr.write(`Matwright needs Node 20 or later; this is ${process.version}.\n`);
  process.exitCode = 1;
} else {
  if (version === TRIED) setFlagsFromString(PATIENCE);
  enableCompileCache?.();
  const { ended } = module.createRequire(__filename)(PROGRAM) as { readonly ended: Promise<number> };
  ended.then(leave);
}

/**
 * Once all is said the process ends: left to itself Node takes the heap apart first, piece by piece. Where standard
 * output cannot be written, whoever hears of that ends the process.
 */
function leave(code: number): void {
  process.stdout.write('', (failed) => {
    if (!failed) process.stderr.write('', () => process.exit(code));
  });
}
