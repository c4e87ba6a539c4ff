import { describe, expect, it } from 'vitest';
import type { StockInput } from '../../src/stock/planner/model.ts';
import { planStock } from '../../src/stock/planner/plan.ts';
import { planned, QUICK } from './planned.ts';

const options = { effort: QUICK };
const board = { id: 'board', width: 100, height: 100 };

const ids = (input: StockInput): string[] => planned(input).sheets.map(({ id }) => id);

describe('sheets of several sizes and prices', () => {
  const small = { id: 'small', width: 60, height: 60, cost: 3 };
  const large = { id: 'large', width: 100, height: 100, cost: 9 };

  it('fewest first, whatever they cost: one large one before two small ones', () => {
    const plan = planned({
      sheets: [small, large],
      pieces: [{ id: 'p', width: 50, height: 50, count: 2 }],
      options,
    });
    expect([plan.count, plan.cost, plan.sheets[0]!.id]).toEqual([1, 9, 'large']);
  });

  it('then the cheaper: a small one where it holds all', () => {
    const plan = planned({ sheets: [large, small], pieces: [{ id: 'p', width: 50, height: 50 }], options });
    expect([plan.count, plan.cost, plan.status]).toEqual([1, 3, 'optimal']);
  });

  it('the small one only as often as it is there', () => {
    const pieces = [{ id: 'p', width: 55, height: 55, count: 3 }];
    const plan = planned({ sheets: [{ ...small, count: 1 }, large], pieces, options });
    expect([plan.count, plan.cost]).toEqual([3, 21]);
  });

  it('without prices there is no cost', () => {
    expect('cost' in planned({ sheets: [board], pieces: [{ id: 'p', width: 1, height: 1 }], options })).toBe(false);
  });
});

describe('offcuts on the shelf', () => {
  const shelf = { id: 'shelf', width: 40, height: 50, offcut: true, count: 1 };

  it('are used before a sheet is opened, and do not count', () => {
    const plan = planned({ sheets: [board, shelf], pieces: [{ id: 'p', width: 40, height: 50 }], options });
    expect([plan.count, plan.sheets.map(({ id }) => id), plan.status]).toEqual([0, ['shelf'], 'optimal']);
  });

  it('save the second sheet', () => {
    const pieces = [{ id: 'p', width: 40, height: 50, count: 5 }];
    expect(planned({ sheets: [board], pieces, options }).count).toBe(2);
    expect(planned({ sheets: [board, shelf], pieces, options }).count).toBe(1);
  });

  it('have lost their factory edges', () => {
    const pieces = [{ id: 'p', width: 40, height: 50, factoryEdge: true }];
    expect(ids({ sheets: [board, shelf], pieces, options })).toEqual(['board']);
  });

  it('are not trimmed, unless they ask for it', () => {
    const pieces = [{ id: 'p', width: 40, height: 50 }];
    const trim = { ...options, trim: 5 };
    expect(ids({ sheets: [board, shelf], pieces, options: trim })).toEqual(['shelf']);
    expect(ids({ sheets: [board, { ...shelf, trim: 1 }], pieces, options: trim })).toEqual(['board']);
  });
});

describe('fallouts', () => {
  const mats = { id: 'mat', width: 100, height: 100, count: 2, fallouts: [{ width: 80, height: 80 }] };
  const pieces = [mats, { id: 'inner', width: 70, height: 70, count: 2, fallouts: [{ width: 40, height: 40 }] }];

  it('are stock on request, and come after their mats', () => {
    const before = planned({ sheets: [board], pieces, options });
    expect(before.count).toBe(4);
    const plan = planned({ sheets: [board], pieces, options: { ...options, fallouts: true } });
    expect(plan.count).toBe(2);
    expect(plan.sheets.map(({ origin }) => origin)).toEqual([
      { kind: 'sheet' },
      { kind: 'sheet' },
      { kind: 'fallout', piece: 'mat', copy: 1, which: 0 },
      { kind: 'fallout', piece: 'mat', copy: 2, which: 0 },
    ]);
  });

  it('are all that a piece leaves, each used once', () => {
    const two = {
      ...mats,
      fallouts: [
        { width: 80, height: 30 },
        { width: 50, height: 40 },
      ],
    };
    const small = [
      { id: 'a', width: 80, height: 30, count: 2 },
      { id: 'b', width: 50, height: 40, count: 2 },
    ];
    const plan = planned({ sheets: [board], pieces: [two, ...small], options: { ...options, fallouts: true } });
    expect(plan.count).toBe(2);
    expect(plan.sheets.filter(({ origin }) => origin.kind === 'fallout').length).toBe(4);
  });

  it('of fallouts are stock as well', () => {
    const nested = [...pieces, { id: 'innermost', width: 35, height: 35, count: 2 }];
    const plan = planned({ sheets: [board], pieces: nested, options: { ...options, fallouts: true } });
    expect(plan.count).toBe(2);
    expect(plan.sheets.map(({ origin }) => origin.kind).join(' ')).toBe('sheet sheet fallout fallout fallout fallout');
  });
});

