import { describe, expect, it } from 'vitest';
import { type Box, box, contains } from '../../src/geometry/box.ts';
import type { Point } from '../../src/geometry/point.ts';
import { cornerGroups } from '../../src/paper/corners.ts';
import type { Plan } from '../../src/paper/plan.ts';
import { isShown, itemsOf, laid, onPage, options, sheetsIn, textsOf, wordsOf } from './laid.ts';
import { LARGE, MIDDLING, ringMat } from './sample.ts';

const corners = (work: typeof LARGE): readonly Point[] => {
  const { x, y, width, height } = work.board!;
  return [
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ];
};

describe('a full sheet of mat board with 4 in borders on Letter', () => {
  const layout = laid(LARGE, 'letter', { extent: 'corners' });
  const sheets = sheetsIn(layout);

  it('takes four sheets and the check sheet, clockwise from the top left', () => {
    expect(layout.pages.map(({ name }) => name)).toEqual(['check', 'C1', 'C2', 'C3', 'C4']);
    expect(layout.summary).toContain('5 pages of Letter: 4 sheets and the first one');
    corners(LARGE).forEach((corner, i) => {
      expect(isShown(corner, sheets[i]!)).toBe(true);
    });
    expect(sheets.map((sheet) => textsOf(sheet).find((text) => text.includes('corner')))).toEqual([
      'top left corner, as seen here',
      'top right corner, as seen here',
      'bottom right corner, as seen here',
      'bottom left corner, as seen here',
    ]);
  });

  it('every tick and every corner of the lines to cut is whole on its sheet', () => {
    const marks = LARGE.drawing.groups.find(({ name }) => name === 'marks')!.items;
    for (const mark of marks) {
      if (mark.kind !== 'line') throw new Error('a tick is a line');
      expect(sheets.filter((sheet) => isShown(mark.from, sheet) && isShown(mark.to, sheet))).toHaveLength(1);
    }
  });

  it("what a sheet shows lies as far from the board's edges as on the whole pattern", () => {
    const cut = LARGE.drawing.groups
      .find(({ name }) => name === 'cut')!
      .items.flatMap((item) => (item.kind === 'line' ? [item.from] : []));
    corners(LARGE).forEach((corner, i) => {
      const sheet = sheets[i]!;
      const edge = onPage(corner, sheet);
      const within = cut.filter((p) => isShown(p, sheet));
      expect(within).toHaveLength(1);
      const on = onPage(within[0]!, sheet);
      const [dx, dy] = [on.x - edge.x, on.y - edge.y].map(Math.abs);
      const [wx, wy] = [within[0]!.x - corner.x, within[0]!.y - corner.y].map(Math.abs);
      const [ex, ey] = sheet.rotation % 180 === 0 ? [wx, wy] : [wy, wx];
      expect(dx).toBeCloseTo(ex!, 6);
      expect(dy).toBeCloseTo(ey!, 6);
    });
  });

  it("shows paper beyond the board's edges, so that the sheet is laid on by them", () => {
    corners(LARGE).forEach((corner, i) => {
      const p = onPage(corner, sheets[i]!);
      const area = { x: 6.35, y: 6.35, width: sheets[i]!.paper.width - 12.7, height: sheets[i]!.paper.height - 12.7 };
      expect(p.x - area.x > 5 && area.x + area.width - p.x > 5).toBe(true);
      expect(p.y - area.y > 5 && area.y + area.height - p.y > 5).toBe(true);
      // Eight millimetres of it; all that is left over goes inwards.
      expect(Math.min(p.x - area.x, area.x + area.width - p.x)).toBeCloseTo(8, 6);
      expect(Math.min(p.y - area.y, area.y + area.height - p.y)).toBeCloseTo(8, 6);
    });
  });

  it('says how: by the edges of the board, not taped to each other', () => {
    const words = wordsOf(layout.pages[0]!);
    expect(words).toContain("by the board's own two edges");
    expect(words).toContain('Print the 4 sheets that follow');
    expect(words).not.toContain('joined first');
  });

  it('has no join lines', () => {
    for (const sheet of sheets)
      expect(itemsOf(sheet).some((item) => item.kind === 'line' && item.pen === 'join')).toBe(false);
  });
});

