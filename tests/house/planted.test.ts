import { describe, expect, test } from 'vitest';
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
import { TOP_LEVEL } from './rules.ts';
import type { Finding, SourceFile } from './source.ts';

type Checker = (files: readonly SourceFile[]) => Finding[];
const file = (path: string, text: string): SourceFile => ({ path, text });

/** Rule by rule: a violation that must be found, and its neighbour that must not. */
const PLANTED: readonly (readonly [string, Checker, SourceFile, SourceFile])[] = [
  [
    'an import against the order',
    checkImports,
    file('src/mat/a.ts', "import { x } from '../paper/model.ts';"),
    file('src/paper/a.ts', "import { x } from '../mat/model.ts';"),
  ],
  [
    'a type imported against the order',
    checkImports,
    file('src/units/a.ts', "import type { Job }\n  from '../job/model.ts';"),
    file('src/units/a.ts', "// import type { Job } from '../job/model.ts';"),
  ],
  [
    'an export against the order',
    checkImports,
    file('src/geometry/a.ts', "export * from '../writers/pdf.ts';"),
    file('src/writers/a.ts', "export * from '../geometry/box.ts';"),
  ],
  [
    'an import at run time against the order',
    checkImports,
    file('src/paper/a.ts', "const w = await import('../writers/svg.ts');"),
    file('src/writers/a.ts', "const w = await import('../paper/grid.ts');"),
  ],
  [
    'a module named at run time',
    checkImports,
    file('src/cli/a.ts', 'const w = await import(name);'),
    file('src/cli/a.ts', "const w = await import('../index.ts');"),
  ],
  [
    'the build imported',
    checkImports,
    file('src/cli/a.ts', "import '../dev/build.ts';"),
    file('src/dev/a.ts', "import './build.ts';"),
  ],
  [
    'an unlisted folder',
    checkImports,
    file('src/frames/a.ts', 'export const a = 1;'),
    file('src/shapes/a.ts', 'export const a = 1;'),
  ],
  [
    'an import out of the house',
    checkImports,
    file('src/papers/a.ts', "import t from '../../tests/papers/table.json';"),
    file('src/papers/a.ts', "import t from '../../shared/papers.json';"),
  ],
  [
    'an import without its ending',
    checkImports,
    file('src/job/a.ts', "import { a } from '../units/parse';"),
    file('src/job/a.ts', "import { a } from '../units/parse.ts';"),
  ],
  [
    'a package in the wrong folder',
    checkImports,
    file('src/mat/a.ts', "import { parse } from 'yaml';"),
    file('src/job/a.ts', "import { parse } from 'yaml';"),
  ],
  [
    'a package in the wrong writer',
    checkImports,
    file('src/writers/dxf.ts', "import { PDFName } from 'pdf-lib';"),
    file('src/writers/pdf-page.ts', "import { PDFName } from 'pdf-lib';"),
  ],
  [
    'files read by the engine',
    checkImports,
    file('src/fonts/a.ts', "import { readFileSync } from 'node:fs';"),
    file('src/cli/a.ts', "import { readFileSync } from 'node:fs';"),
  ],
  [
    'inches converted on the spot',
    checkUnitNumbers,
    file('src/mat/a.ts', 'const inches = (mm: number) => mm / 25.4;'),
    file('src/units/a.ts', 'const inches = (mm: number) => mm / 25.4;'),
  ],
  [
    'inches with a nought behind them',
    checkUnitNumbers,
    file('src/mat/a.ts', 'const inches = (mm: number) => mm / 25.40;'),
    file('src/mat/a.ts', 'const inches = (mm: number) => mm / 25.41;'),
  ],
  [
    'inches as a quotient',
    checkUnitNumbers,
    file('src/mat/a.ts', 'const inches = (mm: number) => mm / (254 / 10);'),
    file('src/mat/a.ts', 'const inches = (mm: number) => mm / (255 / 10);'),
  ],
  [
    'inches as a power of ten',
    checkUnitNumbers,
    file('src/mat/a.ts', 'const inches = 2.54e1;'),
    file('src/mat/a.ts', 'const inches = 2.54e2;'),
  ],
  [
    'points converted on the spot',
    checkUnitNumbers,
    file('src/writers/a.ts', 'const pt = inches * 72;'),
    file('src/writers/a.ts', 'const pt = `${inches * 7} 25.4 72 / 2`; // 25.4 / 72'),
  ],
  [
    'a point in mm, worked out before',
    checkUnitNumbers,
    file('src/writers/a.ts', 'const mm = pt * 0.352778;'),
    file('src/writers/a.ts', 'const mm = pt * 10.352778;'),
  ],
  [
    'inches from points on the spot, inside a template',
    checkUnitNumbers,
    file('src/writers/a.ts', 'const s = `${pt / 72} in`;'),
    file('src/writers/a.ts', 'const s = `${pt / 720} in`;'),
  ],
  [
    'a line broken in a document',
    checkSetting,
    file('src/documents/a.ts', "const lines = wrap(text, 'bold', 3, 80, fonts);"),
    file('src/text/a.ts', "const lines = wrap(text, 'bold', 3, 80, fonts);"),
  ],
  [
    'lines spaced on a sheet',
    checkSetting,
    file('src/paper/a.ts', 'y += LEADINGS.open * style.size;'),
    file('src/paper/a.ts', 'const block = stacked(lines, 1.5); // not LEADINGS'),
  ],
  [
    'words set by hand',
    checkSetting,
    file(
      'src/documents/a.ts',
      "items.push({ kind: 'text', text, at, anchor: 'start', size: 4.2, weight, turn: 0, colour: 0 });",
    ),
    file('src/documents/a.ts', "entries.push({ kind: 'text', text: 'TOP' });"),
  ],
  [
    'the clock',
    checkAmbient,
    file('src/writers/a.ts', 'const now = new Date();'),
    file('src/writers/a.ts', 'const then = new Date(0);'),
  ],
  [
    'the process',
    checkAmbient,
    file('src/job/a.ts', 'if (process.env.DEBUG) stop();'),
    file('src/job/a.ts', "const words = 'process.env';"),
  ],
  [
    'the process, taken apart',
    checkAmbient,
    file('src/job/a.ts', 'const { env } = process;'),
    file('src/job/a.ts', 'const steps = { process: 1 };'),
  ],
  [
    'chance, taken apart',
    checkAmbient,
    file('src/job/a.ts', 'const { random } = Math;'),
    file('src/job/a.ts', 'const { x } = middle(Math.PI);'),
  ],
  [
    'the process by another way',
    checkAmbient,
    file('src/job/a.ts', "const env = globalThis['process'];"),
    file('src/cli/a.ts', "const env = globalThis['process'];"),
  ],
  ['chance', checkAmbient, file('src/paper/a.ts', 'Math.random()'), file('src/cli/a.ts', 'Math.random()')],
  [
    'a browser below the page',
    checkAmbient,
    file('src/mat/a.ts', 'localStorage.x'),
    file('src/page/a.ts', 'localStorage.x'),
  ],
  ['a way out of the page', checkAmbient, file('src/page/a.ts', 'fetch(a)'), file('src/page/a.ts', 'Date.now()')],
  [
    'markup put in as text',
    checkAmbient,
    file('src/page/a.ts', 'a.innerHTML = b'),
    file('src/page/a.ts', 'a.textContent = b'),
  ],
  ['the locale', checkAmbient, file('src/job/a.ts', 'a.localeCompare(b)'), file('src/job/a.ts', 'a < b')],
  ['the terminal', checkAmbient, file('src/job/a.ts', 'console.log(1)'), file('src/cli/a.ts', 'console.log(1)')],
  [
    'unfinished work',
    checkWords,
    file('src/job/a.ts', '// TODO later'),
    file('src/job/a.ts', '// the todos of a bench ticket'),
  ],
  [
    'a type given up',
    checkWords,
    file('src/job/a.ts', 'const a = b as any;'),
    file('src/job/a.ts', '// as any framer would'),
  ],
  [
    'a test left out',
    checkWords,
    file('tests/job/a.test.ts', "test.skip('a', () => {});"),
    file('tests/job/a.test.ts', "test.skipIf(missing)('a', () => {});"),
  ],
  [
    'a test left out whatever there is',
    checkWords,
    file('tests/job/a.test.ts', "test.skipIf(true)('a', () => check());"),
    file('tests/job/a.test.ts', "test.skipIf(!there)('a', () => check());"),
  ],
  [
    'a test of nothing',
    checkWords,
    file('tests/job/a.test.ts', "it.each([])('%s', (a) => check(a));"),
    file('tests/job/a.test.ts', "it.each(['a'])('%s', (a) => check(a));"),
  ],
  [
    'an empty test',
    checkWords,
    file('tests/job/a.test.ts', "it('a', async () => {\n  // expect(a).toBe(1);\n});"),
    file('tests/job/a.test.ts', "it('a', () => {\n  expect(a).toBe(1);\n});"),
  ],
  [
    'a tolerance left to the default',
    checkWords,
    file('tests/job/a.test.ts', 'expect(a).toBeCloseTo(1.4);'),
    file('tests/job/a.test.ts', 'expect(a).toBeCloseTo(1.4, 9);'),
  ],
  ['an empty name', checkFiles, file('src/job/utils.ts', ''), file('src/job/locate.ts', '')],
  ['a folder with an empty name', checkFiles, file('tests/helpers/a.ts', ''), file('tests/readers/a.ts', '')],
  ['another case', checkFiles, file('src/job/readYaml.ts', ''), file('src/job/read-yaml.test.ts', '')],
  ['a long file', checkFiles, file('src/job/a.ts', 'a\n'.repeat(301)), file('src/job/a.ts', 'a\n'.repeat(300))],
];

