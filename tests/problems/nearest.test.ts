import fc from 'fast-check';
import { expect, it } from 'vitest';
import { nearest } from '../../src/problems/nearest.ts';

const KEYS = ['outer', 'frame', 'border', 'weighting', 'layers'];

it.each([
  ['outr', 'outer'],
  ['ouetr', 'outer'],
  ['OUTER', 'outer'],
  ['boarder', 'border'],
  ['layer', 'layers'],
  ['wieghting', 'weighting'],
  ['farme', 'frame'],
])('takes %s for %s', (given, meant) => {
  expect(nearest(given, KEYS)).toBe(meant);
});

it.each(['colour', 'x', '', 'reveal', 'o'])('takes %j for none of them', (given) => {
  expect(nearest(given, KEYS)).toBeUndefined();
});

it('finds every word that is one slip away', () => {
  fc.assert(
    fc.property(fc.constantFrom(...KEYS), fc.nat(), fc.constantFrom('drop', 'swap', 'double'), (key, seed, slip) => {
      const at = seed % (key.length - 1);
      const slipped =
        slip === 'drop'
          ? key.slice(0, at) + key.slice(at + 1)
          : slip === 'double'
            ? key.slice(0, at + 1) + key.slice(at)
            : key.slice(0, at) + key[at + 1]! + key[at]! + key.slice(at + 2);
      expect(nearest(slipped, KEYS)).toBe(key);
    }),
  );
});

it('looks no further than the start of a word of any length', () => {
  expect(nearest('outer'.repeat(100_000), KEYS)).toBeUndefined();
});
