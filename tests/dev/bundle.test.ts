import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { TOP } from '../../src/dev/build.ts';
import { LOADED_TOGETHER, SELDOM } from '../../src/dev/bundle.ts';

const lists = { LOADED_TOGETHER, SELDOM };

/** Every source that is named, with the list and the file of the program that it is named for. */
const named = Object.entries(lists).flatMap(([list, files]) =>
  Object.entries(files).flatMap(([file, sources]) => sources.map((source) => ({ list, file, source }))),
);

test('every source that is named for a file of the program is there', () => {
  const gone = named.filter(({ source }) => !existsSync(join(TOP, source)));
  expect(gone.map(({ list, file, source }) => `${list} names ${source} for ${file}, and there is none`)).toEqual([]);
});

test('no source is named for two files of the program', () => {
  const sources = named.map(({ source }) => source);
  expect(sources.filter((source, i) => sources.indexOf(source) < i)).toEqual([]);
});
