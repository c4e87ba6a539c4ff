import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { add, addAll, EMPTY, equation, solvedValue } from '../../src/mat/linear.ts';

describe('systems of linear equations', () => {
  it('solves for a variable as soon as it is settled', () => {
    const half = addAll(EMPTY, [equation({ x: 1, y: 1 }, 10)]);
    expect(solvedValue(half, 'x')).toBeUndefined();
    expect(solvedValue(half, 'z')).toBeUndefined();
    const whole = addAll(half, [equation({ x: 2, y: -1 }, 2)]);
    expect(solvedValue(whole, 'x')).toBeCloseTo(4, 12);
    expect(solvedValue(whole, 'y')).toBeCloseTo(6, 12);
    expect(solvedValue(half, 'x')).toBeUndefined();
  });

  it('tells by how much an equation disagrees and with which others', () => {
    const [sum, first, third] = [equation({ x: 1, y: 1 }, 10), equation({ x: 1 }, 4), equation({ z: 1 }, 1)];
    const system = addAll(EMPTY, [sum, first, third]);
    const addition = add(system, equation({ y: 1 }, 7));
    expect(addition).toMatchObject({ added: false, residual: 1 });
    const seventh = equation({ y: 1 }, 7);
    const other = add(system, seventh);
    expect(other.added ? [] : [...other.taken]).toEqual([
      [seventh, 1],
      [first, 1],
      [sum, -1],
    ]);
    expect(add(system, equation({ y: 1 }, 6))).toMatchObject({ added: false, residual: 0 });
  });

  it('finds the numbers that equations were made from, in any order', () => {
    const number = fc.integer({ min: -50, max: 50 });
    fc.assert(
      fc.property(
        fc.array(number, { minLength: 4, maxLength: 4 }),
        fc.array(fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 4, maxLength: 4 }), {
          minLength: 8,
          maxLength: 8,
        }),
        (values, factors) => {
          const names = ['a', 'b', 'c', 'd'];
          const equations = factors.map((row) =>
            equation(
              Object.fromEntries(row.map((factor, index) => [names[index]!, factor])),
              row.reduce((sum, factor, index) => sum + factor * values[index]!, 0),
            ),
          );
          const system = addAll(EMPTY, equations);
          for (const [index, name] of names.entries()) {
            const value = solvedValue(system, name);
            if (value !== undefined) expect(value).toBeCloseTo(values[index]!, 8);
          }
          if (system.rows.length === 4) for (const name of names) expect(solvedValue(system, name)).toBeDefined();
        },
      ),
    );
  });
});
