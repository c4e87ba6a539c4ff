import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boundOfSheets } from '../../src/stock/planner/bounds/bounds.ts';
import {
  counting,
  cutOff,
  halves,
  type LengthWeight,
  plain,
  steps,
} from '../../src/stock/planner/bounds/dual-feasible.ts';
import { taskOf } from '../../src/stock/planner/task.ts';
import { fewestSheets } from './brute-force.ts';
import { planned, QUICK } from './planned.ts';

const BASE = 24;

/** All of them over a base of 24, with every parameter. */
function weights(sizes: readonly number[]): LengthWeight[] {
  const out = [plain(BASE)];
  for (let k = 1; k <= 30; k++) out.push(steps(BASE, k));
  for (let value = 1; 2 * value <= BASE; value++) {
    out.push(cutOff(BASE, value), halves(BASE, value));
    const weight = counting(BASE, value, sizes);
    if (weight !== undefined) out.push(weight);
  }
  return out;
}

describe('the weights of lengths', () => {
  it('never sum up to more than a room holds, whatever fits into it, and the base holds one', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: BASE }), { minLength: 1, maxLength: 12 }),
        fc.integer({ min: 1, max: BASE }),
        (list, room) => {
          const sizes = [...list].sort((a, b) => a - b);
          const fit: number[] = [];
          for (const size of list) if (fit.reduce((sum, each) => sum + each, size) <= room) fit.push(size);
          for (const weight of weights(sizes)) {
            const sum = fit.reduce((total, size) => total + weight.of(size), 0);
            expect(sum, `${weight.name} of ${fit.join(', ')} in ${room}`).toBeLessThanOrEqual(
              weight.holds(room) + 1e-9,
            );
            expect(weight.holds(BASE)).toBeLessThanOrEqual(1 + 1e-9);
          }
        },
      ),
      { numRuns: 400, seed: 3 },
    );
  });
});

describe('the bound', () => {
  const bound = (sheets: readonly object[], pieces: readonly object[], options = {}) => {
    const input = { sheets, pieces, options };
    const task = taskOf(JSON.parse(JSON.stringify(input)));
    if (!task.ok) throw new Error('not task');
    const { instance } = task.value;
    const { value } = boundOfSheets(instance);
    // Nothing of it hangs on the order of the stock.
    expect(boundOfSheets({ ...instance, stocks: instance.stocks.toReversed() }).value).toBe(value);
    return value;
  };
  const square = { id: 's', width: 10, height: 10 };

  it('sees more than the area', () => {
    // Two of 6 × 6 never share a sheet of 10 × 10, though three would by their area.
    expect(bound([square], [{ id: 'p', width: 6, height: 6, count: 7 }])).toBe(7);
    // 4 × 4: two by two and no more.
    expect(bound([square], [{ id: 'p', width: 4, height: 4, count: 9 }])).toBe(3);
    expect(bound([square], [{ id: 'p', width: 5, height: 2, count: 11 }])).toBe(2);
  });

  it('knows of the kerf, of the shelf, and of stock that can never do', () => {
    const halvesOf = { id: 'p', width: 5, height: 10, count: 2, turn: false };
    expect(bound([square], [halvesOf])).toBe(1);
    expect(bound([square], [halvesOf], { kerf: 0.5 })).toBe(2);
    expect(bound([square, { id: 'shelf', width: 5, height: 10, offcut: true, count: 2 }], [halvesOf])).toBe(0);
    expect(bound([{ ...square, count: 1 }], [{ ...halvesOf, count: 3 }])).toBe(Infinity);
  });

  it('takes the roomiest sheets first, wherever they stand, and of few no more than there are', () => {
    const [small, large] = [
      { id: 'small', width: 10, height: 10 },
      { id: 'large', width: 20, height: 20 },
    ];
    const pieces = [{ id: 'p', width: 10, height: 10, count: 9 }];
    for (const sheets of [
      [small, large],
      [large, small],
      [small, large, { ...small, id: 'other' }],
    ])
      expect(bound(sheets, pieces)).toBe(3);
    for (const sheets of [
      [small, { ...large, count: 2 }],
      [{ ...large, count: 1 }, { ...large, id: 'more', count: 1 }, small],
      [small, { ...large, count: 1 }, { ...large, id: 'more', count: 1 }],
    ])
      expect(bound(sheets, pieces)).toBe(3);
    expect(bound([small, { ...large, count: 1 }], pieces)).toBe(6);
    expect(bound([{ ...large, count: 1 }, small], pieces)).toBe(6);
  });

  it('averages both ways of what may turn, where either alone sees one sheet less', () => {
    const sheet = { id: 's', width: 18, height: 15 };
    const pieces = [
      { id: 'long', width: 11, height: 2, count: 9 },
      { id: 'large', width: 8, height: 12, count: 6 },
    ];
    // Two large ones a sheet, and beside them no more than a few long ones: four sheets are enough, and three are not.
    expect(bound([sheet], pieces)).toBe(4);
    expect(planned({ sheets: [sheet], pieces, options: { effort: QUICK } }).count).toBe(4);
  });

  it('tries more on small sheets than the sizes there are', () => {
    const sheet = { id: 's', width: 22, height: 27 };
    const pieces = [
      { id: 'large', width: 20, height: 17, count: 3 },
      { id: 'long', width: 7, height: 16, count: 4 },
    ];
    // A sheet holds no two large ones, and beside one no more than a strip of 22 × 10: for one long one, since two ask for
    // 7 + 16. So the fourth long one asks for a fourth sheet, which by their area none would.
    expect(bound([sheet], pieces)).toBe(4);
    expect(planned({ sheets: [sheet], pieces, options: { effort: QUICK } }).count).toBe(4);
  });

  it('is never above the truth', () => {
    const blank = fc.record({ width: fc.integer({ min: 1, max: 7 }), height: fc.integer({ min: 1, max: 6 }) });
    fc.assert(
      fc.property(
        fc.array(blank, { minLength: 1, maxLength: 6 }),
        fc.boolean(),
        fc.integer({ min: 0, max: 1 }),
        (blanks, turn, kerf) => {
          const pieces = blanks.map((each, i) => ({ id: `p${i}`, ...each, turn }));
          const found = bound([{ id: 's', width: 7, height: 6 }], pieces, { kerf });
          expect(found).toBeLessThanOrEqual(fewestSheets(blanks, { width: 7, height: 6, kerf, turn }));
        },
      ),
      { numRuns: 120, seed: 12 },
    );
  });
});
