import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { writePdf } from '../../src/writers/pdf/pdf.ts';
import { FONTS } from '../fonts/loaded.ts';
import { readPdf } from '../readers/pdf-lines.ts';
import { openObjects } from '../readers/pdf-objects.ts';
import { everything } from './everything.ts';
import { documentOf, drawingOf, group, line, PENS, pageOf, wholePage } from './samples.ts';

describe('a page is its paper', () => {
  const drawing = drawingOf(10, 10, []);
  const boxOf = async (width: number, height: number): Promise<readonly number[]> => {
    const { pages } = await openObjects(
      await writePdf(documentOf(drawing, [pageOf(1, { paper: { width, height } })]), { fonts: FONTS }),
    );
    return pages[0]!.mediaBox;
  };

  test('A4 is 595.2756 × 841.8898 pt (W3C CSS Values and Units 3; PWG 5101.1)', async () => {
    const [left, bottom, right, top] = await boxOf(210, 297);
    expect([left, bottom]).toEqual([0, 0]);
    expect(right).toBeCloseTo(595.2756, 4);
    expect(top).toBeCloseTo(841.8898, 4);
  });

  test('32 × 40 in is 2304 × 2880 pt exactly (the international inch, NBS Circular 572)', async () => {
    expect(await boxOf(812.8, 1016)).toEqual([0, 0, 2304, 2880]);
  });

  test('letter is 612 × 792 pt exactly', async () => {
    expect(await boxOf(215.9, 279.4)).toEqual([0, 0, 612, 792]);
  });

  test('no page is cropped, turned or scaled by the file', async () => {
    const { pages } = await openObjects(await writePdf(everything, { fonts: FONTS }));
    for (const { keys } of pages) {
      expect([...keys].sort()).toEqual(['Contents', 'MediaBox', 'Parent', 'Resources', 'Type']);
    }
  });
});

test('the printer is asked to print at full scale on paper of the right size', async () => {
  // ISO 32000-2, viewer preferences: without /PrintScaling None the reader's own default applies.
  const { viewerPreferences } = await readPdf(await writePdf(everything, { fonts: FONTS }));
  expect(viewerPreferences).toMatchObject({ PrintScaling: 'None', PickTrayByPDFSize: true });
});

test('title, subject, language and dates', async () => {
  const document = { ...everything, title: 'Heron ⅛″ (лист)', subject: 'Pattern', language: 'en-GB' };
  const bytes = await writePdf(document, { fonts: FONTS });
  const read = await readPdf(bytes);
  expect([read.title, read.subject, read.language]).toEqual(['Heron ⅛″ (лист)', 'Pattern', 'en-GB']);
  const text = Buffer.from(bytes).toString('latin1');
  expect(text).toContain('/CreationDate (D:20000101000000Z)');
  const dated = await writePdf(document, { fonts: FONTS, date: new Date(Date.UTC(2031, 4, 6, 7, 8, 9)) });
  expect(Buffer.from(dated).toString('latin1')).toContain('/ModDate (D:20310506070809Z)');
});

test('the drawing stands once in the file, whatever the number of pages', async () => {
  const drawing = drawingOf(200, 200, [group('cut', [line('dashed', 12.3456, 0, 12.3456, 200)])]);
  const part = { x: 0, y: 0, width: 200, height: 200, pageX: 0, pageY: 0 };
  const pages = Array.from({ length: 30 }, (_, i) => pageOf(i + 1, { part }));
  const objects = await openObjects(await writePdf(documentOf(drawing, pages), { fonts: FONTS }));
  expect(objects.count('Form')).toBe(1);
  expect(objects.contents.filter((content) => content.includes('34.9954')).length).toBe(1);
  const bare = await openObjects(await writePdf(documentOf(drawing, [pageOf(1)]), { fonts: FONTS }));
  expect(bare.count('Form')).toBe(0);
});

test('the same document gives the same bytes, in processes of their own with other clocks and languages', () => {
  const print = (env: Record<string, string>): string =>
    execFileSync(process.execPath, ['--import', 'tsx', join(import.meta.dirname, 'print-digests.ts')], {
      env: { ...process.env, ...env },
      encoding: 'utf8',
    });
  const first = print({ TZ: 'UTC', LC_ALL: 'C' });
  expect(first).toMatch(/"pdf":"[0-9a-f]{64}"/);
  expect(print({ TZ: 'Pacific/Auckland', LC_ALL: 'tr_TR.UTF-8', LANG: 'tr_TR.UTF-8' })).toBe(first);
});

test('nothing of the document is changed', async () => {
  const before = JSON.stringify(everything);
  await writePdf(everything, { fonts: FONTS });
  expect(JSON.stringify(everything)).toBe(before);
});

describe('mistakes of the program throw', () => {
  const withItem = (item: object) =>
    writePdf(wholePage(drawingOf(10, 10, [group('cut', [line('heavy', 0, 0, 1, 1), item as never])])), {
      fonts: FONTS,
    });

  test('a pen that the drawing does not have', async () => {
    await expect(withItem({ ...line('heavy', 0, 0, 1, 1), pen: 'quill' })).rejects.toThrow('no pen is named "quill"');
  });

  test('a kind of item that is unknown', async () => {
    await expect(withItem({ kind: 'blot' })).rejects.toThrow('unknown item {"kind":"blot"}');
  });

  test('a picture that nobody gave', async () => {
    await expect(
      withItem({ kind: 'picture', picture: 'heron', box: { x: 0, y: 0, width: 1, height: 1 } }),
    ).rejects.toThrow('no picture is named "heron"');
  });

  test('a coordinate that is no number, and a colour that is none', async () => {
    await expect(withItem(line('heavy', Number.NaN, 0, 1, 1))).rejects.toThrow('no length');
    const red = { ...PENS.heavy, colour: 'red' };
    const drawing = { ...drawingOf(10, 10, [group('cut', [line('heavy', 0, 0, 1, 1)])]), pens: { heavy: red } };
    await expect(writePdf(wholePage(drawing), { fonts: FONTS })).rejects.toThrow(
      '"red" is no colour of the form #rrggbb',
    );
  });
});
