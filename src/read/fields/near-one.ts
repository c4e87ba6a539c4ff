import { number } from './fields.ts';

/** A guide or a printer that is further off than this is broken, or was measured wrong. */
export const nearOne = (about: string, example: number) => number(about, [example], 0.8, 1.25, 'a number near 1');
