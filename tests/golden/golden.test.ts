import { describe, expect, test } from 'vitest';
import { CASES } from './cases.ts';
import { compareCase, compareNames, showFailure } from './compare.ts';
import { makeCase } from './make.ts';
import { readReferences, referenceFolders, showFailures } from './store.ts';

describe('golden references', () => {
  test('every folder is a case, and every case has its own', () => {
    const failures = compareNames(
      CASES.map((each) => each.name),
      referenceFolders(),
    );
    expect(failures.map(showFailure)).toEqual([]);
  });

  // Many pages are rendered, and the machine may be busy.
  test.each(CASES)('$name', { timeout: 180_000 }, async (each) => {
    const failures = compareCase(each.name, readReferences(each.name), await makeCase(each));
    showFailures(each.name, failures);
    expect(failures.map(showFailure)).toEqual([]);
  });
});
