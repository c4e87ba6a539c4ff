import { expect, it } from 'vitest';
import { fewestFor } from '../../src/paper/search/leftover.ts';

it('of very many strips each is given to the sheet that shows most of them', () => {
  const strips = Array.from({ length: 60 }, (_, i) => [i, i % 2 === 0 ? 100 : 101]);
  expect([...fewestFor(strips, 60)!].sort((a, b) => a - b)).toEqual([100, 101]);
  expect(fewestFor(strips, 1)).toBeUndefined();
});
