import { error as makeError, warning as makeWarning } from '../../src/problems/problem.ts';
import { tell } from './told.ts';

/** Stands in for `src/problems/problem.ts` while tests run (see the plugin in `vitest.config.ts`): the same, and every code is told. */
export * from '../../src/problems/problem.ts';

export const error: typeof makeError = (code, ...rest) => makeError(tell(code), ...rest);
export const warning: typeof makeWarning = (code, ...rest) => makeWarning(tell(code), ...rest);
