import { expect, it } from 'vitest';
import { bottom, box } from '../../src/geometry/box.ts';
import { piecesOf } from '../../src/text/entries.ts';
import { flow } from '../../src/text/flow.ts';
import { FONTS } from '../fonts/loaded.ts';

const AREA = box(10, 20, 70, 90);

it('a table that no column holds goes on in the next one, under its head again, and loses no row', () => {
  const fonts = FONTS;
  const rows = Array.from({ length: 40 }, (_, i) => [`row ${i + 1}`, `${i + 1} mm`]);
  const table = { kind: 'table', head: ['what', 'long'], rows, rowHeight: 0 } as const;
  const { pages } = flow(piecesOf([{ kind: 'heading', text: 'Rows' }, table], fonts), { columns: () => [AREA] });
  expect(pages.length).toBeGreaterThan(1);
  const texts = pages.map(({ items }) => items.flatMap((item) => (item.kind === 'text' ? [item] : [])));
  expect(texts.flat().flatMap(({ text }) => (text.startsWith('row ') ? [text] : []))).toEqual(
    rows.map(([name]) => name),
  );
  for (const [i, page] of texts.entries()) {
    expect(page.filter(({ text }) => text === 'what')).toHaveLength(1);
    expect(page[0]!.text).toBe(i === 0 ? 'Rows' : 'what');
    for (const { at } of page) expect(at.y > AREA.y && at.y < bottom(AREA)).toBe(true);
  }
});

it('one that a column holds stays whole', () => {
  const fonts = FONTS;
  const rows = Array.from({ length: 4 }, (_, i) => [`row ${i + 1}`, `${i + 1} mm`]);
  const table = { kind: 'table', head: ['what', 'long'], rows } as const;
  const before = Array.from(
    { length: 9 },
    () => ({ kind: 'text', text: 'Words above it that fill the column.' }) as const,
  );
  const { pages } = flow(piecesOf([...before, table, ...before, table], fonts), { columns: () => [AREA] });
  for (const { items } of pages) {
    const names = items.flatMap((item) => (item.kind === 'text' && item.text.startsWith('row ') ? [item.text] : []));
    expect(names.length % 4).toBe(0);
  }
});
