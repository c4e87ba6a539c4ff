import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findPaper } from '../../src/papers/find.ts';
import { LARGEST_PAPER, type NamedPaper } from '../../src/papers/model.ts';
import { PAPERS } from '../../src/papers/table.ts';
import { mmFromInches } from '../../src/units/units.ts';

function problem(text: string, question = {}) {
  const found = findPaper(text, question);
  if (found.ok) throw new Error(`${text} was accepted`);
  return found.problems[0]!;
}

describe('what is understood', () => {
  it.each(['letter', 'LETTER', ' Letter ', 'us-letter', 'US Letter', 'ANSI A'])('%j is Letter', (text) => {
    const found = findPaper(text);
    expect(found.ok && found.value).toMatchObject({ kind: 'sheet', id: 'letter', name: 'Letter' });
  });

  it.each([
    ['300 x 450 mm', 300, 450],
    ['13 x 19 in', mmFromInches(13), mmFromInches(19)],
    ['12 1/2 in × 18"', mmFromInches(12.5), mmFromInches(18)],
    ['329mm x 48.3cm', 329, 483],
  ])('%s is a size', (text, width, height) => {
    const found = findPaper(text);
    if (!found.ok || found.value.kind !== 'sheet') throw new Error(text);
    expect(found.value.width).toBeCloseTo(width, 9);
    expect(found.value.height).toBeCloseTo(height, 9);
  });

  it('a bare size is in the unit that the question names', () => {
    const found = findPaper('13 x 19', { unit: 'in' });
    expect(found.ok && found.value).toMatchObject({ width: mmFromInches(13), height: mmFromInches(19) });
  });

  it('rolls and one page', () => {
    expect(findPaper('roll:36in')).toMatchObject({ ok: true, value: { kind: 'roll', width: mmFromInches(36) } });
    expect(findPaper('Roll: 610 mm')).toMatchObject({ ok: true, value: { kind: 'roll', width: 610 } });
    expect(findPaper('fit')).toMatchObject({ ok: true, value: { kind: 'fit' } });
  });

  it("the shop's own papers go before the table", () => {
    const custom: NamedPaper[] = [{ id: 'proofing', name: 'Proofing sheet', width: 340, height: 500 }];
    expect(findPaper('PROOFING', { custom })).toMatchObject({
      ok: true,
      value: { name: 'Proofing sheet', width: 340 },
    });
    expect(problem('profing', { custom }).hint).toContain('proofing');
  });

  it('every name of the table, whatever its case', () => {
    for (const { id, aliases = [] } of PAPERS) {
      for (const name of [id, ...aliases]) {
        expect(findPaper(name.toUpperCase()), name).toMatchObject({ ok: true, value: { id } });
      }
    }
  });
});

describe('what is refused', () => {
  it.each([
    ['leter', 'paper-unknown', 'did you mean letter?'],
    ['a33', 'paper-unknown', 'did you mean a3'],
    ['arch-g', 'paper-unknown', 'did you mean arch-'],
    ['', 'paper-unknown', 'write a paper'],
    ['F', 'paper-ambiguous', 'write the size'],
    ['arch f', 'paper-ambiguous', 'write the size'],
    ['300 x 450', 'paper-unit', 'behind the numbers'],
    ['roll:36', 'paper-unit', 'roll:36in'],
    ['roll:', 'paper-size', 'roll:36in'],
    ['roll:wide', 'paper-size', 'roll:36in'],
    ['300,5 x 450 mm', 'paper-size', '300 x 450 mm'],
    ['0 x 450 mm', 'paper-small', 'larger paper'],
    ['-300 x 450 mm', 'paper-unknown', 'write a paper'],
    ['49.9 x 450 mm', 'paper-small', 'larger paper'],
    ['roll:1in', 'paper-small', 'larger paper'],
    ['300 x 5081 mm', 'paper-large', 'smaller paper'],
    ['roll:300in', 'paper-large', 'smaller paper'],
    ['x'.repeat(5000), 'paper-unknown', 'write a paper'],
    ['constructor', 'paper-unknown', 'write a paper'],
  ])('%j: %s', (text, code, hint) => {
    const found = problem(text);
    expect(found.code).toBe(code);
    expect(found.hint).toContain(hint);
  });

  it('gives the place of the text', () => {
    expect(problem('leter', { path: ['print', 'paper'] }).path).toEqual(['print', 'paper']);
  });

  it('nothing beyond 200 in, the largest page of a PDF without UserUnit (Adobe PDF Reference 1.7, Appendix C)', () => {
    expect(LARGEST_PAPER).toBe(mmFromInches(200));
    expect(findPaper('200 x 200 in').ok).toBe(true);
    expect(problem('200.01 x 100 in').code).toBe('paper-large');
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), (text) => {
        const found = findPaper(text);
        if (!found.ok) expect(found.problems).toHaveLength(1);
      }),
    );
  });
});
