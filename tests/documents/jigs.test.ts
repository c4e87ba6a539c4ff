import { describe, expect, test } from 'vitest';
import { JIGS } from '../../src/documents/jigs/jigs.ts';
import { textBox } from '../../src/fonts/measure.ts';
import { bottom, contains, grown, overlaps, right } from '../../src/geometry/box.ts';
import { meetsBox } from '../../src/geometry/clip.ts';
import { straightSides } from '../../src/geometry/path.ts';
import { FONTS } from '../fonts/loaded.ts';
import { itemsOf, JOB, jig, METRIC_JOB, METRIC_SHOP, made, SHOP, textsOf } from './jig-samples.ts';

const PAPERS = ['letter', 'a4', 'a3', 'tabloid'] as const;
const WORLDS = [
  ['in inches', SHOP, JOB],
  ['in millimetres', METRIC_SHOP, METRIC_JOB],
] as const;

describe.each(WORLDS)('every jig %s', (_, shop, job) => {
  const cases = [
    ...JIGS.flatMap(({ kind }) => PAPERS.map((paper) => [kind, paper] as const)),
    ['printer', '190 x 250 mm'] as const,
    ['printer', '175 x 210 mm'] as const,
  ];

  test.each(cases)('%s on %s: all words stand on the paper, none on another', async (kind, paper) => {
    const { drawings, sheets } = await made(kind, { shop, job, paper, thickness: '1.4, 2.9, 5' });
    expect(sheets).toBe(drawings.length);
    for (const drawing of drawings) {
      // Ladders run to the paper's very edge, and their numbers with them; all else keeps a margin.
      const margin = kind === 'printer' ? 0 : 5.9;
      const paperBox = grown({ x: 0, y: 0, width: drawing.width, height: drawing.height }, -margin);
      const boxes = textsOf(drawing).map((item) => ({ text: item.text, box: textBox(item, FONTS) }));
      for (const { text, box } of boxes) expect([text, contains(paperBox, box, 0.05)]).toEqual([text, true]);
      const clashes = boxes.flatMap((a, i) =>
        boxes
          .slice(i + 1)
          .flatMap((b) => (overlaps(grown(a.box, -0.25), grown(b.box, -0.25)) ? [`${a.text} / ${b.text}`] : [])),
      );
      expect(clashes).toEqual([]);
      const lines = itemsOf(drawing).flatMap((item) => {
        if (item.kind === 'line') return [item];
        return item.kind === 'path' && item.fill === undefined ? item.paths.flatMap(straightSides) : [];
      });
      const crossed = boxes.filter(({ box }) => {
        const ink = grown(box, -0.3);
        return lines.some((each) => meetsBox(each, ink.x, ink.y, right(ink), bottom(ink)));
      });
      expect(crossed.map(({ text }) => text)).toEqual([]);
    }
  });
});

test('the words of a jig are read at arm’s length: 3 mm at the least, its steps and tables', async () => {
  for (const { kind } of JIGS) {
    const { drawings } = await made(kind, { job: JOB });
    for (const drawing of drawings) {
      for (const { size, text } of textsOf(drawing)) {
        // Numbers on scales, what a pattern calls its ticks, and the foot are smaller.
        if (text.length < 12 || /^jig |^corrected|^not corrected/.test(text)) continue;
        expect([kind, text, size >= 2.99]).toEqual([kind, text, true]);
      }
    }
  }
});

describe('what a jig needs', () => {
  test('those for a job say so without one', async () => {
    for (const { kind, needs } of JIGS.filter((each) => each.needs === 'job')) {
      expect(needs).toBe('job');
      const result = await jig(kind);
      expect(result.ok ? [] : result.problems.map((p) => p.code)).toEqual(['jig-job-needed']);
    }
  });

  test('the others need neither job nor shop, but for the chart and the proof', async () => {
    const bare = JIGS.filter(({ needs }) => needs === 'nothing').map(async ({ kind }) => {
      const result = await jig(kind, { shop: '' });
      return [kind, result.ok ? 'made' : result.problems[0]!.code];
    });
    expect(Object.fromEntries(await Promise.all(bare))).toEqual({
      printer: 'made',
      guide: 'made',
      head: 'made',
      'head-proof': 'jig-head-uncalibrated',
      bevel: 'made',
      'corner-gauge': 'made',
      reveal: 'made',
      protractor: 'made',
      hinge: 'made',
      practice: 'made',
      chart: 'jig-chart-empty',
    });
  });

  test.each([
    ['heads', {}, 'jig-unknown', 'did you mean head?'],
    ['head', { head: 'pul-45' }, 'head-unknown', 'did you mean pull-45?'],
    ['guide', { printer: 'offce' }, 'printer-unknown', 'did you mean office?'],
    ['guide', { paper: 'lettr' }, 'paper-unknown', 'did you mean letter?'],
    ['guide', { paper: 'roll:36in' }, 'sheet-paper', 'letter'],
    ['head', { thickness: '1.4, thick' }, 'jig-thickness', '1.4 mm, 3 mm'],
    ['head', { thickness: '40' }, 'jig-thickness', '1.4 mm, 3 mm'],
    ['printer', { paper: '100 x 150 mm' }, 'jig-paper-small', 'larger paper'],
    ['head', { paper: '100 x 150 mm' }, 'jig-paper-small', 'larger paper'],
    ['reveal', { cut: ['dwg'] }, 'format-unknown', 'dxf'],
    [
      'chart',
      { shop: SHOP.replace(/^sizes:.*$/m, 'sizes: [16 x 20]').replace(/^frames:.*$/m, '') },
      'jig-chart-empty',
      'smaller sizes',
    ],
    [
      'art-corner',
      { job: JOB.replace('artwork: 10 1/2 x 13 1/2, overlap: 1/4', 'size: 10 x 13') },
      'jig-artwork-missing',
      'artwork',
    ],
  ] as const)('%s %j', async (kind, wish, code, hint) => {
    const result = await jig(kind, wish);
    expect(result.ok ? [] : result.problems.map((p) => p.code)).toEqual([code]);
    expect(result.ok ? '' : result.problems.map((p) => `${p.message} ${p.hint}`).join()).toContain(hint);
  });

  test('what is not yet calibrated stands on the sheets that build on it', async () => {
    const said = async (kind: string, shop: string) =>
      (await made(kind, { shop })).drawings
        .flatMap(textsOf)
        .map((item) => item.text)
        .join(' ');
    const bare = SHOP.replace(/^printers:.*$/m, '').replace(', a: 0.2 mm, b: 1.002', '');
    expect(await said('head', bare)).toContain('Not yet calibrated: the printer and the guide.');
    expect(await said('guide', bare)).toContain('Not yet calibrated: the printer.');
    expect(await said('head', SHOP)).not.toContain('Not yet');
  });
});
