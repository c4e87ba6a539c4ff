import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Drawing, Item } from '../../src/drawing/model.ts';
import { flattened } from '../../src/geometry/flatten.ts';
import { polygon } from '../../src/geometry/path.ts';
import { shapeOf } from '../../src/shapes/shapes.ts';
import { mmFromInches } from '../../src/units/units.ts';
import { type HpglOptions, writeHpgl } from '../../src/writers/hpgl.ts';
import { plot } from '../readers/hpgl.ts';
import { randomShape } from '../shapes/random-shapes.ts';
import { along, Near } from '../simulate/near.ts';

const pen = (colour: string) => ({ width: 0.1, colour, dash: [], cap: 'round' }) as const;

function drawing(items: readonly Item[], width = 300, height = 200): Drawing {
  const groups = [{ name: 'CUT', label: 'Cut', shown: true, items }];
  const pens = { cut: pen('#c00040'), mark: pen('#009030'), note: pen('#a0a0a0') };
  return { title: 'Test', width, height, view: 'back', pens, groups };
}

const box = (x: number, y: number, width: number, height: number, name = 'cut'): Item => ({
  kind: 'path',
  pen: name,
  paths: [
    polygon([
      { x, y },
      { x: x + width, y },
      { x: x + width, y: y + height },
      { x, y: y + height },
    ]),
  ],
});

const plotted = (items: readonly Item[], options: HpglOptions = {}, width = 300, height = 200) =>
  plot(writeHpgl(drawing(items, width, height), options));

describe('HP-GL', () => {
  test('carries no command in a text, whatever its title is', () => {
    const titles = [
      'x";IN;SP1;PD0,0',
      'x；IN；SP1；PD0,0',
      'x＂；PD0,0',
      'x\nSP1;\rPD0,0;',
      'x\u001b%0A\u0003PD9,9;',
      '\u2028;PU;',
    ];
    for (const title of titles) {
      const text = writeHpgl(drawing([box(0, 0, 10, 10)]), { comment: [title] });
      const [first, ...rest] = text.split('\n');
      // One instruction on the first line: a quoted text without a quote or a semicolon.
      expect(first).toMatch(/^CO "[^";]*";$/u);
      expect(rest.join('\n')).toBe(writeHpgl(drawing([box(0, 0, 10, 10)])));
      expect(/[^\n -~]/u.test(text)).toBe(false);
    }
  });

  test('has 40 units a millimetre, 1016 an inch; 11 × 14 in is 11176 × 14224', () => {
    // HP PCL 5 Technical Reference Manual, part II, table 17-7.
    const [line] = plotted([box(0, 199, 1, 1)]).lines;
    expect(line!.points).toEqual([
      [0, 40],
      [40, 40],
      [40, 0],
      [0, 0],
      [0, 40],
    ]);
    const [width, height] = [mmFromInches(11), mmFromInches(14)];
    const { lines } = plotted([box(0, 0, width, height)], {}, width, height);
    expect(Math.max(...lines[0]!.points.map(([x]) => x))).toBe(11176);
    expect(Math.max(...lines[0]!.points.map(([, y]) => y))).toBe(14224);
    const inch = plotted([{ kind: 'line', pen: 'cut', from: { x: 0, y: 200 }, to: { x: mmFromInches(1), y: 200 } }]);
    expect(inch.lines[0]!.points).toEqual([
      [0, 0],
      [1016, 0],
    ]);
  });

  test('rounds and never cuts off, halves away from zero', () => {
    const to = (x: number) =>
      plotted([{ kind: 'line', pen: 'cut', from: { x: 100, y: 200 }, to: { x, y: 200 } }], { origin: 'corner' });
    expect(to(0.0374).lines[0]!.points[1]).toEqual([1, 0]);
    expect(to(0.0376).lines[0]!.points[1]).toEqual([2, 0]);
    const centred = plotted(
      [{ kind: 'line', pen: 'cut', from: { x: 150 - 0.01251, y: 100 }, to: { x: 150 + 0.01251, y: 100 } }],
      { origin: 'centre' },
    );
    expect(centred.lines[0]!.points).toEqual([
      [-1, 0],
      [1, 0],
    ]);
  });

  test('begins by initialising, ends with the pen up, at home and put away, whatever was drawn', () => {
    for (const items of [[], [box(10, 10, 50, 50)], [box(10, 10, 50, 50), box(20, 20, 5, 5, 'mark')]]) {
      const text = writeHpgl(drawing(items));
      expect(text.startsWith('IN;')).toBe(true);
      expect(text).toMatch(/PU;\n(?:.*\n)*PU0,0;\nSP0;\nIN;\n$|^IN;\nPA;\nPU0,0;\nSP0;\nIN;\n$/u);
      const { penUp, pen: last, at } = plot(text);
      expect([penUp, last, at]).toEqual([true, 0, [0, 0]]);
    }
  });

  test('takes the pen and the speed of each operation, and leaves pen 0 and words out', () => {
    const words: Item = {
      kind: 'text',
      text: 'not cut',
      at: { x: 9, y: 9 },
      anchor: 'start',
      size: 5,
      weight: 'bold',
      turn: 0,
      colour: 0,
    };
    const pens = { cut: { number: 2, speed: 203 }, mark: { number: 5 }, note: { number: 0 } };
    const { lines } = plotted([box(1, 1, 9, 9), box(20, 20, 5, 5, 'mark'), box(30, 30, 5, 5, 'note'), words], { pens });
    expect(lines.map((line) => [line.pen, line.speed])).toEqual([
      [2, 20],
      [5, 20],
    ]);
  });

  test('corrects each axis by what was measured', () => {
    const { lines } = plotted([box(0, 100, 100, 100)], { scale: { x: 1.01, y: 0.99 } });
    expect(Math.max(...lines[0]!.points.map(([x]) => x))).toBe(Math.round(4000 / 1.01));
    expect(Math.max(...lines[0]!.points.map(([, y]) => y))).toBe(Math.round(4000 / 0.99));
  });

  test('says its words in comments, where the plotter knows them', () => {
    const comment = ['Keep "away" × 2'];
    expect(plotted([], { comment }).comments).toEqual(["Keep 'away' x 2"]);
    expect(plotted([], { comment, comments: false }).comments).toEqual([]);
  });

  test('draws every shape within a unit, closed where it began', () => {
    fc.assert(
      fc.property(randomShape, (made) => {
        const outline = shapeOf(made.kind).outline(made.frame, made.fields);
        const { lines } = plotted([{ kind: 'path', pen: 'cut', paths: [outline] }], {}, 900, 1400);
        const { points } = lines[0]!;
        expect(lines.length).toBe(1);
        expect(points[0]).toEqual(points.at(-1));
        for (const [i, p] of points.entries()) expect(i === 0 || p.join() !== points[i - 1]!.join()).toBe(true);
        // Half a unit each way, and chords within 0.01 mm of what they stand for; y runs up from the foot of 1400.
        const near = new Near(1).chain(flattened(outline, 1e-4), true);
        const there = points.map(([x, y]) => ({ x: x / 40, y: 1400 - y / 40 }));
        for (const p of along(there, 0.5, false)) expect(near.distance(p)).toBeLessThan(0.0125 * Math.SQRT2 + 0.0105);
        const drawn = new Near(1).chain(there, false);
        for (const p of flattened(outline, 0.01)) expect(drawn.distance(p)).toBeLessThan(0.0125 * Math.SQRT2 + 0.0105);
      }),
      { numRuns: 60 },
    );
  });
});
