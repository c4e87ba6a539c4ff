import { describe, expect, it } from 'vitest';
import { sheetName } from '../../src/paper/names.ts';
import { laid, type Sheet, sheetsIn } from './laid.ts';
import { LARGE, ringMat } from './sample.ts';

const turned = laid(ringMat({ width: 500, height: 180, top: 40, right: 40, bottom: 40, left: 40 }), '216 x 280 mm', {
  margin: { top: 5, bottom: 5, left: 5, right: 20 },
});

describe('names and order', () => {
  it('rows are letters, columns are numbers; after Z comes AA', () => {
    expect([
      sheetName(0, 0),
      sheetName(1, 2),
      sheetName(25, 9),
      sheetName(26, 0),
      sheetName(27, 0),
      sheetName(701, 0),
      sheetName(702, 0),
    ]).toEqual(['A1', 'B3', 'Z10', 'AA1', 'AB1', 'ZZ1', 'AAA1']);
  });

  it('sheets come row by row, and neighbours are where their names say', () => {
    const sheets = sheetsIn(laid(LARGE, 'letter'));
    expect(sheets.map(({ name }) => name)).toEqual([
      'A1',
      'A2',
      'A3',
      'A4',
      'A5',
      'B1',
      'B5',
      'C1',
      'C5',
      'D1',
      'D2',
      'D3',
      'D4',
      'D5',
    ]);
    expect(sheets[0]!.neighbours).toEqual({ right: 'A2', bottom: 'B1' });
    expect(sheets.find(({ name }) => name === 'B5')!.neighbours).toEqual({ top: 'A5', bottom: 'C5' });
    for (const sheet of sheets) {
      const { neighbours = {} } = sheet;
      const centre = ({ part }: Sheet) => ({ x: part.x + part.width / 2, y: part.y + part.height / 2 });
      const to = (edge: keyof typeof neighbours) => {
        const other = sheets.find(({ name }) => name === neighbours[edge]);
        return other === undefined ? undefined : centre(other);
      };
      const here = centre(sheet);
      if (to('right') !== undefined) expect(to('right')!.x).toBeGreaterThan(here.x + 50);
      if (to('bottom') !== undefined) expect(to('bottom')!.y).toBeGreaterThan(here.y + 50);
    }
  });

  it('on a turned pattern names follow the sheets as they lie, not the drawing', () => {
    const sheets = sheetsIn(turned);
    expect(sheets.map(({ name }) => name)).toEqual(['A1', 'B1']);
    // Rotation clockwise the drawing's left end is on top.
    expect(sheets[0]!.part.x).toBeLessThan(sheets[1]!.part.x);
    expect(sheets[0]!.neighbours).toEqual({ bottom: 'B1' });
  });
});
