import { afterEach, describe, expect, test, vi } from 'vitest';
import { CASES } from './cases.ts';
import { compareCase, type Outputs } from './compare.ts';

/** Outputs of a case by modules that are loaded anew, so that what was put in their place counts. */
async function make(name: string): Promise<Outputs> {
  vi.resetModules();
  const { makeCase } = await import('./make.ts');
  return makeCase(CASES.find((each) => each.name === name)!);
}

/** The engine as it is makes the references; the same engine with a fault in it must not pass by them. */
async function failing(name: string, plant: () => void): Promise<string[]> {
  const references = await make(name);
  plant();
  return compareCase(name, references, await make(name)).map((failure) => failure.file);
}

const EVERYWHERE = [
  expect.stringMatching(/^pattern-1\.drawing\.json$/),
  expect.stringMatching(/^pattern-1\.pdf\.txt$/),
  expect.stringMatching(/^pattern-1\.svg\.txt$/),
];

describe('a fault in the engine fails the references in every form', { timeout: 180_000 }, () => {
  afterEach(() => {
    vi.restoreAllMocks();
    vi.doUnmock('../../src/bench/outline.ts');
    vi.doUnmock('../../src/bench/offsets.ts');
  });

  test('a back view that is not mirrored, on a lopsided mat', async () => {
    const files = await failing('lopsided', () => {
      vi.doMock('../../src/bench/outline.ts', async (original) => ({
        ...(await original<object>()),
        mirror: (path: unknown) => path,
      }));
    });
    expect(files).toEqual(expect.arrayContaining(EVERYWHERE));
  });

  test('tangent and cotangent swapped, at 60°', async () => {
    const tan = Math.tan;
    const swap = (): void => void vi.spyOn(Math, 'tan').mockImplementation((angle) => 1 / tan(angle));
    expect(await failing('steep', swap)).toEqual(expect.arrayContaining(EVERYWHERE));
  });

  test('a mark that forgets its offset', async () => {
    const files = await failing('hand-held', () => {
      vi.doMock('../../src/bench/offsets.ts', async (original) => ({
        ...(await original<object>()),
        offsetsOn: () => ({ start: 0, stop: 0 }),
      }));
    });
    expect(files).toEqual(expect.arrayContaining(EVERYWHERE));
  });
});
