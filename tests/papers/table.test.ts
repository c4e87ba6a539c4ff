import { describe, expect, it } from 'vitest';
import { findPaper } from '../../src/papers/find.ts';
import { PAPERS } from '../../src/papers/table.ts';
import { mmFromInches, pointsFromMm } from '../../src/units/units.ts';

const PWG = "PWG 5101.1, as tabled in the CUPS project's pwg-media.c";
const KUHN = 'M. Kuhn, International standard paper sizes, with ISO 216:2007 §7.1';

function size(id: string): readonly [number, number] {
  const found = findPaper(id);
  if (!found.ok || found.value.kind !== 'sheet') throw new Error(`no paper ${id}`);
  return [found.value.width, found.value.height];
}

describe(`sizes in whole millimetres (${PWG})`, () => {
  it.each([
    ['a0', 841, 1189],
    ['a1', 594, 841],
    ['a2', 420, 594],
    ['a3', 297, 420],
    ['a4', 210, 297],
    ['b1', 707, 1000],
    ['b2', 500, 707],
    ['b4', 250, 353],
    ['jis-b1', 728, 1030],
    ['jis-b4', 257, 364],
    ['jis-b5', 182, 257],
  ])('%s is %d × %d mm', (id, width, height) => {
    expect(size(id)).toEqual([width, height]);
  });
});

describe(`sizes in inches (${PWG})`, () => {
  it.each([
    ['ansi-c', 17, 22],
    ['ansi-d', 22, 34],
    ['ansi-e', 34, 44],
    ['arch-a', 9, 12],
    ['arch-b', 12, 18],
    ['arch-c', 18, 24],
    ['arch-d', 24, 36],
    ['arch-e', 36, 48],
    // From memory.
    ['letter', 8.5, 11],
    ['legal', 8.5, 14],
    ['tabloid', 11, 17],
    ['ledger', 11, 17],
  ])('%s is %d × %d in', (id, width, height) => {
    const [w, h] = size(id);
    expect(w).toBeCloseTo(mmFromInches(width), 9);
    expect(h).toBeCloseTo(mmFromInches(height), 9);
  });

  it('A3+ is 329 × 483 mm (common practice, no source)', () => {
    expect(size('A3+')).toEqual([329, 483]);
  });
});

it('A4 is 595.2756 × 841.8898 points (W3C CSS Values 3, PWG 5101.1)', () => {
  expect(size('a4').map((mm) => pointsFromMm(mm).toFixed(4))).toEqual(['595.2756', '841.8898']);
});

describe(`each size of a series is the rounded one before it, halved and rounded down (${KUHN})`, () => {
  it.each([
    ['a', 841, 1189],
    ['b', 1000, 1414],
    ['jis-b', 1030, 1456],
  ])('%s', (series, width, height) => {
    let [w, h] = [width, height];
    for (let i = 0; i <= 6; i++) {
      expect(size(`${series}${i}`)).toEqual([w, h]);
      [w, h] = [Math.floor(h / 2), w];
    }
  });

  it('which is not what the exact values give: A1 would be 594 × 840', () => {
    const side = (n: number) => 1000 * 2 ** (-n / 2 + 0.25);
    expect([Math.floor(side(2)), Math.floor(side(1))]).toEqual([594, 840]);
    expect(size('a1')).not.toEqual([594, 840]);
  });

  it('stays within the tolerance of the standard: 1.5, 2 and 3 mm at 148, 297 and 841 mm', () => {
    const side = (n: number) => 1000 * 2 ** (-n / 2 + 0.25);
    for (let i = 0; i <= 6; i++) {
      const [w, h] = size(`a${i}`);
      for (const [got, exact] of [
        [w, side(i + 1)],
        [h, side(i)],
      ] as const) {
        expect(Math.abs(got - exact)).toBeLessThan(exact <= 150 ? 1.5 : exact <= 600 ? 2 : 3);
      }
    }
  });
});

it('names every paper once, upright, with its source', () => {
  const names = PAPERS.flatMap((p) => [p.id, ...(p.aliases ?? [])]);
  expect(new Set(names).size).toBe(names.length);
  for (const p of PAPERS) {
    expect(p.height, p.id).toBeGreaterThan(p.width);
    expect(p.source, p.id).not.toBe('');
  }
});
