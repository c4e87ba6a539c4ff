import { expect, it } from 'vitest';
import { mistake } from '../../src/page/state/mistake.ts';

it('says what failed, and how the piece is saved first', () => {
  expect(mistake(new TypeError('x is none'))).toEqual({
    severity: 'error',
    code: 'page-broken',
    path: [],
    message: 'the program made a mistake: x is none',
    hint: 'save the piece to a file, then load this page again',
  });
  expect(mistake('stopped').message).toBe('the program made a mistake: stopped');
});
