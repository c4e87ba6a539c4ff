import { expect, it } from 'vitest';
import { telling } from './reach.ts';
import { inOrder } from './related.ts';
import { mutantsOf } from './sites.ts';

const changes = (text: string): readonly string[] =>
  mutantsOf('a.ts', text).map(({ start, end, to }) => text.slice(0, start) + to + text.slice(end));

it('changes operators, signs, constants and branches, one at a time', () => {
  expect(changes('const f = (a: number) => (a > 2 ? -a : Math.max(a, 0.5));')).toEqual([
    'const f = (a: number) => (!(a > 2) ? -a : Math.max(a, 0.5));',
    'const f = (a: number) => (a >= 2 ? -a : Math.max(a, 0.5));',
    'const f = (a: number) => (a < 2 ? -a : Math.max(a, 0.5));',
    'const f = (a: number) => (a > 3 ? -a : Math.max(a, 0.5));',
    'const f = (a: number) => (a > 2 ? a : Math.max(a, 0.5));',
    'const f = (a: number) => (a > 2 ? -a : Math.min(a, 0.5));',
    'const f = (a: number) => (a > 2 ? -a : Math.max(a, 0.55));',
  ]);
});

it('leaves types, imports and words alone', () => {
  expect(
    changes("import { a } from './a.ts';\ntype B = 1 | 2;\nconst c = 'x' + a;\nexport interface D { e: 0 }\n"),
  ).toEqual([]);
});

it('names the line', () => {
  expect(mutantsOf('a.ts', 'const a =\n  b * c;')).toMatchObject([{ line: 2, from: '*', to: '/', kind: 'operator' }]);
});

it('lets the functions that hold a mutant tell when they run, and changes nothing else', () => {
  const text =
    'export const f = (a) => a + 1;\nexport function g(b) { return () => ({ c: b * 2 }); }\nexport const d = 3 * 4;\n';
  const told = telling(text, mutantsOf('a.ts', text));
  const reached = new Set<string>();
  const run = new Function(
    '__reached',
    `globalThis.__reached = __reached; ${told.replaceAll('export ', '')} return { f, g, d };`,
  );
  const { f, g, d } = run(reached) as { f: (a: number) => number; g: (b: number) => () => unknown; d: number };
  expect(d).toBe(12);
  expect([...reached]).toEqual([]);
  expect(f(1)).toBe(2);
  const inner = g(2);
  // The function around does no arithmetic of its own.
  expect(reached.size).toBe(1);
  expect(inner()).toEqual({ c: 4 });
  expect(reached.size).toBe(2);
});

it("tries what is quick and comes by little first, the folder's own before others, golden references last", () => {
  const file = (name: string, seconds: number, ...reaches: readonly number[]) => ({
    file: name,
    seconds,
    reaches: new Set(reaches),
  });
  const tried = inOrder(
    1,
    'bench',
    [
      file('tests/golden/golden.test.ts', 30, 0, 1),
      file('tests/bench/slow.test.ts', 9, 1),
      file('tests/bench/quick.test.ts', 0.5, 1),
      file('tests/bench/elsewhere.test.ts', 0.1, 0),
      file('tests/documents/a.test.ts', 1, 1),
      file('tests/documents/far.test.ts', 500, 1),
    ],
    60,
  );
  expect(tried.map((each) => each.file)).toEqual([
    'tests/bench/quick.test.ts',
    'tests/bench/slow.test.ts',
    'tests/documents/a.test.ts',
    'tests/golden/golden.test.ts',
  ]);
});
