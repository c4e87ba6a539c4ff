import { expect, it } from 'vitest';
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
