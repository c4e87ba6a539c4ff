import { once } from './once.ts';

/**
 * An expression with classes of Unicode (`\p{L}`), built when it is first asked for. Written between slashes it is read with
 * the program's text, and looking such a class up takes longer than all that most jobs ask of it.
 */
export const expression = (source: string, flags = 'u'): (() => RegExp) => once(() => new RegExp(source, flags));
