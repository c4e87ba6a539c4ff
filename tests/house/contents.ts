import { codeOnly } from './lexer.ts';
import {
  AMBIENT,
  BROWSER,
  EMPTY_NAMES,
  LEAVES_THE_PAGE,
  LONG_FILES,
  LONGEST_FILE,
  MADE,
  MAY_BE_THERE,
  SET_ELSEWHERE,
  SETTING,
  TOP_LEVEL,
  UNIT_NUMBERS,
  UNITS,
  UNWANTED,
  UNWANTED_IN_CODE,
  UNWANTED_IN_TESTS,
} from './rules.ts';
import { type Finding, findAll, type SourceFile } from './source.ts';

const under = (path: string, folders: readonly string[]): boolean => folders.some((folder) => path.startsWith(folder));

/** The numbers that define units stand in `src/units/` alone; words about them may stand anywhere. */
export function checkUnitNumbers(files: readonly SourceFile[]): Finding[] {
  return files
    .filter((file) => under(file.path, ['src/']) && !under(file.path, ['src/units/']))
    .flatMap((file) => {
      const code = codeOnly(file.text);
      const why = 'convert by src/units/';
      return [
        ...UNIT_NUMBERS.flatMap((pattern) => findAll('unit numbers', file, code, pattern, why)),
        ...findAll('unit numbers', file, code, CONSTANTS, why).filter(({ message }) => isUnit(message.split(':')[0]!)),
      ];
    });
}

const NUMBER = String.raw`(?<![\w.])\d[\d_]*(?:\.\d*)?(?:e[+-]?\d+)?\b`;
/** A number that is written out, or two of them multiplied or divided. */
const CONSTANTS = new RegExp(`${NUMBER}(?:\\s*[*/]\\s*${NUMBER})?`, 'gi');

/** Whether it comes to one of the numbers that define units, to the digits that anybody would write. */
function isUnit(text: string): boolean {
  const [, first = '', sign, second = '1'] = /^(.*?)(?:\s*([*/])\s*(.*))?$/.exec(text.replaceAll('_', ''))!;
  const value = sign === '/' ? Number(first) / Number(second) : Number(first) * Number(second);
  return UNITS.some((unit) => Math.abs(value / unit - 1) < 2e-4);
}

/** The one file that asks the server which the page came from; its policy lets it ask nobody else. */
const ASKS_ITS_SERVER = 'src/page/files/served.ts';

/** Files, process, clock, locale, chance and terminal belong to `src/cli/` (and to the build), a browser to `src/page/`. */
export function checkAmbient(files: readonly SourceFile[]): Finding[] {
  const found = (file: SourceFile, patterns: readonly RegExp[]): Finding[] => {
    const code = codeOnly(file.text);
    return patterns.flatMap((pattern) => findAll('ambient', file, code, pattern, 'let it arrive as an option'));
  };
  return files
    .filter((file) => under(file.path, ['src/']))
    .flatMap((file) => [
      ...(under(file.path, ['src/cli/', 'src/dev/', 'src/page/']) ? [] : found(file, AMBIENT)),
      ...(!under(file.path, ['src/page/'])
        ? found(file, BROWSER)
        : under(file.path, [ASKS_ITS_SERVER])
          ? []
          : found(file, LEAVES_THE_PAGE)),
    ]);
}

/** Lines of words are broken and spaced in `src/text/` alone. */
export function checkSetting(files: readonly SourceFile[]): Finding[] {
  return files
    .filter((file) => under(file.path, SET_ELSEWHERE))
    .flatMap((file) => {
      const code = codeOnly(file.text);
      return SETTING.flatMap((pattern) => findAll('setting', file, code, pattern, 'say it in words of src/text/'));
    });
}

/** Nothing unfinished, nothing switched off. The rules themselves have to name the words. */
export function checkWords(files: readonly SourceFile[]): Finding[] {
  return files
    .filter((file) => !under(file.path, ['tests/house/']))
    .flatMap((file) => {
      const code = codeOnly(file.text);
      const inCode = under(file.path, ['tests/']) ? [...UNWANTED_IN_CODE, ...UNWANTED_IN_TESTS] : UNWANTED_IN_CODE;
      return [
        ...UNWANTED.flatMap(({ pattern, why }) => findAll('words', file, file.text, pattern, why)),
        ...inCode.flatMap(({ pattern, why }) => findAll('words', file, code, pattern, why)),
      ];
    });
}

/** Files are named by what they hold, in kebab-case, and stay short. */
export function checkFiles(files: readonly SourceFile[], longFiles = LONG_FILES): Finding[] {
  return files.flatMap(({ path, text }) => {
    const findings: Finding[] = [];
    const add = (rule: string, line: number, message: string): void => {
      findings.push({ rule, path, line, message });
    };
    for (const part of path.split('/')) {
      const name = part.split('.')[0]!;
      if (EMPTY_NAMES.includes(name)) add('names', 0, `${name} says nothing of what is in it`);
      if (!/^[a-z0-9]+(?:-[a-z0-9]+)*(?:\.[a-z]+)*$/.test(part)) add('names', 0, `${part} is not in kebab-case`);
    }
    const lines = text.split('\n').length - 1;
    if (lines > LONGEST_FILE && longFiles[path] === undefined)
      add('length', lines, `${lines} lines, ${LONGEST_FILE} allowed: split it by content`);
    if (lines <= LONGEST_FILE && longFiles[path] !== undefined) add('length', lines, 'is listed as long and is not');
    return findings;
  });
}

/** The top level has a fixed list; `names` is what lies there. */
export function checkTopLevel(names: readonly string[]): Finding[] {
  const finding = (path: string, message: string): Finding => ({ rule: 'top level', path, line: 0, message });
  return [
    ...names
      .filter((name) => !name.startsWith('.') && ![...TOP_LEVEL, ...MAY_BE_THERE, ...MADE].includes(name))
      .map((name) => finding(name, 'does not belong at the top level')),
    ...TOP_LEVEL.filter((name) => !names.includes(name)).map((name) => finding(name, 'is missing')),
  ];
}

/** Alone on a line of the README, or between quotation marks in the script. */
const SET_UP = /(?<=^|')npm ci && npm (?:run )?[a-z]+(?=$|')/gm;

/** The README gives two lines that do all the set-up; the check on a fresh machine runs those and no others. */
export function checkFirstLines(readme: string, ciRun: string): Finding[] {
  const shown = [...readme.matchAll(SET_UP)].map((match) => match[0]);
  const run = [...ciRun.matchAll(SET_UP)].map((match) => match[0]);
  const finding = (path: string, message: string): Finding => ({ rule: 'first lines', path, line: 0, message });
  const wanted = ['npm ci && npm run demo', 'npm ci && npm test'];
  return [
    ...wanted.filter((line) => !shown.includes(line)).map((line) => finding('README.md', `lacks ${line}`)),
    ...shown.filter((line) => !run.includes(line)).map((line) => finding('.ci/run', `does not run ${line}`)),
    ...run.filter((line) => !shown.includes(line)).map((line) => finding('README.md', `does not show ${line}`)),
  ];
}
