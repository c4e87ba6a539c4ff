import { expect, test } from 'vitest';
import type { TextItem } from '../../src/drawing/model.ts';
import { itemPaths } from '../../src/writers/item-paths.ts';
import { FONTS } from '../fonts/loaded.ts';
import { readSvg } from '../readers/svg-elements.ts';
import { drawingOf, group } from './samples.ts';
import { writeSvg } from './svg-in-node.ts';

const said = (text: string, more: Partial<TextItem>): TextItem => ({
  kind: 'text',
  at: { x: 41.23456, y: 27.65432 },
  text,
  size: 3.175,
  weight: 'regular',
  anchor: 'start',
  turn: 0,
  colour: 0,
  ...more,
});

test('letters lie where their outlines lie, in any size and turn, within a thousandth of a millimetre', () => {
  let looked = 0;
  for (const item of [
    said('Heron & egret, 16 ½ × 20 ⅜ in', {}),
    said('S 12 → E 12', { turn: 90, anchor: 'middle' }),
    said('S 12 → E 12', { turn: -37.5, anchor: 'end', weight: 'bold', size: 11 }),
    said('B8%i', { size: 0.9, at: { x: 3, y: 90 } }),
    said('S 12 → E 12', { turn: 90, size: 11 }),
  ]) {
    const drawing = drawingOf(100, 100, [group('words', [item])]);
    const { paths } = readSvg(writeSvg(drawing, { fonts: FONTS }));
    const ends = paths[0]!.segments.map(({ to }) => to);
    const known = itemPaths(item, FONTS).flatMap(({ segments }) => segments.map(({ to }) => to));
    // A side too short for the grid may be left out: then the next point is that of the one before.
    let at = 0;
    for (const point of known) {
      const off = (i: number): number =>
        i < ends.length ? Math.max(Math.abs(ends[i]!.x - point.x), Math.abs(ends[i]!.y - point.y)) : Infinity;
      if (off(at) > 0.00101 && at > 0 && off(at - 1) <= 0.00101) continue;
      expect([item.text, off(at) <= 0.00101, off(at)]).toEqual([item.text, true, off(at)]);
      at++;
      looked++;
    }
    expect(at).toBe(ends.length);
  }
  expect(looked).toBeGreaterThan(600);
});
