import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { exported, libraryPage } from '../../src/dev/library.ts';
import * as library from '../../src/index.ts';

it('the page of the library is what the sources say (npm run reference), and has all that is exported', () => {
  const page = readFileSync('examples/library.md', 'utf8');
  expect(page).toBe(libraryPage());
  for (const name of Object.keys(library)) expect(page).toContain(`### ${name}\n`);
});

it('every function and every value of the library says what it is for', () => {
  const silent = exported().filter(({ kind, about }) => kind !== 'type' && about === '');
  expect(silent.map(({ name }) => name)).toEqual([]);
});
