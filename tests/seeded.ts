/**
 * What `fast-check` means in these tests: the library with a seed of its own where a test sets none, so that the same
 * checkout gives the same verdict everywhere. `SEED=12345 npm test` starts elsewhere, `SEED=any` somewhere new each
 * time; a counterexample found that way is kept as an example beside its property.
 */
import fc from '../node_modules/fast-check/lib/fast-check.js';

const asked = process.env.SEED;
if (asked !== 'any') fc.configureGlobal({ seed: asked === undefined ? 20 : Number(asked) });

export * from '../node_modules/fast-check/lib/fast-check.js';
export default fc;
