import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CODES as JOB } from '../../src/job/codes.ts';
import { CODES as PAPERS } from '../../src/papers/codes.ts';
import type { Problem } from '../../src/problems/problem.ts';
import { showProblem } from '../../src/problems/show.ts';
import { CODES as READ } from '../../src/read/codes.ts';
import { CODES as SHOPS } from '../../src/shop/codes.ts';
import { BAD_JOBS, BAD_JSON, BAD_SHOPS, BAD_YAML, type Bad } from './bad-texts.ts';
import { read, refused, SHOP, shopOf } from './texts.ts';

const CODES = { ...READ, ...SHOPS, ...JOB, ...PAPERS };

const WITH_PRINTER = `${SHOP.replace('y: 0.998', 'y: 0.998, margin: 1/8')}`;

/** Exactly one problem, and that one: each text has one thing wrong with it. */
function expectOne(problems: readonly Problem[], [, code, line, column, words]: Bad, file: string): void {
  expect(problems.map(showProblem).join('\n')).toContain(words);
  expect(problems.map((problem) => [problem.code, problem.line, problem.column, problem.file])).toStrictEqual([
    [code, line, column, file],
  ]);
  const [{ message, severity }] = problems as [Problem];
  expect(severity).toBe('error');
  expect(message).not.toMatch(/[.;\n]$/);
  expect(CODES).toHaveProperty([code]);
}

describe('one bad thing is one problem, at its place, in plain words', () => {
  it.each(BAD_YAML)('%j: %s', (...bad) => {
    expectOne(
      refused(read(bad[0], WITH_PRINTER, 'x.yaml')).filter(({ code }) => code !== 'key-unknown'),
      bad,
      'x.yaml',
    );
  });

  it.each(BAD_JSON)('%j: %s', (...bad) => {
    expectOne(refused(read(bad[0], WITH_PRINTER, 'x.json')), bad, 'x.json');
  });

  it.each(BAD_JOBS)('%j: %s', (...bad) => {
    expectOne(refused(read(bad[0], WITH_PRINTER, 'x.yaml')), bad, 'x.yaml');
  });

  it.each(BAD_SHOPS)('%j: %s', (...bad) => {
    expectOne(refused(shopOf(bad[0])), bad, 'shop.yaml');
    expectOne(refused(read('openings: [{}]\n', bad[0])), bad, 'shop.yaml');
  });
});

/** Codes that no small job or shop brings about, or that are warnings, and the test that makes each appear. */
const ELSEWHERE: Readonly<Record<string, string>> = {
  'text-too-long': '../read/hostile.test.ts',
  'text-too-many-values': '../read/hostile.test.ts',
  'problems-more': '../read/hostile.test.ts',
  'paper-unit': '../papers/find.test.ts',
  'bevel-not-head': './job.test.ts',
  'rebate-shallow': './job.test.ts',
  'shop-not-editable': '../shop/edit-shop.test.ts',
  'field-not-editable': '../read/set-field.test.ts',
  'vary-unreadable': '../dev/every-message.test.ts',
  'vary-path': '../dev/every-message.test.ts',
  'glyph-missing': '../dev/every-message.test.ts',
  'script-unshaped': '../dev/every-message.test.ts',
  'price-one': '../dev/every-message.test.ts',
  'price-per': '../dev/every-message.test.ts',
  'readings-none': '../calibrate/wrong-readings.ts',
  'readings-diagonal': '../calibrate/wrong-readings.ts',
  'yaml-comment': '../read/doubts.test.ts',
};

it('makes every code of the list appear, and lists every code that appears', () => {
  const shown = [...BAD_YAML, ...BAD_JSON, ...BAD_JOBS, ...BAD_SHOPS].map(([, code]) => code);
  const tests = Object.entries(ELSEWHERE).filter(([code, file]) =>
    readFileSync(new URL(file, import.meta.url), 'utf8').includes(`'${code}'`),
  );
  expect(tests.map(([code]) => code)).toStrictEqual(Object.keys(ELSEWHERE));
  expect([...new Set([...shown, ...Object.keys(ELSEWHERE)])].sort()).toStrictEqual(Object.keys(CODES).sort());
  for (const { means, remedy } of Object.values(CODES)) {
    expect(means).toMatch(/^[A-Z`].*\.$/);
    expect(remedy).toMatch(/^[A-Z`].*\.$/);
  }
});
