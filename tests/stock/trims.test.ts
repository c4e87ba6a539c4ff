import { describe, expect, it } from 'vitest';
import type { SideLengths } from '../../src/stock/planner/model.ts';
import { planStock } from '../../src/stock/planner/plan.ts';
import { planned, QUICK } from './planned.ts';

interface Asked {
  readonly sheet: readonly [number, number];
  readonly piece: readonly [number, number];
  readonly trim?: SideLengths;
  readonly longestCut: number;
  readonly kerf?: number;
}

const inputOf = ({ sheet, piece, trim = {}, longestCut, kerf = 0 }: Asked) => ({
  sheets: [{ id: 's', width: sheet[0], height: sheet[1] }],
  pieces: [{ id: 'p', width: piece[0], height: piece[1], turn: false }],
  options: { trim, longestCut, kerf, effort: QUICK },
});

const said = (asked: Asked): string => {
  const made = planStock(inputOf(asked));
  return made.ok ? `${made.value.count}` : made.problems.map(({ code, message }) => `${code}: ${message}`).join('\n');
};

describe('a sheet that is trimmed on both axes with a cut of 95 at most', () => {
  const both = { left: 10, top: 10 };

  it('is, where one way round no cut is longer: its short sides first', () => {
    // 60 down, and then 90 across what is left; the other way 100 across comes first.
    expect(planned(inputOf({ sheet: [100, 60], piece: [90, 50], trim: both, longestCut: 95 })).count).toBe(1);
    expect(planned(inputOf({ sheet: [60, 100], piece: [50, 90], trim: both, longestCut: 95 })).count).toBe(1);
  });

  it('is not, where either way a cut is longer', () => {
    // Both first cuts are 100.
    expect(said({ sheet: [100, 100], piece: [90, 90], trim: both, longestCut: 95 })).toContain('stock-cut-too-long');
    // 60 down is short enough, the 98 that are left across are not; 100 across never are.
    const little = { left: 2, top: 2 };
    expect(said({ sheet: [100, 60], piece: [98, 58], trim: little, longestCut: 95 })).toContain('stock-cut-too-long');
    expect(said({ sheet: [60, 100], piece: [58, 98], trim: little, longestCut: 95 })).toContain('stock-cut-too-long');
  });

  it('on one axis only the cut along the other counts', () => {
    expect(planned(inputOf({ sheet: [100, 60], piece: [90, 60], trim: { left: 10 }, longestCut: 60 })).count).toBe(1);
    expect(said({ sheet: [100, 60], piece: [100, 50], trim: { top: 10 }, longestCut: 95 })).toContain('too-long');
    expect(planned(inputOf({ sheet: [60, 100], piece: [60, 90], trim: { top: 10 }, longestCut: 60 })).count).toBe(1);
    expect(said({ sheet: [60, 100], piece: [50, 100], trim: { left: 10 }, longestCut: 95 })).toContain('too-long');
  });
});

describe('a piece in a sheet with a longest cut', () => {
  it('is cut off on one side or on both, the shorter cut first', () => {
    expect(planned(inputOf({ sheet: [100, 60], piece: [90, 60], longestCut: 60 })).count).toBe(1);
    expect(planned(inputOf({ sheet: [100, 60], piece: [90, 50], longestCut: 90 })).count).toBe(1);
    expect(planned(inputOf({ sheet: [60, 100], piece: [50, 90], longestCut: 90 })).count).toBe(1);
  });

  it('is refused with the length that it was told, kerf or not', () => {
    for (const kerf of [0, 3])
      expect(said({ sheet: [100, 60], piece: [90, 50], longestCut: 85, kerf })).toBe(
        'stock-cut-too-long: "p", 90 × 50, cannot be cut from a sheet without a cut longer than 85',
      );
    expect(said({ sheet: [100, 60], piece: [90, 60], longestCut: 59 })).toContain('longer than 59');
    expect(said({ sheet: [60, 100], piece: [50, 90], longestCut: 85 })).toContain('longer than 85');
  });
});
