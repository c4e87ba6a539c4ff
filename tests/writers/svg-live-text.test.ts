import { expect, test } from 'vitest';
import type { TextItem } from '../../src/drawing/model.ts';
import { loadFonts } from '../../src/fonts/load.ts';
import { textWidth } from '../../src/fonts/measure.ts';
import { drawingOf, group } from './samples.ts';
import { writeSvg } from './svg-in-node.ts';

/** Without outlines: live text needs none. */
const FONTS = await loadFonts([]);

const item = (more: Partial<TextItem>): TextItem => ({
  kind: 'text',
  text: 'Heron',
  at: { x: 20, y: 30.5 },
  anchor: 'start',
  size: 6,
  weight: 'regular',
  turn: 0,
  colour: 0,
  ...more,
});

const linesOf = (...items: readonly TextItem[]): readonly string[] =>
  writeSvg(drawingOf(100, 100, [group('words', items)]), { fonts: FONTS, family: 'Sheet Sans' })
    .split('\n')
    .filter((line) => line.startsWith('<text') || line.startsWith('<path'));

const measured = (text: string, weight: TextItem['weight'] = 'regular', size = 6): string =>
  String(Number(textWidth(text, weight, size, FONTS).toFixed(4)));

test('letters are text in the family that is named, where and as wide as they were measured', () => {
  expect(linesOf(item({}))).toEqual([
    `<text x="20" y="30.5" font-family="Sheet Sans" font-size="6" textLength="${measured('Heron')}" fill="#000000">Heron</text>`,
  ]);
});

test('a turn, a weight and an anchor are said, and signs of XML are escaped', () => {
  expect(linesOf(item({ text: '<3 & "4"', turn: 90, anchor: 'middle', weight: 'bold', size: 4, id: 'sign' }))).toEqual([
    `<text id="sign" x="20" y="30.5" transform="rotate(90 20 30.5)" font-family="Sheet Sans" font-size="4" font-weight="bold" ` +
      `text-anchor="middle" textLength="${measured('<3 & "4"', 'bold', 4)}" fill="#000000">&lt;3 &amp; &quot;4&quot;</text>`,
  ]);
});

test('spaces in a row stay, and what draws nothing is left out', () => {
  const [line] = linesOf(item({ text: ' a  b ' }), item({ text: '' }), item({ text: '\u200b' }));
  expect(line).toMatch(/>\u00a0a\u00a0 b\u00a0</);
  expect(linesOf(item({ text: '' }), item({ text: '\u200b' }))).toEqual([]);
});
