import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readJob } from '../../src/job/read.ts';
import type { Mat } from '../../src/mat/model.ts';
import { solve } from '../../src/mat/solve.ts';

function solved(text: string): { mat: Mat; codes: readonly string[] } {
  const read = readJob({ text, file: 'job.yaml' });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const made = solve(read.value.job);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return { mat: made.value, codes: made.warnings.map(({ code }) => code) };
}

const row = (count: number, mat: string, artwork: string, arrange: string): string => `units: mm
mat: {${mat}}
openings: [${Array.from({ length: count }, (_, i) => `{name: n${i + 1}, artwork: ${artwork}, overlap: 5}`).join(', ')}]
arrange: {${arrange}}
bench: {snap: true, graduation: 2, stack: apart}
`;

const boxes = (mat: Mat) => mat.openings.map(({ layers }) => layers[0]!.faceBox);
const onGraduation = (length: number, step = 2): boolean => Math.abs(length / step - Math.round(length / step)) < 1e-6;

describe('snapping a group', () => {
  it('keeps gaps alike and the group in the middle: every reading on the graduation', () => {
    // 121.3 − 10 = 111.3 wide, with gaps of 25: none of the three would lie alike by itself.
    const { mat } = solved(row(3, 'outer: 600 x 300', '121.3 x 160.5', 'rows: 1'));
    const [a, b, c] = boxes(mat);
    for (const each of boxes(mat)) {
      expect(onGraduation(each.x)).toBe(true);
      expect(onGraduation(600 - each.x - each.width)).toBe(true);
      expect(onGraduation(each.y)).toBe(true);
    }
    expect(b!.x - a!.x - a!.width).toBeCloseTo(c!.x - b!.x - b!.width, 9);
    expect(mat.outer).toEqual({ width: 600, height: 300 });
    // Both overlaps of an opening give the same.
    for (const { artwork } of mat.openings) expect(artwork!.overlap.left).toBeCloseTo(artwork!.overlap.right, 9);
    expect(mat.moved.map(({ what }) => what)).toContain('gap between neighbours');
  });

  it('leaves borders alike where the one gap can give them half a graduation each', () => {
    const gaps: number[] = [];
    for (const width of [600, 602, 604, 606]) {
      const { mat } = solved(row(2, `outer: ${width} x 300`, '121.3 x 160.5', 'rows: 1'));
      const [a, b] = boxes(mat);
      const [left, gap, right] = [a!.x, b!.x - a!.x - a!.width, width - b!.x - b!.width];
      expect(left, `${width}`).toBeCloseTo(right, 9);
      for (const each of [left, gap, right]) expect(onGraduation(each)).toBe(true);
      // Nothing is lost on the way.
      expect(left + a!.width + gap + b!.width + right).toBeCloseTo(width, 9);
      gaps.push(Math.round(gap));
    }
    // 25 between them lies as near to 24 as to 26: the one is taken that leaves even borders.
    expect(gaps).toEqual([24, 26, 24, 26]);
  });

  it('leaves what the job states, and says what is off the graduation for it', () => {
    const { mat, codes } = solved(row(2, 'border: 51', '120 x 160', 'rows: 1, gap: 25'));
    expect(codes.filter((code) => code === 'snap-not-possible').length).toBe(5);
    const [a, b] = boxes(mat);
    expect(b!.x - a!.x - a!.width).toBeCloseTo(25, 9);
    expect(a!.x).toBeCloseTo(51, 9);
  });

  it('never spends an overlap below 2 mm: where the near graduation would, the other one is taken', () => {
    const overlapped = (artwork: string, overlap: string): Mat =>
      solved(
        `units: mm\nmat: {border: 60}\nopenings: [{artwork: ${artwork}, ${overlap}}, {artwork: ${artwork}, ${overlap}}]\narrange: {rows: 1}\nbench: {snap: true, graduation: 2, stack: apart}\n`,
      ).mat;
    // 105.5 − 2 × 2.1 = 101.3: 102 is nearer, but leaves 1.75 each; 100 takes 2.75.
    const [spared] = overlapped('105.5 x 150', 'overlap: 2.1').openings;
    expect(spared!.layers[0]!.faceBox.width).toBeCloseTo(100, 9);
    // The back edge, which is what covers it in the end, reaches in by a bevel of 1.4 more.
    expect(spared!.artwork!.overlap.left).toBeCloseTo(2.75 + 1.4, 9);
    expect(spared!.artwork!.overlap.right).toBeCloseTo(2.75 + 1.4, 9);
    // 106 − 2 × 2.4 = 101.2: 102 leaves 2 exactly, which is enough.
    const [just] = overlapped('106 x 150', 'overlap: 2.4').openings;
    expect(just!.layers[0]!.faceBox.width).toBeCloseTo(102, 9);
    expect(just!.artwork!.overlap.left).toBeCloseTo(2 + 1.4, 9);
  });

  it('keeps gaps alike, artworks covered and the mat in its size in any group', () => {
    const any = fc.record({
      count: fc.integer({ min: 2, max: 6 }),
      columns: fc.integer({ min: 1, max: 3 }),
      width: fc.integer({ min: 800, max: 1500 }),
      height: fc.integer({ min: 800, max: 1500 }),
      gap: fc.constantFrom('', ', gap: 30', ', fill: true'),
      layers: fc.constantFrom('{}', '{}, {reveal: 6}'),
      outer: fc.boolean(),
    });
    fc.assert(
      fc.property(any, ({ count, columns, width, height, gap, layers, outer }) => {
        const size = outer || gap === ', fill: true' ? 'outer: 900 x 1500' : 'border: 60';
        const text = row(
          count,
          `${size}, layers: [${layers}]`,
          `${width / 10} x ${height / 10}`,
          `columns: ${columns}${gap}`,
        );
        const { mat } = solved(text);
        const all = boxes(mat);
        const across = Math.min(columns, count);
        for (let k = 2; k < across; k++) {
          const [a, b, c] = [all[k - 2]!, all[k - 1]!, all[k]!];
          expect(c.x - b.x - b.width).toBeCloseTo(b.x - a.x - a.width, 6);
        }
        for (let k = 2 * across; k < count; k++) {
          const [a, b, c] = [all[k - 2 * across]!, all[k - across]!, all[k]!];
          expect(c.y - b.y - b.height).toBeCloseTo(b.y - a.y - a.height, 6);
        }
        for (const each of all) {
          expect(onGraduation(each.width)).toBe(true);
          expect(onGraduation(each.x)).toBe(true);
          expect(onGraduation(each.y)).toBe(true);
        }
        if (size.startsWith('outer')) expect(mat.outer).toEqual({ width: 900, height: 1500 });
        for (const { artwork } of mat.openings)
          for (const overlap of Object.values(artwork!.overlap)) expect(overlap).toBeGreaterThanOrEqual(2);
        // In the middle but for less than a graduation.
        const [left, right] = [
          Math.min(...all.map((b) => b.x)),
          Math.min(...all.map((b) => mat.outer.width - b.x - b.width)),
        ];
        expect(Math.abs(left - right)).toBeLessThan(2 + 1e-6);
      }),
      { numRuns: 60 },
    );
  });
});
