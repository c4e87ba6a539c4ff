import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { rounded } from '../../src/cli/rounded.ts';
import { solveJob } from '../../src/outputs/solve-job.ts';
import { showProblem } from '../../src/problems/show.ts';
import { parseLength, parseSize } from '../../src/units/parse.ts';
import { showLength, showNear, showSize } from '../../src/units/print.ts';
import { LENGTH_UNITS } from '../../src/units/units.ts';
import { built } from '../built.ts';
import { BAD_YAML } from '../job/bad-texts.ts';
import { command } from './spawned.ts';

/** What a bundle may make of the sources, by the program as it is shipped. */
const folder = mkdtempSync(join(tmpdir(), 'matwright-'));
beforeAll(async () => void (await built()), 240_000);
afterAll(() => rmSync(folder, { recursive: true }));

function jobs(texts: readonly string[]): readonly string[] {
  return texts.map((text, i) => {
    const file = join(folder, `${i}.yaml`);
    writeFileSync(file, text);
    return file;
  });
}

/** Lengths in all the ways in which they are written, and in those in which they are printed. */
const LENGTHS: readonly string[] = [
  ...'¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞'.split('').flatMap((sign) => [`17${sign} in`, `17 ${sign}″`]),
  ...[
    '16 1/2 in',
    '16-1/2″',
    '16\u00a01⁄2 in',
    '1\u2032 6\u2033',
    '1’ 6 1/2”',
    "1' 6''",
    '16+1/2 in',
    '41.9 cm',
    '419\u202fmm',
  ],
  ...[419.1, 406.4, 400, 412.345, 511.17].flatMap((mm) =>
    LENGTH_UNITS.flatMap((unit) => [showLength(mm, unit), showNear(mm, unit)]),
  ),
];
const SIZES: readonly string[] = [
  ...['x', '×', '✕', '*', ' by '].map((by) => `16${by}20 in`),
  ...LENGTH_UNITS.map((unit) => showSize({ width: 406.4, height: 511.17 }, unit)),
];

describe('the program as it is shipped', () => {
  it('reads every length and size that the library reads, and every one that it prints', async () => {
    const sizes = [...LENGTHS.map((length) => [length, length]), ...SIZES];
    const texts = sizes.map((size) => `units: in\nmat: {outer: ${JSON.stringify(size)}}\nopenings: [{size: 6 x 8}]\n`);
    const { code, out, err } = await command(['check', ...jobs(texts), '--json']);
    expect([code, err]).toEqual([0, '']);
    const found = JSON.parse(out).jobs.map(({ outer }: { outer: unknown }) => outer);
    const wanted = sizes.map((size) => {
      const read = typeof size === 'string' ? parseSize(size, 'in') : parseLength(size[0]!, 'in');
      if (!read.ok) throw new Error(JSON.stringify([size, read]));
      return typeof read.value === 'number' ? { width: read.value, height: read.value } : read.value;
    });
    expect(found).toEqual(rounded(wanted));
  }, 120_000);

  it('prints of every template lengths and sizes that it reads, each as what it is', async () => {
    const files = readdirSync('templates').filter((name) => name.endsWith('.yaml') && name !== 'shop.yaml');
    const paths = files.map((name) => join('templates', name));
    const { code, out } = await command(['check', ...paths], { cwd: process.cwd() });
    expect(code).toBe(0);
    const length = String.raw`-?\d+(?: \d+/\d+|/\d+|\.\d+)?(?: (?:in|mm|cm)(?: \(\d+(?:\.\d+)? mm\))?)?`;
    const sizes = [...out.matchAll(new RegExp(`${length} × ${length}`, 'gu'))].map(([size]) => size);
    const lengths = [...out.matchAll(new RegExp(String.raw`(?<![\d/.] ?)${length}(?= )`, 'gu'))]
      .map(([each]) => each)
      .filter((each) => /(?:in|mm|cm|\))$/u.test(each));
    expect([sizes.length > 100, lengths.length > 200]).toEqual([true, true]);
    expect(sizes.filter((size) => !parseSize(size, 'in').ok)).toEqual([]);
    expect(lengths.filter((each) => !parseLength(each, 'in').ok)).toEqual([]);
    // No other sign stands among them: what is no ASCII is either read or no part of a length.
    expect([...new Set(out.replaceAll(/[ -~\n]/gu, ''))].sort()).toEqual(['°', '×']);
  }, 120_000);

  it('says of wrong texts what the library says', async () => {
    const bad = BAD_YAML.map(([text]) => text);
    const files = jobs(bad);
    const { code, err } = await command(['check', ...files]);
    const wanted = files.flatMap((file, i) => {
      const solved = solveJob(bad[i]!, { file });
      return solved.ok ? [] : solved.problems.map(showProblem);
    });
    expect(code).toBe(2);
    expect(wanted.length).toBeGreaterThan(40);
    expect(err).toBe(`${wanted.join('\n')}\n`);
  }, 120_000);
});