it('the whole pattern of a board larger than a sheet says that corner sheets are truer', () => {
  const [advice] = laid(LARGE, 'letter').advice;
  expect(advice).toContain('--extent corners');
  expect(advice).toContain('4 instead of 14');
  expect(laid(MIDDLING, 'a2').advice).toEqual([]);
  const deep = ringMat({ width: 700, height: 700, top: 250, right: 120, bottom: 120, left: 120 });
  expect(laid(deep, 'letter').advice[0]).toContain('too deep for one sheet each');
});

it('corners that lie near each other share a sheet: one for a board that fits, two for a long one', () => {
  const small = ringMat({ width: 180, height: 240, top: 50, right: 40, bottom: 50, left: 40 });
  expect(laid(small, 'a4', { extent: 'corners' }).sheets).toBe(1);
  const long = laid(ringMat({ width: 180, height: 600, top: 50, right: 40, bottom: 50, left: 40 }), 'a4', {
    extent: 'corners',
  });
  expect(sheetsIn(long).map(({ name }) => name)).toEqual(['C1', 'C2']);
  expect(textsOf(long.pages.at(-1)!)).toContain('bottom right and bottom left corners, as seen here');
});

describe('a border too deep for one sheet', () => {
  const deep = ringMat({ width: 700, height: 700, top: 250, right: 120, bottom: 120, left: 120 });
  const layout = laid(deep, 'letter', { extent: 'corners' });
  const sheets = sheetsIn(layout);

  it('takes the fewest more, joined within their corner', () => {
    expect(sheets.map(({ name }) => name)).toEqual(['C1-A1', 'C1-B1', 'C2-A1', 'C2-B1', 'C3', 'C4']);
    expect(sheets[0]!.neighbours).toEqual({ bottom: 'C1-B1' });
    expect(sheets[0]!.crosses!.map(({ name }) => name)).toEqual(['C1-A1|C1-B1 a', 'C1-A1|C1-B1 b']);
    expect(wordsOf(layout.pages[0]!)).toContain('joined first');
  });

  it('still shows every tick', () => {
    for (const mark of deep.drawing.groups.find(({ name }) => name === 'marks')!.items) {
      if (mark.kind !== 'line') throw new Error('a tick is a line');
      expect(sheets.some((sheet) => isShown(mark.from, sheet) || isShown(mark.to, sheet))).toBe(true);
    }
  });
});

it('parts that lie on the board by themselves go to the corner that is nearest, and corners without any are not shown', () => {
  const at = (x: number, y: number) => box(1 + x, 1 + y, 40, 40);
  const work = {
    ...LARGE,
    avoid: [],
    parts: [at(60, 60), at(110, 50), at(LARGE.board!.width - 90, LARGE.board!.height - 100)],
  };
  const groups = cornerGroups(work, LARGE.board!, { width: 210, height: 297 }, 13, options('a4'));
  expect(groups.map(({ label }) => label)).toEqual([
    'top left corner, as seen here',
    'bottom right corner, as seen here',
  ]);
  const [first, second] = groups.map(({ plan }) => plan);
  for (const plan of [first!, second!])
    expect(plan).toMatchObject({ rows: 1, columns: 1, cells: [{ row: 0, column: 0 }] });
  // Each shows its parts whole, and its corner of the board.
  const shows = ({ x, y, width, height }: Plan, part: Box): boolean => contains(box(x, y, width, height), part);
  const { x, y, width, height } = LARGE.board!;
  expect([work.parts[0]!, work.parts[1]!, box(x, y, 0, 0)].every((part) => shows(first!, part))).toBe(true);
  expect([work.parts[2]!, box(x + width, y + height, 0, 0)].every((part) => shows(second!, part))).toBe(true);
});
