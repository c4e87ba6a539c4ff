import { describe, expect, it } from 'vitest';
import { straightSides } from '../../src/geometry/path.ts';
import { solve } from '../../src/mat/solve.ts';
import { all, inch, inches, sampleJob, solvedMat } from './job.ts';
import { expectExact, expectSize } from './near.ts';

describe('the double mat of the job format, 16 × 20 in', () => {
  const mat = solvedMat(sampleJob());
  const [only] = mat.openings;
  const [top, under] = only!.layers;

  it('derives sides 2 3/4, top 3 and bottom 3 1/2 in, nothing to warn of and nothing to snap', () => {
    expectExact(mat.border.left, inch(2.75));
    expectExact(mat.border.right, inch(2.75));
    expectExact(mat.border.top, inch(3));
    expectExact(mat.border.bottom, inch(3.5));
    expect(solve(sampleJob())).toMatchObject({ ok: true, warnings: [] });
    expect(mat.moved).toEqual([]);
  });

  it('is 16 × 20 in itself, its glazing and backing too, 36 united inches', () => {
    expectSize(mat.outer, inches(16, 20));
    expectSize(mat.glazing, inches(16, 20));
    expectSize(mat.backing, inches(16, 20));
    expectExact(mat.unitedInches, 36);
    expect(mat.lip).toBe(0);
  });

  it('opens 10 1/2 × 13 1/2 in the top mat and 10 × 13 in the under mat', () => {
    expectSize(top!.faceBox, inches(10.5, 13.5));
    expectExact(top!.faceBox.x, inch(2.75));
    expectExact(top!.faceBox.y, inch(3));
    expectSize(under!.faceBox, inches(10, 13));
    expectExact(under!.faceBox.x, inch(3));
    expectExact(under!.faceBox.y, inch(3.25));
    expectExact(under!.border.bottom, inch(3.75));
  });

  it('has 1.4 mm of bevel at 45° in both', () => {
    for (const layer of mat.layers) {
      expectExact(layer.setback, 1.4);
      expectExact(layer.bevelFace, 1.4 * Math.SQRT2);
    }
    for (const strip of Object.values(under!.strip)) expectExact(strip, inch(1 / 4) - 1.4);
    expectExact(top!.backBox.width, inch(10.5) - 2.8);
    expectSize(only!.sight, { width: inch(10) - 2.8, height: inch(13) - 2.8 });
  });

  it('really overlaps the artwork by 1/4 in and the bevel', () => {
    for (const overlap of Object.values(only!.artwork!.overlap)) expectExact(overlap, inch(1 / 4) + 1.4);
    expectExact(only!.artwork!.box.x, inch(2.75));
    expectExact(only!.artwork!.box.y, inch(3));
    expect(only!.artwork!.floated).toBe(false);
  });

  it('trims the under mat 1/8 in on every edge', () => {
    expect(mat.layers.map((layer) => layer.name)).toEqual(['top mat', 'under mat 1']);
    expectSize(mat.layers[0]!.blank, inches(16, 20));
    expectSize(mat.layers[1]!.blank, inches(15.75, 19.75));
    expectExact(mat.layers[1]!.blankBox.x, inch(1 / 8));
    const apart = solvedMat(sampleJob({ bench: { stack: 'apart' } }));
    expectSize(apart.layers[1]!.blank, inches(16, 20));
    expect(apart.layers[1]!.blankBox.x).toBe(0);
  });

  it('runs every outline clockwise from the top left', () => {
    for (const layer of only!.layers) {
      for (const path of [layer.face, layer.back]) {
        const [first, second, third] = straightSides(path);
        expect(first!.to.x).toBeGreaterThan(first!.from.x);
        expect(second!.to.y).toBeGreaterThan(second!.from.y);
        expect(third!.to.x).toBeLessThan(third!.from.x);
      }
    }
  });

  it('refuses a border of 3 in and names 16 1/2 against 16', () => {
    const refused = solve(sampleJob({ mat: { border: { left: inch(3), right: inch(3), top: inch(3) } } }));
    const problems = refused.ok ? [] : refused.problems;
    expect(problems.map(({ clash, ...problem }) => ({ ...problem, clash: clash?.map(({ what }) => what) }))).toEqual([
      {
        severity: 'error',
        code: 'sizes-contradict',
        path: ['mat', 'outer'],
        clash: [
          'outer width',
          'artwork width',
          'overlap at the right',
          'overlap at the left',
          'reveal of under mat 1',
          'left border',
          'right border',
        ],
        message: 'outer width 16 in is given, but the other sizes make 16 1/2 in (difference 1/2 in)',
        hint: 'change it or leave it out, or change one of: artwork width 10 1/2 in, overlap at the right 1/4 in, overlap at the left 1/4 in, reveal of under mat 1 1/4 in, left border 3 in, right border 3 in',
      },
    ]);
  });

  it('names the bottom border too where all four are 3 in against the weighting', () => {
    expect(solve(sampleJob({ mat: { border: all(inch(3)) } }))).toMatchObject({
      problems: [
        {
          path: ['mat', 'border', 'bottom'],
          message: 'bottom border 3 in is given, but the other sizes make 3 1/2 in (difference 1/2 in)',
        },
        {
          path: ['mat', 'outer'],
          message: 'outer width 16 in is given, but the other sizes make 16 1/2 in (difference 1/2 in)',
        },
      ],
    });
  });

  it('survives JSON, and leaves its job as it was', () => {
    expect(JSON.parse(JSON.stringify(mat))).toEqual(mat);
    const job = sampleJob();
    const before = JSON.stringify(job);
    solve(job);
    expect(JSON.stringify(job)).toBe(before);
  });
});
