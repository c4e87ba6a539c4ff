import { expect, test } from 'vitest';
import { codeOnly, importsOf } from './lexer.ts';

test('comments and the insides of strings become spaces, lines stay', () => {
  expect(codeOnly('f(\'it\', "//") // b\nc /* d\n */ e')).toBe('f(\'  \', "  ")     \nc     \n    e');
  expect(codeOnly("f('it\\'s') + 1")).toBe("f('     ') + 1");
  expect(codeOnly('a = /["\'/]\\//g; b')).toBe('a = /        g; b');
  expect(codeOnly('a = b / c; // d')).toBe('a = b / c;     ');
  expect(codeOnly("a = ')' / '/'")).toBe("a = ' ' / ' '");
});

test('templates keep the code between their words', () => {
  expect(codeOnly('`a ${b + `c ${d}`} e` + f')).toBe('`  ${b + `  ${d}`}  ` + f');
  expect(codeOnly('`${{ a: 1 }.a} x` // y')).toBe('`${{ a: 1 }.a}  `     ');
});

test('imports are found in all their forms', () => {
  const text = `import a from 'a';
import { type B, b as c } from "./b.ts";
import type { D } from './d.ts';
import * as e from 'node:fs';
import 'f';
export { g } from './g.ts';
export * from './h.ts';
const i = await import('./i.ts'), j = require('j'), k: typeof import('./k.ts') = i;
// import l from 'l';
const m = "import n from 'n'";
export const o = 'p';
export interface Q { readonly from: 'r'; to: 's' }
`;
  expect(importsOf(text).map((found) => found.specifier)).toEqual([
    'a',
    './b.ts',
    './d.ts',
    'node:fs',
    './g.ts',
    './h.ts',
    'f',
    './i.ts',
    'j',
    './k.ts',
  ]);
});
