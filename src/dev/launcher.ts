/**
 * `dist/cli.js`, in words that any Node understands, so that an old one can say which it needs. Where Node keeps
 * compiled code by itself, it does: it looks after the fit, and `NODE_DISABLE_COMPILE_CACHE` turns it off.
 */
import module from 'node:module';

/** The file that it starts, from its own; the build fills it in. */
declare const PROGRAM: string;

/** Node 20 does not have it yet. */
const { enableCompileCache } = module as { readonly enableCompileCache?: () => unknown };

if (Number.parseInt(process.versions.node, 10) < 20) {
  process.stderr.write(`Matwright needs Node 20 or later; this is ${process.version}.\n`);
  process.exitCode = 1;
} else {
  enableCompileCache?.();
  module.createRequire(__filename)(PROGRAM);
}
