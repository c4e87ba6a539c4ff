import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Equation, equation, systemFrom } from '../../src/mat/sizes/linear.ts';

const number = fc.integer({ min: -50, max: 50 });
const names = ['a', 'b', 'c', 'd'];
const four = <T>(each: fc.Arbitrary<T>) => fc.array(each, { minLength: 4, maxLength: 4 });
const rows = fc.array(four(fc.integer({ min: -3, max: 3 })), { minLength: 1, maxLength: 8 });

const left = (factors: readonly number[]): Readonly<Record<string, number>> =>
  Object.fromEntries(factors.flatMap((factor, i) => (factor === 0 ? [] : [[names[i]!, factor]])));
const sum = (factors: readonly number[], values: readonly number[]): number =>
  factors.reduce((total, factor, i) => total + factor * values[i]!, 0);

/** How many of the rows say something new, by elimination with whole numbers. */
function rank(all: readonly (readonly number[])[]): number {
  let rest = all.map((row) => [...row]);
  let found = 0;
  for (let column = 0; column < 4; column++) {
    const pivot = rest.find((row) => row[column] !== 0);
    if (pivot === undefined) continue;
    found++;
    rest = rest
      .filter((row) => row !== pivot)
      .map((row) => row.map((each, i) => each * pivot[column]! - pivot[i]! * row[column]!));
  }
  return found;
}

/** Left sides, taken as often as it is said, summed up. */
function cancelled(taken: ReadonlyMap<Equation, number>): readonly number[] {
  const totals = new Map<string, number>();
  for (const [{ terms }, times] of taken)
    for (const [name, factor] of terms) totals.set(name, (totals.get(name) ?? 0) + times * factor);
  return [...totals.values()];
}

describe('systems of linear equations', () => {
  it('solves for a variable as soon as it is settled, and leaves the system that it grew from alone', () => {
    const half = systemFrom([equation({ x: 1, y: 1 }, 10)]);
    expect(half.value('x')).toBeUndefined();
    expect(half.value('z')).toBeUndefined();
    const whole = half.grown();
    expect(whole.add(equation({ x: 2, y: -1 }, 2))).toEqual({ added: true });
    expect(whole.value('x')).toBeCloseTo(4, 12);
    expect(whole.value('y')).toBeCloseTo(6, 12);
    expect(half.value('x')).toBeUndefined();
  });

  it('tells by how much an equation disagrees and with which others', () => {
    const [both, first, third] = [equation({ x: 1, y: 1 }, 10), equation({ x: 1 }, 4), equation({ z: 1 }, 1)];
    const system = systemFrom([both, first, third], { traced: true }).grown();
    const seventh = equation({ y: 1 }, 7);
    const addition = system.add(seventh);
    expect(addition).toMatchObject({ added: false, residual: 1 });
    expect(new Map(addition.added ? [] : addition.taken)).toEqual(
      new Map([
        [seventh, 1],
        [first, 1],
        [both, -1],
      ]),
    );
    expect(system.add(equation({ y: 1 }, 6))).toMatchObject({ added: false, residual: 0 });
  });

  it('finds the numbers that equations were made from, in any order, and what each is made of', () => {
    let settled = 0;
    fc.assert(
      fc.property(four(number), rows, (values, factors) => {
        const system = systemFrom(
          factors.map((row) => equation(left(row), sum(row, values))),
          { traced: true },
        );
        for (const [index, name] of names.entries()) {
          const value = system.value(name);
          if (value === undefined) continue;
          settled++;
          expect(value).toBeCloseTo(values[index]!, 7);
          const made = [...system.takenFor(name)!].reduce((total, [each, times]) => total + times * each.value, 0);
          expect(made).toBeCloseTo(value, 7);
        }
        if (rank(factors) === 4) for (const name of names) expect(system.value(name)).toBeDefined();
      }),
    );
    expect(settled).toBeGreaterThan(100);
  });

  it('passes over what says nothing new, whose left side cancels out with those that say it', () => {
    let passed = 0;
    fc.assert(
      fc.property(four(number), rows, fc.array(number, { minLength: 8, maxLength: 8 }), (values, factors, off) => {
        const system = systemFrom([], { traced: true }).grown();
        let known = 0;
        for (const [i, row] of factors.entries()) {
          const addition = system.add(equation(left(row), sum(row, values) + (known === 4 ? off[i]! : 0)));
          expect(addition.added).toBe(rank(factors.slice(0, i + 1)) > known);
          if (addition.added) known++;
          else {
            passed++;
            for (const total of cancelled(addition.taken)) expect(Math.abs(total)).toBeLessThan(1e-7);
            const residual = [...addition.taken].reduce((total, [each, times]) => total + times * each.value, 0);
            expect(residual).toBeCloseTo(addition.residual, 6);
          }
        }
      }),
    );
    expect(passed).toBeGreaterThan(50);
  });
});
