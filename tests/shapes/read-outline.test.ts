import { describe, expect, it } from 'vitest';
import { pathBox } from '../../src/geometry/extent.ts';
import { area, pathLength, signedArea } from '../../src/geometry/measure.ts';
import { readOutline } from '../../src/shapes/read-outline.ts';

function read(text: string, unit = 1) {
  const made = readOutline(text, unit);
  if (!made.ok) throw new Error(made.message);
  return made.path;
}

function refusal(text: string): string {
  const made = readOutline(text, 1);
  if (made.ok) throw new Error('was read');
  expect(made.hint).not.toBe('');
  return made.message;
}

describe('an outline from SVG path data or corners', () => {
  it('reads corners, with commas or without, either way round', () => {
    expect(area(read('0,0 6,0 3,5'))).toBe(15);
    expect(signedArea(read('0 0 3 5 6 0'))).toBe(15);
    expect(area(read('0,0 6,0 3,5', 10))).toBeCloseTo(1500, 6);
  });

  it('reads every command, absolute and relative, with numbers run together', () => {
    expect(area(read('M0 0 L6 0 L6 4 L0 4 Z'))).toBe(24);
    expect(area(read('m0,0 6,0 0,4-6,0z'))).toBe(24);
    expect(area(read('M0 0H6V4H0Z'))).toBe(24);
    expect(area(read('M0 0h6v4h-6z'))).toBe(24);
    // Half a circle of radius 3 below a square.
    expect(area(read('M0 0h6v4a3 3 0 0 1-6 0z'))).toBeCloseTo(24 + 4.5 * Math.PI, 9);
    expect(area(read('M0 0h6v4a3 3 0 01-6 0z'))).toBeCloseTo(24 + 4.5 * Math.PI, 9);
    // A parabola over a chord of 6 with its handle 4 off encloses 2/3 · 6 · 2.
    expect(area(read('M0 0Q3-4 6 0Z'))).toBeCloseTo(8, 9);
    expect(area(read('M0 0Q3-4 6 0T12 0V9H0Z'))).toBeCloseTo(108, 9);
    expect(area(read('M0 0C0-4 6-4 6 0S12 4 12 0V9H0Z'))).toBeCloseTo(108, 9);
    expect(pathLength(read('M0 0 c0 0 6 0 6 0 v4 h-6 z'))).toBeCloseTo(20, 9);
  });

  it('keeps a circular arc an arc, and draws an elliptical one as curves', () => {
    expect(read('M0 0A3 3 0 0 1 6 0Z').segments.map((s) => s.kind)).toEqual(['arc', 'line']);
    const half = read('M0 0A3 2 0 0 1 6 0Z');
    expect(half.segments.every((s) => s.kind !== 'arc')).toBe(true);
    expect(area(half)).toBeCloseTo(3 * Math.PI, 4);
    expect(pathBox(half).height).toBeCloseTo(2, 5);
    // Too small a radius is grown until it reaches (SVG 2, appendix B.2.5).
    expect(area(read('M0 0A1 1 0 0 1 6 0Z'))).toBeCloseTo(4.5 * Math.PI, 9);
  });

  it('lays an arc between ends of any height, turned as it says (SVG 2, appendix B.2.4)', () => {
    // Half a circle over a chord of 5 that slants 3 across and 4 down; its middle lies half a chord off the chord's.
    const half = read('M0 0A2.5 2.5 0 0 1 3 4Z');
    expect(area(half)).toBeCloseTo((2.5 ** 2 * Math.PI) / 2, 9);
    const [arc] = half.segments;
    expect(arc?.kind === 'arc' && [arc.centre.x, arc.centre.y]).toEqual([expect.closeTo(1.5, 9), expect.closeTo(2, 9)]);
    // A quarter of a circle of 5, and what is left of it on the longer way round.
    expect(area(read('M0 0A5 5 0 0 1 5 5Z'))).toBeCloseTo(25 * (Math.PI / 4 - 1 / 2), 9);
    expect(area(read('M0 0A5 5 0 1 1 5 5Z'))).toBeCloseTo(25 * ((3 * Math.PI) / 4 + 1 / 2), 9);
    // Half an ellipse of 5 and 2 whose long axis is the chord.
    const turned = read(`M0 0A5 2 ${(Math.atan2(8, 6) * 180) / Math.PI} 0 1 6 8Z`);
    expect(area(turned)).toBeCloseTo(5 * Math.PI, 4);
  });

  it('refuses what is no outline, and says why', () => {
    expect(refusal('0,0 6,0')).toContain('4 numbers');
    expect(refusal('0,0 6,x 3,5')).toContain('"x"');
    expect(refusal('M0 0 B1 2')).toContain('B is no command');
    expect(refusal('M0 0 L1')).toContain('L takes 2 numbers');
    expect(refusal('M0 0 L6 0 L3 5 Z M1 1 L2 1 L2 2 Z')).toContain('several parts');
    expect(refusal('M0 0 L6 0 L3 5 Z 1 2')).toContain('after it is closed');
    expect(refusal('0,0 6,6 6,0 0,6')).toContain('crosses or touches itself near 3 3');
    expect(refusal('M0 0C10 6-4 6 6 0L3-5Z')).toContain('crosses');
    expect(refusal('0,0 3,0 6,0 0,0')).toMatch(/encloses nothing|touches/);
    expect(refusal('')).toContain('0 numbers');
    expect(refusal(`M0 0${' l1 1'.repeat(2001)}`)).toContain('2000 parts');
  });

  it('takes so many parts and no more, however they are written', () => {
    const corners = (count: number): readonly string[] =>
      Array.from({ length: count }, (_, i) => {
        const angle = (2 * Math.PI * i) / count;
        return `${(100 * Math.cos(angle)).toFixed(4)},${(100 * Math.sin(angle)).toFixed(4)}`;
      });
    const many = 'the outline has more than 2000 parts';
    expect(refusal(corners(2001).join(' '))).toBe(many);
    expect(refusal(`M${corners(2001).join(' L')} Z`)).toBe(many);
    expect(read(corners(1990).join(' ')).segments).toHaveLength(1990);
    expect(read(`M${corners(1990).join(' L')} Z`).segments).toHaveLength(1990);
    // Most of an ellipse is drawn by several curves.
    const [first, ...others] = corners(1500);
    expect(refusal(`M${first} ${others.map((each) => `A 3 1 20 1 1 ${each}`).join(' ')} Z`)).toBe(many);
  });
});