describe('the longest cut', () => {
  it('makes the first cut go the short way', () => {
    const sheets = [{ id: 's', width: 100, height: 200 }];
    const pieces = [{ id: 'p', width: 50, height: 200, count: 2 }];
    expect(planned({ sheets, pieces, options }).count).toBe(1);
    const halves = [{ id: 'p', width: 50, height: 100, count: 4 }];
    expect(planned({ sheets, pieces: halves, options: { ...options, longestCut: 100 } }).count).toBe(1);
  });

  it('may take more sheets: two columns of other rows need a cut along the sheet', () => {
    const sheets = [{ id: 's', width: 90, height: 120 }];
    const pieces = [[70], [50], [60, 2]].map(([height, count = 1], i) => ({
      id: `p${i}`,
      width: 45,
      height: height!,
      count,
      turn: false,
    }));
    expect(planned({ sheets, pieces, options }).count).toBe(1);
    expect(planned({ sheets, pieces, options: { ...options, longestCut: 90 } }).count).toBe(2);
  });
});

describe('factory edges', () => {
  it('three columns of three: the blank in the very middle has none', () => {
    const sheets = [{ id: 's', width: 90, height: 30 }];
    const of = (count: number) => [{ id: 'p', width: 30, height: 10, count, turn: false, factoryEdge: true }];
    expect(planned({ sheets, pieces: of(8), options }).count).toBe(1);
    expect(planned({ sheets, pieces: of(9), options }).count).toBe(2);
    const plain = of(9).map((piece) => ({ ...piece, factoryEdge: false }));
    expect(planned({ sheets, pieces: plain, options }).count).toBe(1);
  });

  it('are where the sheet is not trimmed', () => {
    const sheets = [{ id: 's', width: 100, height: 100, trim: { left: 3, top: 3, bottom: 3 } }];
    const plan = planned({ sheets, pieces: [{ id: 'p', width: 20, height: 30, factoryEdge: true }], options });
    const [placed] = plan.laid;
    expect(placed!.x + placed!.width).toBeCloseTo(100, 9);
  });
});

describe('what is left', () => {
  it('is one large offcut rather than many small ones', () => {
    const pieces = [
      { id: 'a', width: 50, height: 30, count: 2 },
      { id: 'b', width: 25, height: 20, count: 4 },
    ];
    const plan = planned({ sheets: [board], pieces, options: { effort: 0.02 } });
    expect(plan.largestOffcut).toMatchObject({ width: 100, height: 50 });
    expect(plan.area).toEqual({ used: 10_000, pieces: 5000, offcuts: 5000, waste: 0 });
  });

  it('below the least useful size is waste', () => {
    const pieces = [{ id: 'a', width: 100, height: 80 }];
    const kept = planned({ sheets: [board], pieces, options: { ...options, leastOffcut: 20 } });
    expect(kept.area).toMatchObject({ offcuts: 2000, waste: 0 });
    const lost = planned({ sheets: [board], pieces, options: { ...options, leastOffcut: { width: 30, height: 21 } } });
    expect([lost.largestOffcut, lost.area.waste]).toEqual([undefined, 2000]);
  });
});

describe('what the answer says of itself', () => {
  it('optimal only where the bound is met, else how far it may be', () => {
    // A day of blanks that no small search brings down to the bound.
    const pieces = Array.from({ length: 60 }, (_, i) => ({
      id: `p${i}`,
      width: 11 + ((i * 37) % 53),
      height: 13 + ((i * 29) % 47),
    }));
    const plan = planned({ sheets: [board], pieces, options: { effort: 0 } });
    expect(plan.gap).toBe(plan.count - plan.bound.value);
    expect(plan.gap).toBeGreaterThan(0);
    expect(plan.verdict).toBe(`at most ${plan.gap} sheet${plan.gap === 1 ? '' : 's'} from the bound`);
  });

  it('too little stock for sure only where the bound or every layout says so', () => {
    const pieces = Array.from({ length: 60 }, (_, i) => ({
      id: `p${i}`,
      width: 11 + ((i * 37) % 53),
      height: 13 + ((i * 29) % 47),
    }));
    const { bound } = planned({ sheets: [board], pieces, options: { effort: 0 } });
    const says = (count: number): string => {
      const made = planStock({ sheets: [{ ...board, count }], pieces, options: { effort: 0 } });
      return made.ok ? 'planned' : `${made.problems[0]!.message}; ${made.problems[0]!.hint}`;
    };
    expect(says(bound.value)).toMatch(/^the stock seems too small: .*; 1 more of "board" would do; or search longer$/);
    expect(says(bound.value - 1)).toMatch(/^the stock is too small: .* would do$/);
  });
});
