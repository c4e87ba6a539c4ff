import { describe, expect, test } from 'vitest';
import { calibratePrinter, type PrinterReading, type PrinterTest } from '../../src/calibrate/printer-scale.ts';
import { randomSource } from '../bench/random.ts';

const lines = (x: number, y: number, nominal = 200): PrinterReading[] => [
  { axis: 'x', nominal, measured: x },
  { axis: 'y', nominal, measured: y },
];

function solved(test: PrinterTest) {
  const result = calibratePrinter(test);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return { ...result.value, warnings: result.warnings };
}

const codes = (test: PrinterTest): string[] => {
  const result = calibratePrinter(test);
  return (result.ok ? result.warnings : result.problems).map((p) => p.code);
};

describe('printer', () => {
  test('the 200 mm line measures 199.3', () => {
    const found = solved({ lines: lines(199.3, 199.6) });
    expect(found.x.scale).toBeCloseTo(0.9965, 12);
    expect(found.y.scale).toBeCloseTo(0.998, 12);
    // One line read to 0.25 mm: 0.25/200, which is 1 mm over 32 in (812.8 mm).
    expect(found.x.uncertainty * 812.8).toBeCloseTo(1.016, 9);
    expect(found.warnings).toEqual([]);
  });

  test('several sheets: the mean, and less uncertainty', () => {
    const found = solved({
      lines: [...lines(199.2, 199), ...lines(199.4, 199), ...lines(199.3, 199), ...lines(199.3, 199)],
    });
    expect(found.x.scale).toBeCloseTo(0.9965, 12);
    expect(found.x).toMatchObject({ count: 4 });
    expect(found.x.uncertainty).toBeCloseTo(0.25 / 400, 12);
  });

  test('a 100 mm line that prints 97 mm has the factor 1.0309278 (check value 48, after Beeton 1988)', () => {
    // 97 % in one axis only is a bad printer, not a wrong paper.
    const found = solved({ lines: lines(97, 99.9, 100) });
    expect(1 / found.x.scale).toBeCloseTo(1.0309278, 7);
    expect(found.warnings.map((w) => w.code)).toEqual(['calibrate-scale-unusual']);
  });

  test('94.0741 and 97.2673 % in both axes are the wrong paper (check value 49, paper sizes of PWG 5101.1)', () => {
    const small = solved({ lines: lines(188.1, 188.2) });
    expect(small.warnings[0]!.code).toBe('calibrate-wrong-paper');
    expect(small.warnings[0]!.message).toContain('A4 fitted to Letter');
    const large = solved({ lines: lines(194.5, 194.6) });
    expect(large.warnings[0]!.message).toContain('Letter fitted to A4');
    expect(large.warnings[0]!.hint).toContain('which paper is set');
  });

  test('the diagonals of 400 × 500 sheared by 1 mm differ by 1.2494 mm (check value 47, after Mainwaring)', () => {
    const [falling, rising] = [Math.hypot(399, 500), Math.hypot(401, 500)];
    expect(rising - falling).toBeCloseTo(1.2494, 4);
    const found = solved({ lines: lines(200, 200), diagonals: [{ width: 400, height: 500, falling, rising }] });
    // 1 mm over 500 mm is 0.2 mm in 100 mm.
    expect(found.skew).toBeCloseTo(0.2, 9);
    expect(solved({ lines: lines(200, 200) }).skew).toBeUndefined();
  });

  test('lines that contradict each other', () => {
    const list: PrinterReading[] = [...lines(199, 199), { axis: 'x', nominal: 150, measured: 152 }];
    expect(codes({ lines: list })).toContain('calibrate-lines-disagree');
  });

  test('what cannot be used is refused, all at once', () => {
    expect(codes({ lines: [] })).toEqual(['calibrate-axis-missing', 'calibrate-axis-missing']);
    expect(codes({ lines: lines(Number.NaN, 0) })).toEqual([
      'calibrate-reading-unusable',
      'calibrate-reading-unusable',
    ]);
    // 200 mm read in inches.
    expect(codes({ lines: lines(7.87, 200) })).toEqual(['calibrate-scale-absurd']);
    expect(
      codes({ lines: lines(200, 200), diagonals: [{ width: 100, height: 100, falling: -1, rising: 141 }] }),
    ).toEqual(['calibrate-reading-unusable']);
  });

  test('a thousand simulated printers, three sheets each, read to 0.2 mm', () => {
    const random = randomSource(6);
    let near = 0;
    for (let n = 0; n < 1000; n++) {
      const [x, y] = [random.between(0.99, 1.01), random.between(0.99, 1.01)];
      const list = [1, 2, 3].flatMap(() => lines(200 * x + random.normal(0.2), 200 * y + random.normal(0.2)));
      const found = solved({ lines: list });
      if (Math.abs(found.x.scale - x) <= 2 * found.x.uncertainty) near++;
      if (Math.abs(found.y.scale - y) <= 2 * found.y.uncertainty) near++;
    }
    expect(near / 2000).toBeGreaterThan(0.95);
  });
});
