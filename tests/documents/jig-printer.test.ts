import { describe, expect, test } from 'vitest';
import { type ReadLine, readPdf } from '../readers/pdf-lines.ts';
import { lineNamed, made, SHOP, textsOf } from './jig-samples.ts';

const length = ({ from, to }: ReadLine): number => Math.hypot(to.x - from.x, to.y - from.y);
const pdf = (files: readonly { name: string; bytes: Uint8Array }[]) =>
  readPdf(files.find((f) => f.name.endsWith('.pdf'))!.bytes);
const level = (line: ReadLine) => Math.abs(line.from.y - line.to.y) < 1e-6;
const upright = (line: ReadLine) => Math.abs(line.from.x - line.to.x) < 1e-6;

describe('the printer jig', () => {
  // The shop's printer prints 0.9965 and 0.998 of the true length.
  test.each([
    ['letter', 200, 215.9, 279.4],
    ['a4', 200, 210, 297],
    ['a3', 200, 297, 420],
    ['190 x 250 mm', 150, 190, 250],
  ] as const)(
    'on %s: lines of %f mm, exact, and not touched by the stored correction',
    async (paper, side, width, height) => {
      const { files, drawings } = await made('printer', { paper, printer: 'office' });
      const [page] = (await pdf(files)).pages;
      expect([page!.width, page!.height]).toEqual([expect.closeTo(width, 3), expect.closeTo(height, 3)]);
      const across = page!.lines.filter((line) => level(line) && Math.abs(length(line) - side) < 0.9);
      const down = page!.lines.filter((line) => upright(line) && Math.abs(length(line) - side) < 0.9);
      expect(across).toHaveLength(1);
      expect(down).toHaveLength(1);
      expect(length(across[0]!)).toBeCloseTo(side, 3);
      expect(length(down[0]!)).toBeCloseTo(side, 3);
      // Corner to corner, the diagonals of the square.
      const far = lineNamed(drawings[0]!, 'corner-across').to;
      const [x, y] = [across[0]!.from.x, across[0]!.from.y];
      expect(Math.hypot(far.x - x, far.y - y)).toBeCloseTo(side * Math.SQRT2, 3);
      expect(Math.hypot(across[0]!.to.x - down[0]!.to.x, across[0]!.to.y - down[0]!.to.y)).toBeCloseTo(
        side * Math.SQRT2,
        3,
      );
      if (side === 150) {
        const inches = page!.lines.filter((line) => Math.abs(length(line) - 152.4) < 0.9);
        expect(inches.map((line) => Number(length(line).toFixed(3)))).toEqual([152.4, 152.4]);
      }
      expect(textsOf(drawings[0]!).map((item) => item.text)).toContain('not corrected for any printer');
    },
  );

  test('rung n of every ladder stands n mm from its edge, and crosses no other', async () => {
    const { files } = await made('printer', { paper: 'letter' });
    const [page] = (await pdf(files)).pages;
    for (let mm = 1; mm <= 14; mm++) {
      const at = (value: (line: ReadLine) => number, side: (line: ReadLine) => boolean) =>
        page!.lines.filter(
          (line) => side(line) && Math.abs(length(line) - 6) < 0.01 && Math.abs(value(line) - mm) < 0.002,
        );
      expect([mm, at((l) => l.from.y, level).length]).toEqual([mm, 1]);
      expect([mm, at((l) => page!.height - l.from.y, level).length]).toEqual([mm, 1]);
      expect([mm, at((l) => l.from.x, upright).length]).toEqual([mm, 1]);
      expect([mm, at((l) => page!.width - l.from.x, upright).length]).toEqual([mm, 1]);
    }
  });
});

describe('every other jig', () => {
  test('is corrected, so that 100 mm come out as 100 mm, and says so', async () => {
    const { files, drawings } = await made('guide', { paper: 'letter' });
    const [page] = (await pdf(files)).pages;
    const [zero, hundred] = [lineNamed(drawings[0]!, 'rule-0'), lineNamed(drawings[0]!, 'rule-100')];
    expect(Math.abs(zero.from.y - hundred.from.y)).toBeCloseTo(100, 9);
    // The file holds them 100 / 0.998 mm apart; printed at 0.998 that is 100 mm again.
    const expected = [zero, hundred].map((line) => line.from.y / 0.998);
    for (const y of expected) {
      expect(page!.lines.some((line) => level(line) && Math.abs(line.from.y - y) < 0.001)).toBe(true);
    }
    const words = textsOf(drawings[0]!).map((item) => item.text);
    expect(words.some((text) => text.startsWith('corrected for printer office'))).toBe(true);
  });

  test('says too where no printer is named, or none was measured', async () => {
    const foot = async (shop: string) => textsOf((await made('guide', { shop })).drawings[0]!).map((item) => item.text);
    expect(await foot('')).toContain('not corrected: no printer is named');
    expect(await foot(SHOP.replace('{x: 0.9965, y: 0.998}', '{}'))).toContain(
      'not corrected: printer office is not yet calibrated',
    );
    expect(await foot(SHOP.replace('{x: 0.9965, y: 0.998}', '{x: 1, y: 1}'))).toContain(
      'not corrected: printer office prints true',
    );
  });
});
