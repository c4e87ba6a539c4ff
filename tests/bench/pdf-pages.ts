/** One process of the PDF bench: writes a pattern of so many sheets and prints what that took. */

import { type Document, layersOf, type Page, wholeFrame } from '../../src/drawing/document.ts';
import type { Item, Pen } from '../../src/drawing/model.ts';
import { writePdf } from '../../src/writers/pdf/pdf.ts';
import { FONTS } from '../fonts/loaded.ts';

const PENS: Readonly<Record<string, Pen>> = {
  thick: { width: 0.5, colour: 0, dash: [], cap: 'butt' },
  thin: { width: 0.15, colour: 0, dash: [], cap: 'butt' },
  dashed: { width: 0.2, colour: 0.3, dash: [4, 2], cap: 'butt' },
};

const line = (pen: string, x1: number, y1: number, x2: number, y2: number): Item => ({
  kind: 'line',
  pen,
  from: { x: x1, y: y1 },
  to: { x: x2, y: y2 },
});

const text = (words: string, x: number, y: number, size: number): Item => ({
  kind: 'text',
  text: words,
  at: { x, y },
  anchor: 'middle',
  size,
  weight: 'regular',
  turn: 0,
  colour: 0,
});

/** About what a sheet carries: join lines, crosses, two rulers with their numbers, its name and those of its neighbours. */
function furniture(row: number, column: number): readonly Item[] {
  const items: Item[] = [line('dashed', 10, 0, 10, 100), line('dashed', 0, 10, 100, 10)];
  for (let i = 0; i < 4; i++)
    items.push(line('thin', 8, 20 + 20 * i, 12, 20 + 20 * i), line('thin', 10, 18 + 20 * i, 10, 22 + 20 * i));
  for (let i = 0; i <= 20; i++)
    items.push(
      line('thin', 20 + i, 95, 20 + i, i % 5 === 0 ? 92 : 94),
      line('thin', 95, 20 + i, i % 5 === 0 ? 92 : 94, 20 + i),
    );
  for (const mm of [0, 5, 10, 15, 20]) items.push(text(`${mm}`, 20 + mm, 98, 2), text(`${mm}`, 97, 20 + mm, 2));
  items.push(
    text(`${row}-${column}`, 50, 90, 5),
    text(`joins ${row}-${column + 1} and ${row + 1}-${column}`, 50, 85, 3),
  );
  items.push(text('Heron, linocut, top mat: 16 ½ × 20 ⅜″', 50, 80, 3));
  return items;
}

function documentOf(sheets: number): Document {
  const columns = Math.ceil(Math.sqrt(sheets));
  const rows = Math.ceil(sheets / columns);
  const [width, height] = [80 * columns, 80 * rows];
  const items = Array.from({ length: 200 }, (_, i) =>
    line('thick', 0, (i * height) / 200, width, height - (i * height) / 200),
  );
  const words = Array.from({ length: 40 }, (_, i) => text(`reading ${i} ⅛`, width / 2, (i * height) / 40, 6));
  const groups = [
    { name: 'cut', label: 'Cut', shown: true, items },
    { name: 'words', label: 'Words', shown: true, items: words },
  ];
  const drawing = { title: 'Heron', width, height, view: 'back', pens: PENS, groups } as const;
  const paper = { width: 100, height: 100 };
  const pages = Array.from({ length: sheets }, (_, i): Page => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    const marks = { name: 'over', label: 'Over', shown: true, items: furniture(row, column) };
    return {
      name: `${row}-${column}`,
      label: `${row}-${column}`,
      paper,
      scale: { x: 1, y: 1 },
      frames: [
        { drawing, clip: { x: 80 * column, y: 80 * row, width: 90, height: 90 }, turn: 0, at: { x: 5, y: 5 } },
        wholeFrame({ title: 'Marks', ...paper, view: 'sheet', pens: PENS, groups: [marks] }),
      ],
    };
  });
  return { title: 'Heron', subject: 'Bench', language: 'en', layers: layersOf(drawing), pages };
}

const document = documentOf(Number(process.argv[2]));
const before = process.hrtime.bigint();
void writePdf(document, { fonts: FONTS }).then((bytes) => {
  const milliseconds = Number(process.hrtime.bigint() - before) / 1e6;
  const peakMiB = process.resourceUsage().maxRSS / 1024;
  console.log(JSON.stringify({ milliseconds, peakMiB, kilobytes: bytes.length / 1000 }));
});
