import { describe, expect, test } from 'vitest';
import { calibrate } from '../../src/calibrate/calibrate.ts';
import type { Drawing } from '../../src/drawing/model.ts';
import { textBox } from '../../src/fonts/measure.ts';
import { contains } from '../../src/geometry/box.ts';
import { pathBox } from '../../src/geometry/extent.ts';
import { TOOLS } from '../../src/shop/readings/readings.ts';
import { FONTS } from '../fonts/loaded.ts';
import { itemsOf, JOB, METRIC_SHOP, made, SHOP, textsOf } from './jig-samples.ts';

/** The file that a sheet shows in a frame below its heading, typed off as it stands there, indents by eye. */
function shownFile(drawing: Drawing): string {
  const heading = textsOf(drawing).find((item) => item.text === 'readings.yaml' && item.weight === 'bold')!;
  const frames = itemsOf(drawing).flatMap((item) =>
    item.kind === 'path' && item.pen === 'frame' ? [pathBox(item.paths[0]!)] : [],
  );
  const below = frames.filter((each) => each.y > heading.at.y && Math.abs(each.x - heading.at.x) < 1);
  const frame = below.reduce((a, b) => (a.y < b.y ? a : b));
  const lines = textsOf(drawing).filter((item) => contains(frame, textBox(item, FONTS)));
  const left = Math.min(...lines.map((item) => item.at.x));
  return lines
    .map((item) => `${' '.repeat(Math.round((item.at.x - left) / (0.62 * item.size)))}${item.text}`)
    .join('\n');
}

describe('the readings file that a sheet shows', () => {
  const cases = TOOLS.flatMap((kind) => ['letter', 'a4', 'a3'].map((paper) => [kind, paper] as const));

  test.each(cases)('of the jig %s on %s is one that calibrate takes', async (kind, paper) => {
    for (const shop of [SHOP, METRIC_SHOP]) {
      const { drawings } = await made(kind, { shop, paper });
      const text = shownFile(drawings[0]!);
      const result = calibrate({
        kind,
        text,
        file: 'readings.yaml',
        shop: { text: shop, file: 'shop.yaml' },
        date: '2026-03-01',
      });
      expect([text, result.ok ? [] : result.problems]).toEqual([text, []]);
    }
  });

  test('of the proof too', async () => {
    const { drawings } = await made('head-proof', { job: JOB });
    const text = shownFile(drawings[0]!);
    const result = calibrate({
      kind: 'head',
      text,
      file: 'readings.yaml',
      shop: { text: SHOP, file: 'shop.yaml' },
      date: '2026-03-01',
    });
    expect(result.ok && result.value.result).toMatchObject({ proved: true });
  });
});
