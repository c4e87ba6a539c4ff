import { expect, test } from 'vitest';
import { FORMATS, findFormat } from '../../src/writers/formats.ts';
import { FONTS } from '../fonts/loaded.ts';
import { drawingOf, group, line, wholePage } from './samples.ts';

test('every format of the table writes', async () => {
  const drawing = drawingOf(40, 30, [group('cut', [line('heavy', 1, 1, 39, 1)])]);
  const starts: Record<string, string> = { pdf: '%PDF-1.7', svg: '<svg ', dxf: '0\nSECTIO', hpgl: 'IN;\nPA;' };
  for (const format of FORMATS) {
    const bytes =
      format.of === 'document'
        ? await (await format.load())(wholePage(drawing), { fonts: FONTS })
        : (await format.load())(drawing, { fonts: FONTS });
    expect(Buffer.from(bytes).toString('latin1').slice(0, 8)).toContain(starts[format.id] ?? 'a test of its own');
  }
});

test('an unknown format is a problem that names the nearest', () => {
  const found = findFormat('SVG', FORMATS);
  expect(found.ok && found.value.extension).toBe('svg');
  const wrong = findFormat('sgv', FORMATS, ['format']);
  if (wrong.ok) throw new Error('it should not be found');
  expect(wrong.problems).toEqual([
    {
      severity: 'error',
      code: 'format-unknown',
      path: ['format'],
      message: 'there is no format "sgv" here, only pdf, svg, dxf, hpgl',
      hint: 'did you mean svg?',
    },
  ]);
  const strange = findFormat('woodcut', FORMATS);
  expect(!strange.ok && strange.problems[0]!.hint).toBe('choose one of pdf, svg, dxf, hpgl');
});
