import { describe, expect, it } from 'vitest';
import { error, fail, succeed, warning } from '../../src/problems/problem.ts';
import { quoted, word } from '../../src/problems/quoted.ts';
import { problemRecord, showPath, showProblem } from '../../src/problems/show.ts';

const PLACED = { file: 'heron.yaml', line: 4, column: 3 };

describe('a problem', () => {
  it('is one line: place, path, what is wrong, what to do', () => {
    const problem = { ...error('key-unknown', ['mat', 'layers', 1, 'revel'], 'is no key', 'take reveal'), ...PLACED };
    expect(showProblem(problem)).toBe('heron.yaml:4:3  mat.layers[1].revel  is no key; take reveal');
  });

  it('says that it is a warning, and leaves out what it does not have', () => {
    expect(showProblem(warning('a-b', [], 'is odd'))).toBe('job  warning: is odd');
    expect(showProblem({ ...error('a-b', ['mat'], 'is wrong'), file: 'x' })).toBe('x  mat  is wrong');
  });

  it('is a plain record with its path as text', () => {
    expect(problemRecord({ ...error('a-b', ['mat', 'layers', 0], 'm', 'h'), ...PLACED })).toEqual({
      severity: 'error',
      code: 'a-b',
      path: 'mat.layers[0]',
      message: 'm',
      hint: 'h',
      ...PLACED,
    });
  });

  it('comes back in a result', () => {
    const problem = error('a-b', [], 'm');
    expect(fail([problem])).toEqual({ ok: false, problems: [problem] });
    expect(succeed(3)).toEqual({ ok: true, value: 3, warnings: [] });
  });
});

describe('what the user wrote', () => {
  it('is shown as a path, odd keys in quotes', () => {
    expect(showPath([])).toBe('');
    expect(showPath(['boards', 'bone-4', 'sheets', 2, 1])).toBe('boards.bone-4.sheets[2][1]');
    expect(showPath(['a b', 'c.d'])).toBe('"a b"."c.d"');
  });

  it('never reaches a terminal as a control', () => {
    const bad = ['\u001b[2J', 'a\u0007', '\u009b31m', '\u202egpj', 'a\u200bb', '\u2028', '\ufeff', '\ud800'];
    for (const text of bad) {
      for (const shown of [quoted(text), word(text), showPath([text])]) {
        expect(shown).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/u);
      }
    }
  });

  it('is cut short', () => {
    expect(quoted('x'.repeat(41))).toBe(`"${'x'.repeat(40)}…"`);
    expect(word('x'.repeat(40))).toBe('x'.repeat(40));
    expect(word('x'.repeat(1_000_000)).length).toBe(43);
  });
});
