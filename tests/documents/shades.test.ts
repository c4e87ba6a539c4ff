import { describe, expect, it } from 'vitest';
import { coreColour } from '../../src/documents/proof/shades.ts';

describe('the colour of a core', () => {
  it.each([
    ['black', '#1c1b1a'],
    ['#ABCDEF', '#abcdef'],
    [' solid', '#112233'],
    // What a word is not known for is white, also where every object knows it.
    ['ivory', '#fdfcf9'],
    ['constructor', '#fdfcf9'],
  ])('%j is %s', (core, colour) => expect(coreColour(core, '#112233')).toBe(colour));
});
