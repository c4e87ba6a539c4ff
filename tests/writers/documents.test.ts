import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { PNG } from 'pngjs';
import { describe, expect, test } from 'vitest';
import { renderPdfPage } from '../../src/dev/render.ts';
import { type Document, joinDocuments, type Page } from '../../src/drawing/document.ts';
import { sheetsDocument } from '../../src/paper/sheets.ts';
import { writePdf } from '../../src/writers/pdf/pdf.ts';
import { writePagePng } from '../../src/writers/png.ts';
import { FONTS } from '../fonts/loaded.ts';
import { readPdf } from '../readers/pdf-lines.ts';
import { openObjects } from '../readers/pdf-objects.ts';
import { everything } from './everything.ts';
import { blockDifference } from './pixels.ts';
import { documentOf, drawingOf, group, line, pageOf } from './samples.ts';
import { writePageSvg } from './svg-in-node.ts';

const named = (name: string, outline?: readonly string[], label = name): Page => ({
  ...documentOf(drawingOf(210, 297, []), [pageOf(1)]).pages[0]!,
  name,
  label,
  ...(outline === undefined ? {} : { outline }),
});

interface Node {
  readonly title: string;
  readonly page: number;
  readonly items: readonly Node[];
}

/** The outline and the labels as pdf.js reads them; entries with the page that they lead to, from 1. */
async function opened(bytes: Uint8Array) {
  const task = getDocument({ data: bytes.slice(), verbosity: 0 });
  const pdf = await task.promise;
  type Read = { readonly title: string; readonly dest: unknown; readonly items: readonly Read[] };
  const node = async ({ title, dest, items }: Read): Promise<Node> => {
    const page = await pdf.getPageIndex((dest as [Parameters<typeof pdf.getPageIndex>[0]])[0]);
    return { title, page: page + 1, items: await Promise.all(items.map(node)) };
  };
  const outline = (await pdf.getOutline()) as readonly Read[] | null;
  const read = {
    labels: await pdf.getPageLabels(),
    outline: outline === null ? null : await Promise.all(outline.map(node)),
  };
  await task.destroy();
  return read;
}

const withPages = (pages: readonly Page[], title = 'Sample'): Document => ({ ...everything, title, pages });

describe('page labels (ISO 32000-1, 12.4.2)', () => {
  test('are what the pages say', async () => {
    const bytes = await writePdf(withPages([named('check'), named('A1'), named('3'), named('4'), named('B2')]), {
      fonts: FONTS,
    });
    expect((await opened(bytes)).labels).toEqual(['check', 'A1', '3', '4', 'B2']);
  });

  test('are left out where every page is called by its number', async () => {
    const bytes = await writePdf(withPages([named('1'), named('2')]), { fonts: FONTS });
    expect((await openObjects(bytes)).catalog.PageLabels).toBeUndefined();
  });
});

describe('the outline (ISO 32000-1, 12.3.3)', () => {
  test('nests what begins alike, one entry for neighbours of one title', async () => {
    const pages = [
      named('a', ['First']),
      named('b', ['First', 'Лист ½']),
      named('c', ['First', 'Лист ½']),
      named('d'),
      named('e', ['First', 'Last']),
      named('f', ['Second', 'Alone']),
    ];
    expect((await opened(await writePdf(withPages(pages), { fonts: FONTS }))).outline).toEqual([
      {
        title: 'First',
        page: 1,
        items: [
          { title: 'Лист ½', page: 2, items: [] },
          { title: 'Last', page: 5, items: [] },
        ],
      },
      { title: 'Second', page: 6, items: [{ title: 'Alone', page: 6, items: [] }] },
    ]);
  });

  test('of one entry is none', async () => {
    expect(
      (await opened(await writePdf(withPages([named('a', ['Only']), named('b', ['Only'])]), { fonts: FONTS }))).outline,
    ).toBeNull();
  });
});

