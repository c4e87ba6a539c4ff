import { describe, expect, it } from 'vitest';
import type { Drawing, Item } from '../../src/drawing/model.ts';
import { offSheet } from '../../src/writers/off-sheet.ts';

const of = (...items: readonly Item[]): Drawing => ({
  title: 'a cut',
  width: 100,
  height: 60,
  view: 'back',
  pens: { cut: { width: 0.1, colour: 0, dash: [], cap: 'butt' } },
  groups: [{ name: 'cut', label: 'cut', shown: false, items }],
});
const line = (x: number, y: number): Item => ({
  kind: 'line',
  pen: 'cut',
  id: 'cut-1-left',
  from: { x: 0, y: 0 },
  to: { x, y },
});
const said = (drawing: Drawing): readonly string[] =>
  offSheet(drawing, 'cut-laser-1').map(({ code, message }) => `${code}: ${message}`);

describe('a drawing that a machine cuts by', () => {
  it('may reach to the edge of its sheet', () => {
    expect(said(of(line(100, 60)))).toEqual([]);
    expect(said(of(line(100 + 1e-9, 60)))).toEqual([]);
  });

  it.each([
    [100.4, 60, '0.4 mm'],
    [50, 62, '2 mm'],
    [-0.3, 10, '0.3 mm'],
    [50, -6.35, '6.35 mm'],
    [Number.NaN, 10, 'without end'],
  ])('has no line to %s %s', (x, y, far) => {
    expect(said(of(line(x, y)))).toEqual([
      `line-off-sheet: cut-laser-1 would have the line cut-1-left beyond its sheet, by ${far}`,
    ]);
  });

  it('is measured by what its curves reach, hidden groups and all', () => {
    const arc: Item = {
      kind: 'path',
      paths: [
        {
          start: { x: 10, y: 58 },
          segments: [{ kind: 'arc', to: { x: 30, y: 58 }, centre: { x: 20, y: 58 }, clockwise: false }],
          closed: false,
        },
      ],
    };
    expect(said(of(arc))).toEqual(['line-off-sheet: cut-laser-1 would have a line beyond its sheet, by 8 mm']);
    const words: Item = {
      kind: 'text',
      text: 'TOP',
      at: { x: -5, y: 5 },
      anchor: 'start',
      size: 5,
      weight: 'bold',
      turn: 0,
      colour: 0,
    };
    expect(said(of(words))).toEqual([]);
  });
});
