import { describe, expect, test } from 'vitest';
import { type BevelReading, calibrateBevel } from '../../src/calibrate/bevel.ts';
import { randomSource } from '../bench/random.ts';

function solved(readings: readonly BevelReading[]) {
  const result = calibrateBevel(readings);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return { ...result.value, codes: result.warnings.map((w) => w.code) };
}

const cot = (degrees: number): number => 1 / Math.tan((degrees * Math.PI) / 180);

describe('bevel', () => {
  test('tan θ = t / s, and not s / t: 60° is no 30°', () => {
    expect(solved([{ thickness: 3, setback: 3 * cot(60) }]).angle).toBeCloseTo(60, 9);
    // Check values 34 and 36: 1.5 mm at 60° is 0.86603 mm, 3 mm is 1.73205 mm (trigonometry).
    expect(solved([{ thickness: 1.5, setback: 0.86603 }]).angle).toBeCloseTo(60, 3);
    expect(solved([{ thickness: 3, setback: 0 }]).angle).toBeCloseTo(90, 12);
  });

  test('a thick board counts for more', () => {
    const found = solved([
      { thickness: 1.4, setback: 1.4 * cot(47) },
      { thickness: 6, setback: 6 * cot(45) },
    ]);
    expect(found.angle).toBeGreaterThan(45);
    expect(found.angle).toBeLessThan(45.5);
    expect(found.uncertainty).toBeLessThan(found.strips[1]!.uncertainty);
  });

  test('strips that contradict each other widen the uncertainty, and are told', () => {
    const found = solved([
      { thickness: 6, setback: 6 * cot(45) },
      { thickness: 6, setback: 6 * cot(52) },
    ]);
    expect(found.uncertainty).toBeGreaterThan(2);
    expect(found.codes).toContain('calibrate-bevel-uneven');
  });

  test('what cannot be used is refused, all at once', () => {
    const codes = (list: readonly BevelReading[]) => {
      const result = calibrateBevel(list);
      return result.ok ? [] : result.problems.map((p) => p.code);
    };
    expect(codes([])).toEqual(['calibrate-readings-few']);
    expect(
      codes([
        { thickness: 0, setback: 1 },
        { thickness: 3, setback: -1 },
        { thickness: 1.4, setback: 9 },
      ]),
    ).toEqual(['calibrate-reading-unusable', 'calibrate-reading-unusable', 'calibrate-reading-unusable']);
  });

  test('a thousand simulated heads, three strips each: the stated uncertainty is honest', () => {
    const random = randomSource(13);
    const ratios: number[] = [];
    for (let n = 0; n < 1000; n++) {
      const angle = random.between(40, 65);
      const strips = [1, 2, 3].map(() => {
        const thickness = random.between(1.2, 6);
        return {
          thickness: thickness + random.normal(0.05),
          setback: Math.max(0, thickness * cot(angle) + random.normal(0.1)),
        };
      });
      const found = solved(strips);
      ratios.push((found.angle - angle) / found.uncertainty);
    }
    const within = (limit: number) => ratios.filter((r) => Math.abs(r) <= limit).length / ratios.length;
    // Two in three within one of it and 95 % within two; strips that differ widen it, so a little more.
    expect(within(1)).toBeGreaterThan(0.66);
    expect(within(1)).toBeLessThan(0.82);
    expect(within(2)).toBeGreaterThan(0.94);
  });
});
