import { describe, expect, it } from 'vitest';
import { type Problem, solveJob } from '../../src/index.ts';

const told = (text: string): readonly Problem[] => {
  const made = solveJob(text);
  return made.ok ? made.warnings.filter(({ code }) => code === 'size-large') : made.problems;
};

describe('a mat that no board holds', () => {
  it('is asked about: 120 x 170 of a print on paper, read as inches', () => {
    const [found, ...others] = told('mat: {border: 3}\nopenings: [{artwork: 120 x 170}]\n');
    expect(others).toEqual([]);
    expect([found!.severity, found!.line, found!.message]).toEqual([
      'warning',
      1,
      'the mat is 125 1/2 × 175 1/2 in, 3.2 × 4.5 m, and no board is as large; did you mean mm?',
    ]);
    expect(told('units: cm\nmat: {border: 6}\nopenings: [{artwork: 200 x 300}]\n')).toHaveLength(1);
  });

  it('is not asked about where a board holds it, however long, or where it is written in mm', () => {
    for (const text of [
      'mat: {outer: 60 x 104}\nopenings: [{artwork: 50 x 90}]\n',
      'mat: {border: 3}\nopenings: [{artwork: 120 mm x 170 mm}]\n',
      'units: mm\nmat: {border: 60}\nopenings: [{artwork: 1600 x 2200}]\n',
    ])
      expect(told(text)).toEqual([]);
  });
});