describe('planted violations are found', () => {
  test.each(PLANTED)('%s', (_, check, bad, good) => {
    expect(check([bad])).toHaveLength(1);
    expect(check([bad])[0]!.path).toBe(bad.path);
    expect(check([good])).toEqual([]);
  });

  test('a finding names its line', () => {
    const bad = file('src/mat/a.ts', "/* two\nlines */\nimport { x } from '../paper/model.ts';\n");
    expect(checkImports([bad])[0]!.line).toBe(3);
  });

  test('a cycle of three, types included', () => {
    const chain = [
      file('src/mat/a.ts', "import { b } from './b.ts';"),
      file('src/mat/b.ts', "import type { c } from './c.ts';"),
    ];
    expect(checkCycles([...chain, file('src/mat/c.ts', "export * from './a.ts';")])).toHaveLength(1);
    expect(checkCycles([...chain, file('src/mat/c.ts', 'export const c = 1;')])).toEqual([]);
  });

  test('dependencies that are unused, unlisted or loose', () => {
    const files = [file('src/job/a.ts', "import { z } from 'zod/mini';")];
    expect(checkDependencies(files, { dependencies: { zod: '4.6.7' } })).toEqual([]);
    expect(checkDependencies(files, { dependencies: { zod: '4.6.7', yaml: '2.9.1' } })).toHaveLength(1);
    expect(checkDependencies(files, { dependencies: {} })).toHaveLength(1);
    expect(checkDependencies(files, { dependencies: { zod: '^4.6.7' } })).toHaveLength(1);
  });

  test('a long file is listed only while it is long', () => {
    expect(checkFiles([file('src/a.ts', 'a\n'.repeat(301))], { 'src/a.ts': 'a table' })).toEqual([]);
    expect(checkFiles([file('src/a.ts', 'a\n')], { 'src/a.ts': 'a table' })).toHaveLength(1);
  });

  test('a stranger at the top level, and one that is missing', () => {
    expect(checkTopLevel([...TOP_LEVEL, '.gitignore', 'dist'])).toEqual([]);
    expect(checkTopLevel([...TOP_LEVEL, 'notes.txt'])).toHaveLength(1);
    expect(checkTopLevel(TOP_LEVEL.slice(1))).toHaveLength(1);
  });

  test('a README whose lines are not what runs', () => {
    const both = 'npm ci && npm run demo\n\nnpm ci && npm test\n';
    expect(checkFirstLines(both, "a='npm ci && npm run demo'\nb='npm ci && npm test'\n")).toEqual([]);
    expect(checkFirstLines(both, 'npm ci && npm test\n')).toHaveLength(1);
    expect(checkFirstLines('npm ci && npm test\n', both)).toHaveLength(2);
    expect(checkFirstLines(`${both}npm ci && npm start\n`, both)).toHaveLength(1);
  });
});
