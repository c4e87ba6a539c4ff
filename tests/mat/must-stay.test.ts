import { describe, expect, it } from 'vitest';
import { solveJob } from '../../src/outputs/solve-job.ts';

/** Codes, and where, of a job that says nothing else that is wrong. */
function said(text: string): readonly string[] {
  const made = solveJob(text);
  const problems = made.ok ? made.warnings : made.problems;
  const about = problems.filter(({ code }) => /^(?:border-|bar-|openings-near|bevels-meet)/.test(code));
  return about.map(({ severity, code, path }) => `${severity} ${code} ${path.join('.')}`);
}

const refused = (text: string): boolean => !solveJob(text).ok;

describe('what must stay of a border and of a bar', () => {
  const single = (border: number, thickness: number, bevel = '45'): string =>
    `units: mm\nmat: {border: ${border}, layers: [{board: {thickness: ${thickness}}, bevel: ${bevel}}]}\nopenings: [{size: 200 x 300}]`;
  const row = (gap: number, thickness: number, more = ''): string =>
    `units: mm\nmat: {border: 50, layers: [{board: {thickness: ${thickness}}}]${more}}\nopenings: [{name: a, size: 80 x 100}, {name: b, size: 80 x 100}]\narrange: {rows: 1, gap: ${gap}}`;

  it.each([
    [1.99, 1.4, ['error border-tears mat.border']],
    [2, 1.4, ['warning border-narrow mat.border']],
    [5.89, 1.4, ['warning border-narrow mat.border']],
    // 15/64 in, and whatever a rule of thumb is missed by that no rule on the bench reads.
    [5.953125, 1.4, []],
    [5.9, 1.4, []],
    [6, 1.4, []],
    [2.9, 3, ['error border-tears mat.border']],
    [3, 3, ['warning border-narrow mat.border']],
    [7.8, 4, ['warning border-narrow mat.border']],
    [8, 4, []],
  ])('a border of %s mm in board of %s mm', (border, thickness, expected) => {
    expect(said(single(border, thickness))).toEqual(expected);
  });

  it.each([
    [1.99, 1.4, ['error openings-near openings.1']],
    [2, 1.4, ['warning bar-narrow openings.1']],
    [6, 1.4, []],
    [3.9, 4, ['error openings-near openings.1']],
    [7.8, 4, ['warning bar-narrow openings.1']],
    [7.9, 4, []],
  ])('a bar of %s mm in board of %s mm', (gap, thickness, expected) => {
    expect(said(row(gap, thickness))).toEqual(expected);
  });

  it('more may be asked for between openings, never less', () => {
    expect(said(row(9, 1.4, ', leastBar: 10'))).toEqual(['error openings-near openings.1']);
    expect(said(row(1.5, 1.4, ', leastBar: 0'))).toEqual(['error openings-near openings.1']);
    const together = `units: mm\nmat: {outer: 300 x 200, leastBar: 0}\nopenings:\n  - {name: a, size: 80 x 100, place: {left: 40, top: 40}}\n  - {name: b, size: 80 x 100, place: {left: 120, top: 40}}`;
    expect(said(together)).toEqual(['error bevels-meet openings.1']);
  });

  it('counts at the back where that is narrower: a reverse bevel is cut outside its face', () => {
    expect(said(single(8, 4.3, '{angle: 45, reverse: true}'))).toEqual(['error border-tears mat.border']);
    expect(said(single(4, 4.3, '{angle: 45, reverse: true}'))).toEqual(['error border-tears mat.border']);
    // At 60° the line lies 4.3 / √3 = 2.48 mm further out: 6.8 − 2.48 is 4.32, just what must stay.
    expect(said(single(6.8, 4.3, '{angle: 60, reverse: true}'))).toEqual(['warning border-narrow mat.border']);
    expect(said(single(6.7, 4.3, '{angle: 60, reverse: true}'))).toEqual(['error border-tears mat.border']);
  });

  it('counts for what is derived as for what is stated', () => {
    expect(said('mat: {outer: 16 x 20}\nopenings: [{size: 15.999 x 19.999}]')).toEqual(['error border-tears mat']);
    const placed = 'mat: {outer: 16 x 20}\nopenings: [{size: 8 x 10, place: {bottom: 1/64}}]';
    expect(said(placed)).toEqual(['error border-tears openings.0.place']);
  });

  it('counts on the board of each layer, trimmed as it is', () => {
    const under = (trim: number): string =>
      `units: mm\nmat: {border: 20, layers: [{board: {thickness: 1.4}}, {board: {thickness: 1.4}, reveal: 6, trimBack: ${trim}}]}\nopenings: [{size: 200 x 300}]\nbench: {stack: together}`;
    expect(said(under(12))).toEqual([]);
    expect(said(under(24.5))).toEqual(['error border-tears mat.border']);
  });

  it('counts for what was cut: a blank that came out smaller than its opening', () => {
    const cut = (blank: string): string =>
      `units: mm\nmat: {border: 40, layers: [{board: {thickness: 1.4}}, {board: {thickness: 1.4}, reveal: 6}]}\nopenings: [{size: 200 x 300}]\nbench: {stack: apart}\nasCut: {layers: [{}, {blank: ${blank}}]}`;
    expect(said(cut('292 x 392'))).toEqual([]);
    expect(said(cut('190 x 290'))).toEqual(['error border-tears asCut.layers.1.blank']);
    expect(refused(cut('203 x 303'))).toBe(true);
  });
});
