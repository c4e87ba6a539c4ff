import { describe, expect, it } from 'vitest';
import { brokenLines, lettering } from '../../src/cutfiles/letters.ts';
import { pathBox } from '../../src/geometry/extent.ts';
import { FONTS } from '../fonts/loaded.ts';

const printable = Array.from({ length: 0x7f - 0x20 }, (_, i) => String.fromCharCode(0x20 + i));

describe('letters of single strokes', () => {
  it('stand on their line, as high as the size says, each to the right of the last', () => {
    const { paths, width } = lettering('HAMburg 0123', 10, FONTS);
    const boxes = paths.map(pathBox);
    expect(Math.min(...boxes.map(({ y }) => y))).toBeCloseTo(-7, 9);
    expect(Math.max(...boxes.map(({ x, width: w }) => x + w))).toBeCloseTo(width, 9);
    expect(boxes.every(({ x }) => x >= 0)).toBe(true);
    const twice = lettering('HAMburg 0123', 20, FONTS);
    expect(twice.width).toBeCloseTo(2 * width, 9);
  });

  it('are lines of two points at least, none of no length, and tell letters and digits apart', () => {
    const seen = new Map<string, string>();
    for (const character of printable) {
      const { paths } = lettering(character, 6, FONTS);
      for (const { start, segments } of paths) {
        let at = start;
        expect(segments.length).toBeGreaterThan(0);
        for (const { to } of segments) {
          expect(Math.hypot(to.x - at.x, to.y - at.y)).toBeGreaterThan(0);
          at = to;
        }
      }
      if (!/[A-Za-z1-9]/u.test(character)) continue;
      const drawn = JSON.stringify(paths);
      expect([character, seen.get(drawn)]).toEqual([character, undefined]);
      seen.set(drawn, character);
    }
  });

  it('give way to outlines where one is missing, for the whole text', () => {
    const { paths, width } = lettering('Möwe', 10, FONTS);
    expect(paths.every(({ closed }) => closed)).toBe(true);
    expect(width).toBeGreaterThan(20);
    expect(lettering('Mowe', 10, FONTS).paths.some(({ closed }) => !closed)).toBe(true);
  });

  it('break at spaces to the width', () => {
    const lines = brokenLines('one two three four five six seven', 5, 30, FONTS);
    expect(lines.join(' ')).toBe('one two three four five six seven');
    expect(lines.length).toBeGreaterThan(2);
    for (const line of lines) expect(lettering(line, 5, FONTS).width).toBeLessThanOrEqual(30);
  });
});
