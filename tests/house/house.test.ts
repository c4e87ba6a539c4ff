import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import {
  checkAmbient,
  checkFiles,
  checkFirstLines,
  checkSetting,
  checkTopLevel,
  checkUnitNumbers,
  checkWords,
} from './contents.ts';
import { checkCycles, checkDependencies, checkImports } from './imports.ts';
import { type Finding, readTree, showFindings, TOP } from './source.ts';

const read = (path: string): string => readFileSync(join(TOP, path), 'utf8');
/** What the font preparation writes is not source. */
const src = readTree('src', /\.ts$/).filter((file) => !file.path.startsWith('src/fonts/prepared/'));
const all = [...src, ...readTree('tests', /\.ts$/)];

/** The findings themselves are the message. */
function expectNone(findings: readonly Finding[]): void {
  expect(showFindings(findings)).toBe('');
}

test('the tree is read', () => {
  expect(src.length).toBeGreaterThan(12);
  expect(all.map((file) => file.path)).toContain('tests/house/house.test.ts');
});

test('imports run one way, and each folder keeps to its packages', () => expectNone(checkImports(src)));
test('no file imports itself through others', () => expectNone(checkCycles(src)));
test('package.json lists what is used', () => expectNone(checkDependencies(src, JSON.parse(read('package.json')))));
test('units are defined in one place', () => expectNone(checkUnitNumbers(src)));
test('no line of words is broken or spaced outside the folder that sets them', () => expectNone(checkSetting(src)));

test('nothing ambient outside the commands', () => expectNone(checkAmbient(src)));
test('nothing unfinished, nothing switched off', () => expectNone(checkWords(all)));
test('files are named by content and short', () => expectNone(checkFiles(all)));
test('the top level is fixed', () => expectNone(checkTopLevel(readdirSync(TOP))));
test('the README gives the lines that are run on a fresh machine', () =>
  expectNone(checkFirstLines(read('README.md'), read('.ci/run'))));