describe('several documents in one', () => {
  const more = documentOf(
    drawingOf(100, 100, [group('cut', [line('heavy', 0, 0, 100, 100)], false), group('more', [])]),
    [pageOf(1, { part: { x: 0, y: 0, width: 50, height: 50, pageX: 10, pageY: 10 } })],
  );
  const sheet = drawingOf(210, 297, [group('words', [line('heavy', 1, 1, 9, 9)])]);
  const sheets = sheetsDocument({ title: 'Tickets', subject: 'Bench', sheets: [sheet, { ...sheet, title: 'Other' }] });
  const joined = joinDocuments([{ ...everything, title: 'Sample' }, more, sheets], {
    title: 'All',
    subject: 'Everything',
    language: 'en',
  });

  test('have the pages of all, labelled on, below their titles', async () => {
    expect(joined.pages.map(({ label }) => label)).toEqual(['1', '2', '3', '4', '5', '6', '7']);
    const { labels, outline } = await opened(await writePdf(joined, { fonts: FONTS }));
    expect(labels).toBeNull();
    expect(outline!.map(({ title, page, items }) => [title, page, items.map((item) => item.title)])).toEqual([
      ['Sample', 1, []],
      ['Sample for the bench', 5, []],
      ['Tickets', 6, ['Sample', 'Other']],
    ]);
  });

  test('have each layer once, as the first of them has it', async () => {
    const { layers, title } = await readPdf(await writePdf(joined, { fonts: FONTS }));
    expect(title).toBe('All');
    expect(layers.map(({ name }) => name)).toEqual([
      'All of cut',
      'All of curves',
      'All of words',
      'All of grid',
      'All of more',
    ]);
    expect(layers[0]!.shown).toBe(true);
  });

  test('hold every drawing once that several frames show', async () => {
    expect((await openObjects(await writePdf(joined, { fonts: FONTS }))).count('Form')).toBe(2);
    // The drawing, and what lies below and above it on each of four pages.
    const twice = joinDocuments([everything, everything], everything);
    expect((await openObjects(await writePdf(twice, { fonts: FONTS }))).count('Form')).toBe(1 + 2 * 4);
  });

  test('draw on every page what the document itself draws there', async () => {
    const [all, one] = [
      await readPdf(await writePdf(joined, { fonts: FONTS })),
      await readPdf(await writePdf(more, { fonts: FONTS })),
    ];
    const ends = (page: (typeof all.pages)[number]) => page.lines.map(({ from, to }) => [from, to]);
    expect(ends(all.pages[4]!)).toEqual(ends(one.pages[0]!));
  });
});

test('a drawing that one frame shows whole stands in its page, wherever it lies there', async () => {
  const drawing = drawingOf(100, 60, [group('cut', [line('heavy', 10, 20, 90, 20)])]);
  const at = { x: 30, y: 40 };
  const turned = ([0, 90, 180, 270] as const).map(
    (turn): Page => ({ ...named(`${turn}`), frames: [{ drawing: { ...drawing }, turn, at }] }),
  );
  const document = { ...everything, pages: turned };
  const bytes = await writePdf(document, { fonts: FONTS });
  expect((await openObjects(bytes)).count('Form')).toBe(0);
  const wanted = [
    [40, 60, 120, 60],
    [70, 50, 70, 130],
    [120, 80, 40, 80],
    [50, 130, 50, 50],
  ];
  (await readPdf(bytes)).pages.forEach(({ lines }, i) => {
    const { from, to, layer } = lines[0]!;
    [from.x, from.y, to.x, to.y].forEach((v, k) => {
      expect(v).toBeCloseTo(wanted[i]![k]!, 3);
    });
    expect(layer).toBe('All of cut');
  });
  document.pages.forEach((page, i) => {
    expect(writePageSvg(document, page, { fonts: FONTS })).toContain(
      `matrix(${['1 0 0 1', '0 1 -1 0', '-1 0 0 -1', '0 -1 1 0'][i]}`,
    );
  });
});

test('a document that was cloned gives the same bytes, its drawing still once', async () => {
  const cloned = structuredClone<Document>(everything);
  const [a, b] = [await writePdf(everything, { fonts: FONTS }), await writePdf(cloned, { fonts: FONTS })];
  expect(Buffer.from(b).equals(Buffer.from(a))).toBe(true);
  cloned.pages.forEach((page, i) => {
    expect(writePageSvg(cloned, page, { fonts: FONTS })).toBe(
      writePageSvg(everything, everything.pages[i]!, { fonts: FONTS }),
    );
  });
});

test('each page as a picture looks like the page of the PDF', async () => {
  const wasm = createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm');
  const [pdf, page] = [await writePdf(everything, { fonts: FONTS }), everything.pages[1]!];
  const bytes = await writePagePng(everything, page, { fonts: FONTS, dpi: 100, renderer: () => readFile(wasm) });
  const { width, height, data } = PNG.sync.read(Buffer.from(bytes));
  expect(blockDifference({ width, height, rgba: data }, await renderPdfPage(pdf, 1, 100))).toBeLessThan(0.15);
});
