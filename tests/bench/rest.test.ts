import { expect, it } from 'vitest';
import { finest } from '../../src/bench/rest.ts';

it('a rule is read to a 32nd of an inch, or half a millimetre', () => {
  expect(finest('in')).toBe(0.79375);
  expect([finest('mm'), finest('cm')]).toEqual([0.5, 0.5]);
});
