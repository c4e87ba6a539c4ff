import { describe, expect, it } from 'vitest';
import { textOutline } from '../../src/fonts/outlines.ts';
import { signedArea } from '../../src/geometry/measure.ts';
import { selfCrossing } from '../../src/geometry/meetings.ts';
import { gapBetween, isInside, outlineOf } from '../../src/geometry/near.ts';
import { type LetterStyle, letterWindows } from '../../src/shapes/letter-windows.ts';
import { FONTS } from '../fonts/loaded.ts';

const style = (more: Partial<LetterStyle> = {}): LetterStyle => ({
  weight: 'bold',
  height: 20,
  spacing: 0,
  bridge: 2,
  ...more,
});
const ALL = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789&ÄØéßЖФбю?!';

function must(text: string, more: Partial<LetterStyle> = {}) {
  const made = letterWindows(text, style(more), FONTS);
  if (!made.ok) throw new Error(`${text}: ${made.message}`);
  return made;
}

describe('letters as windows', () => {
  it('come out as simple outlines, none inside another: all board around them hangs together', () => {
    for (const letter of ALL) {
      const { parts } = must(letter);
      for (const { path } of parts) {
        expect([letter, selfCrossing(path)]).toEqual([letter, undefined]);
        expect(signedArea(path)).toBeGreaterThan(0);
        const outline = outlineOf(path);
        for (const other of parts)
          if (other.path !== path) expect([letter, isInside(outline, other.path.start)]).toEqual([letter, false]);
      }
    }
  });

  it('follow the font’s own outlines: where nothing is bridged they are the font’s, in area too', () => {
    for (const letter of 'CEFHILMNSTVXZclsvz') {
      const capHeight = 0.698;
      const { parts, bridges } = must(letter);
      expect(bridges).toBe(0);
      const [own] = textOutline(letter, 'bold', 20 / capHeight, FONTS);
      const area = parts.reduce((sum, { path }) => sum + signedArea(path), 0);
      // The height of the capitals is the font’s own measure, read off the letter here.
      expect(area / Math.abs(signedArea(own!))).toBeCloseTo(1, 2);
    }
  });

  it('are as high as they were asked to be', () => {
    const { parts } = must('H', { height: 25 });
    const ys = parts[0]!.path.segments.map((segment) => segment.to.y);
    expect(Math.min(...ys)).toBeCloseTo(-25, 6);
    expect(Math.max(...ys)).toBeCloseTo(0, 6);
  });

  it('hold each island by bridges of the width that was asked for', () => {
    for (const bridge of [1, 2, 3]) {
      const { parts, bridges } = must('O', { bridge });
      expect(bridges).toBe(2);
      expect(parts.length).toBe(2);
      expect(gapBetween(parts[0]!.path, parts[1]!.path)).toBeCloseTo(bridge, 3);
      const areaOf = ({ path }: { path: Parameters<typeof signedArea>[0] }) => signedArea(path);
      // In the middle of a letter that is the same on both sides, so that both halves are alike.
      expect(areaOf(parts[0]!) / areaOf(parts[1]!)).toBeCloseTo(1, 1);
    }
    expect([...'BAe8'].map((letter) => must(letter).bridges)).toEqual([3, 2, 2, 3]);
  });

  it('are refused with the letter and the reason', () => {
    const said = (text: string, more: Partial<LetterStyle> = {}) => {
      const made = letterWindows(text, style(more), FONTS);
      return made.ok ? '' : made.message;
    };
    expect(letterWindows('HEN', { weight: 'bold', height: 20, spacing: 0 }, FONTS).ok).toBe(true);
    const strict = letterWindows('HERON', { weight: 'bold', height: 20, spacing: 0 }, FONTS);
    expect(strict).toMatchObject({ ok: false, message: 'the inside of R would fall out' });
    expect(said('O', { bridge: 30 })).toBe('the island of O has no room for its bridges');
    expect(said('®')).toContain('® has a window within an island');
    expect(said('\u{1f600}')).toContain('the bundled font has no');
    expect(said(' ')).toBe('the text has nothing to cut');
  });
});
