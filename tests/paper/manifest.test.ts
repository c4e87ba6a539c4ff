import { describe, expect, it } from 'vitest';
import { documentRecord } from '../../src/paper/manifest.ts';
import { even, laid } from './laid.ts';
import { LARGE, MIDDLING, ringMat } from './sample.ts';

describe('the record of a file', () => {
  const layout = laid(LARGE, 'letter', {
    printer: { id: 'office', x: 0.9965, y: 0.998, calibrated: true, margin: even(0) },
  });
  const record = documentRecord('pattern-1.pdf', layout);

  it('has one entry a page, the check sheet without a part', () => {
    expect(record.pages).toHaveLength(layout.pages.length);
    expect(record.pages[0]).toEqual({
      file: 'pattern-1.pdf',
      number: 1,
      name: 'check',
      paper: { width: 215.9, height: 279.4 },
      rotation: 0,
      scale: { x: 0.9965, y: 0.998 },
    });
  });

  it('every other entry says what part it shows and where that lies on the page', () => {
    for (const page of record.pages.slice(1)) {
      expect(Object.keys(page)).toEqual([
        'file',
        'number',
        'name',
        'paper',
        'rotation',
        'x',
        'y',
        'width',
        'height',
        'pageX',
        'pageY',
        'scale',
      ]);
      expect(page.x).toBeGreaterThanOrEqual(0);
      expect(page.x! + page.width!).toBeLessThanOrEqual(LARGE.drawing.width + 1e-9);
      expect(page.y! + page.height!).toBeLessThanOrEqual(LARGE.drawing.height + 1e-9);
      expect(page.pageX).toBeGreaterThanOrEqual(6.35 - 1e-9);
    }
  });

  it('and where the board lies in the drawing', () => {
    expect(record.board).toEqual(LARGE.board);
    const { board: _, ...boardless } = MIDDLING;
    expect(documentRecord('jig.pdf', laid(boardless, 'a4'))).not.toHaveProperty('board');
  });

  it('is plain data', () => {
    expect(JSON.parse(JSON.stringify(record))).toEqual(record);
  });

  it('a turned part is given before turning', () => {
    const strip = ringMat({ width: 500, height: 180, top: 40, right: 40, bottom: 40, left: 40 });
    const turned = documentRecord(
      'p.pdf',
      laid(strip, '216 x 280 mm', { margin: { top: 5, bottom: 5, left: 5, right: 20 } }),
    ).pages.slice(1);
    expect(turned.map(({ rotation }) => rotation)).toEqual([90, 90]);
    for (const page of turned) {
      expect(page.height).toBeCloseTo(182, 9);
      expect(page.width).toBeLessThanOrEqual(270 + 1e-9);
    }
  });
});
