import { describe, expect, it } from 'vitest';
import { NO_SHOP } from '../../src/shop/shop.ts';
import type { Blank } from '../../src/stock/blanks.ts';
import type { BoardPlan } from '../../src/stock/board-plans.ts';
import { layOutDay } from '../../src/stock/layouts.ts';
import type { CutNode, StockPlan, UsedSheet } from '../../src/stock/planner/model.ts';

const MATERIAL = { kind: 'board', id: 'a', name: 'A', thickness: 1.4, sheets: [], directional: false } as const;
const blank = (name: string): Blank => ({
  ...{ job: 0, layer: 0, name, material: MATERIAL, count: 9, cut: false },
  ...{ width: 40, height: 100 },
});

/** A sheet of 100 × 100 with two blanks side by side and an offcut, in that order. */
function sheet(number: number, order: readonly string[], copy: number, origin: UsedSheet['origin']): UsedSheet {
  const widths: Record<string, number> = { p: 40, q: 40, rest: 20 };
  let x = 0;
  const parts = order.map((piece): CutNode => {
    const at = { x, y: 0, width: widths[piece]!, height: 100 };
    x += at.width;
    return piece === 'rest'
      ? { kind: 'offcut', keep: true, ...at }
      : { kind: 'piece', piece, copy, turned: false, ...at };
  });
  const tree: CutNode = { kind: 'cuts', along: 'x', x: 0, y: 0, width: 100, height: 100, parts };
  return { number, id: origin.kind === 'fallout' ? origin.piece : 's', origin, width: 100, height: 100, tree };
}

function day(sheets: readonly UsedSheet[], shop = NO_SHOP) {
  const plan: StockPlan = {
    ...{ sheets, laid: [], count: sheets.length, status: 'open', gap: 0, verdict: '', first: 'sheets' },
    bound: { value: 1, by: 'area' },
    area: { used: 1, pieces: 1, offcuts: 0, waste: 0 },
  };
  const board: BoardPlan = {
    material: MATERIAL,
    blanks: new Map(['p', 'q'].map((id) => [id, blank(id)])),
    shopSheets: new Map(),
    input: { sheets: [], pieces: [] },
    plan,
  };
  return layOutDay([board, board], shop).map(({ layouts }) => layouts);
}

const NEW = { kind: 'sheet' } as const;
const dropped = (copy: number) => ({ kind: 'fallout', piece: 'p', copy, which: 0 }) as const;

describe('the layouts of a day', () => {
  it('are one where sheets differ in copies alone, and count on from board to board', () => {
    const sheets = [
      sheet(1, ['p', 'q', 'rest'], 1, NEW),
      sheet(2, ['q', 'p', 'rest'], 2, NEW),
      sheet(3, ['p', 'q', 'rest'], 3, NEW),
      sheet(4, ['p', 'rest', 'q'], 4, NEW),
    ];
    const [first, second] = day(sheets);
    expect(first!.map(({ numbers }) => numbers)).toEqual([[1, 2], [3], [4]]);
    expect(second!.map(({ numbers }) => numbers)).toEqual([[5, 6], [7], [8]]);
    expect(first!.map(({ pieces }) => pieces.map(({ key, piece }) => key + piece))).toEqual([
      ['ap', 'bq'],
      ['aq', 'bp'],
      ['ap', 'bq'],
    ]);
    const marks = [first, second].map((layouts) =>
      layouts!.flatMap(({ offcuts }) => offcuts.map((each) => each.marks)),
    );
    expect(marks).toEqual([
      [['S1', 'S2'], ['S3'], ['S4']],
      [['S5', 'S6'], ['S7'], ['S8']],
    ]);
  });

  it('go on from the highest mark on the shelf', () => {
    const shelf = ['S7', 'S12', 'rack', 'S3b'].map((id) => ({ id, board: 'a', width: 100, height: 100 }));
    const [first] = day([sheet(1, ['p', 'rest', 'q'], 1, NEW)], { ...NO_SHOP, shelf });
    expect(first![0]!.offcuts[0]!.marks).toEqual(['S13']);
  });

  it('keep what drops out in its place, since its mat may lie between', () => {
    const sheets = [
      sheet(1, ['p', 'q'], 1, dropped(1)),
      sheet(2, ['p', 'q'], 2, dropped(2)),
      sheet(3, ['q', 'p'], 3, dropped(3)),
      sheet(4, ['p', 'q'], 4, dropped(4)),
    ];
    expect(day(sheets)[0]!.map(({ numbers }) => numbers)).toEqual([[1, 2], [3], [4]]);
  });
});
